using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Classes;

public class RoadClassesTests
{
    [Theory]
    [InlineData("M1", 2.00, 0.40, 0.70, 0.10, 0.35)] // EN 13201-2:2015 table 1, read (two independent reproductions agreeing)
    [InlineData("M2", 1.50, 0.40, 0.70, 0.10, 0.35)]
    [InlineData("M3", 1.00, 0.40, 0.60, 0.15, 0.30)]
    [InlineData("M4", 0.75, 0.40, 0.60, 0.15, 0.30)]
    [InlineData("M5", 0.50, 0.35, 0.40, 0.15, 0.30)]
    [InlineData("M6", 0.30, 0.35, 0.40, 0.20, 0.30)]
    public void Motor_traffic(string name, double averageCdM2, double overall, double longitudinal, double increment, double edge)
    {
        var found = RoadClasses.Find(name)!;
        Assert.Equal(new LuminanceTarget(averageCdM2, overall, longitudinal), found.Luminance);
        Assert.Equal((increment, edge), (found.Glare!.IncrementFraction, found.EdgeRatio!.Value));
        Assert.Null(found.Illuminance);
    }

    [Theory]
    [InlineData("C0", 0.10)] // EN 13201-2:2015 tables 2 and 3, read (two independent reproductions agreeing)
    [InlineData("C1", 0.10)]
    [InlineData("C2", 0.15)]
    [InlineData("C3", 0.15)]
    [InlineData("C4", 0.15)]
    [InlineData("C5", 0.20)]
    [InlineData("P1", 0.20)]
    [InlineData("P2", 0.25)]
    [InlineData("P3", 0.25)]
    [InlineData("P4", 0.30)]
    [InlineData("P5", 0.30)]
    [InlineData("P6", 0.35)]
    public void Glare_of_illuminance_classes(string name, double increment)
    {
        var found = RoadClasses.Find(name)!;
        Assert.Equal(increment, found.Glare!.IncrementFraction);
        Assert.Equal(LightClasses.Find(name), found.Illuminance);
        Assert.Null(found.MinimumVerticalLx);
    }

    [Theory]
    [InlineData("P1", 5, 5)] // EN 13201-2:2015 table 3, from memory
    [InlineData("P4", 1.5, 1)]
    [InlineData("P6", 0.6, 0.2)]
    public void Faces(string name, double verticalLx, double semicylindricalLx)
    {
        var found = RoadClasses.Find(name, recogniseFaces: true)!;
        Assert.Equal((verticalLx, semicylindricalLx), (found.MinimumVerticalLx!.Value, found.MinimumSemicylindricalLx!.Value));
    }

    [Theory]
    [InlineData("HS1", 5)] // EN 13201-2:2015, from memory
    [InlineData("HS2", 2.5)]
    [InlineData("HS3", 1)]
    public void Hemispherical(string name, double averageLx) => Assert.Equal(new HemisphericalTarget(averageLx, 0.15), RoadClasses.Find(name)!.Hemispherical);

    [Theory]
    [InlineData("SC1", 10)] // EN 13201-2:2015, from memory
    [InlineData("SC2", 7.5)]
    [InlineData("SC5", 2)]
    [InlineData("SC9", 0.5)]
    public void Semicylindrical(string name, double minimumLx) => Assert.Equal(minimumLx, RoadClasses.Find(name)!.MinimumSemicylindricalLx);

    [Theory]
    [InlineData("EV1", 50)] // EN 13201-2:2015, from memory
    [InlineData("EV3", 10)]
    [InlineData("EV6", 0.5)]
    public void Vertical(string name, double minimumLx) => Assert.Equal(minimumLx, RoadClasses.Find(name)!.MinimumVerticalLx);

    [Theory]
    [InlineData("EN 13201-2 class M 4", "M4")]
    [InlineData("lighting class m6", "M6")]
    [InlineData("parking light", "parking light")]
    [InlineData("IS 1944 A1", "A1")]
    public void Spelling_does_not_matter(string written, string name) => Assert.Equal(name, RoadClasses.Find(written)!.Name);

    [Theory]
    [InlineData("M7")]
    [InlineData("IS 1944 M3")]
    [InlineData("P7")]
    [InlineData("SC10")]
    [InlineData("")]
    public void Unknown_names_are_nothing(string name) => Assert.Null(RoadClasses.Find(name));

    [Theory]
    [InlineData("walkway", 50)] // EN 12464-2, from memory
    [InlineData("normal traffic", 45)]
    [InlineData("parking light", 55)]
    [InlineData("parking heavy", 50)]
    public void Glare_rating_of_work_places(string name, int greatest) => Assert.Equal(greatest, RoadClasses.Find(name)!.GreatestGlareRating);

    [Fact]
    public void A_target_of_a_users_own_is_checked()
    {
        var own = new RoadClass("gate", "tender clause 4.2") { Luminance = new LuminanceTarget(0.6, 0.4, null), Glare = new GlareLimit(0.15) };
        Assert.Same(own, own.Checked());
        Assert.Throws<ArgumentOutOfRangeException>(() => (own with { Luminance = new LuminanceTarget(0.6, 40, null) }).Checked());
        Assert.Throws<ArgumentOutOfRangeException>(() => (own with { Glare = new GlareLimit(15) }).Checked()); // 15 % is 0.15
        Assert.Throws<ArgumentOutOfRangeException>(() => (own with { MinimumVerticalLx = -1 }).Checked());
    }

    [Fact]
    public void Every_name_is_found_under_itself() => Assert.All(RoadClasses.Names, n => Assert.Equal(n, RoadClasses.Find(n)!.Name));
}

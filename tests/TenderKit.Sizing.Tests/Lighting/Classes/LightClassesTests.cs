using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Classes;

public class LightClassesTests
{
    [Theory]
    [InlineData("C0", 50)] // EN 13201-2:2015 table 2, read (two independent reproductions agreeing)
    [InlineData("C1", 30)]
    [InlineData("C2", 20)]
    [InlineData("C3", 15)]
    [InlineData("C4", 10)]
    [InlineData("C5", 7.5)]
    public void Conflict_areas(string name, double averageLx)
    {
        var target = LightClasses.Find(name)!;
        Assert.Equal((averageLx, null, 0.40, null), (target.AverageLx, target.MinimumLx, target.OverallUniformity, target.AverageCeilingLx));
    }

    [Theory]
    [InlineData("P1", 15, 3)] // EN 13201-2:2015 table 3, read (two independent reproductions agreeing)
    [InlineData("P2", 10, 2)]
    [InlineData("P3", 7.5, 1.5)]
    [InlineData("P4", 5, 1)]
    [InlineData("P5", 3, 0.6)]
    [InlineData("P6", 2, 0.4)]
    public void Pedestrian_areas(string name, double averageLx, double minimumLx)
    {
        var target = LightClasses.Find(name)!;
        Assert.Equal((averageLx, minimumLx), (target.AverageLx, target.MinimumLx));
        Assert.Equal(1.5 * averageLx, target.AverageCeilingLx); // note to table 3, from memory
        Assert.Null(target.OverallUniformity);
    }

    [Theory]
    [InlineData("S1", 15, 5)] // EN 13201-2:2003, from memory
    [InlineData("S2", 10, 3)]
    [InlineData("S4", 5, 1)]
    [InlineData("S6", 2, 0.6)]
    public void Earlier_pedestrian_classes(string name, double averageLx, double minimumLx)
    {
        var target = LightClasses.Find(name)!;
        Assert.Equal((averageLx, minimumLx, 1.5 * averageLx), (target.AverageLx, target.MinimumLx, target.AverageCeilingLx));
    }

    [Theory]
    [InlineData("CE2", 20, 0.40)] // EN 13201-2:2003, from memory
    [InlineData("CE5", 7.5, 0.40)]
    [InlineData("walkway", 5, 0.25)] // EN 12464-2, from memory
    [InlineData("slow traffic", 10, 0.40)]
    [InlineData("normal traffic", 20, 0.40)]
    [InlineData("loading point", 50, 0.40)]
    [InlineData("parking light", 5, 0.25)]
    [InlineData("parking medium", 10, 0.25)]
    [InlineData("parking heavy", 20, 0.25)]
    [InlineData("A1", 30, 0.4)] // IS 1944: A1 read, the others from memory
    [InlineData("A2", 15, 0.4)]
    [InlineData("B1", 8, 0.3)]
    [InlineData("B2", 4, 0.3)]
    [InlineData("major high", 17, 1 / 3.0)] // IES RP-8 illuminance method, from memory
    [InlineData("collector medium", 9, 0.25)]
    [InlineData("local low", 4, 1 / 6.0)]
    public void Other_standards(string name, double averageLx, double uniformity)
    {
        var target = LightClasses.Find(name)!;
        Assert.Equal((averageLx, uniformity), (target.AverageLx, target.OverallUniformity));
    }

    [Theory]
    [InlineData("p4", "P4")]
    [InlineData("Class P4", "P4")]
    [InlineData(" EN 13201-2 class P 4 ", "P4")]
    [InlineData("EN 13201-2:2015 P4", "P4")]
    [InlineData("P4 to EN 13201", "P4")]
    [InlineData("lighting class C3 (EN 13201-2)", "C3")]
    [InlineData("P4 as per BS EN 13201-2:2015", "P4")]
    [InlineData("IS 1944 A1", "A1")]
    [InlineData("IS 1944-2 B2", "B2")]
    [InlineData("IES RP-8 local low", "local low")]
    [InlineData("RP8 local low", "local low")]
    [InlineData("Parking - light", "parking light")]
    public void Spelling_does_not_matter(string written, string name) => Assert.Equal(name, LightClasses.Find(written)!.Name);

    [Theory]
    [InlineData("M3")]
    [InlineData("class m6")]
    [InlineData("EN 13201-2 M1")]
    [InlineData("ME4a")]
    [InlineData("MEW3")]
    public void Luminance_classes_have_no_illuminance_target(string name)
    {
        Assert.Null(LightClasses.Find(name));
        Assert.True(LightClasses.IsLuminanceClass(name));
    }

    [Theory]
    [InlineData("M7")]
    [InlineData("P7")]
    [InlineData("P44")]
    [InlineData("")]
    [InlineData("class")]
    [InlineData("EN 13201-2")]
    [InlineData("bright")]
    [InlineData("EN 13201-2 A1")] // a class of that name stands in another standard only
    [InlineData("IS 1944 P4")]
    public void Unknown_names_are_nothing(string name)
    {
        Assert.Null(LightClasses.Find(name));
        Assert.False(LightClasses.IsLuminanceClass(name));
    }

    [Fact]
    public void Every_name_is_found_under_itself() => Assert.All(LightClasses.Names, n => Assert.Equal(n, LightClasses.Find(n)!.Name));
}

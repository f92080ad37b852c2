using TenderKit.Tendering.Upkeep;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Upkeep;

public class MaintenancePlanTests
{
    [Fact]
    public void Batteries_fall_due_in_the_last_whole_year_of_the_shortest_life_and_again_after_it()
    {
        var design = HandMadeDesign.Small();
        var sites = design.Sites.Select(s => s with { Energy = s.Energy with { BatteryLifeYears = s.Site.Id == "S-03" ? 4.9 : 7.2 } });
        var plan = MaintenancePlan.Of(design with { Sites = [.. sites] });
        Assert.Equal([("K1", 4), ("K2", 7)], plan.Due.Select(d => (d.KitId, d.BatteryYear)));
        Assert.Equal([4, 8], Enumerable.Range(1, plan.Years).Where(y => MaintenancePlan.IsReplaced(plan.Due[0], y)));
    }

    // 50,000 h over 12 h a night: 365.25 x 12 = 4,383 h a year, 11.4 years
    [Fact]
    public void A_luminaire_falls_due_by_its_hours_of_darkness()
    {
        var design = HandMadeDesign.Small();
        var kits = design.Kits.Select(k => k with { Parts = k.Parts with { Luminaire = k.Parts.Luminaire with { LifeL80H = 50_000 } } });
        var sites = design.Sites.Select(s => s with { Climate = s.Climate with { DarkHours = [.. Enumerable.Repeat(12.0, 12)] } });
        Assert.All(MaintenancePlan.Of(design with { Kits = [.. kits], Sites = [.. sites] }).Due, d => Assert.Equal(11, d.LuminaireYear));
    }

    [Theory]
    [InlineData(2.0, new[] { 2, 4, 6 })]
    [InlineData(1.5, new[] { 2, 3, 5, 6 })]
    [InlineData(0.5, new[] { 1, 2, 3, 4, 5, 6 })]
    public void Luminaires_are_cleaned_as_the_rule_says(double years, int[] expected)
    {
        var design = HandMadeDesign.Small();
        var plan = MaintenancePlan.Of(design with { Rules = [.. design.Rules, new DesignRule("light.cleaning_years", years, 0.5, 3, "years", "test", "light", false)] });
        Assert.Equal(expected, Enumerable.Range(1, 6).Where(plan.IsCleaned));
    }
}

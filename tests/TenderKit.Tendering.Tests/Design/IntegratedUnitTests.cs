using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

public sealed class IntegratedUnitTests
{
    private static TenderDesign With(decimal price, double? bearingDegrees = null, double ratedAh = 50)
    {
        var inputs = StarterTender.Inputs;
        return TenderDesigner.Run(
            inputs with
            {
                Sites = [inputs.Sites.First(s => s.Id == "S02") with { BearingDegrees = bearingDegrees }],
                Catalog = inputs.Catalog with { IntegratedUnits = [StarterTender.Unit with { UnitPrice = price, RatedAh = ratedAh, BatteryWeightKg = ratedAh / 8 }] },
            },
            []);
    }

    [Fact]
    public void A_cheap_unit_wins_over_separate_parts_and_is_billed_as_one_piece()
    {
        var design = With(60);
        var parts = Assert.Single(design.Kits).Parts;
        Assert.Equal("INT-20", parts.Integrated?.Code);
        Assert.Null(parts.Bracket);
        Assert.Null(parts.Enclosure);
        Assert.Empty(parts.Circuits);
        Assert.All(design.Sites[0].Checks, c => Assert.True(c.Complies, c.Id));
        Assert.Contains(BillBuilder.Build(design).Value!.Parts.SelectMany(p => p.Lines), l => l.ToString().Contains("Integrated unit 20 W", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dear_unit_loses() => Assert.Null(With(6000).Kits[0].Parts.Integrated);

    [Fact]
    public void A_unit_whose_battery_is_too_small_is_refused_by_the_same_check_as_a_battery() => Assert.Null(With(1, ratedAh: 8).Kits[0].Parts.Integrated);

    [Fact]
    public void The_worst_heading_governs_and_a_known_bearing_leaves_two()
    {
        var unknown = With(60).Sites[0];
        var along = With(60, bearingDegrees: 90).Sites[0];
        Assert.Equal(StarterTender.Unit.ModuleTiltDegrees + along.Parts.Pole.ArmTiltDegrees, along.Climate.Plane.TiltDegrees);
        Assert.Contains(along.Climate.Plane.AzimuthDegrees, new[] { 0.0, 180.0 });
        Assert.True(unknown.Energy.Simulated.DarkNightsUpperBound >= along.Energy.Simulated.DarkNightsUpperBound);
    }
}

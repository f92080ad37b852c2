using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Commissioning;
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
    public void Limits_that_are_only_projected_on_a_sealed_unit_are_not_printed_as_met()
    {
        string[] projected = ["controller.load_current", "array.cold_voltage", "array.short_circuit", "controller.charge_current", "controller.disconnect", "luminaire.highest_voltage"];
        var checks = With(60).Sites[0].Checks.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        Assert.DoesNotContain(projected, checks.Contains);
        Assert.Superset(new HashSet<string> { "controller.schedule_parts", "battery.charge_current", "array.hot_voltage", "energy.dark_nights" }, checks);
    }

    [Fact]
    public void Each_kit_stands_beside_the_cheapest_of_the_other_form_which_costs_no_less_where_the_choice_was_free()
    {
        var cheap = Assert.Single(With(60).SideBySide);
        Assert.True(cheap.Chosen.IsIntegrated);
        Assert.False(cheap.Other.IsIntegrated);
        Assert.True(cheap.Other.CostPerPole * cheap.Other.Design!.Poles >= cheap.Chosen.CostPerPole * cheap.Chosen.Design!.Poles);
        Assert.Equal(StarterTender.Unit.WeightKg, cheap.Chosen.CarriedKg);
        var small = Assert.Single(With(1, ratedAh: 8).SideBySide);
        Assert.Null(small.Other.Design);
        Assert.Contains("nearest miss INT-20", small.Other.Fails, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sealed_unit_is_earthed_mounted_switched_on_and_set_and_nothing_is_connected()
    {
        var parts = With(60).Kits[0].Parts;
        Assert.Equal(4, PoleWork.Order(parts).Length);
        Assert.DoesNotContain(PoleWork.Order(parts), s => s.What.Contains("fuse", StringComparison.Ordinal) || s.What.Contains("controller", StringComparison.Ordinal));
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
        Assert.Equal(Math.Abs(StarterTender.Unit.ModuleTiltDegrees - along.Parts.Pole.ArmTiltDegrees), along.Climate.Plane.TiltDegrees);
        Assert.Contains(along.Climate.Plane.AzimuthDegrees, new[] { 0.0, 180.0 });
        Assert.Equal((8, 2), (unknown.Energy.HeadingCount, along.Energy.HeadingCount));
        Assert.True(unknown.Energy.Simulated.DarkNightsUpperBound >= along.Energy.Simulated.DarkNightsUpperBound);
    }
}

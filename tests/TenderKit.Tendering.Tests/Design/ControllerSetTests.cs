using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

public sealed class ControllerSetTests
{
    [Fact]
    public void Currents_and_own_use_add_up_while_the_lamp_hangs_on_one()
    {
        var one = StarterTender.Inputs.Catalog.Controllers[0];
        var two = ControllerSet.Of(one, 2);

        Assert.Equal(2 * one.RatedChargeA, two.RatedChargeA);
        Assert.Equal(2 * one.OwnUseW, two.OwnUseW);
        Assert.Equal(2 * one.MaxArrayShortCircuitA, two.MaxArrayShortCircuitA);
        Assert.Equal(one.RatedLoadA, two.RatedLoadA);
        Assert.Equal(one.MaxArrayV, two.MaxArrayV);
    }

    [Fact]
    public void Two_stand_side_by_side_where_one_is_too_small_and_its_maker_allows_it()
    {
        var needed = Assert.Single(With(15, parallel: false).Sites).Checks.First(c => c.Id == "controller.charge_current").Required;
        var alone = With(0.8 * needed, parallel: false);
        var paired = With(0.8 * needed, parallel: true);

        Assert.NotEmpty(alone.Unmet);
        Assert.True(paired.Unmet.IsEmpty, string.Join("; ", paired.Unmet.Select(u => u.Reason)));
        var site = Assert.Single(paired.Sites);
        Assert.Equal(2, site.Parts.ControllerCount);
        Assert.Equal(0, site.Parts.ModuleCount / site.Parts.ModulesInSeries % 2);
        Assert.All(site.Checks, c => Assert.True(c.Complies, c.Id));
        Assert.Equal(2, site.Parts.Pieces.First(p => p.Part is Controller).Count);
        Assert.Equal(2, site.Parts.Circuits.Count(c => c.Name == "controller to battery"));
        Assert.Equal(2 * site.Parts.Controller.RatedChargeA, site.Energy.System.Control.ChargeCurrentA);
        var bill = BillBuilder.Build(paired).Value!;
        var line = bill.Parts[1].Lines.First(l => l.PartCode == site.Parts.Controller.Code);
        Assert.Equal(2 * site.Poles, LedgerValues.Evaluate(bill.Ledger)[line.Quantity]);
    }

    /// <summary>Controllers of one charge current at 12 V.</summary>
    private static TenderDesign With(double chargeA, bool parallel)
    {
        var inputs = StarterTender.Inputs;
        var small = inputs.Catalog.Controllers
            .Where(c => c.Dimming && c.AdjustableDisconnect)
            .Select(c => c with { RatedChargeA = chargeA, MaxArrayShortCircuitA = 200, MaxArrayWpPerV = 0, ParallelAllowed = parallel, SystemVoltagesV = [12] });
        return TenderDesigner.Run(
            inputs with
            {
                Sites = [inputs.Sites.First(s => s.Id == "S12")],
                Catalog = inputs.Catalog with { Controllers = [.. small], IntegratedUnits = [], Modules = [.. inputs.Catalog.Modules.Where(m => m.RatedWp is >= 30 and <= 80)] },
            },
            []);
    }
}

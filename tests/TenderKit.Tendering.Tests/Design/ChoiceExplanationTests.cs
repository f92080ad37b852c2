using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

public sealed class ChoiceExplanationTests
{
    private static readonly Lazy<TenderDesign> _design = new(() =>
    {
        var inputs = StarterTender.Inputs;
        return TenderDesigner.Run(
            inputs with
            {
                Sites = [.. inputs.Sites.Where(s => s.Id is "S05" or "S07" or "S11")],
                Rules = new RuleSet([.. inputs.Rules.Rules.Select(r => r.Id == "climate.years" ? r with { Value = 10 } : r)]),
                Tender = inputs.Tender with { KitsAtMost = 2 },
                Shared = new SharedWork(),
                Explain = true,
            },
            []);
    });

    [Fact]
    public void Each_kit_names_a_runner_up_no_cheaper_than_the_cheapest_and_what_it_differs_in()
    {
        Assert.Equal(_design.Value.Kits.Select(k => k.Id), _design.Value.Choices.Select(c => c.KitId));
        Assert.All(_design.Value.Choices, c =>
        {
            Assert.True(c.CheapestCost <= c.ChosenCost);
            Assert.True(c.RunnerUpCost >= c.CheapestCost);
            Assert.NotEmpty(c.RunnerUpDiffers);
        });
    }

    [Fact]
    public void Less_asked_never_costs_more_and_more_asked_never_less() => Assert.All(_design.Value.Choices, c =>
    {
        Assert.Equal(4, c.Demands.Length);
        Assert.True(c.Demands[0].Difference is null or >= 0, c.Demands[0].Demand);
        Assert.All(c.Demands.Skip(1), d => Assert.True(d.Difference <= 0, d.Demand));
    });

    [Fact]
    public void The_curve_of_kit_counts_never_rises_and_holds_what_was_chosen()
    {
        var costs = _design.Value.KitCounts.Select(k => k.Cost ?? decimal.MaxValue).ToArray();
        Assert.Equal(costs.OrderDescending(), costs);
        Assert.NotEmpty(costs);
    }

    /// <summary>EN 13201-2 classes; a fifth less where lux are asked for.</summary>
    [Fact]
    public void A_class_steps_down_by_one_and_lux_by_a_fifth()
    {
        Assert.Equal("P5", ChoiceExplanations.Lower(TenderClasses.Find("P4")!)!.Name);
        Assert.Equal("M4", ChoiceExplanations.Lower(TenderClasses.Find("M3")!)!.Name);
        var lux = ChoiceExplanations.Lower(new LightTarget("lux asked for", 10, 2, 0.2, null, ""))!;
        Assert.Equal((8, 1.6, 0.2), (lux.AverageLx, lux.MinimumLx!.Value, lux.OverallUniformity!.Value));
    }
}

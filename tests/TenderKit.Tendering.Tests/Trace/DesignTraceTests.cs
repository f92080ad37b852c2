using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Tests.Design;
using TenderKit.Tendering.Trace;
using Xunit;

namespace TenderKit.Tendering.Tests.Trace;

public sealed class DesignTraceTests
{
    /// <summary>What no trace of separate parts may lack.</summary>
    private static readonly string[] Headline =
    [
        "light.spacing", "light.maintenance", "light.darkest", "light.average", "light.minimum", "energy.lamp_input", "energy.night", "energy.plane", "energy.plane_taken",
        "array.rated", "array.yield", "array.ratio", "array.recovery", "battery.usable", "battery.autonomy", "battery.life", "energy.dark_nights", "energy.dark_bound",
        "controller.charge_current", "wiring.array.drop", "wiring.battery.drop", "wiring.lamp.drop", "wiring.battery.fuse", "wiring.lamp.fuse", "structure.pressure",
        "structure.force_shaft", "structure.shear", "structure.moment", "foundation.concrete",
    ];

    private static readonly Lazy<TenderDesign> _design = new(() => Design(Sites()));

    /// <summary>Roads, a yard, a single pole; one under ASCE 7 on flooded ground, one behind a horizon.</summary>
    private static ImmutableArray<Site> Sites() =>
    [
        .. StarterTender.Inputs.Sites.Where(s => s.Id is "S04" or "S05" or "S07" or "S11" or "S12").Select(s => s.Id switch
        {
            "S11" => s with { Ground = s.Ground with { Standard = WindStandard.Asce7, FloodProne = true } },
            "S05" => s with { Horizon = new HorizonProfile([(0, 4), (90, 12), (180, 0), (270, 9)]) },
            "S12" => s with { Arrangement = Arrangement.Staggered },
            _ => s,
        }),
    ];

    private static TenderDesign Design(ImmutableArray<Site> sites)
    {
        var inputs = StarterTender.Inputs;
        return TenderDesigner.Run(
            inputs with
            {
                Sites = sites,
                Rules = new RuleSet([.. inputs.Rules.Rules.Select(r => r.Id == "climate.years" ? r with { Value = 10 } : r)]),
                Shared = new SharedWork(),
            },
            []);
    }

    private static IEnumerable<(SiteDesign Site, TracedFigure Figure)> Traced() => _design.Value.Sites.SelectMany(s => DesignTrace.Of(_design.Value, s).Select(f => (s, f)));

    [Fact]
    public void Every_figure_follows_from_its_listed_inputs_by_its_printed_formula() => Assert.Empty(
        from traced in Traced()
        let again = Recomputed.Value(traced.Figure)
        where Math.Abs(again - traced.Figure.Value) > 1e-9 * Math.Abs(traced.Figure.Value)
        select $"{traced.Site.Site.Id} {traced.Figure.Id}: {traced.Figure.Value} in the design, {again} by {TraceFormulas.Of(traced.Figure.FormulaId).Text}");

    [Fact]
    public void Separate_parts_have_every_headline_figure_and_a_ground_and_one_of_the_two_ways_to_hold_it()
    {
        Assert.Equal(5, _design.Value.Sites.Length);
        foreach (var site in _design.Value.Sites)
        {
            var ids = DesignTrace.Of(_design.Value, site).Select(f => f.Id).ToHashSet();
            var asked = site.Parts.Integrated is null ? Headline : Headline.Where(i => !i.StartsWith("wiring.", StringComparison.Ordinal) && !i.StartsWith("controller.", StringComparison.Ordinal));
            Assert.All(asked, id => Assert.True(ids.Contains(id), $"{site.Site.Id} has no {id}"));
            Assert.True(ids.Contains("foundation.overturning") || ids.Contains("foundation.depth"), site.Site.Id);
        }

        Assert.Contains(_design.Value.Sites, s => s.Parts.Integrated is null);
    }

    [Fact]
    public void An_input_that_is_a_figure_has_its_value_and_one_that_is_a_rule_or_a_part_exists()
    {
        var design = _design.Value;
        foreach (var site in design.Sites)
        {
            var figures = DesignTrace.Of(design, site).ToDictionary(f => f.Id);
            foreach (var input in figures.Values.SelectMany(f => f.Inputs))
            {
                if (input.Origin == TraceOrigin.Figure && input.Values.Length == 1 && figures[input.Key].FormulaId != "base_moment")
                    Assert.Equal(figures[input.Key].Value, input.Values[0]);
                if (input.Origin == TraceOrigin.Rule) Assert.All(input.Key.Split(", "), id => Assert.Contains(design.Rules, r => r.Id == id));
            }
        }
    }

    [Fact]
    public void What_the_checks_say_is_what_the_trace_says()
    {
        foreach (var site in _design.Value.Sites)
        {
            var figures = DesignTrace.Of(_design.Value, site).ToDictionary(f => f.Id, f => f.Value);
            void Same(string check, Func<Check, double> side, string figure)
            {
                if (site.Checks.FirstOrDefault(c => c.Id == check) is { } c && figures.TryGetValue(figure, out var value)) Assert.Equal(side(c), value, 1e-9 * Math.Abs(value));
            }

            Same("controller.charge_current", c => c.Required, "controller.charge_current");
            Same("array.ratio", c => c.Required, "array.ratio");
            Same("array.ratio", c => c.Offered, "array.rated");
            Same("array.recovery", c => c.Required, "array.recovery");
            Same("wiring.lamp.fuse", c => c.Required, "wiring.lamp.fuse");
            Same("wiring.array.drop", c => c.Offered, "wiring.array.drop");
            Same("battery.autonomy", c => c.Offered, "battery.autonomy");
            Same("energy.dark_nights", c => c.Offered, "energy.dark_bound");
            Same("foundation.overturning", c => c.Offered, "foundation.overturning");
            Same("foundation.embedment", c => c.Required, "foundation.depth");
        }
    }

    [Fact]
    public void Every_formula_has_a_text_and_a_source_and_an_id_of_its_own()
    {
        Assert.Equal(TraceFormulas.All.Length, TraceFormulas.All.Select(f => f.Id).Distinct().Count());
        Assert.All(TraceFormulas.All, f => Assert.True(f.Text.Length > 5 && f.Source.Length > 3, f.Id));
    }

    [Theory]
    [InlineData("x = 2 + 3 × 4 ^ 2 / 8", 8)]
    [InlineData("x = −(1 − 3) ^ 2", -4)]
    [InlineData("x = sum(a × b) − max(1, min(a))", 16)]
    [InlineData("x = c + 1 where c = cos(60) × 2", 2)]
    public void The_calculator_of_this_test_calculates(string formula, double expected) => Assert.Equal(expected, Arithmetic.Of(formula, [("a", [2, 3]), ("b", [3, 4])]), 1e-12);

    [Fact]
    public void A_wrong_input_is_found()
    {
        var figure = Traced().First(p => p.Figure.Id == "energy.night").Figure;
        var wrong = figure with { Inputs = figure.Inputs.SetItem(1, figure.Inputs[1] with { Values = [figure.Inputs[1].Values[0] * 1.001] }) };
        Assert.True(Math.Abs(Recomputed.Value(wrong) - figure.Value) > 1e-5 * figure.Value);
    }
}

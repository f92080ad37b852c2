using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.PartsStated;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.PartsStated;

public sealed class PartsStudyTests
{
    private static readonly StatedParts Weak = new("Type A", "4.2", ["S02"], 40, 12, 40, null, 20, null, null, null, 12, 3);

    private static readonly DesignInputs Inputs = StarterTender.Inputs with
    {
        Rules = new RuleSet([.. StarterTender.Inputs.Rules.Rules.Select(r => r.Id == "climate.years" ? r with { Value = 12 } : r)]),
        Shared = new SharedWork(),
    };

    [Fact]
    public void Weak_parts_raise_numbered_questions_with_their_figures()
    {
        var result = Of(Weak)!;
        var at = Assert.Single(Assert.Single(result.Studies).Sites);
        Assert.Equal("S02", at.SiteId);
        Assert.True(at.DarkNightsPerYear > 100); // 240 Wh a night from 40 Wp: 160 Wh a day in 4 h of sun at best
        Assert.True(at.LitHours < at.AskedHours);
        // 480 Wh of gel, drawn down by half, aged to 0.8: below one night of 240 Wh
        Assert.InRange(at.AutonomyNights, 0.5, 1.1);
        Assert.Equal(Enumerable.Range(1, result.Questions.Length), result.Questions.Select(q => q.Number));
        Assert.All(result.Questions, q => Assert.Equal(("4.2", "Type A"), (q.Clause, q.Kit)));
        Assert.Contains(result.Questions, q => q.Found.Contains("40 Wp, 12 V 40 Ah, 20 W", StringComparison.Ordinal) && q.Question.Contains("larger than stated", StringComparison.Ordinal));
        Assert.Contains(result.Questions, q => q.Question.Contains("Of which kind must the battery be", StringComparison.Ordinal));
        // rule controller.charge_factor times 40 / 18 A
        Assert.Contains(result.Questions, q => q.Found.Contains(FormattableString.Invariant($"need {Inputs.Rules["controller.charge_factor"] * 40 / 18:0.0} A"), StringComparison.Ordinal));
        Assert.All(result.Questions, q => Assert.All(new[] { q.Question, q.Found, q.Why, q.Proposal }, t => Assert.NotEmpty(t)));
        Assert.Equal(["TK353", "TK354"], Clarifications.Findings(result).Select(d => d.Code).Distinct().Order());
    }

    [Fact]
    public void What_is_proposed_keeps_the_duty()
    {
        var at = Of(Weak)!.Studies[0].Sites[0];
        var enough = Of(Weak with { ModuleWp = at.NeededArrayWp!.Value, BatteryAh = at.NeededBatteryWh / 12 })!.Studies[0];
        Assert.True(enough.Sites[0].DarkNightsPerYear <= enough.AskedDarkNights);
        Assert.True(enough.Sites[0].AutonomyNights >= enough.AskedNights * 0.999);
        Assert.DoesNotContain(Clarifications.Of([enough]), q => q.Question.Contains("larger than stated, or", StringComparison.Ordinal));
    }

    [Fact]
    public void Strong_parts_are_not_called_weak()
    {
        var strong = Weak with { ModuleWp = 400, BatteryAh = 400, LampW = 12, ControllerA = 40, Chemistry = BatteryChemistry.GelLeadAcid };
        Assert.DoesNotContain(Clarifications.Findings(Of(strong)!), d => d.Message.Contains("stay dark", StringComparison.Ordinal));
        Assert.DoesNotContain(Of(strong)!.Questions, q => q.Question.Contains("controller", StringComparison.Ordinal));
        Assert.Contains(Of(strong with { ControllerA = 10 })!.Questions, q => q.Question.Contains("controller be larger", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_parts_there_is_nothing_to_ask() => Assert.Null(PartsStudy.Of(Inputs));

    private static StatedPartsResult? Of(StatedParts parts) => PartsStudy.Of(Inputs with { Tender = Inputs.Tender with { PartsStated = [parts] } });
}

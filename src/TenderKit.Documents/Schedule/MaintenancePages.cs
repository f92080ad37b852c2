using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Upkeep;

namespace TenderKit.Documents.Schedule;

/// <summary>The maintenance plan: tasks, and what falls due in which year.</summary>
internal static class MaintenancePages
{
    private const string Due = "×";

    public static IEnumerable<Block> Of(TenderDesign design)
    {
        if (design.Kits.IsEmpty) yield break;
        var plan = MaintenancePlan.Of(design);
        yield return new Heading(1, "Maintenance plan");
        yield return new Paragraph("Light and battery last as calculated only when this is done. Intervals are common practice, no source, but the cleaning of luminaires, which is a design rule; instructions of the makers "
            + "prevail. Switch off and part in the order of the connection drawing before touching anything electrical; work at height and on batteries is for trained persons, under local code.", TextStyle.Small)
        { KeepWithNext = true };
        yield return new TableBlock("Tasks", [new("Task", Share: 2.2), new("How often", Share: 1.1), new("Who", Share: 1.1), new("Spares used", Share: 0.9)],
            [.. plan.Tasks.Select(t => Row.Of(t.What, t.Interval, t.Skill, t.Spares.Length == 0 ? "–" : t.Spares))])
        { Compact = true };
        yield return new TableBlock($"What falls due in which year from taking over ({Due})",
            [new("Work", Share: 1), new("Number", Side: Side.End, FixedPt: 40), .. Enumerable.Range(1, plan.Years).Select(y => new Column(Figures.Number(y, 0), Side: Side.End, FixedPt: 15.5))],
            [.. Rows(plan)])
        { Compact = true, KeepTogether = true };
        if (ProvisionalWords.Holds(design.Sites)) yield return new Paragraph("Numbers are provisional until every site is surveyed.", TextStyle.Small, AfterSteps: 0);
        yield return new Paragraph("Batteries are due in the last whole year of their expected life at the kit's hardest site. A luminaire may be down to 80 % of its light in the year given under it, "
            + "burning every dark hour at full level; dimmed hours make it last longer.", TextStyle.Small);
    }

    private static IEnumerable<Row> Rows(MaintenancePlan plan)
    {
        var poles = plan.Due.Sum(d => d.Poles);
        Row Line(string work, int number, Func<int, bool> due) => new([work, Figures.Number(number, 0), .. Enumerable.Range(1, plan.Years).Select(y => due(y) ? Due : "")]);
        yield return Line("Inspection, bolts, earth, zinc", poles, _ => true);
        yield return Line("Luminaires cleaned", poles, plan.IsCleaned);
        foreach (var kit in plan.Due) yield return Line($"Batteries of kit {kit.KitId}", kit.BatteryCount, y => MaintenancePlan.IsReplaced(kit, y));
        foreach (var kit in plan.Due) yield return Line($"Luminaires of kit {kit.KitId} (year {Figures.Number(kit.LuminaireYear, 0)})", kit.Poles, y => y == kit.LuminaireYear);
    }
}

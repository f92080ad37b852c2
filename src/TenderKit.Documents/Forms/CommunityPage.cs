using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Forms;

/// <summary>One page for the people who live with the lights, in plain words and big type. No money in it. Same design, same bytes.</summary>
public static class CommunityPage
{
    private const int MostPlaces = 20;

    private static readonly TextStyle _text = new(10.5, 2 * TextStyle.Step);
    private static readonly TextStyle _strong = new(11.5, 2.5 * TextStyle.Step, Strong: true);

    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design));
    }

    internal static PaperDocument Document(TenderDesign design)
    {
        var head = design.Tender.Head;
        return new PaperDocument($"{head.Reference}: your street lights", head.Bidder, "Your street lights", $"{head.Reference}  ·  Your street lights", head.IssueDate, [.. Blocks(design)])
        { Wording = Echoes.WordingOf(design) };
    }

    private static IEnumerable<Block> Blocks(TenderDesign design)
    {
        yield return new Paragraph("Your street lights", TextStyle.Title, AfterSteps: 1);
        yield return Say($"{Figures.Count(design.PoleCount, "light", "lights")} at {Figures.Count(design.Sites.Length, "place", "places")}. Each pole makes its own light from the sun and keeps it in a battery.");
        yield return Places(design);
        foreach (var (title, text) in Texts(design))
        {
            yield return new Paragraph(title, _strong, AfterSteps: 0) { KeepWithNext = true };
            yield return Say(text);
        }

        yield return new TableBlock(null, [new("", FixedPt: 150), new("")],
            [Row.Of("If something is wrong, call", "") with { LeastHeightPt = 24 }, Row.Of("Our caretaker is", "") with { LeastHeightPt = 24 }])
        { Large = true, KeepTogether = true };
    }

    private static Paragraph Say(string text) => new(text, _text);

    /// <summary>Places with their lights, two in a row; districts, then the first places, where they are too many for the page.</summary>
    private static TableBlock Places(TenderDesign design)
    {
        var places = Counted(design);
        var cells = places.Select(p => new[] { p.Name, Figures.Number(p.Lights, 0) }).Chunk(2).Select(pair => Row.Of([.. pair[0], .. pair.Length == 2 ? pair[1] : ["", ""]]));
        return new TableBlock(null, [new("", Share: 1), new("", Side: Side.End, FixedPt: 36), new("", Share: 1), new("", Side: Side.End, FixedPt: 36)], [.. cells]) { KeepTogether = true };
    }

    private static ImmutableArray<(string Name, int Lights)> Counted(TenderDesign design)
    {
        var sites = design.Sites.Select(s => (s.Site.Name, s.Poles)).ToImmutableArray();
        if (sites.Length <= MostPlaces) return sites;
        var districts = design.Sites.GroupBy(s => s.Site.District).Select(g => (Name: g.Key.Length == 0 ? "Elsewhere" : g.Key, Lights: g.Sum(s => s.Poles))).ToImmutableArray();
        var all = districts.Length is > 1 and <= MostPlaces ? districts : sites;
        if (all.Length <= MostPlaces) return all;
        return [.. all.Take(MostPlaces - 1), ($"{all.Length - MostPlaces + 1} more places", all.Skip(MostPlaces - 1).Sum(p => p.Item2))];
    }

    private static IEnumerable<(string Title, string Text)> Texts(TenderDesign design)
    {
        if (design.Sites.IsEmpty) yield break;
        yield return ("How bright", Bright(design));
        yield return ("Which hours", Hours(design));
        yield return ("In long bad weather", Weather(design));
        yield return ("Every month", "One person you choose walks past all lights after dark and writes down which are dark. Cut branches that shade a sun panel. Wash off dust "
            + "with water and a soft brush on a long stick, in the morning, standing on the ground. Keep people away from poles that lean or move.");
        yield return ("Leave shut", "Nobody climbs a pole, opens a box or cuts a wire. The battery can burn or burst. The panel gives power all day, even when the lamp is off. Only a trained electrician may open it, "
            + "and opened boxes lose the maker's promise to repair. Smoke, heat or a smell: stay far away and call.");
        yield return ("New batteries", Batteries(design));
    }

    private static string Bright(TenderDesign design)
    {
        var (low, high) = (design.Sites.Min(s => s.Light.Result.AverageLx), design.Sites.Max(s => s.Light.Result.AverageLx));
        var (from, to) = (Figures.Number(low, 0), Figures.Number(high, 0));
        return $"On the ground the light is {(from == to ? from : from + " to " + to)} lux on average: some {Figures.Number(MoonTimes(low), 0)} times a bright full moon or more. "
            + "You see the way, holes, steps and people. It is brighter under a lamp and darker between two.";
    }

    /// <summary>Light as so many full moons, to the nearest ten below it. A full moon high in a clear sky gives about 0.25 lx (from memory). Check value: 5 lx is 20.</summary>
    internal static double MoonTimes(double averageLx) => Math.Max(1, averageLx / 0.25 < 10 ? Math.Floor(averageLx / 0.25) : 10 * Math.Floor(averageLx / 0.25 / 10));

    private static string Hours(TenderDesign design)
    {
        var all = design.Sites.GroupBy(s => s.Site.Schedule.Name, StringComparer.Ordinal).ToImmutableArray();
        if (all.Length == 1) return Plain(all[0].First().Site.Schedule);
        return string.Join(" ", all.OrderByDescending(g => g.Count()).Take(2).Select(g => $"{Schedule.Words.List(g.Select(s => s.Site.Name), 2)}: {Lower(Plain(g.First().Site.Schedule))}"))
            + (all.Length > 2 ? " Other places have hours of their own; ask." : "");
    }

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];

    /// <summary>A schedule as people say it.</summary>
    internal static string Plain(LightingSchedule schedule)
    {
        if (!schedule.Seasons.IsEmpty) return "The hours change with the season; ask for the sheet.";
        if (schedule.Parts.IsEmpty) return schedule.RestLevelFraction >= 1 ? "Full light all night." : $"All night, {Weaker(schedule.RestLevelFraction)}.";
        var parts = schedule.Parts.Select(p => $"{(p.LevelFraction >= 1 ? "full light" : Weaker(p.LevelFraction))} {Span(p)}");
        var rest = schedule.RestLevelFraction <= 0 ? "no light the rest of the night" : $"{Weaker(schedule.RestLevelFraction)} the rest of the night";
        var text = string.Join(", ", parts.Append(rest));
        return char.ToUpperInvariant(text[0]) + text[1..] + ".";
    }

    private static string Weaker(double level) => level >= 1 ? "full light" : $"light lowered to {Figures.Number(level * 100, 0)} of 100 parts";

    private static string Span(SchedulePart part)
    {
        if (part is { FromAnchor: NightAnchor.Dusk, FromOffsetH: 0, ToAnchor: NightAnchor.Dusk }) return $"for {Count(part.ToOffsetH)} from dusk";
        if (part is { ToAnchor: NightAnchor.Dawn, ToOffsetH: 0, FromAnchor: NightAnchor.Dawn }) return $"for the last {Count(-part.FromOffsetH)} before dawn";
        return $"from {Moment(part.FromAnchor, part.FromOffsetH)} to {Moment(part.ToAnchor, part.ToOffsetH)}";
    }

    private static string Moment(NightAnchor anchor, double hours)
    {
        var name = anchor switch { NightAnchor.Dusk => "dusk", NightAnchor.Midnight => "the middle of the night", _ => "dawn" };
        return hours == 0 ? name : $"{Count(Math.Abs(hours))} {(hours > 0 ? "after" : "before")} {name}";
    }

    private static string Count(double hours) => $"{Figures.Short(hours)} {(hours == 1 ? "hour" : "hours")}";

    private static string Weather(TenderDesign design)
    {
        var (dark, nights) = (design.Tender.Reliability.DarkNightsPerYear, Math.Floor(design.Sites.Min(s => s.Energy.AutonomyNights)));
        var most = dark < 1 ? $"less than one night a year ({Figures.Short(dark)})" : $"at most {Figures.Short(dark)} {(dark == 1 ? "night" : "nights")} a year";
        return $"A full battery lasts at least {Figures.Number(nights, 0)} {(nights == 1 ? "night" : "nights")} without any sun. After many dull days a light may go out early. Over many years this is {most} for each light. "
            + "It comes back by itself when the sun does.";
    }

    private static string Batteries(TenderDesign design)
    {
        var plan = Tendering.Upkeep.MaintenancePlan.Of(design).Due.Where(d => d.BatteryYear > 0).Select(d => d.BatteryYear).Order().ToImmutableArray();
        if (plan.IsEmpty) return "Ask when the batteries must be replaced.";
        var start = design.Tender.Head.IssueDate.AddDays(design.Tender.Head.DeliveryDays).Year;
        var (first, last) = (FormattableString.Invariant($"{start + plan[0]}"), FormattableString.Invariant($"{start + plan[^1]}"));
        return $"Batteries wear out. Plan for new ones after {(plan[0] == plan[^1] ? Figures.Number(plan[0], 0) : $"{Figures.Number(plan[0], 0)} to {Figures.Number(plan[^1], 0)}")} years, "
            + $"about {(first == last ? first : first + " to " + last)}, and put something aside for them each year. Old batteries go back to a recycler, never into a pit or fire.";
    }
}

using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary>
/// A lighting schedule in one line. Parts stand between commas or semicolons; each is a stretch of the night and, after a colon, its level (100 % when none is named):
/// <c>dusk+4h</c> the four hours after dusk, <c>dawn-2h</c> the two hours before dawn, <c>midnight-1h</c> and <c>midnight+1h</c> likewise,
/// <c>dusk+6h..dawn-1h</c> from one moment to another, <c>rest:40%</c> all that is left of the night (dark when it is not named).
/// <c>dusk-to-dawn</c> alone is the whole night. Where stretches overlap the higher level holds. <c>dusk+6h..dawn-1h:100% presence 30%</c> is a stretch with
/// presence detection: its level is called for 30 % of the time. Seasons stand in a YAML file, named instead: <c>night.yaml</c>, or <c>tender.yaml#village-night</c>.
/// </summary>
internal static partial class ScheduleText
{
    public const string Help =
        "dusk-to-dawn, or parts between commas, each with its level after a colon (100% when left out): dusk+4h the four hours after dusk, dawn-2h the two before dawn, "
        + "midnight-1h, dusk+6h..dawn-1h from one moment to another, rest:40% what is left of the night (dark when not named). "
        + "Example: \"dusk+4h:100%,dawn-2h:100%,rest:40%\". Where parts overlap the higher level holds. "
        + "With presence detection: dusk+6h..dawn-1h:100% presence 30% is called for 30 % of the time (all of it when not said). "
        + "Or a YAML file with parts and seasons as in a tender file: night.yaml, or tender.yaml#village-night.";

    private const double LongestH = 24;

    /// <summary>The option <c>--schedule</c>.</summary>
    public static Option<LightingSchedule> Option(string name) => new(name)
    {
        Description = Help,
        DefaultValueFactory = _ => LightingSchedule.DuskToDawn,
        CustomParser = result =>
        {
            var text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
            var read = IsFile(text) ? OfFile(text, out var problem) : Read(text, out problem);
            if (read is null) result.AddError(name + " " + problem + (IsFile(text) ? "" : "; write dusk-to-dawn, dusk+5h, or such as dusk+4h:100%,dawn-2h:100%,rest:40%"));
            return read ?? LightingSchedule.DuskToDawn;
        },
    };

    private static bool IsFile(string text) =>
        Path.GetExtension(FileOf(text)).ToUpperInvariant() is ".YAML" or ".YML";

    private static string FileOf(string text) => text.Split('#')[0].Trim();

    /// <summary>Reads a schedule from a file, or says what is wrong.</summary>
    private static LightingSchedule? OfFile(string text, out string problem)
    {
        var file = FileOf(text);
        problem = $"names the file '{file}', which does not exist";
        if (!File.Exists(file)) return null;
        var found = new List<Diagnostic>();
        var schedule = ScheduleFile.Read(File.ReadAllText(file), file, text.Contains('#', StringComparison.Ordinal) ? text[(text.IndexOf('#', StringComparison.Ordinal) + 1)..].Trim() : null, found);
        problem = string.Join("; ", found.Select(d => d.ToString()));
        return found.Any(d => d.Severity == Severity.Error) ? null : schedule;
    }

    /// <summary>Reads a schedule, or says what is wrong.</summary>
    public static LightingSchedule? Read(string text, out string problem)
    {
        problem = "is empty";
        var name = text.Trim();
        if (string.Equals(name, LightingSchedule.DuskToDawn.Name, StringComparison.OrdinalIgnoreCase)) return LightingSchedule.DuskToDawn;
        var parts = ImmutableArray.CreateBuilder<SchedulePart>();
        double? rest = null;
        foreach (var word in name.Split(name.Contains(';', StringComparison.Ordinal) ? ';' : ',', StringSplitOptions.TrimEntries))
        {
            problem = $"holds '{word}', which is no part of a night";
            var match = Part().Match(word);
            if (!match.Success) return null;
            problem = $"holds '{word}', whose level is not between 0 and 100 %";
            if (Level(match) is not { } level) return null;
            problem = $"holds '{word}', whose presence is not between 0 and 100 %, or is that of a rest";
            if (Presence(match) is not { } presence) return null;
            problem = $"holds '{word}', a second rest";
            if (match.Groups["rest"].Success && rest is not null) return null;
            if (match.Groups["rest"].Success) rest = level;
            else if (StretchOf(match, level, ref problem, word) is { } part) parts.Add(part with { PresenceFraction = presence });
            else return null;
        }

        problem = "never asks for light";
        return rest is not > 0 && parts.All(p => p.LevelFraction * p.PresenceFraction <= 0) ? null : new LightingSchedule(name, parts.ToImmutable(), rest ?? 0);
    }

    private static SchedulePart? StretchOf(Match match, double level, ref string problem, string word)
    {
        var (from, fromH) = Moment(match, "a", "s", "h");
        problem = $"holds '{word}', whose hours are beyond {LongestH:0}";
        if (Math.Abs(fromH) > LongestH) return null;
        if (match.Groups["b"].Success)
        {
            var (to, toH) = Moment(match, "b", "t", "k");
            return Math.Abs(toH) > LongestH ? null : new SchedulePart(from, fromH, to, toH, level);
        }

        problem = $"holds '{word}', which has no length: write such as {match.Groups["a"].Value.ToLowerInvariant()}{(from == NightAnchor.Dawn ? "-2h" : "+4h")}";
        if (fromH == 0) return null;
        return fromH > 0 ? new SchedulePart(from, 0, from, fromH, level) : new SchedulePart(from, fromH, from, 0, level);
    }

    private static (NightAnchor Anchor, double OffsetH) Moment(Match match, string anchor, string sign, string hours)
    {
        var size = match.Groups[hours].Success ? Number(match.Groups[hours].Value) : 0;
        return (Enum.Parse<NightAnchor>(match.Groups[anchor].Value, ignoreCase: true), match.Groups[sign].Value == "-" ? -size : size);
    }

    private static double? Level(Match match)
    {
        if (!match.Groups["level"].Success) return 1;
        var level = Number(match.Groups["level"].Value) / (match.Groups["percent"].Success ? 100 : 1);
        return level is >= 0 and <= 1 ? level : null;
    }

    private static double? Presence(Match match)
    {
        if (!match.Groups["presence"].Success) return 1;
        var share = Number(match.Groups["presence"].Value) / (match.Groups["share"].Success ? 100 : 1);
        return share is >= 0 and <= 1 && !match.Groups["rest"].Success ? share : null;
    }

    private static double Number(string text) => double.Parse(text.Replace(',', '.'), CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?:(?<rest>rest)|(?<a>dusk|dawn|midnight)\s*(?:(?<s>[+-])\s*(?<h>\d{1,3}(?:[.,]\d{1,4})?)\s*h)?"
        + @"(?:\s*\.\.\s*(?<b>dusk|dawn|midnight)\s*(?:(?<t>[+-])\s*(?<k>\d{1,3}(?:[.,]\d{1,4})?)\s*h)?)?)"
        + @"\s*(?::\s*(?<level>\d{1,3}(?:[.,]\d{1,4})?)\s*(?<percent>%)?)?"
        + @"(?:\s+presence\s*(?<presence>\d{1,3}(?:[.,]\d{1,4})?)\s*(?<share>%)?)?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Part();
}

using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>What a number with a unit in running text measures, before it is known which part it belongs to.</summary>
internal enum MeasureKind
{
    WattPeak,
    Watt,
    Lumen,
    LumenPerWatt,
    Kelvin,
    IngressCode,
    ImpactCode,
    LifeHours,
    Volt,
    AmpereHour,
    WattHour,
    Ampere,
    Box,
    Diameters,
    Millimetre,
    Metre,
    SquareMetre,
    Section,
    Litre,
    Bolt,
    Kilogram,
    Nights,
    Years,
}

/// <summary>A number with its unit.</summary>
/// <param name="At">Place of its first letter in the text.</param>
/// <param name="Values">The numbers, in the base unit (m for boxes, mm for diameters and bolts).</param>
/// <param name="Words">As written.</param>
internal sealed record Measure(MeasureKind Kind, int At, int Length, double[] Values, string Words, string Suffix = "", double Confidence = 1)
{
    public double Value => Values[0];

    public int End => At + Length;
}

/// <summary>Finds every number with a unit in running text of English, French, Spanish or Portuguese.</summary>
internal static partial class Measures
{
    private const string Num = @"(?<!\d)(?<!\d[.,'])(?:(?<![a-z])|(?<=\bled))(?<n>\d(?:[\d.,']*\d)?)";
    private const string Big = @"(?<!\d)(?<!\d[.,'])(?:(?<![a-z])|(?<=\bled))(?<n>\d{1,3}(?: \d{3})+|\d(?:[\d.,']*\d)?)";

    private static readonly string[] Sides = ["a", "b", "c"];

    /// <summary>Every measure in the order of the text; a stretch of text is read once, by the first pattern that fits it.</summary>
    public static List<Measure> Find(string text)
    {
        var folded = PlainText.Fold(text);
        var taken = new bool[folded.Length];
        var found = new List<Measure>();
        void Add(MeasureKind kind, Regex pattern, Func<Match, double[]?> read, Func<Match, string>? suffix = null, double confidence = 1)
        {
            foreach (Match match in pattern.Matches(folded))
            {
                if (Enumerable.Range(match.Index, match.Length).Any(i => taken[i])) continue;
                if (read(match) is not { } values) continue;
                for (var i = match.Index; i < match.Index + match.Length; i++) taken[i] = true;
                found.Add(new Measure(kind, match.Index, match.Length, values, text.Substring(match.Index, match.Length).Trim(), suffix?.Invoke(match) ?? "", confidence));
            }
        }

        Add(MeasureKind.LumenPerWatt, LumenPerWatt(), m => One(m, false));
        Add(MeasureKind.LifeHours, LifeHours(), m => One(m, true) is [>= 1000] v ? v : null);
        Add(MeasureKind.LifeHours, LifeHoursAfter(), m => One(m, true) is [>= 1000] v ? v : null);
        Add(MeasureKind.Lumen, Lumen(), m => One(m, true));
        Add(MeasureKind.WattHour, WattHour(), m => One(m, !m.Groups["k"].Success) is [var v] ? [m.Groups["k"].Success ? v * 1000 : v] : null);
        Add(MeasureKind.WattPeak, WattPeak(), m => One(m, true) is [var v] ? [m.Groups["k"].Success ? v * 1000 : v] : null);
        Add(MeasureKind.AmpereHour, AmpereHour(), m => One(m, false));
        Add(MeasureKind.IngressCode, Ingress(), m => One(m, false) is [>= 20 and <= 69] v ? v : null);
        Add(MeasureKind.ImpactCode, Impact(), m => One(m, false) is [>= 1 and <= 20] v ? v : null);
        Add(MeasureKind.Section, Sections(), SectionsOf);
        Add(MeasureKind.SquareMetre, SquareMetre(), m => One(m, false));
        Add(MeasureKind.Bolt, Bolt(), BoltOf);
        Add(MeasureKind.Diameters, Diameters(), DiametersOf);
        Add(MeasureKind.Box, Box(), BoxOf);
        Add(MeasureKind.Watt, Watt(), m => One(m, true));
        Add(MeasureKind.Kelvin, Kelvin(), m => One(m, true) is [>= 1800 and <= 7000] v ? v : null);
        Add(MeasureKind.Volt, Volt(), VoltsOf, m => m.Groups["ac"].Success ? "AC" : m.Groups["dc"].Success ? "DC" : "");
        Add(MeasureKind.Ampere, Ampere(), m => One(m, false) is { } v && IsAmpere(text, m) ? v : null);
        Add(MeasureKind.Kilogram, Kilogram(), m => One(m, false));
        Add(MeasureKind.Litre, Litre(), m => One(m, false));
        Add(MeasureKind.Nights, Nights(), m => One(m, false));
        Add(MeasureKind.Nights, NightsOfAutonomy(), m => One(m, false));
        Add(MeasureKind.Years, Years(), m => One(m, false) is [>= 0.5 and <= 50] v ? v : null);
        Add(MeasureKind.Years, Months(), m => One(m, false) is [>= 1 and <= 400 and var months] ? [months / 12] : null);
        Add(MeasureKind.Millimetre, Millimetre(), m => One(m, true));
        Add(MeasureKind.Metre, Metre(), m => One(m, false));
        return [.. found.OrderBy(f => f.At)];
    }

    private static double[]? One(Match match, bool thousands) => PlainText.Number(match.Groups["n"].Value, thousands) is { } value ? [value] : null;

    /// <summary>"5 a 6 m" is a range and "a" a word: the ampere is a capital, or stands against its number.</summary>
    private static bool IsAmpere(string text, Match match)
    {
        var unit = match.Groups["u"];
        return unit.Length > 1 || char.IsUpper(text[unit.Index]) || (unit.Index > 0 && char.IsDigit(text[unit.Index - 1]));
    }

    private static double[]? VoltsOf(Match match)
    {
        if (PlainText.Number(match.Groups["n"].Value, false) is not { } first) return null;
        return match.Groups["m"].Success && PlainText.Number(match.Groups["m"].Value, false) is { } second ? [first, second] : [first];
    }

    private static double[]? SectionsOf(Match match)
    {
        var cores = PlainText.Number(match.Groups["c"].Value, false);
        return PlainText.Number(match.Groups["s"].Value, false) is { } section and >= 0.5 and <= 300 ? [section, cores ?? 0] : null;
    }

    private static double[]? BoltOf(Match match)
    {
        if (PlainText.Number(match.Groups["d"].Value, false) is not { } diameter || diameter is < 6 or > 64) return null;
        if (!match.Groups["n"].Success) return [diameter];
        var length = PlainText.Number(match.Groups["n"].Value, true);
        return length is { } l ? [diameter, l * (match.Groups["u"].Value switch { "cm" => 10, "m" => 1000, _ => 1 })] : [diameter];
    }

    private static double[]? BoxOf(Match match)
    {
        var last = match.Groups["w"].Value;
        var units = new[] { match.Groups["u"].Value, match.Groups["v"].Value, last };
        var unit = last.Length > 0 ? last : units.LastOrDefault(u => u.Length > 0) ?? "";
        double?[] raw = [.. Sides.Where(g => match.Groups[g].Success).Select(g => PlainText.Number(match.Groups[g].Value, unit is "mm" or ""))];
        if (raw.Any(r => r is null)) return null;
        if (unit.Length == 0)
        {
            if (raw.Max() is not >= 100) return null;
            unit = "mm";
        }

        double Scale(string u) => u switch { "mm" => 0.001, "cm" => 0.01, _ => 1 };
        var values = raw.Select((r, i) => r!.Value * Scale(units[Math.Min(i, 2)] is { Length: > 0 } own ? own : unit)).ToArray();
        return values.All(v => v is > 0 and < 10) ? values : null;
    }

    private static double[]? DiametersOf(Match match)
    {
        var one = PlainText.Number(match.Groups["a"].Value, false);
        var two = PlainText.Number(match.Groups["b"].Value, false);
        return one is >= 30 and <= 600 && two is >= 30 and <= 600 ? [Math.Max(one.Value, two.Value), Math.Min(one.Value, two.Value)] : null;
    }

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(Num + @"\s*(?:lm|lumens?|lumenes)\s?/\s?w(?:att)?s?", Options)]
    private static partial Regex LumenPerWatt();

    [GeneratedRegex(@"l\s?(?:70|80|90)(?:\s?b\s?\d\d)?[^\d]{0,14}" + Big + @"\s*(?:h\b|hrs?\b|hours|heures|horas)", Options)]
    private static partial Regex LifeHours();

    [GeneratedRegex(Big + @"\s*(?:h|hrs?|hours|heures|horas)\s*(?:\(|@|at|a)?\s*l\s?(?:70|80|90)", Options)]
    private static partial Regex LifeHoursAfter();

    [GeneratedRegex(Big + @"\s*(?:lumens?|lumenes|lm)(?![a-z])", Options)]
    private static partial Regex Lumen();

    [GeneratedRegex(Num + @"\s*(?<k>k)?w\.?\s?h(?![a-z0-9])", Options)]
    private static partial Regex WattHour();

    [GeneratedRegex(Num + @"\s*(?:(?<k>k)?wp|wc|w\s?(?:peak|pic\b|pico|crete)|watts?[ -]?(?:peak|pico|crete))(?![a-z])", Options)]
    private static partial Regex WattPeak();

    [GeneratedRegex(Num + @"\s*(?:a\.?\s?h|amp(?:ere)?s?[ -]?h(?:ou)?rs?|amperios?[ -]hora|amperes?[ -](?:heures?|horas?))(?![a-z])", Options)]
    private static partial Regex AmpereHour();

    [GeneratedRegex(@"\bip\s?-?\s?(?<n>\d\d)(?!\d)", Options)]
    private static partial Regex Ingress();

    [GeneratedRegex(@"\bik\s?-?\s?(?<n>\d{1,2})(?!\d)", Options)]
    private static partial Regex Impact();

    [GeneratedRegex(@"(?<![\d.,])(?<c>\d)\s?(?:x|g)\s?(?<s>\d{1,3}(?:[.,]\d{1,2})?)\s*(?=(?:mm2|mm\^2|sq\.? ?mm|mm c)|[^;]{0,30}?\d\s?(?:mm2|mm\^2|sq\.? ?mm))", Options)]
    private static partial Regex Sections();

    [GeneratedRegex(Num + @"\s*(?:m2|m\^2|sq\.? ?m)(?![a-z0-9])", Options)]
    private static partial Regex SquareMetre();

    [GeneratedRegex(@"(?<!\d ?)\bm\s?(?<d>\d{1,2})(?!\d)(?:[^\d;]{1,18}?(?<n>\d[\d.,]*)\s*(?<u>mm|cm|m)(?![a-z0-9]))?", Options)]
    private static partial Regex Bolt();

    [GeneratedRegex(@"(?<![\d.,])(?<![a-z])(?<a>\d(?:[\d.,]*\d)?)\s*(?<u>mm|cm|m)?\s*x\s*(?<b>\d(?:[\d.,]*\d)?)\s*(?<v>mm|cm|m)?(?:\s*x\s*(?<c>\d(?:[\d.,]*\d)?)\s*)?(?<w>mm|cm|m)?(?![a-z0-9])", Options)]
    private static partial Regex Box();

    [GeneratedRegex(@"(?<![\d.,])(?<a>\d{2,3}(?:[.,]\d)?)\s*(?:mm)?\s*(?:/|-|a)\s*(?<b>\d{2,3}(?:[.,]\d)?)\s*mm(?![a-z0-9])", Options)]
    private static partial Regex Diameters();

    [GeneratedRegex(Num + @"\s*(?:watts?|vatios?|w)(?![a-z0-9])(?!\s?/\s?m)", Options)]
    private static partial Regex Watt();

    [GeneratedRegex(@"(?<![\d.,a-z])(?<n>\d[.,]?\d{3})\s*(?:k|kelvin)(?![a-z])", Options)]
    private static partial Regex Kelvin();

    [GeneratedRegex(Num + @"\s*v?\s*(?:(?:/|-)\s*(?<m>\d{2}(?:[.,]\d)?))?\s*(?:volts?|voltios|v)\s?(?:(?<dc>d\.?\s?c\.?|c\.?\s?c\.?)|(?<ac>a\.?\s?c\.?|c\.?\s?a\.?))?(?![a-z0-9])", Options)]
    private static partial Regex Volt();

    [GeneratedRegex(Num + @"\s*(?<u>amperes?|amperios?|amps?|a)(?![a-z0-9.])", Options)]
    private static partial Regex Ampere();

    [GeneratedRegex(Num + @"\s*(?:kg|kgs|kilos?|kilogram\w*)(?![a-z])", Options)]
    private static partial Regex Kilogram();

    [GeneratedRegex(Num + @"\s*(?:l|lt|ltr|litres?|liters?|litros?)(?![a-z])", Options)]
    private static partial Regex Litre();

    [GeneratedRegex(Num + @"\s*(?:nights?|nuits?|noches?|noites?)", Options)]
    private static partial Regex Nights();

    [GeneratedRegex(@"(?:autonom\w*|backup|reserve)[^\d]{0,20}(?<n>\d{1,2}(?:[.,]\d)?)\s*(?:days?|jours?|dias?|j\b|d\b)", Options)]
    private static partial Regex NightsOfAutonomy();

    [GeneratedRegex(Num + @"\s*-?\s*(?:years?|yrs?|ans?|annees?|anos?|y)(?![a-z])", Options)]
    private static partial Regex Years();

    [GeneratedRegex(Num + @"\s*-?\s*(?:months?|mois|mes(?:es)?)(?![a-z])", Options)]
    private static partial Regex Months();

    [GeneratedRegex(Num + @"\s*mm(?![a-z0-9])", Options)]
    private static partial Regex Millimetre();

    [GeneratedRegex(Num + @"\s*(?:m|mts?|metres?|meters?|metros?)(?![a-z0-9])", Options)]
    private static partial Regex Metre();
}

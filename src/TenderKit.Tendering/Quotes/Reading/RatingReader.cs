using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>The family of a line and its ratings.</summary>
public sealed record LineReading(string Family, ItemKind Item, bool Spare, ImmutableArray<Rating> Ratings);

/// <summary>
/// Reads the ratings out of the description of a line: numbers by their units, words of chemistry and control by themselves. In a line about
/// one part a watt is that part's; in a line about a whole light point a number belongs to the nearest word for a part in its clause.
/// Common practice, no source.
/// </summary>
public static partial class RatingReader
{
    /// <summary>Reads a description.</summary>
    /// <param name="text">Every describing cell, joined.</param>
    public static LineReading Read(string text)
    {
        var folded = PlainText.Fold(text);
        var measures = Measures.Find(text);
        var words = Components.Find(folded);
        var item = ItemWords.Read(text);
        var family = LineFamily.Of(folded, item, measures, words);
        var ratings = new List<Rating>();
        foreach (var measure in measures) Assign(measure, family, folded, measures, words, ratings);
        AddWords(text, folded, family, ratings);
        ratings.AddRange(Certificates.In(text).ToImmutableSortedSet(StringComparer.Ordinal) is { Count: > 0 } named ? [Rating.Word("certificates", string.Join('+', named), string.Join(", ", named))] : []);
        return new LineReading(family, item.Kind, item.Spare || SpareWord().IsMatch(folded), [.. FirstOfEach(ratings)]);
    }

    /// <summary>The part a number belongs to.</summary>
    internal static string OwnerOf(Measure measure, string family, string folded, List<ComponentWord> words)
    {
        if (family is not ("kit" or "integrated")) return family;
        var natural = measure.Kind switch
        {
            MeasureKind.Lumen or MeasureKind.LumenPerWatt or MeasureKind.Kelvin or MeasureKind.ImpactCode or MeasureKind.LifeHours => "luminaire",
            MeasureKind.WattPeak => "module",
            MeasureKind.AmpereHour or MeasureKind.WattHour or MeasureKind.Nights => "battery",
            MeasureKind.Ampere => "controller",
            MeasureKind.Diameters or MeasureKind.Metre or MeasureKind.Millimetre => "pole",
            _ => null,
        };
        return natural ?? Nearest(measure, folded, words) ?? (measure.Kind == MeasureKind.Volt ? "battery" : "luminaire");
    }

    /// <summary>The word for a part before the number in its clause, else after it in its clause, else the last one before.</summary>
    private static string? Nearest(Measure measure, string folded, List<ComponentWord> words)
    {
        var start = ClauseStart(folded, measure.At);
        var end = ClauseEnd(folded, measure.End);
        var before = words.Where(w => w.At < measure.At && w.At >= start).Select(w => w.Family).LastOrDefault();
        var after = words.Where(w => w.At >= measure.End && w.At < end).Select(w => w.Family).FirstOrDefault();
        return before ?? after ?? words.Where(w => w.At < measure.At).Select(w => w.Family).LastOrDefault();
    }

    private static int ClauseStart(string folded, int at)
    {
        for (var i = at - 1; i > 0; i--)
        {
            if (IsBreak(folded, i)) return i;
        }

        return 0;
    }

    private static int ClauseEnd(string folded, int at)
    {
        for (var i = at; i < folded.Length; i++)
        {
            if (IsBreak(folded, i)) return i;
        }

        return folded.Length;
    }

    private static bool IsBreak(string folded, int i) =>
        folded[i] is ';' or '(' or ')' or ':' or '|' or '+' || (folded[i] is ',' && !(i > 0 && i + 1 < folded.Length && char.IsDigit(folded[i - 1]) && char.IsDigit(folded[i + 1])));

    private static void Assign(Measure measure, string family, string folded, List<Measure> all, List<ComponentWord> words, List<Rating> ratings)
    {
        var owner = OwnerOf(measure, family, folded, words);
        void Add(string name, double value, double confidence = 1) => ratings.Add(Rating.Of(name, Math.Round(value, 6), measure.Words, confidence * measure.Confidence));
        switch (measure.Kind, owner)
        {
            case (MeasureKind.Lumen, "luminaire"): Add("flux_lm", measure.Value); break;
            case (MeasureKind.LumenPerWatt, "luminaire"): Add("efficacy_lm_per_w", measure.Value); break;
            case (MeasureKind.Kelvin, "luminaire"): Add("colour_temperature_k", measure.Value); break;
            case (MeasureKind.LifeHours, "luminaire"): Add("life_l80_h", measure.Value); break;
            case (MeasureKind.ImpactCode, "luminaire" or "enclosure"): Add("ik_code", measure.Value); break;
            case (MeasureKind.IngressCode, "luminaire" or "enclosure"): Add("ip_code", measure.Value); break;
            case (MeasureKind.IngressCode, "module" or "battery" or "controller" or "pole") when family is "kit" or "integrated":
                // the code of a box inside a whole light point, unless it is the only one
                if (all.Count(m => m.Kind == MeasureKind.IngressCode) == 1) Add("ip_code", measure.Value, 0.7);
                break;
            case (MeasureKind.Watt, "luminaire"): Add("input_power_w", measure.Value); break;
            case (MeasureKind.WattPeak, "module"): Add("rated_wp", measure.Value); break;
            case (MeasureKind.Watt, "module"): Add("rated_wp", measure.Value, 0.9); break;
            case (MeasureKind.Watt, "battery" or "controller" or "pole") when family is "kit" or "integrated": Add("input_power_w", measure.Value, 0.7); break;
            case (MeasureKind.Box, "module" or "battery"): AddBox(measure, Add); break;
            case (MeasureKind.Volt, "battery"): Add("nominal_voltage_v", measure.Value); break;
            case (MeasureKind.AmpereHour, "battery"): Add("rated_ah", measure.Value); break;
            case (MeasureKind.WattHour, "battery"): Add("rated_wh", measure.Value); break;
            case (MeasureKind.Kilogram, "battery" or "module" or "luminaire" or "pole"): Add("weight_kg", measure.Value); break;
            case (MeasureKind.Litre, "battery"): Add("volume_l", measure.Value); break;
            case (MeasureKind.Nights, "battery" or "luminaire" or "module" or "controller" or "kit" or "integrated"): Add("autonomy_nights", measure.Value); break;
            case (MeasureKind.Ampere, "controller"): Add("rated_charge_a", measure.Value); break;
            case (MeasureKind.Volt, "controller") when family == "controller": AddSystemVoltages(measure, ratings); break;
            case (MeasureKind.Metre, "pole") when measure.Value is >= 2 and <= 20: Add("height_m", measure.Value); break;
            case (MeasureKind.Millimetre, "pole") when measure.Value is >= 1.5 and <= 12: Add("wall_mm", measure.Value, 0.9); break;
            case (MeasureKind.Millimetre, "pole") when measure.Value is >= 40 and <= 600:
                if (ratings.Find(r => r.Name == "base_mm") is not { } first) Add("base_mm", measure.Value, 0.8);
                else if (!ratings.Exists(r => r.Name == "top_mm") && measure.Value <= first.Value) Add("top_mm", measure.Value, 0.8);
                break;
            case (MeasureKind.Diameters, "pole"):
                Add("base_mm", measure.Values[0]);
                Add("top_mm", measure.Values[1]);
                break;
            case (MeasureKind.SquareMetre, "bracket"): Add("max_module_area_m2", measure.Value); break;
            case (MeasureKind.Litre, "enclosure"): Add("usable_volume_l", measure.Value); break;
            case (MeasureKind.Bolt, "foundation"):
                Add("bolt_mm", measure.Value);
                if (measure.Values.Length > 1) Add("bolt_length_mm", measure.Values[1]);
                break;
            case (MeasureKind.Section, "cable"): Add(ratings.Any(r => r.Name == "area_mm2") ? "area_2_mm2" : "area_mm2", measure.Value); break;
            case (MeasureKind.Metre, "cable"): Add("length_m", measure.Value); break;
            case (MeasureKind.Ampere, "protection"): AddFuse(measure, folded, ratings); break;
            case (MeasureKind.Volt, "protection"): AddProtectionVolt(measure, folded, ratings); break;
            case (MeasureKind.Years, not ("service" or "other")) when !IsLife(folded, measure): Add("warranty_years", measure.Value, WarrantyWord().IsMatch(folded) ? 1 : 0.8); break;
        }
    }

    private static void AddBox(Measure measure, Action<string, double, double> add)
    {
        var sides = measure.Values.OrderDescending().ToArray();
        add("length_m", sides[0], 1);
        add("width_m", sides[1], 1);
        if (sides.Length > 2) add("thickness_m", sides[2], 1);
    }

    private static void AddSystemVoltages(Measure measure, List<Rating> ratings)
    {
        var values = measure.Values.Select(v => v.ToString("0.##", CultureInfo.InvariantCulture));
        var before = ratings.FindIndex(r => r.Name == "system_voltages_v");
        if (before < 0) ratings.Add(Rating.Word("system_voltages_v", string.Join('/', values), measure.Words));
    }

    /// <summary>The first fuse named is the battery's, a second smaller one the lamp's; an ampere after "kA" or of an arrester is none.</summary>
    private static void AddFuse(Measure measure, string folded, List<Rating> ratings)
    {
        if (!FuseWord().IsMatch(folded)) return;
        if (ratings.Find(r => r.Name == "fuse_a") is not { } first) ratings.Add(Rating.Of("fuse_a", measure.Value, measure.Words));
        else if (!ratings.Exists(r => r.Name == "lamp_fuse_a") && measure.Value != first.Value) ratings.Add(Rating.Of("lamp_fuse_a", measure.Value, measure.Words));
    }

    private static void AddProtectionVolt(Measure measure, string folded, List<Rating> ratings)
    {
        var surge = SurgeWord().Matches(folded).Where(m => m.Index < measure.At).Select(m => m.Index).DefaultIfEmpty(-1).Max();
        var fuse = FuseWord().Matches(folded).Where(m => m.Index < measure.At).Select(m => m.Index).DefaultIfEmpty(-1).Max();
        var name = surge > fuse ? "surge_v_dc" : measure.Suffix == "AC" ? "rated_v_ac" : "rated_v_dc";
        ratings.Add(Rating.Of(name, measure.Value, measure.Words, measure.Suffix.Length > 0 ? 1 : 0.7));
    }

    private static bool IsLife(string folded, Measure measure)
    {
        var from = Math.Max(0, measure.At - 22);
        return LifeWord().IsMatch(folded[from..Math.Min(folded.Length, measure.End + 14)]) && !WarrantyWord().IsMatch(folded);
    }

    private static void AddWords(string text, string folded, string family, List<Rating> ratings)
    {
        if (family is "battery" or "kit" or "integrated" && Chemistry.Find(folded) is { } chemistry)
            ratings.Add(Rating.Word("chemistry", chemistry.Name, text.Substring(chemistry.At, chemistry.Length), chemistry.Confidence));
        if (family is "controller" or "kit" or "integrated" && Control().Match(folded) is { Success: true } control)
            ratings.Add(Rating.Word("control", control.Groups["t"].Success ? "tracking" : "pulse", text.Substring(control.Index, control.Length)));
    }

    private static IEnumerable<Rating> FirstOfEach(List<Rating> ratings) => ratings.GroupBy(r => r.Name, StringComparer.Ordinal).Select(g => g.MaxBy(r => r.Confidence)!);

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"\b(?:(?<t>mppt|maximum power point|tracking|suivi du point)|pwm|pulse[ -]?width|largeur d'impulsion|modulacion)\b", Options)]
    private static partial Regex Control();

    [GeneratedRegex(@"fuse|fusib|fusiv|breaker|disjonct|disyunt|disjunt|\bmcb\b", Options)]
    internal static partial Regex FuseWord();

    [GeneratedRegex(@"surge|arrest|parafoudre|parasurt|descarg|descarreg|sobretens|surtos|\bspd\b|\bdps\b|lightning", Options)]
    internal static partial Regex SurgeWord();

    [GeneratedRegex(@"\b(?:life|lifetime|vie|vida|design)\b", Options)]
    private static partial Regex LifeWord();

    [GeneratedRegex(@"warrant|guarant|garant", Options)]
    private static partial Regex WarrantyWord();

    [GeneratedRegex(@"\b(?:spares?|repuestos?|recambios?|rechange|sobressalentes?|reposicao|reserva)\b", Options)]
    private static partial Regex SpareWord();
}

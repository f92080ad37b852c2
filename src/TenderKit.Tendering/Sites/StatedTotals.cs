using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Sites;

/// <summary>Totals the tender states, to be held against the list and the design.</summary>
public sealed record StatedTotals(int? Sites, double? LengthM, int? Poles)
{
    /// <summary>A length that differs by more than this is said, fraction. Common practice, no source.</summary>
    private const double LengthTolerance = 0.01;

    internal static StatedTotals? Read(YamlSection? section)
    {
        if (section is null) return null;
        int? Whole(string key) => section.Has(key) ? section.Whole(key, 0, 10_000_000, 0) : null;
        var read = new StatedTotals(Whole("sites"), section.Has("length_m") ? section.Number("length_m", QuantityKind.Length, 0) : null, Whole("poles"));
        section.ReportUnknownKeys();
        return read;
    }

    /// <summary>Where the list differs. Lengths are those of roads and paths; a total that holds with the yards is right too.</summary>
    /// <param name="rows">Rows of the list, read or not.</param>
    public IEnumerable<Diagnostic> OfList(ImmutableArray<Site> sites, int rows, Place place)
    {
        if (Sites is { } stated && stated != sites.Length)
        {
            yield return rows > sites.Length
                ? Diagnostic.Warning("TK128", FormattableString.Invariant($"the tender states {stated} sites and {sites.Length} were read of {rows} rows; mend the rows that could not be read, or ask the employer"), place)
                : Diagnostic.Warning("TK128", FormattableString.Invariant($"the tender states {stated} sites and the list holds {sites.Length}; ask the employer which holds"), place);
        }

        var (roadsM, allM) = (sites.Where(s => s.Kind != SiteKind.Yard).Sum(s => s.LengthM), sites.Sum(s => s.LengthM));
        if (LengthM is { } lengthM && IsOff(roadsM, lengthM) && IsOff(allM, lengthM))
            yield return Diagnostic.Warning("TK128", FormattableString.Invariant($"the tender states {lengthM:0.#} m and the roads and paths of the list add to {roadsM:0.#} m, a difference of {roadsM - lengthM:+0.#;-0.#} m; ask the employer which holds"), place);
        if (Poles is { } poles && sites.Length > 0 && sites.All(s => s.FixedPoles is not null) && sites.Sum(s => s.FixedPoles!.Value) is var listed && listed != poles)
            yield return Diagnostic.Warning("TK128", FormattableString.Invariant($"the tender states {poles} poles and the list adds to {listed}; ask the employer which holds"), place);
    }

    /// <summary>Where the designed number of poles differs from the one stated.</summary>
    public IEnumerable<Diagnostic> OfDesign(ImmutableArray<Site> sites, int designed)
    {
        if (Poles is not { } poles || poles == designed || sites.All(s => s.FixedPoles is not null)) yield break;
        yield return Diagnostic.Warning("TK128", FormattableString.Invariant($"the tender states {poles} poles and the design has {designed}, a difference of {designed - poles:+0;-0}; ask the employer whether the number or the light class holds"));
    }

    private static bool IsOff(double readM, double statedM) => Math.Abs(readM - statedM) > LengthTolerance * Math.Max(1, statedM);
}

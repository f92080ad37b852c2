using TenderKit.Documents.Drawings;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Light;

/// <summary>What a light distribution says by itself: polar diagram, figures, zones. For one luminaire of a document.</summary>
internal static class PhotometryBlocks
{
    /// <summary>Where the limits behind the two ratings come from, once for all luminaires of a document.</summary>
    public const string Recalled =
        "Intensities between listed angles are taken as linear, and the flux is the integral of that surface. Zones after IES TM-15-11; the limits of the "
        + "backlight, uplight and glare rating (addendum A, tables A-1 to A-3) and those of the luminous intensity classes G*1 to G*6 (EN 13201-2, annex A, "
        + "table A.1) are from memory, to be verified. Both hold for a luminaire mounted level and at full output.";

    public static IEnumerable<Block> Of(string name, LightDistribution distribution, PhotometricAnalysis analysis)
    {
        var picture = new PolarPicture(distribution, analysis);
        yield return new FigureBeside(picture.HeightPt, PolarPicture.WidthPt, picture.Draw, [.. Facts(analysis)],
            $"{name}: intensity for each 1000 lm it gives; C 90 looks to the street side, C 270 to the house side.");
        yield return Zones(name, analysis);
    }

    private static IEnumerable<Row> Facts(PhotometricAnalysis a)
    {
        yield return Row.Of("Flux by integration", Lumens(a.FluxLm));
        yield return Row.Of("Flux stated in the file", a.StatedFluxLm is { } stated ? Lumens(stated) : "none: absolute photometry");
        if (a.LightOutputRatio is { } ratio) yield return Row.Of("Light output ratio", Figures.Percent(ratio, 1));
        yield return Row.Of("Power stated in the file", a.PowerW is { } power ? Figures.Short(power) + " W" : "none");
        if (a.EfficacyLmPerW is { } efficacy) yield return Row.Of("Efficacy", Figures.Number(efficacy, 1) + " lm/W");
        yield return Row.Of("Greatest intensity", $"{Figures.Number(a.PeakIntensityCd, 0)} cd at C {Figures.Short(a.PeakPlaneDegrees)}°, "
            + $"gamma {Figures.Short(a.PeakGammaDegrees)}°");
        yield return Row.Of("Light to the street side", Figures.Percent(a.StreetSideFraction, 1));
        yield return Row.Of("Light above the horizontal", Figures.Percent(a.UpwardFraction, 1));
        yield return Row.Of("Symmetry found", InWords(a.Symmetry));
        yield return Row.Of("Backlight, uplight, glare", a.Rating.ToString());
        yield return Row.Of("At 70°, 80°, 90° and above", Edge(a.CutOff));
        yield return Row.Of("Luminous intensity class", Class(a));
    }

    private static TableBlock Zones(string name, PhotometricAnalysis a)
    {
        var z = a.Zones;
        string Cell(double lm) => $"{Figures.Number(lm, 0)} ({Figures.Percent(z.TotalLm > 0 ? lm / z.TotalLm : 0, 1)})";
        return new TableBlock(
            $"{name}: flux by zone, lm and share of all",
            [
                new("Side", FixedPt: 112), Number("Low", "0 to 30°"), Number("Medium", "30 to 60°"), Number("High", "60 to 80°"), Number("Very high", "80 to 90°"),
            ],
            [
                Row.Of("Street side (forward)", Cell(z.ForwardLowLm), Cell(z.ForwardMediumLm), Cell(z.ForwardHighLm), Cell(z.ForwardVeryHighLm)),
                Row.Of("House side (back)", Cell(z.BackLowLm), Cell(z.BackMediumLm), Cell(z.BackHighLm), Cell(z.BackVeryHighLm)),
                Row.Of("Above the horizontal", "", "", "90 to 100°: " + Cell(z.UplightLowLm), "100 to 180°: " + Cell(z.UplightHighLm)),
            ])
        {
            Compact = true,
            KeepTogether = true,
        };
    }

    private static Column Number(string head, string unit) => new(head, unit, 1, Side.End);

    private static string Lumens(double lm) => Figures.Number(lm, 0) + " lm";

    private static string Class(PhotometricAnalysis a) => a.GlareClass == 0 ? "none of G*1 to G*6" : $"G*{Figures.Number(a.GlareClass, 0)}";

    private static string Edge(CutOffIntensities c) =>
        $"{Figures.Number(c.At70CdPerKlm, 0)}, {Figures.Number(c.At80CdPerKlm, 0)}, {Figures.Number(c.At90CdPerKlm, 0)} cd/klm";

    private static string InWords(DistributionSymmetry symmetry) => symmetry switch
    {
        DistributionSymmetry.None => "none",
        DistributionSymmetry.LeftRight => "equal both ways along the road",
        DistributionSymmetry.StreetHouse => "equal to street and house side",
        DistributionSymmetry.Quadrants => "four equal quadrants",
        DistributionSymmetry.Rotational => "the same all round",
        _ => throw new ArgumentOutOfRangeException(nameof(symmetry), symmetry, null),
    };
}

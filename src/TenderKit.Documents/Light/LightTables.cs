using System.Collections.Immutable;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Light;

/// <summary>The tables of a light sheet: limits, measures, drivers, grid.</summary>
internal static class LightTables
{
    private const int GreatestGridRows = 22;
    private const int GridColumns = 14;

    /// <summary>Every limit of every class: asked for, reached, met.</summary>
    public static TableBlock Limits(ImmutableArray<ClassVerdict> verdicts) => new(
        "Limits of the class, required and reached",
        [
            new("Strip", FixedPt: 74), new("Limit"), new("Required", Side: Side.End, FixedPt: 70), new("Reached", Side: Side.End, FixedPt: 62),
            new("Reached over required", "%", 1, Side.End, 88), new("Met", FixedPt: 32),
        ],
        [.. verdicts.SelectMany(v => v.Checks.Select((c, i) => Limit(v, c, i == 0)))])
    {
        Compact = true,
        KeepTogether = true,
    };

    /// <summary>Every measure worked out for the carriageway, asked for or not.</summary>
    public static TableBlock Measures(LightSheetContent content)
    {
        ImmutableArray<(string Name, string Value)> all = [.. Horizontal(content.Result), .. Road(content.Quality?.Carriageway)];
        var half = (all.Length + 1) / 2;
        return new TableBlock(
            "Light on the carriageway, maintained; glare for new luminaires",
            [new("", Share: 1.6), new("", Side: Side.End, FixedPt: 60), new("", FixedPt: 20), new("", Share: 1.6), new("", Side: Side.End, FixedPt: 60)],
            [.. Enumerable.Range(0, half).Select(i => Row.Of(all[i].Name, all[i].Value, "", i + half < all.Length ? all[i + half].Name : "",
                i + half < all.Length ? all[i + half].Value : ""))])
        {
            Compact = true,
            KeepTogether = true,
        };
    }

    /// <summary>Illuminance of each strip beside the carriageway.</summary>
    public static TableBlock Sidewalks(ImmutableArray<StripQuality> sidewalks) => new(
        "Strips beside the carriageway, maintained",
        [new("Strip"), new("From", "m", 1, Side.End, 44), new("To", "m", 1, Side.End, 44), new("Eav", "lx", 1, Side.End, 50), new("Emin", "lx", 1, Side.End, 50),
            new("Uo", "", 1, Side.End, 44)],
        [.. sidewalks.Select(s => Row.Of(s.Name, Figures.Number(s.NearEdgeM, 2), Figures.Number(s.FarEdgeM, 2), Figures.Number(s.Illuminance.AverageLx, 2),
            Figures.Number(s.Illuminance.MinimumLx, 2), Figures.Number(s.Illuminance.OverallUniformity, 2)))])
    {
        Compact = true,
        KeepTogether = true,
    };

    /// <summary>What the driver of each lane sees.</summary>
    public static TableBlock Drivers(LuminanceResult luminance) => new(
        "Luminance seen by the driver of each lane, maintained, dry surface",
        [new("Lane"), new("Lav", "cd/m²", 1, Side.End, 60), new("Lmin", "cd/m²", 1, Side.End, 60), new("Uo", "", 1, Side.End, 50), new("Ul", "", 1, Side.End, 50)],
        [.. luminance.Observers.Select(o => Row.Of($"{Figures.Number(o.Lane, 0)}{(o.Against ? ", looking back" : "")}", Figures.Number(o.AverageCdM2, 3),
            Figures.Number(o.MinimumCdM2, 3), Figures.Number(o.OverallUniformity, 2), Figures.Number(o.LongitudinalUniformity, 2)))])
    {
        Compact = true,
        KeepTogether = true,
    };

    /// <summary>Illuminance at each point of the grid: rows across the road from the near edge, columns along it; a long bay in parts.</summary>
    public static IEnumerable<Block> Grid(LightResult result)
    {
        var (along, across) = (result.PointsAlong, result.PointsAcross);
        if (along < 1 || across < 1 || result.Points.Length != along * across) yield break;
        var parts = (along + GridColumns - 1) / GridColumns;
        if (parts * across > GreatestGridRows)
        {
            yield return new Paragraph($"The {Figures.Number(result.Points.Length, 0)} values of the grid are too many for this sheet.", TextStyle.Small);
            yield break;
        }

        for (var part = 0; part < parts; part++)
        {
            var first = part * GridColumns;
            yield return GridPart(result, first, Math.Min(GridColumns, along - first));
        }
    }

    private static TableBlock GridPart(LightResult result, int first, int count)
    {
        LightPoint At(int i, int j) => result.Points[(j * result.PointsAlong) + i];
        return new TableBlock(
            "Maintained illuminance at the grid points, lx; places in m along the bay and across from the near edge",
            [new("across \\ along", FixedPt: 54), .. Enumerable.Range(first, count).Select(i => new Column(Figures.Number(At(i, 0).XM, 2), Side: Side.End))],
            [.. Enumerable.Range(0, result.PointsAcross).Select(j => new Row(
                [Figures.Number(At(0, j).YM, 2), .. Enumerable.Range(first, count).Select(i => Figures.Number(At(i, j).IlluminanceLx, 2))]))])
        {
            Compact = true,
            KeepTogether = true,
        };
    }

    private static Row Limit(ClassVerdict verdict, LimitCheck check, bool isFirst) => new(
        [
            isFirst ? $"{verdict.Strip}, {verdict.Class.Name}" : "", check.Limit, (check.Comparison == Comparison.AtLeast ? "≥ " : "≤ ") + Value(check, check.Required),
            Value(check, check.Reached), check.Required > 0 ? Figures.Number(check.Reached / check.Required * 100, 0) : "–", check.Met ? "yes" : "NO",
        ],
        Strong: !check.Met);

    /// <summary>A value that fails must not print as the limit: then it gets one decimal more.</summary>
    private static string Value(LimitCheck check, double value)
    {
        var decimals = check.Unit == "%" ? 1 : 2;
        if (!check.Met && Figures.Number(check.Required, decimals) == Figures.Number(check.Reached, decimals)) decimals += 2;
        var number = Figures.Number(value, decimals);
        return check.Unit.Length == 0 ? number : number + " " + Words.Unit(check.Unit);
    }

    private static IEnumerable<(string Name, string Value)> Horizontal(LightResult r)
    {
        yield return ("Average illuminance Eav", Lux(r.AverageLx));
        yield return ("Minimum illuminance Emin", Lux(r.MinimumLx));
        yield return ("Maximum illuminance Emax", Lux(r.MaximumLx));
        yield return ("Overall uniformity Uo, Emin over Eav", Figures.Number(r.OverallUniformity, 2));
    }

    private static IEnumerable<(string Name, string Value)> Road(StripQuality? road)
    {
        if (road is null) yield break;
        if (road.Luminance is { } luminance)
        {
            yield return ("Average luminance Lav, worst driver", Figures.Number(luminance.AverageCdM2, 2) + " cd/m²");
            yield return ("Overall uniformity Uo of the luminance", Figures.Number(luminance.OverallUniformity, 2));
            yield return ("Longitudinal uniformity Ul", Figures.Number(luminance.LongitudinalUniformity, 2));
        }

        if (road.Glare is { } glare) yield return ("Threshold increment fTI", Figures.Percent(glare.IncrementFraction, 1));
        if (road.EdgeRatio is { } edge) yield return ("Edge illuminance ratio, worse side", Figures.Number(edge, 2));
        yield return ("Minimum vertical illuminance, 1.5 m up", Lux(road.Spatial.MinimumVerticalLx));
        yield return ("Minimum semicylindrical illuminance, 1.5 m up", Lux(road.Spatial.MinimumSemicylindricalLx));
        yield return ("Average hemispherical illuminance", Lux(road.Spatial.AverageHemisphericalLx));
    }

    private static string Lux(double lx) => Figures.Number(lx, 2) + " lx";
}

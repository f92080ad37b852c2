using System.Collections.Immutable;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Regions;

/// <summary>The places of a region as sites: those named, and those a box is sampled at.</summary>
public static class RegionSites
{
    /// <summary>Climate of a place that names none.</summary>
    private const string Estimate = "estimate";

    /// <summary>Length a spacing is found on where only a number of poles is asked for, m.</summary>
    private const double TrialLengthM = 1000;

    private const double KmPerDegree = 111.2;
    private const int MostSteps = 12;

    /// <summary>One site a place, each with the whole quantity.</summary>
    /// <param name="stations">Built-in reference table; its stations inside a box are sampled too, for there the estimate is best.</param>
    public static ImmutableArray<Site> Of(RegionAsk region, SiteDefaults defaults, IReadOnlyList<ReferenceStation> stations)
    {
        if (defaults.Target is not { } target) return [];
        var places = region.Places.AddRange(region.Box is { } box ? Sampled(box, stations) : []);
        var lengthM = region.LengthM ?? (region is { Poles: { } poles, SpacingM: { } spacing } ? poles * spacing / (defaults.Arrangement == Arrangement.SingleSided ? 1.0 : 2.0) : TrialLengthM);
        return [.. places.Select((p, i) => new Site(
            FormattableString.Invariant($"R{i + 1}"), p.Name, i + 1, p.Point.LatitudeDegrees, p.Point.LongitudeDegrees, region.Kind, lengthM, defaults.WidthM, target,
            defaults.Schedules[defaults.ScheduleName], region.SpacingM is null ? null : region.Poles, defaults.Arrangement, defaults.ShadedFraction, defaults.MountingHeightsM,
            defaults.BasicWindMPerS, defaults.Terrain, defaults.Soil, defaults.SoilStated, "", p.Climate ?? Estimate, "")
        { Ground = defaults.Ground, IsPositionStated = false })];
    }

    private static IEnumerable<RegionPlace> Sampled(RegionBox box, IReadOnlyList<ReferenceStation> stations)
    {
        var narrowest = Math.Cos(Math.Min(Math.Abs(box.SouthDegrees), Math.Abs(box.NorthDegrees)) * Math.PI / 180);
        foreach (var latitude in Ends(box.SouthDegrees, box.NorthDegrees, box.StepKm / KmPerDegree))
        {
            foreach (var longitude in Ends(box.WestDegrees, box.EastDegrees, box.StepKm / (KmPerDegree * narrowest)))
                yield return new(Words(latitude, longitude), new GeoPoint(latitude, longitude), null);
        }

        var inside = stations.Where(s => s.LatitudeDegrees >= box.SouthDegrees && s.LatitudeDegrees <= box.NorthDegrees && s.LongitudeDegrees >= box.WestDegrees && s.LongitudeDegrees <= box.EastDegrees);
        foreach (var at in inside.Select(s => new GeoPoint(s.LatitudeDegrees, s.LongitudeDegrees)).Distinct().OrderBy(p => p.LatitudeDegrees).ThenBy(p => p.LongitudeDegrees).Take(MostSteps * MostSteps))
            yield return new("station at " + Words(at.LatitudeDegrees, at.LongitudeDegrees), at, null);
    }

    private static IEnumerable<double> Ends(double low, double high, double stepDegrees)
    {
        if (high - low < 1e-6) return [low];
        var steps = Math.Clamp((int)Math.Ceiling(((high - low) / stepDegrees) - 1e-9), 1, MostSteps);
        return Enumerable.Range(0, steps + 1).Select(i => Math.Round(low + (i * (high - low) / steps), 4));
    }

    private static string Words(double latitude, double longitude) =>
        FormattableString.Invariant($"{Math.Abs(latitude):0.##} {(latitude < 0 ? "S" : "N")} {Math.Abs(longitude):0.##} {(longitude < 0 ? "W" : "E")}");
}

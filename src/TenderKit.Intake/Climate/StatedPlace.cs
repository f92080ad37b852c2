using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Place and clock a climate file states about itself.</summary>
internal sealed record StatedPlace(double LatitudeDegrees, double LongitudeDegrees, double UtcOffsetH)
{
    /// <summary>The place, or null with an error where a value is missing or impossible.</summary>
    public static StatedPlace? Of(ClimateText text, int? line, string latitude, string longitude, string utcOffset)
    {
        var lat = Value("latitude", latitude, 90);
        var lon = Value("longitude", longitude, 180);
        var offset = Value("offset from universal time", utcOffset, 14);
        return lat is { } a && lon is { } b && offset is { } c ? new StatedPlace(a, b, c) : null;

        double? Value(string name, string cell, double limit)
        {
            if (ClimateText.Number(cell) is { } value && Math.Abs(value) <= limit) return value;
            text.Head(FormattableString.Invariant($"the {name} '{cell.Trim()}' is not a number within -{limit} to {limit}; get the file again from its source"), line);
            return null;
        }
    }

    /// <summary>A warning where the file speaks of another place than the site.</summary>
    public static void Compare(MonthlyClimate climate, string file, double? latitude, double? longitude, ClimateLimits limits, List<Diagnostic> found)
    {
        if (latitude is not { } lat || longitude is not { } lon) return;
        var km = GreatCircle.DistanceKm(lat, lon, climate.LatitudeDegrees, climate.LongitudeDegrees);
        if (km <= limits.FarKm) return;
        found.Add(Diagnostic.Warning(
            "TK147",
            string.Create(
                CultureInfo.InvariantCulture,
                $"the file is for {climate.LatitudeDegrees:0.00}, {climate.LongitudeDegrees:0.00}, {km:0} km from the site at "
                + $"{lat:0.00}, {lon:0.00}; limit {limits.FarKm:0} km. Get the file of the site, or check both positions"),
            new Place(file)));
    }
}

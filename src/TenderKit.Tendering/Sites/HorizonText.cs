using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Sizing.Climate;

namespace TenderKit.Tendering.Sites;

/// <summary>
/// A skyline as users write it: pairs of azimuth and elevation in degrees, such as <c>0:5 90:12 180:0 270:20</c> or <c>N:5 E:12 S:0 W:20</c>;
/// azimuth clockwise from north.
/// </summary>
public static partial class HorizonText
{
    /// <summary>Steepest skyline taken, degrees: above it a module is in a pit and the figure is surely a slip.</summary>
    private const double GreatestElevationDegrees = 80;

    private const string Cure = "write pairs of azimuth and elevation in degrees, such as 0:5 90:12 180:0 270:20";

    private static readonly string[] Winds = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];

    /// <summary>The profile, or null with what is wrong.</summary>
    public static (HorizonProfile? Profile, string? Problem) Read(string text)
    {
        var pairs = Pair().Matches(text);
        if (pairs.Count == 0 || Pair().Replace(text, "").Trim(' ', ';', ',', '/', '\t').Any(c => !char.IsWhiteSpace(c) && c is not (';' or ',' or '/')))
            return (null, "is no skyline; " + Cure);
        return Of([.. pairs.Select(p => (AzimuthOf(p.Groups["a"].Value), Number(p.Groups["e"].Value)))]);
    }

    /// <summary>The profile of points in any order, or null with what is wrong.</summary>
    public static (HorizonProfile? Profile, string? Problem) Of(IReadOnlyList<(double AzimuthDegrees, double ElevationDegrees)> points)
    {
        if (points.FirstOrDefault(p => p.AzimuthDegrees is not (>= 0 and <= 360), (0, 0)) is { AzimuthDegrees: not 0 } turned)
            return (null, FormattableString.Invariant($"has the azimuth {turned.AzimuthDegrees:0.##}; 0 to 360 degrees clockwise from north are possible"));
        if (points.FirstOrDefault(p => p.ElevationDegrees is not (>= 0 and <= GreatestElevationDegrees), (0, 0)) is { ElevationDegrees: not 0 } steep)
            return (null, FormattableString.Invariant($"has the elevation {steep.ElevationDegrees:0.##}; 0 to {GreatestElevationDegrees:0} degrees are possible"));
        var sorted = points.Select(p => (AzimuthDegrees: p.AzimuthDegrees % 360, p.ElevationDegrees)).Distinct().OrderBy(p => p.AzimuthDegrees).ToImmutableArray();
        if (sorted.Select(p => p.AzimuthDegrees).Distinct().Count() < sorted.Length) return (null, "gives one azimuth two elevations; keep one");
        return sorted.Length < 2 ? (null, "needs at least two directions; " + Cure) : (new HorizonProfile(sorted), null);
    }

    /// <summary>The profile as it is printed.</summary>
    public static string Of(HorizonProfile profile) =>
        string.Join(" ", profile.Points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.AzimuthDegrees:0.#}:{p.ElevationDegrees:0.#}")));

    private static double AzimuthOf(string text) => Array.IndexOf(Winds, text.ToUpperInvariant()) is var w and >= 0 ? w * 45 : Number(text);

    private static double Number(string text) => double.Parse(text.Replace(',', '.'), CultureInfo.InvariantCulture);

    // a comma inside the elevation is a decimal comma unless the next pair begins behind it
    [GeneratedRegex(@"(?<![\w.])(?<a>-?\d+(?:\.\d+)?|[NS][EW]?|[EW])\s*°?\s*[:=]\s*(?<e>-?\d+(?:\.\d+|,\d+(?!\d|\s*°?\s*[:=]))?)\s*°?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pair();
}

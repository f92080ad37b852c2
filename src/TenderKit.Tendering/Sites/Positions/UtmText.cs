using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Numbers;

namespace TenderKit.Tendering.Sites.Positions;

/// <summary>A UTM zone as written: 36, 36S, 36M, zone 36 south.</summary>
/// <param name="Letter">N or S for the hemisphere, or the letter of the band; null when none was written.</param>
public readonly record struct UtmZone(int Number, char? Letter);

/// <summary>A grid position turned into degrees, or why not.</summary>
/// <param name="Note">What was assumed, or null.</param>
public readonly record struct UtmReading(GeoPoint? Point, string? Note, string? Problem);

/// <summary>Reads UTM zones and grid positions.</summary>
public static partial class UtmText
{
    private const double GreatestNorthingNorthM = 9_328_094; // 84 degrees north, the end of the grid

    /// <summary>The zone in a cell of its own.</summary>
    public static UtmZone? Zone(string text) => Match(Own().Match(text.Trim()));

    /// <summary>The zone named somewhere in a heading or title such as "Easting (UTM 36S)".</summary>
    public static UtmZone? ZoneWithin(string text) => Match(Within().Match(text));

    /// <summary>A position in one cell: 36M 254321 9867123.</summary>
    public static UtmReading? OneCell(string text)
    {
        var match = Grid().Match(text.Trim());
        if (!match.Success || Match(match) is not { } zone) return null;
        double Of(string group) => double.Parse(match.Groups[group].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
        return Read(zone, Of("e"), Of("n"));
    }

    /// <summary>Degrees of a grid position.</summary>
    /// <remarks>
    /// The letter S is the southern hemisphere or the northern band of 32 to 40 degrees: northings of that band (3.54 to 4.43 million
    /// metres) would in the south be open sea, so they decide. Without a letter the northing decides beyond 9.33 million metres, which the north does not reach.
    /// </remarks>
    public static UtmReading Read(UtmZone zone, double eastingM, double northingM)
    {
        if (eastingM is < 100_000 or > 900_000) return new(null, null, Say($"easting {eastingM:0.##} m lies outside 100 000 to 900 000 m of a zone; correct it"));
        if (northingM is < 0 or > 10_000_000) return new(null, null, Say($"northing {northingM:0.##} m lies outside 0 to 10 000 000 m; correct it"));
        var isBandS = northingM is > 3_540_000 and < 4_430_000;
        var (isSouth, note) = zone.Letter switch
        {
            'S' => (!isBandS, (string?)null),
            >= 'C' and < 'N' => (true, null),
            not null => (false, null),
            null when northingM > GreatestNorthingNorthM => (true, "the zone has no letter; the northing is of the south"),
            null => (false, "the zone has no letter; the north was taken: write 36N or 36S"),
        };
        if (!isSouth && northingM > GreatestNorthingNorthM) return new(null, null, Say($"northing {northingM:0} m lies beyond 84 degrees north; correct it or the letter of the zone"));
        return new(Utm.ToDegrees(zone.Number, isSouth, eastingM, northingM), note, null);
    }

    private static UtmZone? Match(Match match)
    {
        if (!match.Success || int.Parse(match.Groups["z"].Value, CultureInfo.InvariantCulture) is not (>= 1 and <= 60 and var number)) return null;
        var word = Spelling.Folded(match.Groups["b"].Value);
        return new(number, word switch
        {
            "" => null,
            "north" or "nord" or "norte" => 'N',
            "south" or "sud" or "sur" or "sul" => 'S',
            _ => char.ToUpperInvariant(word[0]),
        });
    }

    private static string Say(FormattableString text) => FormattableString.Invariant(text);

    private const string Band = @"(?<b>north|nord|norte|south|sud|sur|sul|[C-HJ-NP-X])";

    [GeneratedRegex(@"^(?:utm\s*)?(?:zone|zona|fuseau|huso|fuso)?\s*(?<z>\d{1,2})\s*-?\s*" + Band + "?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Own();

    [GeneratedRegex(@"(?:utm|zone|zona|fuseau|huso|fuso)(?:\s*(?:utm|wgs\s*-?84|zone|zona|fuseau|huso|fuso|/|,|:|-))*\s*(?<z>\d{1,2})\s*-?\s*" + Band + @"?\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Within();

    [GeneratedRegex(@"^(?:utm\s*)?(?:zone\s*)?(?<z>\d{1,2})\s*" + Band + @"?[\s,;:]+(?:E\s*=?\s*)?(?<e>\d{6}(?:[.,]\d+)?)\s*(?:m?\s*E)?[\s,;/]+(?:N\s*=?\s*)?(?<n>\d{5,8}(?:[.,]\d+)?)\s*(?:m?\s*N)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Grid();
}

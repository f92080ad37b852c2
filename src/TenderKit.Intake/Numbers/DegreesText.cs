using System.Globalization;
using System.Text.RegularExpressions;

namespace TenderKit.Intake.Numbers;

/// <summary>Latitude and longitude: decimal degrees, or degrees, minutes and seconds, with the hemisphere before or after.</summary>
internal static partial class DegreesText
{
    private const string Hemispheres = "north|nord|norte|south|sud|sur|sul|east|este|est|leste|west|ouest|oeste|[nsewo]";

    private const string HowTo = "write decimal degrees such as 14.2508 or -4.25, or 14\u00B015'03\" N";

    public static NumberReading Read(string plain)
    {
        var match = Pattern().Match(DottedParts().Replace(plain, "${d} ${m} ${s}"));
        if (!match.Success) return NumberReading.Failed("is not an angle; " + HowTo);
        var hemisphere = Hemisphere(match.Groups["h1"].Value + match.Groups["h2"].Value);
        if (match.Groups["h1"].Success && match.Groups["h2"].Success) return NumberReading.Failed("names a hemisphere twice; " + HowTo);
        var (degrees, minutes, seconds) = (Part(match, "d"), Part(match, "m"), Part(match, "s"));
        if (minutes is >= 60 || seconds is >= 60) return NumberReading.Failed("has 60 or more minutes or seconds; " + HowTo);
        if ((minutes is not null && degrees % 1 != 0) || (seconds is not null && minutes % 1 != 0))
            return NumberReading.Failed("has decimals before its last part; " + HowTo);
        var size = degrees!.Value + (minutes ?? 0) / 60 + (seconds ?? 0) / 3600;
        var negative = match.Groups["sign"].Value == "-";
        if (negative && hemisphere is 'N' or 'E')
            return NumberReading.Failed("has both a minus sign and a northern or eastern hemisphere; leave one out");
        var value = negative || hemisphere is 'S' or 'W' ? -size : size;
        return new(value, value.ToString("0.######", CultureInfo.InvariantCulture) + " degrees", Hemisphere: hemisphere);
    }

    private static double? Part(Match match, string group) => match.Groups[group] is { Success: true } g
        ? double.Parse(g.Value.Replace(',', '.'), CultureInfo.InvariantCulture)
        : null;

    private static char? Hemisphere(string word) => Spelling.Folded(word) switch
    {
        "" => null,
        "n" or "north" or "nord" or "norte" => 'N',
        "s" or "south" or "sud" or "sur" or "sul" => 'S',
        "e" or "east" or "est" or "este" or "leste" => 'E',
        _ => 'W', // W, West, and O of Ouest and Oeste
    };

    // a bare "s" is seconds only before a hemisphere: 14 30 15S would lose its own; *, ? and the like are what is left of a degree
    // sign after a wrong code page
    private const string DegreeSign = @"(?:[\u00B0*?\u00A1\uFFFD~]|o(?=\s*\d)|degrees|deg|d|:)";
    private const string MinuteSign = @"(?:''|['?\uFFFD]|minutes|min|m|:)";
    private const string SecondSign = @"(?:""|''|['?\uFFFD]|seconds|secs|sec|s(?=\s*[nsewo]))";

    [GeneratedRegex(
        "^(?:(?<h1>" + Hemispheres + @")\s*)?(?<sign>[+-])?\s*(?<d>\d{1,3}(?:[.,]\d+)?)\s*" + DegreeSign + @"?\s*"
        + @"(?:(?<![\d.,])(?<m>\d{1,2}(?:[.,]\d+)?)\s*" + MinuteSign + @"?\s*"
        + @"(?:(?<![\d.,])(?<s>\d{1,2}(?:[.,]\d+)?)\s*" + SecondSign + @"?\s*)?)?"
        + "(?<h2>" + Hemispheres + @")?\.?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();

    // 14.15.03 N: two points make three parts
    [GeneratedRegex(@"(?<![\d.])(?<d>\d{1,3})\.(?<m>\d{1,2})\.(?<s>\d{1,2}(?:[.,]\d+)?)(?![\d.])", RegexOptions.CultureInvariant)]
    private static partial Regex DottedParts();
}

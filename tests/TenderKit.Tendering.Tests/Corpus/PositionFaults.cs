using static System.FormattableString;
using static TenderKit.Tendering.Tests.Corpus.CorpusFile;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>The many ways to write where a site is.</summary>
internal static class PositionFaults
{
    private const string Head = "No,Name,Latitude,Longitude,Type,Length (m),Width (m)\n";

    /// <summary>The six positions in zone 30 of UTM (recomputed with PROJ 9.1.1).</summary>
    private static readonly (double EastingM, double NorthingM)[] Grid =
    [
        (365020.2689, 1575826.6758), (365269.7938, 1576079.7702), (364635.8426, 1576569.9268), (364059.2797, 1575699.1119), (365835.6339, 1576972.7906), (364315.3617, 1575166.7310),
    ];

    public static IEnumerable<CorpusFile> All()
    {
        yield return Angles("40-dms", "degrees, minutes and seconds with curly marks", (v, h) => Dms(v, "\u00B0", "\u2019", "\u201D") + h);
        yield return Angles("41-dms-bare", "degrees, minutes and seconds without marks", (v, h) => Dms(v, " ", " ", " ") + h);
        yield return Angles("42-dms-dots", "degrees, minutes and seconds apart by points", (v, h) => Dms(v, ".", ".", "").Replace(" ", "", StringComparison.Ordinal) + h);
        yield return Angles("43-broken-degree-signs", "degree signs lost in a wrong code page", (v, h) => Dms(v, "?", "'", "''") + h);
        yield return Angles("44-degrees-minutes", "degrees and decimal minutes, hemisphere before", (v, h) => Invariant($"{h} {Math.Floor(Math.Abs(v))}\u00BA {(Math.Abs(v) - Math.Floor(Math.Abs(v))) * 60:0.00000}'"));
        yield return Csv("45-three-columns", "degrees, minutes, seconds and hemisphere in columns of their own", "No,Name,Lat deg,Lat min,Lat sec,N/S,Long deg,Long min,Long sec,E/W,Type,Length (m),Width (m)\n" + PlainList.Lines(s => $"{s.Id},{s.Name},{Parts(s.Latitude)},N,{Parts(s.Longitude)},W,{s.Kind},{s.LengthM},{s.WidthM}"));
        yield return Csv("46-one-sign-missing", "one longitude without its minus sign", PlainList.Csv.Replace("-4.2548", "4.2548", StringComparison.Ordinal));
        yield return Csv("47-one-exchanged", "latitude and longitude exchanged in one row", PlainList.Csv.Replace("14.2612,-4.2437", "-4.2437,14.2612", StringComparison.Ordinal));
        yield return Csv("48-exchanged-letters", "exchanged, as the letters say", Head + PlainList.Lines(s => $"{s.Id},{s.Name},{-s.Longitude} W,{s.Latitude} N,{s.Kind},{s.LengthM},{s.WidthM}"));
        yield return Csv("49-missing-position", "a site without position", PlainList.Csv.Replace("14.2612,-4.2437", ",", StringComparison.Ordinal), false);
        yield return Csv("50-far-off", "a position far from all others that no exchange explains", PlainList.Csv.Replace("14.2612,-4.2437", "18.9,3.1", StringComparison.Ordinal), false);
        yield return Csv("51-one-cell", "both angles in one cell, in four manners", "No,GPS coordinates,Type,Length (m)\nS1,\"14.2508, -4.2512\",road,250\nS2,14.2531 N 4.2489 W,road,180\nS3,N 14\u00B015'27\" W 4\u00B015'17.28\",road,124\nS4,Lat: 14.2496; Long: -4.2601,road,60\n", false);
        yield return Csv("52-utm", "easting, northing and zone", "No,Name,Easting,Northing,Zone,Type,Length (m),Width (m)\n" + Lines((s, i) => Invariant($"{s.Id},{s.Name},{Grid[i].EastingM},{Grid[i].NorthingM},30P,{s.Kind},{s.LengthM},{s.WidthM}")));
        yield return Csv("53-utm-title", "grid positions under X and Y, the zone in the title", "Coordinates in UTM WGS84 zone 30 N,,,,,,\n\nNo,Name,X,Y,Type,Length (m),Width (m)\n" + Lines((s, i) => Invariant($"{s.Id},{s.Name},{Grid[i].EastingM},{Grid[i].NorthingM},{s.Kind},{s.LengthM},{s.WidthM}")));
        yield return Csv("54-utm-one-cell", "grid positions in one cell", "No,Name,Coordinates,Type,Length (m),Width (m)\n" + Lines((s, i) => Invariant($"{s.Id},{s.Name},30N {Grid[i].EastingM} {Grid[i].NorthingM},{s.Kind},{s.LengthM},{s.WidthM}")));
        yield return Csv("55-utm-no-zone", "grid positions without a zone", "No,Easting,Northing,Type,Length (m)\nS1,365020,1575826,road,250\n", false);
        yield return Csv("56-zero-zero", "a position of zero and zero", PlainList.Csv.Replace("14.2612,-4.2437", "0,0", StringComparison.Ordinal), false);
        yield return Csv("57-twice", "one site twice under two numbers", PlainList.Csv + "S7,Market  Road,14.2509,-4.2513,road,250,6\n", false);
    }

    private static CorpusFile Angles(string name, string fault, Func<double, string, string> write, bool same = true) =>
        Csv(name, fault, Head.Replace(',', ';') + PlainList.Lines(s => $"{s.Id};{s.Name};{write(s.Latitude, "N")};{write(s.Longitude, "W")};{s.Kind};{s.LengthM};{s.WidthM}"), same);

    private static string Dms(double value, string d, string m, string s)
    {
        var seconds = Math.Round(Math.Abs(value) * 3600, 2);
        return Invariant($"{Math.Floor(seconds / 3600)}{d}{Math.Floor(seconds % 3600 / 60):00}{m}{seconds % 60:00.##}{s}").TrimEnd() + " ";
    }

    private static string Parts(double value)
    {
        var seconds = Math.Round(Math.Abs(value) * 3600, 2);
        return Invariant($"{Math.Floor(seconds / 3600)},{Math.Floor(seconds % 3600 / 60)},{seconds % 60:0.##}");
    }

    private static string Lines(Func<(string Id, string Name, double Latitude, double Longitude, string Kind, double LengthM, double WidthM), int, string> line) =>
        string.Concat(PlainList.Sites.Select((s, i) => line(s, i) + "\n"));
}

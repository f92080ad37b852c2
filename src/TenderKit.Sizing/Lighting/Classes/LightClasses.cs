using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace TenderKit.Sizing.Lighting;

/// <summary>Named classes of published standards that are stated in horizontal illuminance.</summary>
public static partial class LightClasses
{
    /// <summary>P (and S) classes: the maintained average may not pass 1.5 times the class value (EN 13201-2:2015, table 3, note; from memory).</summary>
    private const double CeilingOfPClasses = 1.5;

    private const string ConflictTable = "EN 13201-2:2015, table 2";
    private const string PedestrianTable = "EN 13201-2:2015, table 3";
    private const string EarlierEdition = "EN 13201-2:2003, superseded (from memory)";
    private const string OutdoorWork = "EN 12464-2, traffic zones and parking areas (from memory)";
    private const string IndianCode = "IS 1944 (parts 1 and 2)";
    private const string AmericanPractice = "RP-8, illuminance method, R2/R3 pavement (from memory)";

    private static readonly ImmutableArray<LightTarget> All =
    [
        C("C0", 50), C("C1", 30), C("C2", 20), C("C3", 15), C("C4", 10), C("C5", 7.5),
        P("P1", 15, 3), P("P2", 10, 2), P("P3", 7.5, 1.5), P("P4", 5, 1), P("P5", 3, 0.6), P("P6", 2, 0.4),
        Earlier("CE0", 50), Earlier("CE1", 30), Earlier("CE2", 20), Earlier("CE3", 15), Earlier("CE4", 10), Earlier("CE5", 7.5),
        Earlier("S1", 15, 5), Earlier("S2", 10, 3), Earlier("S3", 7.5, 1.5), Earlier("S4", 5, 1), Earlier("S5", 3, 0.6), Earlier("S6", 2, 0.6),
        Work("walkway", 5, 0.25), Work("slow traffic", 10, 0.40), Work("normal traffic", 20, 0.40), Work("loading point", 50, 0.40),
        Work("parking light", 5, 0.25), Work("parking medium", 10, 0.25), Work("parking heavy", 20, 0.25),
        Indian("A1", 30, 0.4, ""), Indian("A2", 15, 0.4, " (from memory)"), Indian("B1", 8, 0.3, " (from memory)"), Indian("B2", 4, 0.3, " (from memory)"),
        American("major high", 17, 3), American("major medium", 13, 3), American("major low", 9, 3),
        American("collector high", 12, 4), American("collector medium", 9, 4), American("collector low", 6, 4),
        American("local high", 9, 6), American("local medium", 7, 6), American("local low", 4, 6),
    ];

    /// <summary>Names known, in the order of their standards.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(t => t.Name)];

    /// <summary>
    /// The target of a class such as P4 or C3, or null when the name is not known. Case, spaces, the word "class" and the number of the
    /// standard beside it do not matter, but a standard that is named must be the one the class is of. Luminance classes give null: see
    /// <see cref="IsLuminanceClass"/>. P7 asks for nothing and gives null.
    /// </summary>
    public static LightTarget? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return All.FirstOrDefault(t => IsWritten(name, t.Name, t.Source));
    }

    /// <summary>Whether the name is a luminance class of EN 13201-2 (M1 to M6, formerly ME and MEW), which no illuminance can stand for.</summary>
    public static bool IsLuminanceClass(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return LuminanceClass().IsMatch(Plain(name));
    }

    /// <summary>Whether a name as written means a class of that name and source.</summary>
    internal static bool IsWritten(string written, string name, string source)
    {
        var standard = Squeezed(StandardNumber().Match(written).Groups["number"].Value);
        return Squeezed(name) == Plain(written) && Squeezed(source).Contains(standard, StringComparison.Ordinal);
    }

    private static string Plain(string name) => Squeezed(FillerWords().Replace(StandardNumber().Replace(name, " "), " "));

    private static string Squeezed(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    [GeneratedRegex(@"\b([A-Z]{2,4}[\s/-]*)?((EN|IS|IES)[\s-]*)?(?<number>13201|12464|1944|RP-?\s?8)\b([\s-]+\d{1,2}\b)?(:\s?\d{4})?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex StandardNumber();

    [GeneratedRegex(@"\b(lighting|class|as per|according to|per|to)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FillerWords();

    [GeneratedRegex("^(M|ME|MEW)[1-6][ABC]?$", RegexOptions.CultureInvariant)]
    private static partial Regex LuminanceClass();

    private static LightTarget C(string name, double averageLx) => new(name, averageLx, null, 0.40, null, ConflictTable);

    private static LightTarget P(string name, double averageLx, double minimumLx) =>
        new(name, averageLx, minimumLx, null, CeilingOfPClasses * averageLx, PedestrianTable);

    private static LightTarget Earlier(string name, double averageLx) => new(name, averageLx, null, 0.40, null, EarlierEdition);

    private static LightTarget Earlier(string name, double averageLx, double minimumLx) =>
        new(name, averageLx, minimumLx, null, CeilingOfPClasses * averageLx, EarlierEdition);

    private static LightTarget Work(string name, double averageLx, double uniformity) => new(name, averageLx, null, uniformity, null, OutdoorWork);

    private static LightTarget Indian(string name, double averageLx, double uniformity, string status) =>
        new(name, averageLx, null, uniformity, null, IndianCode + status);

    private static LightTarget American(string name, double averageLx, double averageToMinimum) =>
        new(name, averageLx, null, 1 / averageToMinimum, null, AmericanPractice);
}

using System.Collections.Immutable;

namespace TenderKit.Sizing.Lighting;

/// <summary>Named classes of published standards that are stated in horizontal illuminance.</summary>
public static class LightClasses
{
    /// <summary>P classes: the maintained average may not pass 1.5 times the class value (EN 13201-2:2015, table 3, note; from memory).</summary>
    private const double CeilingOfPClasses = 1.5;

    private const string ConflictTable = "EN 13201-2:2015, table 2";
    private const string PedestrianTable = "EN 13201-2:2015, table 3";
    private const string OutdoorWork = "EN 12464-2, table of traffic zones and parking areas (from memory)";
    private const string IndianCode = "IS 1944 (parts 1 and 2)";
    private const string AmericanPractice = "IES RP-8, illuminance method, R2/R3 pavement (from memory)";

    private static readonly ImmutableArray<LightTarget> All =
    [
        C("C0", 50), C("C1", 30), C("C2", 20), C("C3", 15), C("C4", 10), C("C5", 7.5),
        P("P1", 15, 3), P("P2", 10, 2), P("P3", 7.5, 1.5), P("P4", 5, 1), P("P5", 3, 0.6), P("P6", 2, 0.4),
        Work("walkway", 5, 0.25), Work("slow traffic", 10, 0.40), Work("normal traffic", 20, 0.40), Work("loading point", 50, 0.40),
        Work("parking light", 5, 0.25), Work("parking medium", 10, 0.25), Work("parking heavy", 20, 0.25),
        Indian("A1", 30, 0.4, ""), Indian("A2", 15, 0.4, " (from memory)"), Indian("B1", 8, 0.3, " (from memory)"), Indian("B2", 4, 0.3, " (from memory)"),
        American("major high", 17, 3), American("major medium", 13, 3), American("major low", 9, 3),
        American("collector high", 12, 4), American("collector medium", 9, 4), American("collector low", 6, 4),
        American("local high", 9, 6), American("local medium", 7, 6), American("local low", 4, 6),
    ];

    private static readonly ImmutableArray<string> Prefixes = ["class", "EN 13201-2", "EN 13201", "EN 12464-2", "IS 1944", "IES RP-8", "RP-8"];

    /// <summary>Names known, in the order of their standards.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(t => t.Name)];

    /// <summary>
    /// The target of a class such as P4 or C3, or null when the name is not known. Case, spaces and a leading "class" or standard number
    /// do not matter. Luminance classes (M1 to M6) give null: see <see cref="IsLuminanceClass"/>. P7 asks for nothing and gives null.
    /// </summary>
    public static LightTarget? Find(string name)
    {
        var plain = Plain(name);
        return All.FirstOrDefault(t => Squeezed(t.Name) == plain);
    }

    /// <summary>Whether the name is a luminance class of EN 13201-2 (M1 to M6), which no illuminance can stand for.</summary>
    public static bool IsLuminanceClass(string name) => Plain(name) is ['M', >= '1' and <= '6'];

    private static string Plain(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var rest = Squeezed(name);
        for (var again = true; again;)
        {
            var prefix = Prefixes.Select(Squeezed).FirstOrDefault(p => rest.StartsWith(p, StringComparison.Ordinal) && rest.Length > p.Length);
            again = prefix is not null;
            if (prefix is not null) rest = rest[prefix.Length..];
        }

        return rest;
    }

    private static string Squeezed(string text) =>
        string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static LightTarget C(string name, double averageLx) => new(name, averageLx, null, 0.40, null, ConflictTable);

    private static LightTarget P(string name, double averageLx, double minimumLx) =>
        new(name, averageLx, minimumLx, null, CeilingOfPClasses * averageLx, PedestrianTable);

    private static LightTarget Work(string name, double averageLx, double uniformity) => new(name, averageLx, null, uniformity, null, OutdoorWork);

    private static LightTarget Indian(string name, double averageLx, double uniformity, string status) =>
        new(name, averageLx, null, uniformity, null, IndianCode + status);

    private static LightTarget American(string name, double averageLx, double averageToMinimum) =>
        new(name, averageLx, null, 1 / averageToMinimum, null, AmericanPractice);
}

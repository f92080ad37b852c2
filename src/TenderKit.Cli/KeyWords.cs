using System.Text.RegularExpressions;

namespace TenderKit.Cli;

/// <summary>Turns a key of our JSON into words for people: <c>averageLx</c> is "average, lx".</summary>
public static partial class KeyWords
{
    private static readonly (string Ending, string Unit)[] Units =
    [
        ("CdPerM2", "cd/m2"), ("LmPerW", "lm/W"), ("Degrees", "degrees"), ("Fraction", "fraction"), ("Lx", "lx"), ("Lm", "lm"), ("Cd", "cd"), ("W", "W"),
        ("MPerS", "m/s"), ("KPaPerM", "kPa/m"), ("MPa", "MPa"), ("Pa", "Pa"), ("Nm", "Nm"), ("N", "N"), ("Ohm", "Ohm"), ("A", "A"), ("V", "V"), ("C", "degC"),
        ("M", "m"),
    ];

    public static string Of(string key)
    {
        foreach (var (ending, unit) in Units)
        {
            if (key.Length > ending.Length && key.EndsWith(ending, StringComparison.Ordinal) && char.IsLower(key[^(ending.Length + 1)]))
                return $"{Split(key[..^ending.Length])}, {unit}";
        }

        return Split(key);
    }

    private static string Split(string key) => Capital().Replace(key, m => " " + m.Value.ToLowerInvariant());

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Capital();
}

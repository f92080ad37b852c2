using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Words for the chemistry of a battery.</summary>
internal static partial class Chemistry
{
    /// <summary>A battery no sizing rule here is made for, such as lithium nickel manganese cobalt.</summary>
    public const string OtherLithium = "LithiumOther";

    public static (string Name, int At, int Length, double Confidence)? Find(string folded)
    {
        (Regex Pattern, string Name, double Confidence)[] all =
        [
            (IronPhosphate(), "LithiumIronPhosphate", 1), (Ternary(), OtherLithium, 1), (Gel(), "GelLeadAcid", 1), (Agm(), "AgmLeadAcid", 1), (Tubular(), "TubularLeadAcid", 1),
            (Flooded(), "FloodedLeadAcid", 1), (Lithium(), "LithiumIronPhosphate", 0.6), (Lead(), "AgmLeadAcid", 0.5),
        ];
        foreach (var (pattern, name, confidence) in all)
        {
            if (pattern.Match(folded) is { Success: true } match) return (name, match.Index, match.Length, confidence);
        }

        return null;
    }

    public static bool IsLithium(string? name) => name is "LithiumIronPhosphate" or OtherLithium;

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"life\s?po\s?4?|\blfp\b|(?:lithium|litio)[ -]*(?:iron|fer|hierro|ferro)[ -]*(?:phosphate|fosfato)?|(?:phosphate|fosfato) de (?:fer|hierro|ferro)", Options)]
    private static partial Regex IronPhosphate();

    [GeneratedRegex(@"\bnmc\b|ternary|ternaire|ternaria|li[ -]?nmc|18650 nmc|lithium[ -]?cobalt", Options)]
    private static partial Regex Ternary();

    [GeneratedRegex(@"\bgel\b|gelified|gelificad\w+|opzv", Options)]
    private static partial Regex Gel();

    [GeneratedRegex(@"\bagm\b", Options)]
    private static partial Regex Agm();

    [GeneratedRegex(@"tubular|tubulaire|opzs", Options)]
    private static partial Regex Tubular();

    [GeneratedRegex(@"flooded|vented lead|ouverte|inundada|ventilada plomo", Options)]
    private static partial Regex Flooded();

    [GeneratedRegex(@"lithium|litio|\bli[ -]ion\b", Options)]
    private static partial Regex Lithium();

    [GeneratedRegex(@"lead[ -]acid|plomb|plomo|chumbo|\bvrla\b|\bsla\b", Options)]
    private static partial Regex Lead();
}

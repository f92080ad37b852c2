using System.Collections.Immutable;
using System.Globalization;
using Humanizer;
using TenderKit.Documents.Languages;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Workbooks;

/// <summary>An amount of money in words, with its cents as a fraction, as on a form of tender.</summary>
internal static class AmountInWords
{
    /// <summary>Plural names of currencies (ISO 4217, from memory); one that is not listed goes by its code.</summary>
    private static readonly ImmutableDictionary<string, string> Names = new Dictionary<string, string>
    {
        ["CHF"] = "Swiss francs",
        ["ETB"] = "Ethiopian birr",
        ["EUR"] = "euros",
        ["GBP"] = "pounds sterling",
        ["GHS"] = "Ghana cedis",
        ["INR"] = "Indian rupees",
        ["KES"] = "Kenyan shillings",
        ["MWK"] = "Malawi kwachas",
        ["MZN"] = "Mozambique meticals",
        ["NGN"] = "Nigerian nairas",
        ["RWF"] = "Rwanda francs",
        ["TZS"] = "Tanzanian shillings",
        ["UGX"] = "Uganda shillings",
        ["USD"] = "US dollars",
        ["XAF"] = "CFA francs BEAC",
        ["XOF"] = "CFA francs BCEAO",
        ["ZAR"] = "South African rands",
        ["ZMW"] = "Zambian kwachas",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <param name="amount">Amount, rounded to the cent, zero or more.</param>
    /// <param name="currency">ISO 4217 code.</param>
    /// <param name="wording">Language of the words; English where none is given.</param>
    public static string Of(decimal amount, string currency, Wording? wording = null)
    {
        wording ??= Wording.English;
        var whole = decimal.Truncate(amount);
        var cents = (int)((amount - whole) * 100);
        var words = ((long)whole).ToWords(addAnd: true, culture: CultureOf(wording.Language));
        var name = wording.Say(Names.GetValueOrDefault(currency, currency));
        return $"{words} {name} {wording.Say("and")} {cents.ToString("00", CultureInfo.InvariantCulture)}/100";
    }

    /// <summary>The line with the words, marked to be printed as it stands.</summary>
    public static string Line(string words, Wording wording) =>
        Verbatim.Of(wording.Say("In words:") + " " + char.ToUpperInvariant(words[0]) + words[1..]);

    private static CultureInfo CultureOf(string language) => language == TenderLanguages.English ? CultureInfo.InvariantCulture : CultureInfo.GetCultureInfo(language);
}

using System.Collections.Immutable;
using System.Globalization;
using Humanizer;

namespace TenderKit.Documents.Workbooks;

/// <summary>An amount of money in English words, with its cents as a fraction, as on a form of tender.</summary>
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
    public static string Of(decimal amount, string currency)
    {
        var whole = decimal.Truncate(amount);
        var cents = (int)((amount - whole) * 100);
        var words = ((long)whole).ToWords(addAnd: true, culture: CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"{words} {Names.GetValueOrDefault(currency, currency)} and {cents:00}/100");
    }
}

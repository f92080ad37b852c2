using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Tells totals, taxes, discounts, carriage and headings of lots from items by their first words.</summary>
internal static partial class RowKind
{
    public static LineKind? Of(string text)
    {
        var folded = PlainText.Fold(text).TrimStart(' ', '-', '*', '=', ':');
        if (Total().IsMatch(folded)) return LineKind.Subtotal;
        if (Tax().IsMatch(folded)) return LineKind.Tax;
        if (Discount().IsMatch(folded)) return LineKind.Discount;
        if (Transport().IsMatch(folded)) return LineKind.Transport;
        return LaterTotal().IsMatch(folded) ? LineKind.Subtotal : null;
    }

    /// <summary>The lot a heading opens, or null.</summary>
    public static string? LotHeading(string text) =>
        text.Length <= 60 && LotHead().Match(PlainText.Fold(text)) is { Success: true } match ? match.Groups["l"].Value.ToUpperInvariant() : null;

    /// <summary>The one lot a text names, such as the name of a sheet or a subtotal.</summary>
    public static string? LotIn(string text)
    {
        var named = LotsIn(text).ToList();
        return named.Count == 1 ? named[0] : null;
    }

    /// <summary>Lots a text names: "lots A and B", "lote B", "lots A+B".</summary>
    public static IEnumerable<string> LotsIn(string text) =>
        Lots().Matches(PlainText.Fold(text)).SelectMany(m => m.Groups["l"].Captures.Select(c => c.Value.ToUpperInvariant())).Distinct();

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"^(?:grand |sub[- ]?|sous[- ]?)?total\b|^(?:total|suma|somme|soma|montant total|monto total|valor total|importe total|prix total|preco total|precio total|base imponible|base tributavel|base taxable|base ht|carried|a reporter|report|net total|overall total|total general|sum of|montant ht|montant ttc|net a payer|valor global|price of offer|prix de l'offre)\b", Options)]
    private static partial Regex Total();

    [GeneratedRegex(@"^.{0,60}\b(?:sub[- ]?total|sous[- ]total|grand total|total general|total geral)\b", Options)]
    private static partial Regex LaterTotal();

    [GeneratedRegex(@"^(?:vat|v\.a\.t|value added tax|sales tax|tax|tva|t\.v\.a|iva|i\.v\.a|impuesto|imposto|igv|taxe)\b", Options)]
    private static partial Regex Tax();

    [GeneratedRegex(@"^(?:discount|less|rebate|remise|rabais|ristourne|descuento|desconto|special discount)\b", Options)]
    private static partial Regex Discount();

    [GeneratedRegex(@"^(?:(?:sea|air|road|inland|ocean) )?(?:freight|transport|carriage|shipping|fret|livraison|acheminement|transporte|flete|frete|envio|seguro y flete|insurance|assurance|packing|emballage|embalaje|embalagem)\b", Options)]
    private static partial Regex Transport();

    [GeneratedRegex(@"^\W*(?:bill for |section |price schedule )?(?:lots?|lotes?)\b\s*(?:n[o°.]*\s*)?(?<l>[a-h]|\d{1,2})\b[^,]*$", Options)]
    private static partial Regex LotHead();

    [GeneratedRegex(@"\b(?:lots?|lotes?)\b\s*(?:n[o°.]*\s*)?(?<l>[a-h1-9])\b(?:\s*(?:,|and|et|y|e|&|\+|/)\s*(?:lots?\s*|lotes?\s*)?(?<l>[a-h1-9])\b)*", Options)]
    private static partial Regex Lots();
}

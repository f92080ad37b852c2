using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>
/// Keeps what speaks of money out of the technical envelope, since tenders in two envelopes reject an offer that shows a price there.
/// </summary>
internal sealed partial class MoneyFree
{
    private readonly Regex _currencies;

    public MoneyFree(TenderDesign design)
    {
        var codes = design.Catalog.All.Select(p => p.Currency)
            .Concat(design.Tender.Head.Exchange.Select(e => e.Currency))
            .Append(design.Tender.Head.Currency)
            .Where(c => c.Length > 0)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .Select(Regex.Escape)
            .ToImmutableArray();
        _currencies = new Regex(codes.IsEmpty ? "(?!)" : $@"\b({string.Join('|', codes)})\b", RegexOptions.CultureInvariant);
    }

    public bool Allows(string text) => !Words().IsMatch(text) && !_currencies.IsMatch(text);

    [GeneratedRegex(@"\b(un)?(price|cost|currenc|payment|payable|invoice|profit|tariff|exchange rate)|[$€£¥]", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}

namespace TenderKit.Tendering.Bill;

/// <summary>
/// Spares are whole units, rounded up, so that every part on site can be replaced. Where a lot holds few units of a part the fraction asked
/// for comes to less than half a unit and the one unit billed is far more than that fraction; the bidder is told what it comes to.
/// </summary>
internal static class SmallSpares
{
    private const int Supply = 1;
    private const int Spares = 4;
    private const decimal HalfUnit = 0.5m;

    public static IEnumerable<string> Of(BillOfQuantities bill, Func<string, CellId?> fractionOf)
    {
        var values = LedgerValues.Evaluate(bill.Ledger);
        foreach (var lot in bill.Parts[Spares].Lines.GroupBy(l => l.Lot))
        {
            var supplied = bill.Parts[Supply].Lines.Where(l => l.Lot == lot.Key).ToDictionary(l => l.PartCode, l => values[l.Quantity], StringComparer.Ordinal);
            var small = lot.Where(l => fractionOf(l.PartCode) is { } cell && values[cell] * supplied[l.PartCode] < HalfUnit).ToArray();
            if (small.Length > 0) yield return Words(lot.Key, [.. small.Select(l => l.PartCode)], small.Sum(l => values[l.Amount]), bill.Currency);
        }
    }

    private static string Words(string lot, string[] codes, decimal amount, string currency) =>
        FormattableString.Invariant($"{(lot.Length == 0 ? "" : "lot " + lot + ": ")}one spare each of {codes.Length} parts is billed though the fraction asked for comes to less than half a unit, ")
        + FormattableString.Invariant($"{amount:#,##0.00} {currency} before contingency and tax; use fewer kits or state a lower fraction if the employer does not want them: {string.Join(", ", codes)}");
}

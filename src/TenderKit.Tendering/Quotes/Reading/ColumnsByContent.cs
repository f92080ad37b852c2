using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Finds quantity, rate and amount in a table without headings: the three columns whose rows multiply out.</summary>
internal static class ColumnsByContent
{
    private const int LeastRows = 2;

    public static OfferColumns? Find(Table table)
    {
        if (table.Rows.IsEmpty) return null;
        var width = table.Rows[0].Length;
        var readings = new[] { DecimalMark.Comma, DecimalMark.Point }.Select(m => Numbers(table, new OfferNumbers(m))).ToList();
        var best = (Rows: 0, Quantity: 0, Rate: 0, Amount: 0);
        foreach (var numbers in readings)
        {
            for (var a = width - 1; a >= 0; a--)
            {
                for (var r = width - 1; r >= 0; r--)
                {
                    for (var q = 0; q < width; q++)
                    {
                        if (q == r || a == q || a == r) continue;
                        var rows = numbers.Count(n => n[q] is { } quantity && n[r] is { } rate && n[a] is { } amount && quantity == decimal.Truncate(quantity) && rate > 0 && amount > rate && Math.Abs((quantity * rate) - amount) < 0.011m);
                        if (rows > best.Rows || (rows == best.Rows && rows > 0 && q < r && best.Quantity > best.Rate)) best = (rows, q, r, a);
                    }
                }
            }
        }

        if (best.Rows < LeastRows) return null;
        var meanings = ImmutableSortedDictionary.CreateBuilder<int, string>();
        (meanings[best.Quantity], meanings[best.Rate], meanings[best.Amount]) = ("quantity", "rate", "amount");
        foreach (var c in Enumerable.Range(0, width).Where(c => !meanings.ContainsKey(c)))
        {
            var texts = table.Rows.Select(row => row[c].Text).Where(t => t.Length > 0).ToList();
            if (texts.Count == 0) continue;
            if (texts.Average(t => t.Count(char.IsLetter)) >= 7 && texts.Count >= best.Rows) meanings[c] = "description";
            else if (texts.Count(t => t.Any(char.IsLetter) && t.Length <= 6) > texts.Count / 2) meanings[c] = "unit";
            else meanings[c] = "number";
        }

        return meanings.ContainsValue("description") ? new(meanings.ToImmutable(), -1) : null;
    }

    private static List<decimal?[]> Numbers(Table table, OfferNumbers numbers) => [.. table.Rows.Select(r => r.Select(c => c.IsEmpty ? null : numbers.Of(c) ?? numbers.Quantity(c).Quantity).ToArray())];
}

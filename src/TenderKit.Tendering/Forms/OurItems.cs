using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Forms;

/// <summary>A line of our bill with its figures.</summary>
/// <param name="Part">Number of the part of the bill.</param>
internal sealed record OurItem(string Code, int Part, ItemKind Kind, string Description, string Unit, string Lot, decimal Quantity, decimal Rate, decimal Amount);

internal static class OurItems
{
    /// <summary>Every line of the bill; the contingency with them, tax not.</summary>
    public static ImmutableArray<OurItem> Of(TenderDesign design, BillOfQuantities bill)
    {
        var values = LedgerValues.Evaluate(bill.Ledger);
        var parts = design.Catalog.All.GroupBy(p => p.Code, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return
        [
            .. from part in bill.Parts
               from line in part.Lines
               select new OurItem(
                   line.Code, part.Number, KindOf(line, parts), line.Description, line.Unit, line.Lot, values[line.Quantity], values[line.Rate], values[line.Amount]),
        ];
    }

    private static ItemKind KindOf(BillLine line, Dictionary<string, Part> parts) =>
        parts.TryGetValue(line.PartCode, out var part) ? PartKinds.Of(part) : ItemWords.Read(line.Description).Kind;
}

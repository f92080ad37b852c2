using System.Text.Json.Nodes;
using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Machine;

/// <summary>The bill for machines; money has two decimals.</summary>
internal static class BillJson
{
    public static void AddTo(JsonObject root, BillOfQuantities bill)
    {
        var values = LedgerValues.Evaluate(bill.Ledger);
        root["currency"] = bill.Currency;
        root["grandTotal"] = values[bill.GrandTotal];
        root["lots"] = BidJson.Array(bill.Lots.Select(l => new JsonObject { ["lot"] = l.Lot, ["total"] = values[l.Total] }));
        root["partsTotal"] = values[bill.PartsTotal];
        root["contingency"] = values[bill.Contingency];
        root["provisionalSumsAndDaywork"] = values[bill.Parts[^1].Collection] - values[bill.Contingency];
        root["tax"] = values[bill.Tax];
        root["billParts"] = BidJson.Array(bill.Parts.Select(p => new JsonObject
        {
            ["number"] = p.Number,
            ["title"] = p.Title,
            ["collection"] = values[p.Collection],
            ["lines"] = BidJson.Array(p.Lines.Select(l => LineOf(l, values))),
        }));
    }

    private static JsonObject LineOf(BillLine line, IReadOnlyDictionary<CellId, decimal> values) => new()
    {
        ["code"] = line.Code,
        ["partCode"] = line.PartCode,
        ["description"] = line.Description,
        ["unit"] = line.Unit,
        ["lot"] = line.Lot,
        ["quantity"] = values[line.Quantity],
        ["rate"] = values[line.Rate],
        ["amount"] = values[line.Amount],
    };
}

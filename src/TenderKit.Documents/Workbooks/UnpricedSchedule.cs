using TenderKit.Documents.Languages;
using TenderKit.Documents.Workbooks.Sheets;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks;

/// <summary>The technical workbook: sites, take-off and bill, with no money in it.</summary>
public static class UnpricedSchedule
{
    public const string Title = "Unpriced schedule";

    public static byte[] Make(TenderDesign design, BillOfQuantities bill)
    {
        using var culture = InvariantScope.Enter();
        var book = new Book(design.Tender.Head, Title, bill.Ledger, Echoes.WordingOf(design));
        SiteSheet.Write(book, design, bill, results: false);
        var behind = bill.Ledger.Behind(bill.Parts.Take(bill.Parts.Length - 1).SelectMany(p => p.Lines).Select(l => l.Quantity));
        QuantitySheet.Write(book, bill, [.. bill.Inputs.Where(i => behind.Contains(i.Value))]);
        foreach (var lot in bill.LotSummaries) BillSheet.Write(book, bill, lot, priced: false, Schedule.ProvisionalWords.Of(design, lot.Lot));
        return book.Save();
    }
}

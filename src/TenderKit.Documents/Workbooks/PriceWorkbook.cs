using TenderKit.Documents.Languages;
using TenderKit.Documents.Workbooks.Sheets;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks;

/// <summary>
/// The financial workbook: summary, site schedule, take-off, priced bill, price schedule, delivery, terms. Rates stand as input cells
/// with the results of the build-up; how they were built up stays in the calculation workbook.
/// </summary>
public static class PriceWorkbook
{
    public const string Title = "Price workbook";

    public static byte[] Make(TenderDesign design, BillOfQuantities bill)
    {
        using var culture = InvariantScope.Enter();
        var ledger = LedgerOf(bill);
        var book = new Book(design.Tender.Head, Title, ledger, Echoes.WordingOf(design));
        SummarySheet.Write(book, bill, "Summary of prices");
        SiteSheet.Write(book, design, bill, results: false);
        var behind = ledger.Behind(bill.GrandTotal);
        QuantitySheet.Write(book, bill, [.. bill.Inputs.Where(i => behind.Contains(i.Value) && i.Value.Name is not ("in.contingency" or "in.tax"))]);
        foreach (var lot in bill.LotSummaries) BillSheet.Write(book, bill, lot, priced: true, Schedule.ProvisionalWords.Of(design, lot.Lot));
        PriceScheduleSheet.Write(book, bill);
        DeliverySheet.Write(book, bill);
        ProgrammeSheet.Write(book, bill, mends: false);
        TermsSheet.Write(book, design);
        return book.Save();
    }

    /// <summary>The ledger of this workbook: the bill's, each billed rate a literal unless it is the rate of an item before it.</summary>
    public static Ledger LedgerOf(BillOfQuantities bill)
    {
        var values = LedgerValues.Evaluate(bill.Ledger);
        var rates = bill.Parts.SelectMany(p => p.Lines).Where(l => l.Unit != "%").Select(l => l.Rate).ToHashSet();
        var expressions = bill.Ledger.Cells.ToDictionary(c => c.Key, c => c.Value);
        var own = rates.Where(r => !Cells.Named(expressions[r]).Any(rates.Contains));
        return bill.Ledger.Replace(own.ToDictionary(r => r, r => (Expression)new Literal(values[r])));
    }
}

using TenderKit.Documents.Languages;
using TenderKit.Documents.Workbooks.Sheets;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Forms;

namespace TenderKit.Documents.Workbooks;

/// <summary>The internal workbook: the same bill with its rates in formulas on the build-up, and everything a reviewer needs to follow it.</summary>
public static class CalculationWorkbook
{
    public const string Title = "Calculation workbook, internal";

    /// <param name="billDiagnostics">What the bill builder said, printed with the warnings of the design.</param>
    /// <param name="handedIn">Documents of this bid that go to the employer, for the checklist.</param>
    public static byte[] Make(TenderDesign design, BillOfQuantities bill, IEnumerable<Diagnostic>? billDiagnostics = null, IEnumerable<string>? handedIn = null)
    {
        using var culture = InvariantScope.Enter();
        var book = new Book(design.Tender.Head, Title, bill.Ledger, Echoes.WordingOf(design));
        SummarySheet.Write(book, bill, "Summary of prices, internal", percentagesElsewhere: true);
        InputSheet.Write(book, bill);
        OrderSheet.Write(book, bill, design.Tender.Prices.Buying.ExcessInRates);
        RateSheet.Write(book, bill);
        ShareSheet.Write(book, bill);
        SiteSheet.Write(book, design, bill, results: true);
        QuantitySheet.Write(book, bill, []);
        foreach (var lot in bill.LotSummaries) BillSheet.Write(book, bill, lot, priced: true);
        DeliverySheet.Write(book, bill);
        ProgrammeSheet.Write(book, bill, mends: true);
        var (years, kits) = YearsSheet.Write(book, design, bill);
        ReserveSheet.Write(book, bill, design.Tender.Village, kits, years);
        ChoiceSheet.Write(book, design);
        KitCountSheet.Write(book, design);
        RegionSheet.Write(book, design);
        FormsSheet.Write(book, design);
        ClauseSheet.Write(book, design);
        HandSheet.Write(book, design);
        ClimateSheet.Write(book, design);
        TransportSheet.Write(book, design, bill);
        if (design.Form is { } form) FormSheet.Write(book, form, FormPricing.Of(design, bill, form));
        SubmissionSheet.Write(book, design, bill, handedIn ?? []);
        BasisSheets.Rules(book, design);
        BasisSheets.Warnings(book, [.. design.Diagnostics, .. design.Sites.SelectMany(s => s.Diagnostics), .. billDiagnostics ?? []], bill.Remarks);
        BasisSheets.Sources(book, design);
        return book.Save();
    }
}

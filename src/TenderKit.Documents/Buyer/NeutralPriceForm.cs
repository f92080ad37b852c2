using System.Collections.Immutable;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Buyer;

/// <summary>The buyer's blank price form: quantities where they do not hang on the offer, the bidder's number of poles where they do, rates empty and open, formulas live. No make, no bidder, no price.</summary>
public static class NeutralPriceForm
{
    private const string EmptyMoney = "#,##0.00;-#,##0.00;";
    private const string EmptyWhole = "#,##0;-#,##0;";

    private static readonly Expression _nothing = new Literal(0);

    private static readonly ImmutableArray<(string What, string Unit, Per Per)> _items =
    [
        ("Luminaire with driver and fittings, or unit of lamp, module, battery and control in one", "pole set", Per.Pole),
        ("Photovoltaic modules with bracket, or: included in the unit", "pole set", Per.Pole),
        ("Battery with enclosure, or: included in the unit", "pole set", Per.Pole),
        ("Charge and lighting control, or: included in the unit", "pole set", Per.Pole),
        ("Cables, fuses, arrester, earth electrode and small parts", "pole set", Per.Pole),
        ("Pole with arm, door and protection against corrosion", "pole set", Per.Pole),
        ("Anchor bolts and template, or: set into the ground", "pole set", Per.Pole),
        ("Survey of a site, with record", "site", Per.Site),
        ("Excavation, foundation and making good", "pole set", Per.Pole),
        ("Transport to site", "pole set", Per.Pole),
        ("Erection, connection, setting", "pole set", Per.Pole),
        ("Tests, acceptance, record as built", "pole set", Per.Pole),
        ("Training of caretakers, with tools and manuals", "lump sum", Per.Lot),
        ("Spare parts by the bidder's list", "lump sum", Per.Lot),
        ("Maintenance of all poles of the lot", "year", Per.Year),
    ];

    private enum Per
    {
        Pole,
        Site,
        Lot,
        Year,
    }

    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        using var culture = InvariantScope.Enter();
        var head = design.Tender.Head;
        var book = new Book(head with { Bidder = head.Employer }, "Price form", new Ledger([]), Languages.Echoes.WordingOf(design));
        var lots = design.Sites.GroupBy(s => s.Site.Lot).Select(g => (Lot: g.Key, Sites: g.ToImmutableArray())).ToImmutableArray();
        var sheets = lots.Select(l => (l.Lot, Poles: book.Add(Name("Sites", l.Lot, lots.Length)), Form: book.Add(Name("Prices", l.Lot, lots.Length)), l.Sites)).ToImmutableArray();
        var summary = book.Add("Summary");
        var totals = sheets.Select(s => (s.Lot, Total: Prices(s.Form, book, s.Lot, design.Tender.Prices.MaintenanceYears, s.Sites.Length, Poles(s.Poles, book, s.Lot, s.Sites)))).ToImmutableArray();
        Summary(summary, book, totals);
        return book.Save();
    }

    private static string Name(string what, string lot, int lots) => lots < 2 ? what : what + " " + lot;

    private static int Head(Workbooks.Sheet sheet, Book book, string title, string remark)
    {
        var last = sheet.Widths.Length;
        sheet.Words(1, 1, title, Look.Title);
        sheet.Paragraph(2, 1, last, $"{book.Head.Title}, reference {book.Head.Reference}. Buyer: {book.Head.Employer}", Look.Paragraph with { Bold = true });
        sheet.Paragraph(3, 1, last, remark, Look.Paragraph with { Faint = true });
        return 5;
    }

    private static string Of(string lot) => lot.Length == 0 ? "" : ", lot " + lot;

    private static CellId Poles(Workbooks.Sheet sheet, Book book, string lot, ImmutableArray<SiteDesign> sites)
    {
        sheet.Columns(9, 36, 9, 11, 10, 10, 14, 15);
        var row = Head(sheet, book, "Number of poles" + Of(lot), "Shaded cells are the bidder's. Where the buyer states a number it holds; elsewhere the bidder enters his own, as his light calculation gives it.");
        sheet.Header(row, "Site", "Name", "Kind", ">Length, m", ">Width, m", "Class", "Poles asked", ">Poles offered");
        sheet.Repeat(row, row);
        var cells = new List<CellId>();
        foreach (var site in sites.Select(s => s.Site))
        {
            sheet.Words(++row, 1, site.Id, Look.Row);
            sheet.Words(row, 2, site.Name, Look.Row);
            sheet.Words(row, 3, Schedule.Words.Of(site.Kind), Look.Row);
            sheet.Figure(row, 4, site.LengthM, Look.Number("#,##0.##"));
            sheet.Figure(row, 5, site.WidthM, Look.Number("#,##0.##"));
            sheet.Words(row, 6, site.Target.Name, Look.Row);
            sheet.Words(row, 7, site.FixedPoles is { } asked ? Layout.Figures.Number(asked, 0) : "bidder's", Look.Row);
            cells.Add(site.FixedPoles is { } poles ? sheet.Fixed(row, 8, poles, Look.Whole) : sheet.Formula(row, 8, _nothing, Look.Number(EmptyWhole)));
        }

        sheet.Words(++row, 2, "Poles of the lot", Look.TotalText);
        var total = sheet.Formula(row, 8, Cells.SumOf([.. cells]), Look.TotalMoney with { Format = Look.WholeFormat });
        sheet.Fill(row, 1, 8, Look.TotalText);
        return total;
    }

    private static CellId Prices(Workbooks.Sheet sheet, Book book, string lot, int maintenanceYears, int siteCount, CellId poles)
    {
        sheet.Columns(6, 62, 11, 12, 16, 18);
        var row = Head(sheet, book, "Prices" + Of(lot), $"Rates in {book.Head.Currency}, tax left out, everything included to make the works complete as specified. Shaded cells are the bidder's. Write 0 and 'included' where an item is part of another.");
        sheet.Header(row, "Item", "Description", "Unit", ">Quantity", ">Rate", ">Amount");
        sheet.Repeat(row, row);
        var amounts = new List<CellId>();
        foreach (var (what, unit, per) in _items)
        {
            sheet.Figure(++row, 1, amounts.Count + 1, Look.Whole);
            sheet.Words(row, 2, what, Look.Row);
            sheet.Words(row, 3, unit, Look.RowCentre);
            var quantity = per == Per.Pole ? sheet.Formula(row, 4, Cells.Ref(poles), Look.Whole)
                : sheet.Fixed(row, 4, per switch { Per.Site => siteCount, Per.Year => maintenanceYears, _ => 1 }, Look.Whole);
            var rate = sheet.Formula(row, 5, _nothing, Look.Number(EmptyMoney));
            amounts.Add(sheet.Formula(row, 6, new Rounded(Cells.Times(quantity, rate), 2), Look.Money));
        }

        sheet.Words(++row, 2, "Total" + Of(lot) + ", tax left out", Look.GrandText);
        var total = sheet.Formula(row, 6, Cells.SumOf([.. amounts]), Look.GrandMoney);
        sheet.Fill(row, 1, 6, Look.GrandText);
        return total;
    }

    private static void Summary(Workbooks.Sheet sheet, Book book, ImmutableArray<(string Lot, CellId Total)> totals)
    {
        sheet.Columns(52, 22);
        var row = Head(sheet, book, "Summary", $"All amounts in {book.Head.Currency}. Shaded cells are the bidder's.");
        sheet.Header(row, "", ">Amount");
        foreach (var (lot, total) in totals)
        {
            sheet.Words(++row, 1, lot.Length == 0 ? "Prices" : "Lot " + lot, Look.Row);
            sheet.Show(row, 2, total, Look.Money);
        }

        sheet.Words(++row, 1, "Total, tax left out", Look.TotalText);
        var sum = sheet.Formula(row, 2, Cells.SumOf([.. totals.Select(t => t.Total)]), Look.TotalMoney);
        sheet.Words(++row, 1, "Tax, fraction of the total", Look.Row);
        var fraction = sheet.Formula(row, 2, _nothing, Look.Number("0.0%;-0.0%;"));
        sheet.Words(++row, 1, "Tax", Look.Row);
        var tax = sheet.Formula(row, 2, new Rounded(Cells.Times(sum, fraction), 2), Look.Money);
        sheet.Words(++row, 1, "Total, tax included", Look.GrandText);
        sheet.Formula(row, 2, Cells.SumOf(sum, tax), Look.GrandMoney);
        foreach (var line in new[] { "Bidder", "Valid until", "Delivery, days", "Date, signature and stamp" })
        {
            row += 2;
            sheet.Words(row, 1, line, Look.Row);
            sheet.Words(row, 2, "", Look.Row.AsInput());
        }
    }
}

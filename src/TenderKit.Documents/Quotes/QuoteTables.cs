using System.Data;
using System.Globalization;
using System.Text;
using Sylvan.Data.Csv;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Reading;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Quotes;

/// <summary>The check of one offer as a workbook, and the record of what was read as csv.</summary>
public static class QuoteTables
{
    private const string Dangerous = "=+-@\t\r";

    public static byte[] Workbook(CheckedOffer offer, TenderHead head)
    {
        using var culture = InvariantScope.Enter();
        var book = new Book(head, "Check of an offer", new Ledger([]), Echoes.WordingOf(head, offer));
        Findings(book.Add("Findings", landscape: true), offer, head);
        Lines(book.Add("Lines", landscape: true), offer);
        var questions = book.Add("Questions");
        questions.Columns(6, 100);
        questions.Header(1, "No.", "Question to the bidder");
        foreach (var (question, i) in offer.Questions.Select((q, i) => (q, i)))
        {
            questions.Figure(i + 2, 1, i + 1, Look.Whole);
            questions.Words(i + 2, 2, question, Look.Row);
        }

        return book.Save();
    }

    private static void Findings(Sheet sheet, CheckedOffer offer, TenderHead head)
    {
        sheet.Columns(18, 9, 10, 78, 50);
        sheet.Words(1, 1, "Check of an offer", Look.Title);
        sheet.Paragraph(2, 1, 5, $"{head.Reference}: {offer.Offer.File}, lots {string.Join(", ", offer.Lots)}. Overall: {offer.Overall}", Look.Paragraph with { Bold = true });
        sheet.Paragraph(3, 1, 5, "What the rules say; the evaluation committee decides.", Look.Paragraph with { Faint = true });
        var row = 4;
        foreach (var (name, value) in new[] { ("Total as stated", offer.Price.Stated), ("Corrected total", offer.Price.Corrected) })
        {
            sheet.Words(row, 1, name, Look.Row);
            if (value is { } v) sheet.Figure(row, 2, (double)v, Look.Money);
            row++;
        }

        sheet.Header(++row, "Where", "Code", "Weight", "Finding", "Source");
        sheet.Repeat(row, row);
        foreach (var finding in offer.Findings)
        {
            row++;
            var cells = new[] { QuoteReport.Where(finding.Where), finding.Code, QuoteReport.Word(finding.Severity), finding.Message, finding.Source };
            for (var c = 0; c < cells.Length; c++) sheet.Words(row, c + 1, cells[c], Look.Row);
        }
    }

    private static void Lines(Sheet sheet, CheckedOffer offer)
    {
        sheet.Columns(14, 7, 13, 60, 12, 8, 14, 16, 16, 12, 24);
        sheet.Header(1, "Sheet", ">Row", "Family", "Text", ">Quantity", "Unit", ">Rate", ">Amount", ">Corrected", "Kits", "Verdict");
        sheet.Repeat(1, 1);
        var row = 1;
        foreach (var line in offer.Lines)
        {
            row++;
            sheet.Words(row, 1, line.Line.Place.Sheet ?? "", Look.Row);
            sheet.Figure(row, 2, line.Line.Place.Row ?? 0, Look.Whole);
            sheet.Words(row, 3, line.Line.Family, Look.Row);
            sheet.Words(row, 4, line.Line.Text, Look.Row);
            Figure(sheet, row, 5, line.Line.Quantity, Look.Whole);
            sheet.Words(row, 6, line.Line.Unit, Look.RowCentre);
            Figure(sheet, row, 7, line.Line.Rate, Look.Money);
            Figure(sheet, row, 8, line.Line.Amount, Look.Money);
            Figure(sheet, row, 9, line.CorrectedAmount, Look.Money);
            sheet.Words(row, 10, string.Join(" ", line.KitIds), Look.Row);
            sheet.Words(row, 11, line.Verdict, Look.Row);
        }
    }

    private static void Figure(Sheet sheet, int row, int column, decimal? value, Look look)
    {
        if (value is { } v) sheet.Figure(row, column, (double)v, look);
        else sheet.Words(row, column, "", look);
    }

    /// <summary>The record of readings for the officer to correct: fill <c>corrected</c> and <c>by</c>.</summary>
    public static byte[] Readings(ReadingRecord record)
    {
        using var culture = InvariantScope.Enter();
        using var table = new DataTable { Locale = CultureInfo.InvariantCulture };
        foreach (var name in ReadingRecord.Columns) table.Columns.Add(name, typeof(string));
        foreach (var e in record.Entries)
            table.Rows.Add(e.Offer, Safe(e.Sheet), e.Row.ToString(CultureInfo.InvariantCulture), e.Name, Safe(e.Read), Safe(e.Words), e.Confidence.ToString("0.##", CultureInfo.InvariantCulture), Safe(e.Corrected), Safe(e.By));
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var reader = table.CreateDataReader())
        using (var csv = CsvDataWriter.Create(text, new CsvDataWriterOptions { NewLine = "\n" })) csv.Write(reader);
        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    /// <summary>Text that a spreadsheet program would take for a formula gets a mark in front; a lone dash takes a reading back and stays.</summary>
    private static string Safe(string text) => text.Length > 1 && Dangerous.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;
}

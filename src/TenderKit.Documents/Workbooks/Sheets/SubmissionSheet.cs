using System.Globalization;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>What goes into the envelopes: documents made here, forms of the employer, the security of the bid, deviations.</summary>
internal static class SubmissionSheet
{
    private const int LastColumn = 8;

    public static void Write(Book book, TenderDesign design, BillOfQuantities bill, IEnumerable<string> made)
    {
        var submission = design.Tender.Submission;
        var until = design.Tender.Head.IssueDate.AddDays(design.Tender.Head.ValidityDays);
        var sheet = book.Add("Submission", landscape: true);
        sheet.Columns(6, 52, 14, 26, 14, 36, 22, 10);
        var row = TitleBlock.Write(
            sheet, book, "Submission checklist",
            FormattableString.Invariant($"Tick each row when the paper lies in its envelope. The bid holds until {until:yyyy-MM-dd}; what expires before is marked."));
        sheet.Header(row, ">No.", "Form or document", "Clause", "Signed by", "Holds until", "File", "State", "Done");
        sheet.Repeat(row, row);
        var number = 0;
        foreach (var path in made) Line(sheet, ++row, ++number, Title(path), "", "", "", path, "made by this bid");
        foreach (var form in submission.Forms) Line(sheet, ++row, ++number, form.Form, form.Clause, form.SignedBy, Date(form.Expires), form.File, StateOf(form, until));
        if (submission.Security is { } security) row = Security(sheet, bill, security, until, row + 2);
        Deviations(sheet, submission, row + 2);
    }

    private static void Line(Sheet sheet, int row, int number, params ReadOnlySpan<string> texts)
    {
        sheet.Figure(row, 1, number, Look.Whole);
        for (var i = 0; i < texts.Length; i++) sheet.Words(row, i + 2, texts[i], Look.Row);
        sheet.Words(row, LastColumn, "", Look.RowCentre.AsInput());
    }

    private static int Security(Sheet sheet, BillOfQuantities bill, BidSecurity security, DateOnly until, int row)
    {
        sheet.Words(row, 1, "Bid security" + (security.Clause.Length > 0 ? ", clause " + security.Clause : ""), Look.Heading);
        sheet.Words(++row, 2, security.ShareFraction is { } share ? string.Create(CultureInfo.InvariantCulture, $"Amount, {share * 100:0.##} % of the total, {bill.Currency}") : "Amount stated by the tender, " + bill.Currency, Look.Row);
        if (security.ShareFraction is { } fraction) sheet.Formula(row, 4, new Rounded(new Product([Cells.Ref(bill.GrandTotal), new Literal(fraction)]), 2), Look.Money);
        else sheet.Figure(row, 4, (double)security.Amount.GetValueOrDefault(), Look.Money);
        sheet.Fill(row, 1, 4, Look.Row);
        sheet.Words(++row, 2, string.Create(CultureInfo.InvariantCulture, $"Holds until, {security.DaysBeyondValidity} days beyond the bid"), Look.Row);
        sheet.Words(row, 4, Date(until.AddDays(security.DaysBeyondValidity)), Look.Row with { Side = Side.Right });
        sheet.Fill(row, 1, 4, Look.Row);
        return row;
    }

    private static void Deviations(Sheet sheet, Submission submission, int row)
    {
        sheet.Words(row, 1, "Deviations from what is asked", Look.Heading);
        if (submission.Deviations.IsEmpty)
        {
            sheet.Paragraph(row + 1, 2, LastColumn, "None is stated in the tender file. What the documents list as not met is a deviation too: state it or mend it.");
            return;
        }

        row++;
        sheet.Words(row, 2, "Offered", Look.Head);
        sheet.Words(row, 3, "Clause", Look.Head);
        sheet.Words(row, 4, "Reason", Look.Head);
        sheet.Fill(row, 1, LastColumn, Look.Head);
        foreach (var deviation in submission.Deviations)
        {
            sheet.Words(++row, 2, deviation.Text, Look.Row);
            sheet.Words(row, 3, deviation.Clause, Look.Row);
            sheet.Paragraph(row, 4, LastColumn, deviation.Reason, Look.Row);
        }
    }

    private static string StateOf(SubmittedForm form, DateOnly until) =>
        form.Expires < until ? "expires before the bid"
        : form.File.Length == 0 ? "to be written"
        : form.FileFound ? "found" : "file missing";

    private static string Date(DateOnly? date) => date is { } d ? d.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "";

    private static string Title(string path)
    {
        var name = Path.GetFileNameWithoutExtension(path).Replace('-', ' ');
        return char.ToUpperInvariant(name[0]) + name[1..];
    }
}

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>The same heading on every sheet: what it is, of which tender, from whom to whom.</summary>
internal static class TitleBlock
{
    /// <summary>Writes the heading and returns the first free row under it.</summary>
    public static int Write(Sheet sheet, Book book, string title, string? remark = null)
    {
        var head = book.Head;
        var last = sheet.Widths.Length;
        sheet.Words(1, 1, title, Look.Title);
        sheet.Paragraph(2, 1, last, head.Title + ", reference " + head.Reference, Look.Paragraph with { Bold = true });
        sheet.Paragraph(3, 1, last, "Employer: " + head.Employer + ".  Bidder: " + head.Bidder + FormattableString.Invariant($".  Date: {head.IssueDate:yyyy-MM-dd}"), Look.Paragraph with { Faint = true });
        if (remark is not null) sheet.Paragraph(4, 1, last, remark, Look.Paragraph with { Faint = true });
        return remark is null ? 5 : 6;
    }

    /// <summary>Key to the input cells.</summary>
    public static void Legend(Sheet sheet, int row, int column, int lastColumn, string what)
    {
        sheet.Words(row, column, "input", Look.RowCentre.AsInput());
        sheet.Paragraph(row, column + 1, lastColumn, "  " + what, Look.Paragraph with { Faint = true });
    }

    public static string LotLabel(string lot) => lot.StartsWith("lot", StringComparison.OrdinalIgnoreCase) ? lot : "Lot " + lot;
}

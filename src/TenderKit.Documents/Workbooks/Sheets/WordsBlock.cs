using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>
/// A total in words. Words cannot follow a formula, so the amount they were written for stands beside them, and a check turns when the total moves.
/// </summary>
internal static class WordsBlock
{
    private const string Check = "\"changed since: write the words anew\";\"changed since: write the words anew\";\"agrees with the total\"";

    /// <summary>Returns the first free row.</summary>
    public static int Write(Sheet sheet, int row, int moneyColumn, CellId total, decimal issued, string currency)
    {
        var words = AmountInWords.Of(issued, currency, sheet.Wording);
        sheet.Paragraph(row, 2, sheet.Widths.Length, AmountInWords.Line(words, sheet.Wording), Look.Paragraph with { Bold = true });
        sheet.Words(++row, 2, "Amount the words were written for", Look.Label);
        var amount = sheet.Fixed(row, moneyColumn, issued, new Look(Look.MoneyFormat, Faint: true, Side: Side.Right));
        sheet.Words(++row, 2, "Total less that amount", Look.Label);
        var difference = new Rounded(new Difference(new Reference(total), new Reference(amount)), 2);
        sheet.Formula(row, moneyColumn, difference, new Look(Check, Faint: true, Side: Side.Right));
        return row + 2;
    }
}

using System.Data;
using System.Globalization;
using System.Text;
using Sylvan.Data.Csv;
using TenderKit.Tendering.Forms;

namespace TenderKit.Documents.Workbooks;

/// <summary>The list of lines of the employer's form with the items that answer them, as csv: the user corrects the column <c>ours</c> and names the file in the tender.</summary>
public static class FormLinesList
{
    private const string Dangerous = "=+-@\t\r";

    public static byte[] Make(PricedForm priced)
    {
        using var culture = InvariantScope.Enter();
        using var table = new DataTable { Locale = CultureInfo.InvariantCulture };
        foreach (var name in new[] { "sheet", "row", "ours", "item", "description", "unit", "quantity", "our_quantity", "rate", "remark" }) table.Columns.Add(name, typeof(string));
        foreach (var answer in priced.Answers)
        {
            var line = answer.Line;
            table.Rows.Add(
                line.Sheet, Text(line.Row), string.Join(" + ", answer.BillCodes), Safe(line.Item), Safe(line.Description), Safe(line.Unit), Text(line.Quantity), Text(answer.OurQuantity),
                Text(answer.Rate), answer.Remark);
        }

        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var reader = table.CreateDataReader())
        using (var csv = CsvDataWriter.Create(text, new CsvDataWriterOptions { NewLine = "\n" })) csv.Write(reader);
        return [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text.ToString())];
    }

    /// <summary>Text that a spreadsheet program would take for a formula gets a mark in front.</summary>
    private static string Safe(string text) => text.Length > 0 && Dangerous.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;

    private static string Text(IFormattable? value) => value?.ToString("0.######", CultureInfo.InvariantCulture) ?? "";
}

using System.Data;
using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Documents.Buyer;
using TenderKit.Documents.Tests.Workbooks;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Buyer;

/// <summary>The blank price form as a bidder fills it, recalculated by another program.</summary>
[Collection("world")]
public class FilledPriceFormTests
{
    [SkippableFact]
    public void Rates_and_poles_of_the_bidder_give_amounts_totals_and_tax()
    {
        Office.SkipIfAbsent();
        var design = HandMadeDesign.Small();
        var filled = Office.Recalculated(Fill(NeutralPriceForm.Make(design)));
        decimal sum = 0;
        foreach (var (lot, poles) in new[] { ("A", 10 + 11), ("B", 10) })
        {
            var rows = filled.Tables["Prices " + lot]!.Rows.Cast<DataRow>().Where(r => r[0] is double).ToList();
            Assert.Equal(15, rows.Count);
            Assert.All(rows.Where(r => Equals(r[2], "pole set")), r => Assert.Equal(poles, Convert.ToInt32(r[3], CultureInfo.InvariantCulture)));
            Assert.All(rows, r => Assert.Equal(Rate(Convert.ToInt32(r[0], CultureInfo.InvariantCulture)), Money(r[4])));
            Assert.All(rows, r => Assert.Equal(Math.Round(Money(r[3]) * Money(r[4]), 2, MidpointRounding.AwayFromZero), Money(r[5])));
            var total = filled.Tables["Prices " + lot]!.Rows.Cast<DataRow>().Single(r => r[1] is string s && s.StartsWith("Total", StringComparison.Ordinal));
            Assert.Equal(rows.Sum(r => Money(r[5])), Money(total[5]));
            sum += Money(total[5]);
        }

        decimal Line(string start) => Money(filled.Tables["Summary"]!.Rows.Cast<DataRow>().Single(r => r[0] is string s && s.StartsWith(start, StringComparison.Ordinal))[1]);
        Assert.True(sum > 0);
        Assert.Equal(sum, Line("Total, tax left out"));
        Assert.Equal(Math.Round(sum * 0.16m, 2, MidpointRounding.AwayFromZero), filled.Tables["Summary"]!.Rows.Cast<DataRow>().Where(r => Equals(r[0], "Tax")).Select(r => Money(r[1])).Single());
        Assert.Equal(0.16m, Line("Tax, fraction of the total"));
        Assert.Equal(sum + Math.Round(sum * 0.16m, 2, MidpointRounding.AwayFromZero), Line("Total, tax included"));
    }

    [SkippableFact]
    public void An_empty_form_adds_up_to_nothing_and_holds_no_error()
    {
        Office.SkipIfAbsent();
        var empty = Office.Recalculated(NeutralPriceForm.Make(HandMadeDesign.Small()));
        Assert.DoesNotContain(empty.Tables.Cast<DataTable>().SelectMany(t => t.Rows.Cast<DataRow>()).SelectMany(r => r.ItemArray), c => c is string s && s.StartsWith('#'));
    }

    private static decimal Rate(int item) => 10 + (1.37m * item);

    private static decimal Money(object? cell) => Math.Round(Convert.ToDecimal(cell, CultureInfo.InvariantCulture), 6);

    /// <summary>Writes rates into column E of the price sheets, poles into column H of the site sheets (10, 11, ...) and the tax.</summary>
    private static byte[] Fill(byte[] form)
    {
        using var stream = new MemoryStream();
        stream.Write(form);
        using (var document = SpreadsheetDocument.Open(stream, true))
        {
            var book = document.WorkbookPart!;
            foreach (var sheet in book.Workbook.Descendants<Sheet>())
            {
                var rows = ((WorksheetPart)book.GetPartById(sheet.Id!)).Worksheet.Descendants<Row>().ToList();
                if (sheet.Name!.Value!.StartsWith("Prices", StringComparison.Ordinal))
                {
                    foreach (var row in rows.Where(r => Cell(r, "A")?.CellValue is not null && Cell(r, "A")!.DataType is null && Cell(r, "E") is not null))
                        Set(Cell(row, "E")!, Rate(int.Parse(Cell(row, "A")!.CellValue!.Text, CultureInfo.InvariantCulture)));
                }
                else if (sheet.Name.Value.StartsWith("Sites", StringComparison.Ordinal))
                {
                    var poles = 10;
                    foreach (var row in rows.Where(r => Cell(r, "D")?.CellValue is not null && Cell(r, "D")!.DataType is null)) Set(Cell(row, "H")!, poles++);
                }
                else
                {
                    Set(rows.Select(r => Cell(r, "B")).OfType<Cell>().Single(c => c.CellReference!.Value == "B9"), 0.16m); // the row named "Tax, fraction of the total"
                }
            }
        }

        return stream.ToArray();
    }

    private static Cell? Cell(Row row, string column) => row.Elements<Cell>().FirstOrDefault(c => c.CellReference!.Value!.TrimEnd("0123456789".ToCharArray()) == column);

    private static void Set(Cell cell, decimal value)
    {
        cell.CellFormula = null;
        cell.DataType = null;
        cell.CellValue = new CellValue(value.ToString(CultureInfo.InvariantCulture));
    }
}

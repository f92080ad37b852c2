using System.IO.Compression;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;
using TenderKit.Documents.Workbooks;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Forms;
using TenderKit.Tendering.Tests.Samples;
using Xunit;
using Cell = DocumentFormat.OpenXml.Spreadsheet.Cell;
using Sheet = DocumentFormat.OpenXml.Spreadsheet.Sheet;

namespace TenderKit.Documents.Tests.Workbooks;

public class FilledFormTests
{
    private static readonly TenderDesign Design = HandMadeDesign.Small();
    private static readonly BillOfQuantities Bill = BillBuilder.Build(Design).Value!;

    private static readonly PriceFormSettings Settings = new("form.xlsx", [new PriceFormSheet("Bill No. 1", 1, 2, 3, 4, 5, 3, null, "")], null, true, true);

    [SkippableFact]
    public void The_form_adds_up_to_what_we_say_in_another_program()
    {
        Office.SkipIfAbsent();
        var (filled, priced) = Fill();

        var recalculated = Office.Recalculated(filled);

        Assert.Equal(priced.FormTotal, Math.Round((decimal)Convert.ToDouble(recalculated.Tables["Bill No. 1"]!.Rows[6][5], System.Globalization.CultureInfo.InvariantCulture), 2));
    }

    [Fact]
    public void Only_rates_and_old_results_change()
    {
        var form = Blank();
        var (filled, _) = Fill();

        Assert.Equal(Names(form), Names(filled));
        Assert.Equal(Picture(form), Picture(filled));
        using var document = SpreadsheetDocument.Open(new MemoryStream(filled), false);
        Assert.Empty(new OpenXmlValidator(FileFormatVersions.Office2013).Validate(document).Select(e => e.Description));
        var sheet = document.WorkbookPart!.WorksheetParts.Single().Worksheet;
        Assert.Equal("1200", sheet.Descendants<Cell>().First(c => c.CellReference == "D3").CellValue!.Text);
        Assert.All(sheet.Descendants<Cell>().Where(c => c.CellFormula is not null), c => Assert.Null(c.CellValue));
    }

    [Fact]
    public void A_formula_in_the_place_of_a_rate_is_left_alone()
    {
        var read = Read(Blank(formulaInRate: true)).Value!;

        FilledForm.Make(read, FormPricing.Of(Design, Bill, read), out var kept);

        Assert.Equal(3, Assert.Single(kept).Row);
        Assert.Contains(FormNotices.Of(read, FormPricing.Of(Design, Bill, read), kept), d => d.Code == "TK716");
    }

    [Fact]
    public void A_sheet_that_is_not_there_is_named_with_those_that_are()
    {
        var settings = Settings with { Sheets = [Settings.Sheets[0] with { Sheet = "Bill 2" }] };

        var problem = Assert.Single(Read(Blank(), settings).Diagnostics);

        Assert.Equal("TK711", problem.Code);
        Assert.Contains("Bill No. 1", problem.Message);
    }

    [Fact]
    public void A_form_without_a_line_is_refused() =>
        Assert.Equal("TK712", Assert.Single(Read(Blank(), Settings with { Sheets = [Settings.Sheets[0] with { FirstRow = 7 }] }).Diagnostics).Code);

    [Fact]
    public void The_list_of_lines_reads_back_as_it_was_written()
    {
        var (_, priced) = Fill();
        var list = TableReader.Read(FormLinesList.Make(priced), "lines.csv").Value!;

        var again = PriceFormReader.Read(Settings, Blank(), TableReader.Read(Blank(), "form.xlsx").Value!, list).Value!;

        Assert.Equal(priced.Answers.Count(a => a.BillCodes.Length > 0), again.Given.Count);
        Assert.Equal(FormLinesList.Make(priced), FormLinesList.Make(FormPricing.Of(Design, Bill, again)));
        Assert.Contains("'=HYPERLINK", System.Text.Encoding.UTF8.GetString(FormLinesList.Make(priced)));
    }

    private static (byte[] Filled, PricedForm Priced) Fill()
    {
        var form = Read(Blank()).Value!;
        var priced = FormPricing.Of(Design, Bill, form);
        return (FilledForm.Make(form, priced, out _), priced);
    }

    private static Outcome<PriceForm> Read(byte[] form, PriceFormSettings? settings = null) =>
        PriceFormReader.Read(settings ?? Settings, form, TableReader.Read(form, "form.xlsx").Value!, null);

    private static string[] Names(byte[] file)
    {
        using var zip = new ZipArchive(new MemoryStream(file));
        return [.. zip.Entries.Select(e => e.FullName).Order(StringComparer.Ordinal)];
    }

    private static byte[] Picture(byte[] file)
    {
        using var zip = new ZipArchive(new MemoryStream(file));
        using var stream = zip.Entries.Single(e => e.FullName.Contains("image", StringComparison.Ordinal) && !e.FullName.EndsWith(".rels", StringComparison.Ordinal)).Open();
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    /// <summary>A form as an employer makes it: titles, a picture, amounts and a total in formulas with the results of an empty form.</summary>
    private static byte[] Blank(bool formulaInRate = false)
    {
        using var stream = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var workbook = document.AddWorkbookPart();
            var part = workbook.AddNewPart<WorksheetPart>("rId1");
            part.Worksheet = new Worksheet(new SheetData(
                Row(1, Text("A1", "Bill of quantities of the employer")),
                Row(2, Text("A2", "Item"), Text("B2", "Description"), Text("C2", "Unit"), Text("D2", "Qty"), Text("E2", "Rate"), Text("F2", "Amount")),
                Line(3, "Copper cable", "m", 1200, formulaInRate),
                Line(4, "Complete solar street light", "No.", 19, false),
                Line(5, "Training", "LS", 1, false),
                Line(6, "=HYPERLINK(1)", "No.", 2, false),
                Row(7, Text("B7", "Total"), Formula("F7", "SUM(F3:F6)"))));
            workbook.Workbook = new Workbook(new Sheets(new Sheet { Name = "Bill No. 1", SheetId = 1, Id = "rId1" }));
            var drawing = part.AddNewPart<DrawingsPart>("rId2");
            drawing.WorksheetDrawing = new DocumentFormat.OpenXml.Drawing.Spreadsheet.WorksheetDrawing();
            using var picture = new MemoryStream([0x89, 0x50, 0x4E, 0x47]);
            drawing.AddImagePart(ImagePartType.Png, "rId1").FeedData(picture);
            part.Worksheet.AppendChild(new Drawing { Id = "rId2" });
        }

        return stream.ToArray();
    }

    private static Row Row(uint index, params Cell[] cells) => new(cells) { RowIndex = index };

    private static Row Line(uint row, string text, string unit, double quantity, bool formulaInRate) => new(
        Text($"A{row}", $"1.{row}"), Text($"B{row}", text), Text($"C{row}", unit), new Cell { CellReference = $"D{row}", CellValue = new CellValue(quantity) },
        formulaInRate ? Formula($"E{row}", "2*3") : new Cell { CellReference = $"E{row}" }, Formula($"F{row}", $"ROUND(D{row}*E{row},2)"))
    { RowIndex = row };

    private static Cell Text(string address, string text) => new() { CellReference = address, DataType = CellValues.InlineString, InlineString = new InlineString(new Text(text)) };

    private static Cell Formula(string address, string formula) => new() { CellReference = address, CellFormula = new CellFormula(formula), CellValue = new CellValue("0") };
}

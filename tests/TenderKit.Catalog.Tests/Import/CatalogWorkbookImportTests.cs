using TenderKit.Catalog.Import;
using TenderKit.Intake.Tests.Tables;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Catalog.Tests.Import;

public sealed class CatalogWorkbookImportTests
{
    private static readonly string[] Head = ["code", "description", "unit_price", "currency", "max_module_area_m2", "min_tilt_degrees", "max_tilt_degrees", "price_breaks"];

    [Fact]
    public void SheetsAreFamiliesAndOtherSheetsAreSaid()
    {
        using var book = new Book(("Brackets", Rows("K-1", "30", "1.5")), ("Notes", Row(1, ["any words"])));
        var outcome = CatalogImporter.From(book.Path);
        using var store = outcome.Value!;
        var bracket = Assert.Single(store.Load().Brackets);
        Assert.Equal((30m, 1.5, 2), (bracket.UnitPrice, bracket.MaxModuleAreaM2, bracket.PriceBreaks.Length));
        var note = Assert.Single(outcome.Diagnostics, d => d.Code == "TK614");
        Assert.Equal((Severity.Note, "Notes"), (note.Severity, note.Place.Sheet));
        Assert.Contains(outcome.Diagnostics, d => d.Code == "TK609" && d.Message.Contains("poles", StringComparison.Ordinal));
    }

    [Fact]
    public void NumbersHeldAsTextAreReadAndSaidOncePerColumn()
    {
        using var book = new Book(("brackets", Rows("K-1", "'30,50", "'1,5") + Row(3, ["K-2", "Bracket", "'31,25", "USD", "'1,6", "10", "45", ""])));
        var outcome = CatalogImporter.From(book.Path);
        using var store = outcome.Value!;
        Assert.Equal([1.5, 1.6], store.Load().Brackets.Select(b => b.MaxModuleAreaM2));
        Assert.Equal([30.5m, 31.25m], store.Load().Brackets.Select(b => b.UnitPrice));
        var warnings = outcome.Diagnostics.Where(d => d.Code == "TK615").ToList();
        Assert.Equal(["max_module_area_m2", "unit_price"], warnings.Select(w => w.Place.Column));
        Assert.Contains("2 cell(s)", warnings[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ABadCellIsNamedBySheetAndRow()
    {
        using var book = new Book(("brackets", Rows("K-1", "'thirty", "1.5")));
        var outcome = CatalogImporter.From(book.Path);
        Assert.Null(outcome.Value);
        var error = Assert.Single(outcome.Diagnostics, d => d.Code == "TK604");
        Assert.Equal(("brackets", 2, "unit_price"), (error.Place.Sheet, error.Place.Row, error.Place.Column));
    }

    [Fact]
    public void AMissingOrForeignWorkbookIsSaid()
    {
        Assert.Equal("TK601", Assert.Single(Catalogs.Open("no-such-book.xlsx").Diagnostics).Code);
        using var book = new Book(("Notes", Row(1, ["any words"])));
        Assert.Contains(Catalogs.Open(book.Path).Diagnostics, d => d.Code == "TK601");
        File.WriteAllText(book.Path, "no workbook");
        Assert.Equal("TK103", Assert.Single(Catalogs.Open(book.Path).Diagnostics).Code);
    }

    private static string Rows(string code, string price, string area) => Row(1, Head) + Row(2, [code, "Bracket", price, "USD", area, "10", "45", "50:28.5;100:27"]);

    /// <summary>A row; what reads as a number is one, unless it begins with an apostrophe.</summary>
    private static string Row(int row, string[] cells) =>
        FormattableString.Invariant($"<row r=\"{row}\">") + string.Concat(cells.Select((c, i) => Cell((char)('A' + i), row, c))) + "</row>";

    private static string Cell(char column, int row, string text) =>
        double.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out _)
            ? FormattableString.Invariant($"<c r=\"{column}{row}\"><v>{text}</v></c>")
            : FormattableString.Invariant($"<c r=\"{column}{row}\" t=\"inlineStr\"><is><t>{text.TrimStart('\'')}</t></is></c>");

    private sealed class Book : IDisposable
    {
        private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("catalog-");

        public Book(params (string Sheet, string Rows)[] sheets) => File.WriteAllBytes(Path, TestWorkbook.Xlsx(sheets));

        public string Path => System.IO.Path.Combine(folder.FullName, "parts.xlsx");

        public void Dispose() => folder.Delete(recursive: true);
    }
}

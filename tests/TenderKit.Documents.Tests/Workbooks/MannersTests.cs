using System.Globalization;
using System.Text.RegularExpressions;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Workbooks;

/// <summary>Every sheet of every workbook: how it prints, what may be changed, where its links lead, whether its text fits.</summary>
public partial class MannersTests
{
    private const double DigitsOfGap = 0.4;

    private static readonly TenderDesign Design = Full();
    private static readonly BillOfQuantities Bill = BillBuilder.Build(Design).Value!;

    public static TheoryData<string> Kinds => ["price", "calculation", "unpriced"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_sheet_prints_on_A4_one_page_wide_with_reference_and_page_numbers(string kind) => EachSheet(kind, (name, sheet, _) =>
    {
        var setup = sheet.GetFirstChild<PageSetup>()!;
        Assert.Equal((9u, 1u, 0u), (setup.PaperSize!.Value, setup.FitToWidth!.Value, setup.FitToHeight!.Value));
        Assert.True(sheet.GetFirstChild<SheetProperties>()!.PageSetupProperties!.FitToPage!.Value);
        var notes = sheet.GetFirstChild<HeaderFooter>()!;
        Assert.Contains(Design.Tender.Head.Reference, notes.OddHeader!.Text, StringComparison.Ordinal);
        Assert.Contains("Page &P of &N", notes.OddFooter!.Text, StringComparison.Ordinal);
        Assert.True(sheet.Descendants<Column>().Sum(c => c.Width!.Value) <= 126 || setup.Orientation!.Value == OrientationValues.Landscape, name + " is too wide for a page that stands");
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_sheet_is_protected_without_a_password_and_only_its_inputs_are_open(string kind) => EachSheet(kind, (name, sheet, styles) =>
    {
        var protection = sheet.GetFirstChild<SheetProtection>()!;
        Assert.True(protection.Sheet!.Value);
        Assert.Null(protection.Password);
        Assert.Null(protection.HashValue);
        var validated = sheet.Descendants<DataValidation>().SelectMany(v => (v.SequenceOfReferences?.InnerText ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries)).SelectMany(Cells).ToHashSet(StringComparer.Ordinal);
        foreach (var cell in sheet.Descendants<Cell>())
        {
            var format = (CellFormat)styles.CellFormats!.ChildElements[(int)cell.StyleIndex!.Value];
            var open = format.Protection?.Locked?.Value == false;
            if (open && cell.CellValue is not null) Assert.True(validated.Contains(cell.CellReference!.Value!), $"{name}!{cell.CellReference} may be changed without a limit");
            if (open) Assert.True(cell.CellFormula is null, $"{name}!{cell.CellReference} is a formula that may be changed");
            if (validated.Contains(cell.CellReference!.Value!)) Assert.True(open, $"{name}!{cell.CellReference} has limits and is locked");
        }
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_sheet_longer_than_a_page_repeats_its_headings_and_keeps_them_in_sight(string kind)
    {
        using var document = Open(kind);
        var titles = document.WorkbookPart!.Workbook!.Descendants<DefinedName>().Where(n => n.Name == "_xlnm.Print_Titles").Select(n => (int)n.LocalSheetId!.Value).ToHashSet();
        var number = 0;
        EachSheet(kind, (name, sheet, _) =>
        {
            var rows = sheet.Descendants<Row>().Max(r => r.RowIndex!.Value);
            if (titles.Contains(number)) Assert.NotNull(sheet.Descendants<Pane>().SingleOrDefault());
            else Assert.True(rows < 90, $"{name} has {rows} rows and repeats no headings");
            number++;
        });
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_link_leads_to_a_cell_that_holds_something(string kind)
    {
        var filled = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        EachSheet(kind, (name, sheet, _) => filled.Add(name, [.. sheet.Descendants<Cell>().Where(c => c.InnerText.Length > 0).Select(c => c.CellReference!.Value!)]));
        var links = 0;
        EachSheet(kind, (name, sheet, _) =>
        {
            foreach (var link in sheet.Descendants<Hyperlink>())
            {
                links++;
                var at = link.Location!.Value!.LastIndexOf('!');
                Assert.Contains(link.Location.Value[(at + 1)..], filled[link.Location.Value[..at].Trim('\'').Replace("''", "'", StringComparison.Ordinal)]);
                Assert.Contains(link.Reference!.Value!, filled[name]);
            }
        });
        Assert.True(links > Bill.Schedule.Length + Bill.MakeUp.Length);
    }

    [Fact]
    public void A_bill_item_leads_to_its_kit_and_the_kit_to_its_sites()
    {
        var workbook = Make("price");
        var item = WorkbookText.Find(workbook, "Bill A", "A", "A.2.01", "A");
        using var document = Open("price");
        string Target(string sheet, string from) => PartOf(document, sheet).Worksheet!.Descendants<Hyperlink>().Single(h => h.Reference == from).Location!.Value!;

        var kit = Target("Bill A", item);
        Assert.StartsWith("Quantities!", kit);
        var head = PartOf(document, "Quantities").Worksheet!.Descendants<Hyperlink>().First();
        Assert.StartsWith("Sites!", head.Location!.Value);
        Assert.StartsWith("Quantities!", Target("Sites", WorkbookText.Find(workbook, "Sites", "B", "S-01", "E")));
    }

    [Theory]
    [InlineData("price", "Order_date", "Gangs", "Contingency", "Tax", "Grand_total")]
    [InlineData("calculation", "Order_date", "Shipping", "Contingency", "Freight", "Grand_total")]
    public void Inputs_and_totals_have_names(string kind, params string[] names)
    {
        using var document = Open(kind);
        var defined = document.WorkbookPart!.Workbook!.Descendants<DefinedName>().Select(n => n.Name!.Value!).ToArray();

        Assert.All(names, name => Assert.Contains(defined, d => d == name || d.EndsWith("_" + char.ToLowerInvariant(name[0]) + name[1..], StringComparison.Ordinal)));
        Assert.Equal(defined.Where(d => d[0] != '_').Distinct(StringComparer.OrdinalIgnoreCase).Count(), defined.Count(d => d[0] != '_'));
        Assert.All(defined, d => Assert.DoesNotMatch(LooksLikeACell(), d));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Numbers_fit_their_columns(string kind) => EachSheet(kind, (name, sheet, styles) =>
    {
        var formats = styles.NumberingFormats!.Elements<NumberingFormat>().ToDictionary(f => f.NumberFormatId!.Value, f => f.FormatCode!.Value!);
        var widths = sheet.Descendants<Column>().Select(c => c.Width!.Value).ToArray();
        foreach (var cell in sheet.Descendants<Cell>().Where(c => c.CellValue is not null))
        {
            var style = (CellFormat)styles.CellFormats!.ChildElements[(int)cell.StyleIndex!.Value];
            Assert.False(formats.GetValueOrDefault(style.NumberFormatId!.Value, "").Contains(".#", StringComparison.Ordinal), $"{name}!{cell.CellReference} would print a bare point after a whole number");
            if (style.Alignment?.TextRotation is not null) continue;
            var font = styles.Fonts!.Elements<Font>().ElementAt((int)style.FontId!.Value);
            var digits = Shown(double.Parse(cell.CellValue!.Text, CultureInfo.InvariantCulture), formats.GetValueOrDefault(style.NumberFormatId!.Value, "General")).Length * (font.FontSize!.Val!.Value / 10) * (font.Bold is null ? 1 : 1.1);
            var width = widths[ColumnOf(cell.CellReference!.Value!) - 1];
            Assert.True(digits + DigitsOfGap <= width, $"{name}!{cell.CellReference}: {digits:0.0} digits in a column of {width}");
        }
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void No_word_is_broken_and_no_number_touches_a_word(string kind) => EachSheet(kind, (name, sheet, styles) =>
    {
        var widths = sheet.Descendants<Column>().Select(c => c.Width!.Value).ToArray();
        var merged = sheet.Descendants<MergeCell>().Select(m => m.Reference!.Value!.Split(':')[0]).ToHashSet(StringComparer.Ordinal);
        foreach (var row in sheet.Descendants<Row>())
        {
            Cell? left = null;
            foreach (var cell in row.Elements<Cell>())
            {
                var style = (CellFormat)styles.CellFormats!.ChildElements[(int)cell.StyleIndex!.Value];
                if (cell.InlineString is { } words && !merged.Contains(cell.CellReference!.Value!) && style.Alignment?.WrapText?.Value == true)
                {
                    var longest = words.InnerText.Split(' ', '-', ',', '.', '_').Max(w => w.Length);
                    Assert.True(longest / 1.13 <= widths[ColumnOf(cell.CellReference!.Value!) - 1], $"{name}!{cell.CellReference} breaks a word of {longest} letters: {words.InnerText}");
                }

                if (cell.InlineString is not null && left?.CellValue is not null && style.Alignment?.Horizontal is null)
                    Assert.Fail($"{name}!{left.CellReference} touches {cell.CellReference} '{cell.InnerText}'");
                left = cell;
            }
        }
    });

    /// <summary>Words that are not wrapped may run over empty cells to the right, never over a filled one or off the page.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Words_fit_their_cells(string kind) => EachSheet(kind, (name, sheet, styles) =>
    {
        var widths = sheet.Descendants<Column>().Select(c => c.Width!.Value).ToArray();
        foreach (var row in sheet.Descendants<Row>())
        {
            var cells = row.Elements<Cell>().ToDictionary(c => ColumnOf(c.CellReference!.Value!));
            foreach (var (column, cell) in cells.Where(c => c.Value.InlineString is not null))
            {
                var style = (CellFormat)styles.CellFormats!.ChildElements[(int)cell.StyleIndex!.Value];
                if (style.Alignment?.WrapText?.Value == true || style.Alignment?.TextRotation is not null) continue;
                var room = widths[column - 1];
                for (var c = column + 1; c <= widths.Length && !(cells.TryGetValue(c, out var next) && next.InnerText.Length > 0); c++) room += widths[c - 1];
                var size = styles.Fonts!.Elements<Font>().ElementAt((int)style.FontId!.Value).FontSize!.Val!.Value / 10;
                Assert.True(cell.InnerText.Length * size / 1.13 <= room, $"{name}!{cell.CellReference} '{cell.InnerText}' needs {cell.InnerText.Length * size / 1.13:0.0} of {room}");
            }
        }
    });

    [Theory]
    [InlineData("=HYPERLINK(\"http://x\",\"y\")")]
    [InlineData("+1+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1+1")]
    public void No_text_of_any_input_becomes_a_formula(string text)
    {
        var head = Design.Tender.Head with { Title = text, Employer = text, Bidder = text, Reference = text };
        var sites = Design.Sites.Select(s => s with { Site = s.Site with { Name = text, District = text } });
        var design = Design with { Tender = Design.Tender with { Head = head }, Sites = [.. sites] };
        var bill = BillBuilder.Build(design).Value!;
        foreach (var workbook in new[] { PriceWorkbook.Make(design, bill), CalculationWorkbook.Make(design, bill), UnpricedSchedule.Make(design, bill) })
        {
            using var stream = new MemoryStream(workbook);
            using var document = SpreadsheetDocument.Open(stream, false);
            foreach (var cell in document.WorkbookPart!.WorksheetParts.SelectMany(p => p.Worksheet!.Descendants<Cell>()))
            {
                if (cell.InlineString is not null) Assert.Null(cell.CellFormula);
                else if (cell.CellFormula is { } formula) Assert.Matches(OurFormulas(), formula.Text);
            }
        }
    }

    private static TenderDesign Full()
    {
        var small = HandMadeDesign.Small();
        return small with
        {
            Tender = small.Tender with { Village = new(640, "Kisanora lighting fund", 0.4m) },
            Choices = [new ChoiceExplanation("K1", "S1", 1234567, 1000000, 1050000, ["Battery: B x 2 in place of A x 1"], [new DemandPrice("autonomy 2 nights in place of 3", 900000, -100000)])],
            KitCounts = [new(1, null, KitCountProof.AtLeast), new(2, 12345678, KitCountProof.AtLeast), new(3, 11345678, KitCountProof.Least)],
        };
    }

    private static byte[] Make(string kind) => kind switch
    {
        "price" => PriceWorkbook.Make(Design, Bill),
        "calculation" => CalculationWorkbook.Make(Design, Bill),
        _ => UnpricedSchedule.Make(Design, Bill),
    };

    private static SpreadsheetDocument Open(string kind) => SpreadsheetDocument.Open(new MemoryStream(Make(kind)), false);

    private static void EachSheet(string kind, Action<string, Worksheet, Stylesheet> check)
    {
        using var document = Open(kind);
        foreach (var sheet in document.WorkbookPart!.Workbook!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Sheet>())
        {
            check(sheet.Name!.Value!, ((WorksheetPart)document.WorkbookPart.GetPartById(sheet.Id!.Value!)).Worksheet!, document.WorkbookPart.WorkbookStylesPart!.Stylesheet!);
        }
    }

    private static WorksheetPart PartOf(SpreadsheetDocument document, string name) =>
        (WorksheetPart)document.WorkbookPart!.GetPartById(document.WorkbookPart.Workbook!.Descendants<DocumentFormat.OpenXml.Spreadsheet.Sheet>().Single(s => s.Name == name).Id!.Value!);

    private static IEnumerable<string> Cells(string range)
    {
        var ends = range.Split(':');
        var letters = new string([.. ends[0].TakeWhile(char.IsAsciiLetter)]);
        int Row(string address) => int.Parse(address.AsSpan(letters.Length), CultureInfo.InvariantCulture);
        return Enumerable.Range(Row(ends[0]), Row(ends[^1]) - Row(ends[0]) + 1).Select(r => letters + r.ToString(CultureInfo.InvariantCulture));
    }

    private static int ColumnOf(string address) => address.TakeWhile(char.IsAsciiLetter).Aggregate(0, (n, c) => (n * 26) + c - 'A' + 1);

    /// <summary>About what a spreadsheet program prints: quoted words, thousands, decimals, dates.</summary>
    private static string Shown(double value, string format)
    {
        var section = format.Split(';') is { Length: > 1 } sections ? sections[value > 0 ? 0 : value < 0 || sections.Length < 3 ? 1 : 2] : format;
        if (section.Contains("yyyy", StringComparison.Ordinal)) return "2027-01-01";
        if (section == "General") return value.ToString("G10", CultureInfo.InvariantCulture);
        return value.ToString(Condition().Replace(section, ""), CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"\[[^\]]*\]")]
    private static partial Regex Condition();

    [GeneratedRegex("^[A-Za-z]{1,3}[0-9]+$")]
    private static partial Regex LooksLikeACell();

    /// <summary>References, numbers, operators and the functions of the ledger; no text, no other call.</summary>
    [GeneratedRegex("^(?:ROUND|ROUNDUP|SUM|MAX|MIN|IF|'[^']*'!|[A-Za-z]+!|[A-Z]{1,2}[0-9]+|[0-9.]+|[-+*/(),:<>=])+$")]
    private static partial Regex OurFormulas();
}

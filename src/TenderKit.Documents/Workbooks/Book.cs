using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Documents.Languages;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Settings;
using Xlsx = DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>
/// One workbook over one ledger. Every formula is printed from an expression of the ledger and carries the value the ledger gives it,
/// so a viewer that does not calculate shows the same figures as one that does.
/// </summary>
internal sealed class Book(TenderHead head, string title, Ledger ledger, Wording? wording = null)
{
    private const int LongestSheetName = 31;

    private readonly LedgerBuilder _ledger = new(ledger);
    private readonly Dictionary<CellId, Expression> _expressions = ledger.Cells.ToDictionary(c => c.Key, c => c.Value);
    private readonly Dictionary<CellId, Address> _homes = [];
    private readonly Dictionary<(string Sheet, CellId Cell), Address> _mirrors = [];
    private readonly List<Sheet> _sheets = [];
    private IReadOnlyDictionary<CellId, decimal>? _values;

    /// <summary>Says the texts of this workbook in its language.</summary>
    public Wording Wording { get; } = wording ?? Wording.In(head.Language, Echoes.Of(head));

    public TenderHead Head => head;

    public string Title => Wording.Say(title);

    public Sheet Add(string name, bool landscape = false)
    {
        var sheet = new Sheet(this, FreeName(Wording.Say(name))) { Landscape = landscape };
        _sheets.Add(sheet);
        return sheet;
    }

    public void Bind(CellId cell, Address address)
    {
        if (!_homes.TryAdd(cell, address)) throw new InvalidOperationException($"cell {cell} has two homes");
    }

    public void Mirror(CellId cell, Address address) => _mirrors.TryAdd((address.Sheet, cell), address);

    public CellId Own(string name, Expression expression)
    {
        var cell = _ledger.Add(name, expression);
        _expressions.Add(cell, expression);
        return cell;
    }

    public bool IsLiteral(CellId cell) => _expressions[cell] is Literal;

    public Expression ExpressionOf(CellId cell) => _expressions[cell];

    /// <summary>Value a cell has as the workbook is issued.</summary>
    public decimal ValueOf(CellId cell) => (_values ??= LedgerValues.Evaluate(ledger))[cell];

    public Address HomeOf(CellId cell) =>
        _homes.TryGetValue(cell, out var home) ? home : throw new InvalidOperationException($"cell {cell} has no place in the workbook");

    /// <summary>Where a formula of a sheet finds a cell: at home where that is the same sheet, else where it is shown on the sheet, else at home.</summary>
    public Address Nearest(string sheet, CellId cell) =>
        HomeOf(cell) is var home && home.Sheet != sheet && _mirrors.TryGetValue((sheet, cell), out var near) ? near : home;

    public int NumberOf(Sheet sheet) => _sheets.IndexOf(sheet) + 1;

    public byte[] Save()
    {
        var values = LedgerValues.Evaluate(_ledger.Build());
        var styles = new StyleTable();
        using var stream = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var workbook = document.AddWorkbookPart();
            for (var i = 0; i < _sheets.Count; i++)
            {
                SheetXml.Write(workbook.AddNewPart<WorksheetPart>(RelationId(i)), _sheets[i], this, values, styles);
            }

            workbook.AddNewPart<WorkbookStylesPart>("rStyles").Stylesheet = styles.Build();
            workbook.Workbook = BuildWorkbook();
            document.ChangeIdOfPart(workbook, "rBook");
            document.ChangeIdOfPart(PackageFacts.Write(document, head, Title), "rFacts");
        }

        stream.Position = 0;
        return PlainZip.Repack(stream);
    }

    private Workbook BuildWorkbook() => new(
        new BookViews(new WorkbookView { ActiveTab = 0, WindowWidth = 24000, WindowHeight = 14000 }),
        new Xlsx.Sheets(_sheets.Select((s, i) => new Xlsx.Sheet { Name = s.Name, SheetId = (uint)i + 1, Id = RelationId(i) })),
        new DefinedNames([.. _sheets.SelectMany(NamesOf), .. InputNames.Of(_homes)]),
        new CalculationProperties { CalculationId = 0, FullCalculationOnLoad = true });

    private static IEnumerable<DefinedName> NamesOf(Sheet sheet, int index)
    {
        var quoted = Address.Quoted(sheet.Name);
        var last = Address.ColumnName(Math.Max(1, sheet.Widths.Length));
        yield return new DefinedName(string.Create(CultureInfo.InvariantCulture, $"{quoted}!$A$1:${last}${sheet.LastRow}")) { Name = "_xlnm.Print_Area", LocalSheetId = (uint)index };
        if (sheet.RepeatedRows is not { } rows) yield break;
        yield return new DefinedName(string.Create(CultureInfo.InvariantCulture, $"{quoted}!${rows.First}:${rows.Last}")) { Name = "_xlnm.Print_Titles", LocalSheetId = (uint)index };
    }

    private static string RelationId(int index) => string.Create(CultureInfo.InvariantCulture, $"rSheet{index + 1}");

    private string FreeName(string wanted)
    {
        var clean = new string([.. wanted.Select(c => "[]:*?/\\'".Contains(c, StringComparison.Ordinal) || char.IsControl(c) ? '-' : c)]).Trim();
        if (clean.Length > LongestSheetName) clean = clean[..LongestSheetName];
        var name = clean;
        for (var i = 2; _sheets.Any(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase)); i++)
        {
            var suffix = string.Create(CultureInfo.InvariantCulture, $" {i}");
            name = clean[..Math.Min(clean.Length, LongestSheetName - suffix.Length)] + suffix;
        }

        return name;
    }
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Forms;

/// <summary>Reads the lines of the employer's form that ask for a rate, and the user's list of what answers them.</summary>
public static class PriceFormReader
{
    /// <param name="settings">Where the form holds what.</param>
    /// <param name="bytes">Bytes of the form.</param>
    /// <param name="tables">Cells of the form.</param>
    /// <param name="list">The list of lines, or null.</param>
    public static Outcome<PriceForm> Read(PriceFormSettings settings, byte[] bytes, TableFile tables, TableFile? list)
    {
        var problems = new List<Diagnostic>();
        var lines = settings.Sheets.SelectMany(s => LinesOf(s, tables, problems)).ToImmutableArray();
        if (lines.IsEmpty && problems.Count == 0)
            problems.Add(Diagnostic.Error("TK712", "the form holds no line with a description and a quantity in the columns named; check price_form in the tender", new Place(tables.File)));
        return problems.Exists(p => p.Severity == Severity.Error)
            ? Outcome.None<PriceForm>(problems)
            : Outcome.Of(new PriceForm(settings, [.. bytes], lines, GivenIn(list)), problems);
    }

    private static IEnumerable<FormLine> LinesOf(PriceFormSheet sheet, TableFile tables, List<Diagnostic> problems)
    {
        if (tables.Tables.FirstOrDefault(t => string.Equals(t.Sheet, sheet.Sheet, StringComparison.OrdinalIgnoreCase)) is not { } table)
        {
            problems.Add(Diagnostic.Error(
                "TK711", $"the form has no sheet '{sheet.Sheet}'; it has {string.Join(", ", tables.Tables.Select(t => t.Sheet))}", new Place(tables.File, sheet.Sheet)));
            yield break;
        }

        foreach (var row in table.Rows.Where(r => r.Length > 0 && r[0].Row >= sheet.FirstRow && r[0].Row <= (sheet.LastRow ?? int.MaxValue)))
        {
            if (LineOf(sheet, table, row) is { } line) yield return line;
        }
    }

    /// <summary>A row with a description and a quantity, or with a unit that means the whole; titles, totals and blank rows are none.</summary>
    private static FormLine? LineOf(PriceFormSheet sheet, Table table, ImmutableArray<Cell> row)
    {
        string Text(int? column) => column is { } c && c <= row.Length ? row[c - 1].Text : "";
        var description = Text(sheet.DescriptionColumn);
        var unit = Text(sheet.UnitColumn);
        if (description.Length == 0 || ItemWords.Read(description).Kind == ItemKind.Total) return null;
        var quantity = QuantityOf(sheet.QuantityColumn <= row.Length ? row[sheet.QuantityColumn - 1] : default);
        if (quantity is null && FormUnits.IsSum(unit)) quantity = 1;
        return quantity is { } q and > 0 ? new FormLine(table.Sheet!, row[0].Row, Text(sheet.ItemColumn), description, unit, q, sheet.Lot) : null;
    }

    private static decimal? QuantityOf(Cell cell)
    {
        if (cell.Number is { } number) return Whole(number);
        return string.IsNullOrEmpty(cell.Text) ? null : UserNumber.Read(cell.Text, QuantityKind.Number).Value is { } read ? Whole(read) : null;
    }

    private static decimal? Whole(double value) => Math.Abs(value) < 1e12 ? decimal.Round((decimal)value, 6) : null;

    /// <summary>Rows of the list: sheet, row, ours (codes of our bill joined with '+').</summary>
    private static ImmutableDictionary<(string Sheet, int Row), ImmutableArray<string>> GivenIn(TableFile? list)
    {
        var given = ImmutableDictionary.CreateBuilder<(string, int), ImmutableArray<string>>();
        if (list?.Tables.FirstOrDefault(t => t.Rows.Length > 0) is not { } table) return given.ToImmutable();
        var heads = table.Rows[0].Select(c => c.Text.Trim().ToUpperInvariant()).ToList();
        var (sheet, row, ours) = (heads.IndexOf("SHEET"), heads.IndexOf("ROW"), heads.IndexOf("OURS"));
        if (sheet < 0 || row < 0 || ours < 0) return given.ToImmutable();
        foreach (var cells in table.Rows.Skip(1))
        {
            if (!int.TryParse(cells[row].Text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || cells[ours].IsEmpty) continue;
            given[(cells[sheet].Text, number)] = [.. cells[ours].Text.Split('+', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        }

        return given.ToImmutable();
    }
}

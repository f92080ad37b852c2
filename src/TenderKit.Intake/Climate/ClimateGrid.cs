using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>The twelve months of each quantity, months down or months across.</summary>
internal sealed class ClimateGrid
{
    private const double FillValue = -900;
    private readonly Table table;
    private readonly List<Diagnostic> found;

    private ClimateGrid(Table table, List<Diagnostic> found) => (this.table, this.found) = (table, found);

    /// <summary>Columns that are complete, or null without a readable heading; what is wrong goes to <paramref name="found"/>.</summary>
    public static SortedDictionary<ClimateQuantity, ImmutableArray<double>>? Read(Table table, List<Diagnostic> found) => new ClimateGrid(table, found).Read();

    private SortedDictionary<ClimateQuantity, ImmutableArray<double>>? Read()
    {
        var rows = table.Rows.Where(r => r.Any(c => !c.IsEmpty) && ClimateSettings.Line(r) is null).ToList();
        var down = rows.FindIndex(r => r.Any(c => ClimateColumn.Of(c.Text) is not null) && r.All(c => MonthNames.Of(c.Text) is null));
        var across = rows.FindIndex(r => r.Count(c => MonthNames.Of(c.Text) is not null) >= 2 && r.All(c => ClimateColumn.Of(c.Text) is null));
        var turned = across >= 0 && rows.Skip(across + 1).Any(r => ClimateColumn.Of(r.First(c => !c.IsEmpty).Text) is not null);
        if (turned) return Gather(rows.Skip(across + 1).Select(r => (Heading: r.First(c => !c.IsEmpty), Values: Across(rows[across], r))));
        if (down >= 0) return Gather(rows[down].Where(c => !c.IsEmpty).Select(h => (Heading: h, Values: Down(rows, down, h))));
        found.Add(Diagnostic.Error("TK131", "no heading row was found: write 'month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c' above the twelve months", new Place(table.File, table.Sheet)));
        return null;
    }

    private static IEnumerable<(Cell Month, Cell Value)> Across(ImmutableArray<Cell> months, ImmutableArray<Cell> row) => months.Zip(row);

    private static IEnumerable<(Cell Month, Cell Value)> Down(List<ImmutableArray<Cell>> rows, int heading, Cell column) =>
        rows.Skip(heading + 1).Select(r => (r.First(c => !c.IsEmpty), r[column.Column - rows[heading][0].Column]));

    private SortedDictionary<ClimateQuantity, ImmutableArray<double>> Gather(IEnumerable<(Cell Heading, IEnumerable<(Cell Month, Cell Value)> Values)> series)
    {
        var columns = new SortedDictionary<ClimateQuantity, ImmutableArray<double>>();
        foreach (var (heading, values) in series)
        {
            if (ClimateColumn.Of(heading.Text) is not { } column) continue;
            if (columns.ContainsKey(column.Quantity)) Error("TK135", $"'{heading.Text}' gives {Name(column)} a second time; keep one", heading);
            else if (column is { Quantity: ClimateQuantity.Irradiation, Unit: IrradiationUnit.Missing }) Error("TK132", $"the heading '{heading.Text}' states no unit that is read here; write irradiation_kwh_m2_day, irradiation_mj_m2_day, irradiation_wh_m2_day or irradiation_kwh_m2_month", heading);
            else if (Months(column, heading, values) is { } months) columns[column.Quantity] = months;
        }

        if (!columns.ContainsKey(ClimateQuantity.Irradiation) && !found.Any(d => d.Severity == Severity.Error))
        {
            found.Add(Diagnostic.Error("TK132", "there is no irradiation column; add irradiation_kwh_m2_day", new Place(table.File, table.Sheet)));
        }

        return columns;
    }

    private ImmutableArray<double>? Months(ClimateColumn column, Cell heading, IEnumerable<(Cell Month, Cell Value)> values)
    {
        var months = new double?[12];
        var refused = new bool[12];
        foreach (var (monthCell, cell) in values)
        {
            if (MonthNames.Of(monthCell.Text) is not { } month || cell.IsEmpty) continue;
            if (months[month - 1] is not null) Error("TK135", $"{MonthNames.Name(month)} stands twice; keep one", cell);
            else if (Value(column, cell) is { } value) months[month - 1] = column.InBase(value, MonthDays.Count(month));
            else refused[month - 1] = true;
        }

        var missing = Enumerable.Range(1, 12).Where(m => months[m - 1] is null && !refused[m - 1]).Select(MonthNames.Name).ToList();
        if (missing.Count == 12) return Nothing(column, heading);
        if (missing.Count > 0) Error("TK133", $"{Name(column)} lacks {string.Join(", ", missing)}; all twelve months are needed", heading);
        return months.All(m => m is not null) ? [.. months.Select(m => m!.Value)] : null;
    }

    /// <summary>A heading over no values: an error for irradiation, for a temperature the same as no column.</summary>
    private ImmutableArray<double>? Nothing(ClimateColumn column, Cell heading)
    {
        if (column.Quantity == ClimateQuantity.Irradiation) Error("TK133", "irradiation holds no month; write January to December, or 1 to 12, in the first column", heading);
        return null;
    }

    private double? Value(ClimateColumn column, Cell cell)
    {
        // only a day's Wh and a month's MJ reach a thousand: elsewhere a comma is a decimal comma
        var mark = column.Unit is IrradiationUnit.WhADay or IrradiationUnit.MjAMonth ? DecimalMark.Unknown : DecimalMark.Comma;
        var reading = UserNumber.Read(cell, QuantityKind.Number, cell.Text.Contains('.') ? DecimalMark.Point : mark);
        if (reading.Value is not { } value) Error("TK134", $"{Name(column)} '{cell.Text}' {reading.Problem}", cell);
        else if (value <= FillValue) Error("TK134", $"{Name(column)} {cell.Text} is a mark for 'no data'; write the value", cell);
        else if (column.Quantity == ClimateQuantity.Irradiation && value < 0) Error("TK134", $"{Name(column)} {cell.Text} is negative; write the value", cell);
        else return value;
        return null;
    }

    private void Error(string code, string message, Cell cell) =>
        found.Add(Diagnostic.Error(code, message, new Place(table.File, table.Sheet, cell.Row, Cell.ColumnName(cell.Column))));

    private static string Name(ClimateColumn column) => column.Quantity switch
    {
        ClimateQuantity.Irradiation => "irradiation",
        ClimateQuantity.MeanC => "mean temperature",
        ClimateQuantity.DailyMaxC => "daily maximum temperature",
        _ => "daily minimum temperature",
    };
}

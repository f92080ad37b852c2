using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks;

/// <summary>How a bar of a chart in cells is drawn; each kind differs in grey and pattern, so that a black-and-white print keeps it.</summary>
internal enum BarShade
{
    Light,
    Dark,
    Late,
}

/// <summary>Cells of a chart: a number of <paramref name="Least"/> or more is drawn as a bar.</summary>
/// <param name="After">Only in columns whose heading lies beyond this cell.</param>
internal sealed record BarArea(int FirstRow, int LastRow, int FirstColumn, int LastColumn, int HeaderRow, int Least, BarShade Shade, CellId? After = null);

/// <summary>Rows under headings that can be filtered as one table.</summary>
internal sealed record TableArea(string Name, int HeaderRow, int LastRow, int LastColumn);

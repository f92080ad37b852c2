using System.Collections.Immutable;

namespace TenderKit.Intake.Tables;

/// <summary>One cell as text with its address; numbers and dates are in invariant text, empty cells are the empty text.</summary>
/// <param name="Text">Text, trimmed.</param>
/// <param name="Row">1-based row as the user's program counts it.</param>
/// <param name="Column">1-based column.</param>
/// <param name="Number">The number, where the file itself holds a number and not text.</param>
public readonly record struct Cell(string Text, int Row, int Column, double? Number = null)
{
    public bool IsEmpty => Text.Length == 0;

    /// <summary>Address such as B7.</summary>
    public string Address => ColumnName(Column) + Row.ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Letters of a 1-based column: 1 is A, 27 is AA.</summary>
    public static string ColumnName(int column)
    {
        var letters = "";
        for (var c = column; c > 0; c = (c - 1) / 26) letters = (char)('A' + ((c - 1) % 26)) + letters;
        return letters;
    }
}

/// <summary>A rectangle of cells, all four bounds 1-based and included.</summary>
public readonly record struct CellRange(int FirstRow, int FirstColumn, int LastRow, int LastColumn)
{
    /// <summary>Address such as C5:D9.</summary>
    public string Address => $"{new Cell("", FirstRow, FirstColumn).Address}:{new Cell("", LastRow, LastColumn).Address}";
}

/// <summary>One sheet (or csv file) as rows of cells; every row has the same number of cells; blank rows are kept.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Sheet">Sheet name; null for csv.</param>
public sealed record Table(string File, string? Sheet, ImmutableArray<ImmutableArray<Cell>> Rows)
{
    /// <summary>Merged cells; only the first cell of each holds its text.</summary>
    public ImmutableArray<CellRange> Merged { get; init; } = [];

    /// <summary>1-based columns the user does not see.</summary>
    public ImmutableArray<int> HiddenColumns { get; init; } = [];

    /// <summary>1-based rows the user does not see, folded away or filtered out.</summary>
    public ImmutableArray<int> HiddenRows { get; init; } = [];

    /// <summary>Whether the whole sheet is hidden.</summary>
    public bool IsHidden { get; init; }
}

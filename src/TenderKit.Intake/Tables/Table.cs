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

/// <summary>One sheet (or csv file) as rows of cells; every row has the same number of cells; blank rows are kept.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Sheet">Sheet name; null for csv.</param>
public sealed record Table(string File, string? Sheet, ImmutableArray<ImmutableArray<Cell>> Rows);

using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Columns;

/// <summary>One column of a table as understood.</summary>
/// <param name="Column">1-based column.</param>
/// <param name="Heading">Heading as written.</param>
/// <param name="Meaning">What it means, or null when unknown.</param>
/// <param name="Unit">Unit in the heading, or null.</param>
/// <param name="Score">Likeness of heading and synonym: 1 is the same words, 0 nothing alike.</param>
/// <param name="Sample">First filled cell below the heading.</param>
public sealed record MappedColumn(int Column, string Heading, ColumnMeaning? Meaning, string? Unit, double Score, string Sample)
{
    /// <summary>Whether the user does not see the column.</summary>
    public bool IsHidden { get; init; }

    /// <summary>Whether the meaning was saved or written by hand, and not found.</summary>
    public bool IsConfirmed { get; init; }
}

/// <summary>A table with its header row and columns understood.</summary>
/// <param name="HeaderRow">Row of the headings, as the user's program counts it; null when none was found.</param>
/// <param name="FirstDataRow">First row below the headings.</param>
public sealed record ColumnMapping(
    Table Table, int? HeaderRow, int FirstDataRow, ImmutableArray<MappedColumn> Columns, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>Sum of the scores of the columns understood: how well the table fits the meanings.</summary>
    public double Fit => Columns.Where(c => c.Meaning is not null).Sum(c => c.Score);

    /// <summary>Rows below the headings, blank ones included.</summary>
    public IEnumerable<ImmutableArray<Cell>> DataRows => HeaderRow is null ? [] : Table.Rows.Where(r => r.Length > 0 && r[0].Row >= FirstDataRow);

    public MappedColumn? Of(string meaningId) => Columns.FirstOrDefault(c => c.Meaning?.Id == meaningId);
}

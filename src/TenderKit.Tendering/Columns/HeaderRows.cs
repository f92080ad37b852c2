using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;

namespace TenderKit.Tendering.Columns;

/// <summary>Joins the rows of a header: a group heading above its parts, and a row of units below.</summary>
public static class HeaderRows
{
    private const int MostRowsBelow = 2;

    /// <summary>Headings of the columns, and the index of the first row below them.</summary>
    /// <param name="index">0-based row the header starts in.</param>
    public static (ImmutableArray<string> Headings, int FirstDataIndex) Join(Table table, int index, IReadOnlyList<ColumnMeaning> meanings)
    {
        var headings = table.Rows[index].Select(c => c.Text).ToImmutableArray();
        var next = index + 1;
        for (; next < table.Rows.Length && next <= index + MostRowsBelow; next++)
        {
            if (Joined(headings, table.Rows[next], meanings) is not { } joined) break;
            headings = joined;
        }

        return (headings, next);
    }

    /// <summary>Whether a cell looks like a heading and not like data.</summary>
    internal static bool IsHeading(Cell cell) => !cell.IsEmpty && cell.Number is null && cell.Text.Length <= 80 && !char.IsDigit(cell.Text[0]);

    private static ImmutableArray<string>? Joined(ImmutableArray<string> top, ImmutableArray<Cell> below, IReadOnlyList<ColumnMeaning> meanings)
    {
        var filled = below.Where(c => !c.IsEmpty).ToList();
        if (filled.Count == 0 || filled.Exists(c => !IsHeading(c) && !IsAngleSign(c.Text))) return null;
        if (below.All(c => c.IsEmpty || c.Text == top[c.Column - 1] || IsUnit(c.Text)) && filled.Exists(c => IsUnit(c.Text)))
            return [.. top.Select((t, i) => below[i].IsEmpty || below[i].Text == t ? t : $"{t} ({Bare(below[i].Text)})")];
        var parts = below.Select((c, i) => Part(top[i], c.Text, meanings)).ToList();
        return parts.Exists(p => p.IsGain) ? [.. parts.Select(p => p.Heading)] : null;
    }

    /// <summary>One column: the lower heading where it says more than the upper one, both where they say it together.</summary>
    private static (string Heading, bool IsGain) Part(string top, string below, IReadOnlyList<ColumnMeaning> meanings)
    {
        if (below.Length == 0 || below == top) return (top, false);
        if (top.Length > 0 && AngleParts.IsPart(top, below)) return (top + " " + below, true);
        var (upper, lower) = (Best(top, meanings), Best(below, meanings));
        var both = top.Length == 0 ? lower : Best(top + " " + below, meanings);
        if (lower is { Score: >= 0.95 } && lower.Value.Meaning != upper?.Meaning) return (below, true);
        if (both is { } b && b.Meaning != upper?.Meaning && b.Score > (lower?.Score ?? 0)) return (top + " " + below, true);
        return lower is not null && upper is null ? (below, false) : (top.Length > 0 ? top : below, false);
    }

    private static HeadingFit? Best(string heading, IReadOnlyList<ColumnMeaning> meanings) =>
        heading.Length > 0 && HeadingMatch.Fits(heading, meanings) is [var first, ..] ? first : null;

    private static string Bare(string text) => text.Trim('(', ')', '[', ']', ' ');

    private static bool IsAngleSign(string text) => text is "\u00B0" or "'" or "\"" or "''" or "\u2032" or "\u2033";

    private static bool IsUnit(string text) => Enum.GetValues<QuantityKind>().Any(k => UnitSpellings.IsKnown(k, Bare(text)));
}

using System.Text.RegularExpressions;

namespace TenderKit.Intake.Numbers;

/// <summary>Which sign a file uses before its decimals.</summary>
public enum DecimalMark
{
    Unknown,
    Point,
    Comma,
}

/// <summary>Finds the decimal mark of a file from the numbers that can be read in one way only.</summary>
public static partial class DecimalMarks
{
    /// <summary>The mark all telling numbers agree on; unknown when none tells or they disagree.</summary>
    public static DecimalMark Guess(IEnumerable<string> texts)
    {
        var (commas, points) = (false, false);
        foreach (var text in texts)
        {
            if (!LooksNumeric().IsMatch(text)) continue;
            commas |= OnlyComma().IsMatch(text);
            points |= OnlyPoint().IsMatch(text);
        }

        return (commas, points) switch
        {
            (true, false) => DecimalMark.Comma,
            (false, true) => DecimalMark.Point,
            _ => DecimalMark.Unknown,
        };
    }

    /// <summary>The mark of each column by its own numbers, and that of the whole file where a column does not tell.</summary>
    /// <param name="columns">Texts of each column.</param>
    /// <param name="pasted">Whether a column is filled by an instrument, so that its points tell nothing of how the writer types numbers.</param>
    public static System.Collections.Immutable.ImmutableArray<DecimalMark> OfColumns(IReadOnlyList<IReadOnlyList<string>> columns, Func<int, bool> pasted)
    {
        var typed = Guess(columns.Where((_, i) => !pasted(i)).SelectMany(c => c));
        var file = typed == DecimalMark.Unknown && Guess(columns.SelectMany(c => c)) == DecimalMark.Comma ? DecimalMark.Comma : typed;
        return [.. columns.Select(c => Guess(c) is var own and not DecimalMark.Unknown ? own : file)];
    }

    /// <summary>A number with a mark; other texts say nothing of the decimal mark, and need not be looked at closely.</summary>
    public static bool MayTell(string text) =>
        text.Length > 1 && (char.IsDigit(text[0]) || text[0] is '+' or '-') && text.AsSpan().IndexOfAny('.', ',') > 0;

    [GeneratedRegex(@"^[+-]?\d[\d., ']*\s*\D{0,12}$")]
    private static partial Regex LooksNumeric();

    // 0,3  12,75  1.200,5: not three digits after the comma, or a part before it that starts no thousands
    [GeneratedRegex(@"^[+-]?(?:[\d.' ]*\d,(?:\d{1,2}|\d{4,})|0,\d+|\d{4,},\d+|\d[\d' ]*\.\d{3},\d+)(?![\d,.])")]
    private static partial Regex OnlyComma();

    [GeneratedRegex(@"^[+-]?(?:[\d,' ]*\d\.(?:\d{1,2}|\d{4,})|0\.\d+|\d{4,}\.\d+|\d[\d' ]*,\d{3}\.\d+)(?![\d,.])")]
    private static partial Regex OnlyPoint();
}

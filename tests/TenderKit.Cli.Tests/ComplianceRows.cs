using System.Globalization;
using System.Text.RegularExpressions;

namespace TenderKit.Cli.Tests;

/// <summary>One row of a compliance table as a reader of the page sees it.</summary>
internal sealed record ComplianceRow(string Kit, string Item, string Property, string Required, string Offered, string Margin, string Met);

/// <summary>Puts the rows of the compliance tables together again out of the words of the pages, by where they stand.</summary>
internal static partial class ComplianceRows
{
    /// <summary>Width of what stands in the column of the required values, points.</summary>
    private const double RequiredPt = 52;

    public static IReadOnlyList<ComplianceRow> Of(IReadOnlyList<PdfWord> words) =>
        [.. words.GroupBy(w => w.Page).SelectMany(page => OfPage([.. page.OrderBy(w => w.Top).ThenBy(w => w.Left)]))];

    /// <summary>Numbers of a cell; the first is the value.</summary>
    public static double? Number(string cell) => Figure().Match(cell.Replace('−', '-')) is { Success: true } m
        ? double.Parse(m.Value, NumberStyles.Number, CultureInfo.InvariantCulture) : null;

    public static int Decimals(string cell) => Figure().Match(cell).Value is var n && n.Contains('.', StringComparison.Ordinal) ? n.Length - n.IndexOf('.', StringComparison.Ordinal) - 1 : 0;

    private static IEnumerable<ComplianceRow> OfPage(List<PdfWord> words)
    {
        var start = words.FindIndex(w => w.Text == "Compliance");
        if (start < 0 || words[start + 1].Text != "of" || words[start + 2].Text != "kit") yield break;
        var kit = words[start + 3].Text.TrimEnd(':');
        PdfWord Head(string text) => words.First(w => w.Text == text && w.Top > words[start].Top);
        var (requirement, required, offered, margin, met, basis) = (Head("Requirement"), Head("Required"), Head("Offered"), Head("Margin"), Head("Met"), Head("Basis"));
        var body = words.Where(w => w.Top > required.Top + 2 && w.Top < 790).ToList();
        var tops = body.Where(w => Math.Abs(w.Left - met.Left) < 2 && w.Text is "yes" or "NO").Select(w => w.Top).ToList();
        var item = "";
        for (var i = 0; i < tops.Count; i++)
        {
            var end = i + 1 < tops.Count ? tops[i + 1] - 1 : double.PositiveInfinity;
            var row = body.Where(w => w.Top >= tops[i] - 1 && w.Top < end).ToList();
            if (i + 1 == tops.Count) row = [.. row.Where(w => w.Top < tops[i] + 30)];
            string Cell(Func<PdfWord, bool> inside) => string.Join(' ', row.Where(inside).OrderBy(w => w.Top).ThenBy(w => w.Left).Select(w => w.Text));
            var name = Cell(w => w.Right < requirement.Left - 1);
            if (name.Length > 0) item = name;
            yield return new ComplianceRow(
                kit, item, Cell(w => w.Left >= requirement.Left - 1 && w.Left < required.Right - RequiredPt), Cell(w => w.Left >= required.Right - RequiredPt && w.Right <= required.Right + 1),
                Cell(w => w.Right > required.Right + 2 && w.Right <= offered.Right + 1), Cell(w => w.Right > offered.Right + 2 && w.Right <= margin.Right + 1),
                Cell(w => Math.Abs(w.Left - met.Left) < 2 && w.Right < basis.Left));
        }
    }

    [GeneratedRegex(@"-?[\d,]*\d(\.\d+)?")]
    private static partial Regex Figure();
}

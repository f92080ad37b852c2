using TenderKit.Documents.Layout;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

/// <summary>What must hold of the text of any document: inside the page and its cell, one line never over another, no heading alone at the foot.</summary>
internal static class PlacedText
{
    private const double Slack = 0.6;

    public static void AssertSound(PaperDocument document)
    {
        using var spoken = document.Wording.Enter();
        var flow = PdfPrinter.Lay(document.Blocks);
        for (var i = 0; i < flow.Sheets.Count; i++)
        {
            var (page, lines) = (i + 1, flow.Sheets[i].Lines);
            Assert.All(lines, l => Assert.True(
                l.X >= Paper.LeftPt - Slack && l.Right <= Paper.RightPt + Slack && l.InkTop >= Paper.TopPt - Slack && l.InkBottom <= Paper.BottomPt + Slack,
                $"{document.Subject}, page {page}: '{l.Text}' at {l.X:0} to {l.Right:0}, {l.InkTop:0} to {l.InkBottom:0} leaves the page"));
            foreach (var (first, second) in Crossing(lines)) Assert.Fail($"{document.Subject}, page {page}: '{first.Text}' runs into '{second.Text}'");
            Assert.All(lines.Where(l => l.Cell is not null), l => Assert.True(
                l.X >= l.Cell!.Value.Left - Slack && l.Right <= l.Cell.Value.Right + Slack, $"{document.Subject}, page {page}: '{l.Text}' leaves its cell"));
            Assert.All(flow.Headings.Where(h => h.Page == page), h => Assert.True(
                IsFollowed(flow.Sheets[i], h.TopPt), $"{document.Subject}, page {page}: the heading '{h.Text}' stands alone at the foot"));
        }
    }

    /// <summary>Whether text that is no heading and no repeated head, or a drawing, stands below a height on the same page.</summary>
    private static bool IsFollowed(Sheet sheet, double topPt) =>
        sheet.Lines.Exists(l => l.Top > topPt + 1 && l.Tag is { IsHeading: false, Kind: not TagKind.Artifact })
        || sheet.Marks.Exists(m => m.Tag.Kind == TagKind.Figure && m.Tag.Area.Top > topPt + 1);

    private static IEnumerable<(PlacedLine First, PlacedLine Second)> Crossing(List<PlacedLine> lines)
    {
        var sorted = lines.OrderBy(l => l.InkTop).ToList();
        for (var i = 0; i < sorted.Count; i++)
        {
            for (var j = i + 1; j < sorted.Count && sorted[j].InkTop < sorted[i].InkBottom - Slack; j++)
            {
                if (sorted[j].X < sorted[i].Right - Slack && sorted[i].X < sorted[j].Right - Slack) yield return (sorted[i], sorted[j]);
            }
        }
    }
}

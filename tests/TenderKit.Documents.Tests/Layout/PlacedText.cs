using TenderKit.Documents.Layout;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

/// <summary>What must hold of the text of any document: inside the page, one line never over another, no heading alone at the foot.</summary>
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
            Assert.All(flow.Headings.Where(h => h.Page == page), h => Assert.True(
                lines.Exists(l => l.Top > h.TopPt + (2 * TextStyle.Step) && !flow.Headings.Any(o => o.Page == page && l.Text == o.Text)) || flow.Sheets[i].Marks.Count > lines.Count,
                $"{document.Subject}, page {page}: the heading '{h.Text}' stands alone at the foot"));
        }
    }

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

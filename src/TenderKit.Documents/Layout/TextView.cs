using System.Text;

namespace TenderKit.Documents.Layout;

/// <summary>A document as plain text: page by page, top to bottom, left to right. For people who read what changed.</summary>
internal static class TextView
{
    public static string Of(PaperDocument document)
    {
        using var spoken = document.Wording.Enter();
        var flow = PdfPrinter.Lay(document.Blocks);
        var text = new StringBuilder();
        for (var i = 0; i < flow.Sheets.Count; i++)
        {
            text.Append(FormattableString.Invariant($"---- page {i + 1} of {flow.Sheets.Count}\n"));
            foreach (var row in flow.Sheets[i].Lines.GroupBy(l => Math.Round(l.Top, 1)).OrderBy(r => r.Key))
            {
                text.AppendJoin(" | ", row.OrderBy(l => l.X).Select(l => l.Text)).Append('\n');
            }
        }

        return text.ToString();
    }
}

using PdfSharp.Pdf;

namespace TenderKit.Documents.Layout;

/// <summary>The nested outline a viewer shows beside the pages.</summary>
internal static class Outline
{
    public static void Add(PdfDocument pdf, PageFlow flow)
    {
        PdfOutline? parent = null;
        foreach (var heading in flow.Headings.Where(h => h.Level < 3))
        {
            var entries = heading.Level == 1 || parent is null ? pdf.Outlines : parent.Outlines;
            var entry = entries.Add(heading.Full, pdf.Pages[heading.Page - 1], opened: heading.Level == 1);
            entry.PageDestinationType = PdfPageDestinationType.Xyz;
            entry.Top = Paper.HeightPt - heading.TopPt + TextStyle.Step;
            entry.Left = 0;
            if (heading.Level == 1) parent = entry;
        }
    }
}

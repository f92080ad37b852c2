using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using TenderKit.Documents.Languages;

namespace TenderKit.Documents.Layout;

/// <summary>Lays a document out and writes it. Same document, same bytes, whatever the culture, the time zone or the clock.</summary>
internal static class PdfPrinter
{
    public static byte[] Print(PaperDocument document)
    {
        var (culture, uiCulture) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
            using var spoken = document.Wording.Enter();
            return EqualBytes.Fix(Write(document, Lay(document.Blocks)), document.Issued);
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, uiCulture);
        }
    }

    /// <summary>Flows blocks onto pages; a heading, and a paragraph that leads to something, stays with the beginning of what follows it.</summary>
    internal static PageFlow Lay(IReadOnlyList<Block> blocks)
    {
        var flow = new PageFlow();
        for (var i = 0; i < blocks.Count; i++)
        {
            if (Leads(blocks[i]) && (i == 0 || !Leads(blocks[i - 1]))) flow.Need(LeadOfRun(blocks, i));
            blocks[i].Place(flow);
        }

        return flow;
    }

    private static bool Leads(Block block) => block is Heading or Paragraph { KeepWithNext: true };

    private static double LeadOfRun(IReadOnlyList<Block> blocks, int start)
    {
        double height = 0;
        var i = start;
        while (i < blocks.Count && Leads(blocks[i])) height += blocks[i++].LeadHeight;
        return Math.Min(height + (i < blocks.Count ? blocks[i].LeadHeight : 0), Paper.TextHeightPt);
    }

    private static byte[] Write(PaperDocument document, PageFlow flow)
    {
        Fonts.Register();
        using var pdf = new PdfDocument();
        pdf.Options.CompressContentStreams = true;
        pdf.Options.ColorMode = PdfColorMode.Undefined;
        Describe(pdf, document);
        foreach (var _ in flow.Sheets) pdf.AddPage(new PdfPage { Width = XUnit.FromPoint(Paper.WidthPt), Height = XUnit.FromPoint(Paper.HeightPt) });
        for (var i = 0; i < flow.Sheets.Count; i++) Draw(pdf, flow, i, document.Running);
        Outline.Add(pdf, flow);
        using var bytes = new MemoryStream();
        pdf.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    private static void Describe(PdfDocument pdf, PaperDocument document)
    {
        pdf.Info.Title = document.Wording.Say(document.Title);
        pdf.Info.Author = document.Author;
        pdf.Info.Subject = document.Wording.Say(document.Subject);
        pdf.Info.Creator = "TenderKit";
        pdf.Info.CreationDate = EqualBytes.Noon(document.Issued);
        pdf.Info.ModificationDate = EqualBytes.Noon(document.Issued);
    }

    private static void Draw(PdfDocument pdf, PageFlow flow, int index, string running)
    {
        var page = pdf.Pages[index];
        using var g = XGraphics.FromPdfPage(page);
        foreach (var mark in flow.Sheets[index].Marks) mark(g);
        Footer(g, running, Wording.Current.Say(FormattableString.Invariant($"Page {index + 1} of {flow.Sheets.Count}")));
        foreach (var (area, heading) in flow.Sheets[index].Links)
        {
            var box = new PdfRectangle(g.Transformer.WorldToDefaultPage(area));
            page.AddDocumentLink(box, Contents.Entry(flow, heading).Page);
        }
    }

    private static void Footer(XGraphics g, string running, string pageOf)
    {
        var style = TextStyle.Quiet;
        var baseline = PageFlow.Baseline(style, Paper.FooterPt - 13);
        g.DrawLine(Ink.Pen(Ink.HairPt, Ink.Mid), Paper.LeftPt, Paper.FooterPt - 17, Paper.RightPt, Paper.FooterPt - 17);
        g.DrawString(LineBreaker.Break(running, style, Paper.MeasurePt - 90)[0], style.Font, style.Brush, Paper.LeftPt, baseline);
        g.DrawString(pageOf, style.Font, style.Brush, Paper.RightPt - style.Width(pageOf), baseline);
    }
}

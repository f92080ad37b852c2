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
        DrawAll(pdf, flow, document);
        for (var i = 0; i < flow.Sheets.Count; i++) Link(pdf.Pages[i], flow, flow.Sheets[i]);
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

    /// <summary>Draws page after page; the one before is finished only when the next is there, since an element open on it goes on.</summary>
    private static void DrawAll(PdfDocument pdf, PageFlow flow, PaperDocument document)
    {
        var tags = new TagWriter(pdf, document.Wording.Language);
        XGraphics? before = null;
        for (var i = 0; i < flow.Sheets.Count; i++)
        {
            var page = pdf.AddPage(new PdfPage { Width = XUnit.FromPoint(Paper.WidthPt), Height = XUnit.FromPoint(Paper.HeightPt) });
            before?.Dispose();
            before = XGraphics.FromPdfPage(page);
            Draw(before, flow.Sheets[i].Marks, document.Running, Wording.Current.Say(FormattableString.Invariant($"Page {i + 1} of {flow.Sheets.Count}")), tags);
        }

        tags.Close();
        before?.Dispose();
    }

    private static void Draw(XGraphics g, List<TaggedMark> marks, string running, string pageOf, TagWriter tags)
    {
        tags.DrawArtifacts(g, marks.Where(m => m.Tag.Kind == TagKind.Artifact).Select(m => m.Draw).Append(g => Footer(g, running, pageOf)));
        tags.Draw(g, marks);
    }

    private static void Link(PdfPage page, PageFlow flow, Sheet sheet)
    {
        foreach (var (area, heading) in sheet.Links)
        {
            var box = new PdfRectangle(new XPoint(area.Left, Paper.HeightPt - area.Bottom), new XPoint(area.Right, Paper.HeightPt - area.Top));
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

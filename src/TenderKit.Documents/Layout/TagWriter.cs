using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace TenderKit.Documents.Layout;

/// <summary>
/// Draws the marks of pages in the order of reading, each inside its structure element; an element that goes on over the page stays open.
/// Headings, paragraphs, lists, tables and drawings are tagged; links are not, and no conformance to a standard of accessibility is claimed.
/// </summary>
internal sealed class TagWriter
{
    private readonly StructureBuilder _builder;
    private readonly Stack<Tag> _open = new();

    public TagWriter(PdfDocument pdf, string language)
    {
        var manager = UAManager.ForDocument(pdf);
        manager.SetDocumentLanguage(language);
        _builder = manager.StructureBuilder;
    }

    public void Draw(XGraphics g, IReadOnlyCollection<TaggedMark> marks)
    {
        foreach (var mark in marks.Where(m => m.Tag.Kind != TagKind.Artifact).OrderBy(m => m.Tag.Order))
        {
            MoveTo(mark.Tag);
            mark.Draw(g);
        }
    }

    /// <summary>Draws what is no part of the text.</summary>
    public void DrawArtifacts(XGraphics g, IEnumerable<Action<XGraphics>> draws)
    {
        _builder.BeginArtifact();
        foreach (var draw in draws) draw(g);
        _builder.End();
    }

    public void Close()
    {
        for (; _open.Count > 0; _open.Pop()) _builder.End();
    }

    private void MoveTo(Tag tag)
    {
        var path = tag.Path.ToList();
        while (_open.Count > 0 && !path.Contains(_open.Peek()))
        {
            _open.Pop();
            _builder.End();
        }

        foreach (var step in path.Skip(_open.Count))
        {
            Begin(step);
            _open.Push(step);
        }
    }

    private void Begin(Tag tag)
    {
        switch (tag.Kind)
        {
            case TagKind.Figure:
                var area = new XRect(tag.Area.X, Paper.HeightPt - tag.Area.Bottom, tag.Area.Width, tag.Area.Height);
                _builder.BeginElement(PdfIllustrationElementTag.Figure, tag.Alternative, area);
                break;
            case TagKind.Caption:
                _builder.BeginElement(PdfGroupingElementTag.Caption);
                break;
            case TagKind.Contents:
                _builder.BeginElement(PdfGroupingElementTag.TableOfContents);
                break;
            case TagKind.ContentsItem:
                _builder.BeginElement(PdfGroupingElementTag.TableOfContentsItem);
                break;
            default:
                _builder.BeginElement(BlockOf(tag.Kind));
                break;
        }
    }

    private static PdfBlockLevelElementTag BlockOf(TagKind kind) => kind switch
    {
        TagKind.Heading1 => PdfBlockLevelElementTag.Heading1,
        TagKind.Heading2 => PdfBlockLevelElementTag.Heading2,
        TagKind.Heading3 => PdfBlockLevelElementTag.Heading3,
        TagKind.List => PdfBlockLevelElementTag.List,
        TagKind.ListItem => PdfBlockLevelElementTag.ListItem,
        TagKind.ListLabel => PdfBlockLevelElementTag.Label,
        TagKind.ListBody => PdfBlockLevelElementTag.ListBody,
        TagKind.Table => PdfBlockLevelElementTag.Table,
        TagKind.TableRow => PdfBlockLevelElementTag.TableRow,
        TagKind.HeadCell => PdfBlockLevelElementTag.TableHeaderCell,
        TagKind.Cell => PdfBlockLevelElementTag.TableDataCell,
        _ => PdfBlockLevelElementTag.Paragraph,
    };
}

using PdfSharp.Drawing;

namespace TenderKit.Documents.Layout;

/// <summary>What a piece of a page is to a program that reads it aloud or takes it apart.</summary>
internal enum TagKind
{
    /// <summary>Rules, feet, heads repeated: not part of the text.</summary>
    Artifact,
    Heading1,
    Heading2,
    Heading3,
    Paragraph,
    List,
    ListItem,
    ListLabel,
    ListBody,
    Table,
    TableRow,
    HeadCell,
    Cell,
    Figure,
    Caption,
    Contents,
    ContentsItem,
}

/// <summary>An element of the document's structure.</summary>
/// <param name="Order">Place in the order of reading.</param>
internal sealed record Tag(TagKind Kind, Tag? Parent, int Order)
{
    /// <summary>A drawing in words.</summary>
    public string Alternative { get; init; } = "";

    /// <summary>Where a drawing stands, points from the left and top edges.</summary>
    public XRect Area { get; init; }

    /// <summary>From the outermost element to this one.</summary>
    public IEnumerable<Tag> Path => Parent is null ? [this] : Parent.Path.Append(this);

    public bool IsHeading => Kind is TagKind.Heading1 or TagKind.Heading2 or TagKind.Heading3;
}

/// <summary>Something to be drawn, and what it is.</summary>
internal readonly record struct TaggedMark(Tag Tag, Action<XGraphics> Draw);

using System.Collections.Immutable;
using TenderKit.Documents.Languages;

namespace TenderKit.Documents.Layout;

/// <summary>A document before it is laid out.</summary>
/// <param name="Title">As in the file's properties.</param>
/// <param name="Author">Who issues it.</param>
/// <param name="Running">Left half of every page's foot.</param>
/// <param name="Issued">Its date, the only date in the file; null for a document without one.</param>
internal sealed record PaperDocument(string Title, string Author, string Subject, string Running, DateOnly? Issued, ImmutableArray<Block> Blocks)
{
    /// <summary>Says its texts in its language.</summary>
    public Wording Wording { get; init; } = Wording.English;
}

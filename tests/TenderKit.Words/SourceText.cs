namespace TenderKit.Words;

/// <summary>A text of the sources that can reach a document.</summary>
/// <param name="English">The sentence, its holes numbered <c>{0}</c>, <c>{1}</c> in order.</param>
/// <param name="File">Below the repository, with '/'.</param>
/// <param name="Line">1-based.</param>
public sealed record SourceText(string English, string File, int Line);

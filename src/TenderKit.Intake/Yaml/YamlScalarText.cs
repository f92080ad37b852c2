namespace TenderKit.Intake.Yaml;

/// <summary>One scalar as text, with where it stands.</summary>
/// <param name="Path">Dotted path of keys.</param>
/// <param name="Line">1-based line.</param>
public sealed record YamlScalarText(string Text, string Path, int Line);

using YamlDotNet.RepresentationModel;

namespace TenderKit.Words;

/// <summary>Every text of the program that can reach a document, each once, in order.</summary>
public static class SourceTexts
{
    /// <param name="root">Folder of the repository.</param>
    public static IReadOnlyList<SourceText> Of(string root) =>
    [
        .. OfSources(Path.Combine(root, "src")).Concat(OfRules(root)).GroupBy(t => t.English, StringComparer.Ordinal).Select(g => g.First())
            .OrderBy(t => t.English, StringComparer.Ordinal),
    ];

    private static IEnumerable<SourceText> OfSources(string src) =>
        Directory.EnumerateFiles(src, "*.cs", SearchOption.AllDirectories)
            .Select(f => (File: f, Path: Path.GetRelativePath(src, f).Replace('\\', '/')))
            .Where(f => !f.Path.Contains("/obj/", StringComparison.Ordinal) && !f.Path.Contains("/bin/", StringComparison.Ordinal))
            .OrderBy(f => f.Path, StringComparer.Ordinal)
            .Where(f => SourceFolders.Of(f.Path) != Reach.None)
            .SelectMany(f => new TextCollector("src/" + f.Path, SourceFolders.Of(f.Path)).Of(File.ReadAllText(f.File)));

    /// <summary>What the design rules say of where a value is used, its unit and its source.</summary>
    private static IEnumerable<SourceText> OfRules(string root)
    {
        const string File = "templates/design-rules.yaml";
        var yaml = new YamlStream();
        using var text = new StreamReader(Path.Combine(root, File));
        yaml.Load(text);
        var rules = (YamlSequenceNode)((YamlMappingNode)yaml.Documents[0].RootNode)["rules"];
        return rules.Cast<YamlMappingNode>().SelectMany(rule => new[] { "where", "unit", "source" }.Where(k => rule.Children.ContainsKey(k))
            .Select(key => new SourceText(TextShape.Key(((YamlScalarNode)rule[key]).Value ?? ""), File, (int)rule.Start.Line))
            .Where(t => TextShape.HasWords(t.English)));
    }
}

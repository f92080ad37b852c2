using TenderKit.Intake.Words;
using TenderKit.Sizing.Basics;
using YamlDotNet.RepresentationModel;

namespace TenderKit.Intake.Yaml;

/// <summary>
/// A mapping of a YAML file. It remembers which keys were asked for, so that <see cref="ReportUnknownKeys"/> can name every key nobody
/// knows, with its line and the nearest key that is known. Problems go to the one list the whole file shares.
/// </summary>
public sealed class YamlSection
{
    private readonly YamlMappingNode _node;
    private readonly List<Diagnostic> _problems;
    private readonly SortedSet<string> _asked = new(StringComparer.Ordinal);

    internal YamlSection(string file, string path, YamlMappingNode node, List<Diagnostic> problems)
    {
        File = file;
        Path = path;
        _node = node;
        _problems = problems;
    }

    public string File { get; }

    /// <summary>Dotted path of this section; empty for the whole file.</summary>
    public string Path { get; }

    public int Line => LineOf(_node);

    /// <summary>Keys in the order of the file.</summary>
    public IEnumerable<string> Keys => _node.Children.Keys.Select(k => KeyText(k));

    /// <summary>The scalar under a key; null when the key is absent or empty; a list or section there is a problem.</summary>
    public YamlScalarText? Scalar(string key)
    {
        switch (Child(key))
        {
            case null:
                return null;
            case YamlScalarNode scalar:
                return string.IsNullOrWhiteSpace(scalar.Value) ? null : new YamlScalarText(scalar.Value.Trim(), PathOf(key), LineOf(scalar));
            case var other:
                AddError("TK112", $"'{PathOf(key)}' must be a single value", LineOf(other));
                return null;
        }
    }

    public string? Text(string key) => Scalar(key)?.Text;

    /// <summary>The text under a key; a missing one is a problem and gives the empty text.</summary>
    public string RequiredText(string key)
    {
        if (Scalar(key) is { } scalar) return scalar.Text;
        AddError("TK113", $"'{PathOf(key)}' is missing; add it", Line);
        return "";
    }

    /// <summary>The section under a key; null when absent; anything else there is a problem.</summary>
    public YamlSection? Section(string key)
    {
        switch (Child(key))
        {
            case null:
            case YamlScalarNode { Value: null or "" }:
                return null;
            case YamlMappingNode map:
                return new YamlSection(File, PathOf(key), map, _problems);
            case var other:
                AddError("TK112", $"'{PathOf(key)}' must be a section of keys", LineOf(other));
                return null;
        }
    }

    /// <summary>The list of sections under a key, empty when absent.</summary>
    public IReadOnlyList<YamlSection> Sections(string key)
    {
        var found = new List<YamlSection>();
        foreach (var (item, index) in Items(key).Select((n, i) => (n, i)))
        {
            var path = FormattableString.Invariant($"{PathOf(key)}[{index + 1}]");
            if (item is YamlMappingNode map) found.Add(new YamlSection(File, path, map, _problems));
            else AddError("TK112", $"'{path}' must be a section of keys", LineOf(item));
        }

        return found;
    }

    /// <summary>The scalars under a key: a list, or a single value as a list of one; empty when absent.</summary>
    public IReadOnlyList<YamlScalarText> Scalars(string key)
    {
        if (Child(key) is YamlScalarNode) return Scalar(key) is { } one ? [one] : [];
        return [.. Items(key).OfType<YamlScalarNode>().Select(n => new YamlScalarText((n.Value ?? "").Trim(), PathOf(key), LineOf(n)))];
    }

    /// <summary>Whether a key is present (and from now on known).</summary>
    public bool Has(string key) => Child(key) is not null;

    /// <summary>Whether a section of keys stands under a key, rather than a value or a list.</summary>
    public bool HoldsKeys(string key) => Child(key) is YamlMappingNode;

    /// <summary>Adds an error for every key nobody asked for, naming the nearest key that was.</summary>
    public void ReportUnknownKeys()
    {
        foreach (var key in _node.Children.Keys)
        {
            var text = KeyText(key);
            if (_asked.Contains(text)) continue;
            var nearest = Nearest.Of(text, _asked);
            var where = Path.Length == 0 ? "" : $" in '{Path}'";
            var hint = nearest is null ? "" : $"; did you mean '{nearest}'?";
            AddError("TK111", $"unknown key '{text}'{where}{hint}", LineOf(key));
        }
    }

    public void AddError(string code, string message, int line) => _problems.Add(Diagnostic.Error(code, message, new Place(File, Row: line)));

    public void AddWarning(string code, string message, int line) => _problems.Add(Diagnostic.Warning(code, message, new Place(File, Row: line)));

    public void AddNote(string code, string message, int line) => _problems.Add(Diagnostic.Note(code, message, new Place(File, Row: line)));

    private IEnumerable<YamlNode> Items(string key)
    {
        switch (Child(key))
        {
            case null:
                return [];
            case YamlSequenceNode list:
                return list.Children;
            case YamlScalarNode { Value: null or "" }:
                return [];
            case var other:
                AddError("TK112", $"'{PathOf(key)}' must be a list", LineOf(other));
                return [];
        }
    }

    private YamlNode? Child(string key)
    {
        _asked.Add(key);
        return _node.Children.FirstOrDefault(pair => KeyText(pair.Key) == key).Value;
    }

    private string PathOf(string key) => Path.Length == 0 ? key : Path + "." + key;

    private static string KeyText(YamlNode key) => (key as YamlScalarNode)?.Value ?? "";

    private static int LineOf(YamlNode node) => (int)node.Start.Line;
}

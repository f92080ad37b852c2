using TenderKit.Sizing.Basics;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace TenderKit.Intake.Yaml;

/// <summary>Reads YAML text into sections that know their lines.</summary>
public static class YamlFile
{
    private const int GreatestDepth = 60;

    /// <summary>The top section; null with an error when the text is not YAML or not a mapping.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">File name for messages.</param>
    /// <param name="problems">Collects what is wrong, here and in every section below.</param>
    public static YamlSection? Read(string text, string file, List<Diagnostic> problems)
    {
        var stream = new YamlStream();
        try
        {
            if (IsTooDeep(text))
            {
                problems.Add(Diagnostic.Error("TK110", FormattableString.Invariant($"sections and lists stand more than {GreatestDepth} deep in one another; the file is damaged"), new Place(file, Row: 1)));
                return null;
            }

            stream.Load(new StringReader(text));
        }
        catch (YamlException e)
        {
            problems.Add(Diagnostic.Error("TK110", $"not readable as YAML: {Plain(e)}; check indentation, colons and quotes near this line", new Place(file, Row: (int)e.Start.Line)));
            return null;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or FormatException or NullReferenceException)
        {
            // the library meets some damaged files with exceptions of other kinds
            problems.Add(Diagnostic.Error("TK110", "not readable as YAML; check indentation, colons and quotes, or save it again", new Place(file, Row: 1)));
            return null;
        }

        if (stream.Documents.Count > 0 && stream.Documents[0].RootNode is YamlMappingNode map) return new YamlSection(file, "", map, problems);
        problems.Add(Diagnostic.Error("TK110", "the file is empty or does not begin with keys", new Place(file, Row: 1)));
        return null;
    }

    /// <summary>Reads the file as a row of events, so that no depth of it can fill the stack.</summary>
    private static bool IsTooDeep(string text)
    {
        var (parser, depth) = (new Parser(new StringReader(text)), 0);
        while (parser.MoveNext())
        {
            depth += parser.Current!.NestingIncrease;
            if (depth > GreatestDepth) return true;
        }

        return false;
    }

    private static string Plain(YamlException e)
    {
        var message = e.InnerException?.Message ?? e.Message;
        var colon = message.IndexOf("): ", StringComparison.Ordinal);
        return colon < 0 ? message : message[(colon + 3)..];
    }
}

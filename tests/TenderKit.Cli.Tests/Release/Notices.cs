using System.Buffers.Binary;
using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using TenderKit.Documents.Layout;

namespace TenderKit.Cli.Tests.Release;

/// <summary>One thing of others that is handed out with the program.</summary>
internal sealed record Component(string Name, string Version, string Licence, string Copyright);

/// <summary>The text of THIRD-PARTY-NOTICES, out of the licence data of the packages restored and of the font files.</summary>
internal static class Notices
{
    private const string FontPackage = "Avalonia.Fonts.Inter";

    /// <summary>A licence given as a file, by the words the file begins with.</summary>
    private static readonly (string Begins, string Licence)[] _known = [("MIT License", "MIT")];

    public static string Text()
    {
        var components = Packages().Append(Font()).OrderBy(c => c.Name, StringComparer.OrdinalIgnoreCase).ToArray();
        var text = new StringBuilder("""
            TenderKit is handed out with the work of others named here, each under its licence. The texts of the licences follow the list.
            This file is made from the licence data of the restored packages; a test fails when it is out of date.

            The native library e_sqlite3 within SQLitePCLRaw.lib.e_sqlite3 is built from SQLite, which is in the public domain.
            A single-file program also holds the .NET runtime (MIT); what the runtime itself is made of stands in DOTNET-RUNTIME-NOTICES beside it.


            """.ReplaceLineEndings("\n"));
        foreach (var c in components) text.Append(c.Name).Append(' ').Append(c.Version).Append("\n    ").Append(c.Licence).Append("\n    ").Append(c.Copyright).Append('\n');
        foreach (var licence in components.Select(c => c.Licence).Distinct().Order(StringComparer.Ordinal))
        {
            text.Append('\n').Append('-', 100).Append('\n').Append(licence).Append("\n\n")
                .Append(File.ReadAllText(Path.Combine(Repository.Root, "src", "TenderKit.Cli", "Licences", licence + ".txt")).ReplaceLineEndings("\n").Trim()).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Packages with something that runs; those for building alone are not handed out.</summary>
    private static IEnumerable<Component> Packages()
    {
        var assets = JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, "src", "TenderKit.Cli", "obj", "project.assets.json")))!;
        var folders = assets["packageFolders"]!.AsObject().Select(f => f.Key).ToArray();
        return assets["targets"]!["net10.0"]!.AsObject().Where(l => l.Value!["type"]!.GetValue<string>() == "package" && Runs(l.Value!)).Select(l => Of(l.Key, folders));
    }

    private static bool Runs(JsonNode library) => library["runtimeTargets"] is not null || (library["runtime"]?.AsObject().Any(f => !f.Key.EndsWith("_._", StringComparison.Ordinal)) ?? false);

    private static Component Of(string key, string[] packageFolders)
    {
        var (name, version) = (key.Split('/')[0], key.Split('/')[1]);
        var folder = packageFolders.Select(f => Path.Combine(f, name.ToLowerInvariant(), version.ToLowerInvariant())).First(Directory.Exists);
        var data = XDocument.Load(Directory.EnumerateFiles(folder, "*.nuspec").Single()).Root!.Elements().Single(e => e.Name.LocalName == "metadata");
        string Value(string element) => data.Elements().FirstOrDefault(e => e.Name.LocalName == element)?.Value.Trim() ?? "";
        var licence = data.Elements().Single(e => e.Name.LocalName == "license");
        var expression = licence.Attribute("type")!.Value == "expression" ? licence.Value.Trim() : Named(File.ReadAllText(Path.Combine(folder, licence.Value)), key);
        return new(name, version, expression, Value("copyright") is { Length: > 0 } copyright ? copyright : "by " + Value("authors"));
    }

    private static string Named(string text, string key) =>
        _known.FirstOrDefault(k => text.TrimStart().StartsWith(k.Begins, StringComparison.Ordinal)).Licence ?? throw new InvalidOperationException($"{key} comes under a licence nobody has looked at: read it, then name it here");

    /// <summary>The font files are taken out of a package of another licence; their own stands within them.</summary>
    private static Component Font()
    {
        var project = XDocument.Load(Path.Combine(Repository.Root, "src", "TenderKit.Documents", "TenderKit.Documents.csproj"));
        var version = project.Descendants("PackageDownload").Single(d => d.Attribute("Include")!.Value == FontPackage).Attribute("Version")!.Value.Trim('[', ']');
        var file = InterFiles.Bytes(Fonts.RegularFile);
        if (!NameOf(file, 13).Contains("SIL Open Font License, Version 1.1", StringComparison.Ordinal)) throw new InvalidOperationException("the font file names another licence");
        return new("Inter (font files)", $"{NameOf(file, 5)}, from {FontPackage} {version}", "OFL-1.1", NameOf(file, 0));
    }

    /// <summary>A text of the name table (ISO/IEC 14496-22), as written for Windows.</summary>
    private static string NameOf(byte[] file, int id)
    {
        int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(file.AsSpan(at));
        var entry = Enumerable.Range(0, U16(4)).Select(i => 12 + (i * 16)).Single(e => Encoding.ASCII.GetString(file, e, 4) == "name");
        var table = (int)BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(entry + 8));
        var record = Enumerable.Range(0, U16(table + 2)).Select(i => table + 6 + (i * 12)).First(r => U16(r) == 3 && U16(r + 6) == id);
        return Encoding.BigEndianUnicode.GetString(file, table + U16(table + 4) + U16(record + 10), U16(record + 8));
    }
}

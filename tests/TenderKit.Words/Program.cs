using System.Globalization;
using TenderKit.Words;

if (args is not [var verb, .. var rest] || verb is not ("keys" or "missing" or "merge"))
{
    Console.Error.WriteLine("""
        keys FILE            every text of the documents with its place, as csv
        missing FOLDER       per language what has no translation yet: missing.fr.csv, missing.es.csv, missing.pt.csv
        merge FOLDER         takes the translations of these files into templates/words.*.csv and drops rows no source holds any more
        """);
    return 2;
}

var root = Repository();
var texts = SourceTexts.Of(root);
string[] languages = ["fr", "es", "pt"];
if (verb == "keys")
{
    var lines = texts.Select(t => string.Create(CultureInfo.InvariantCulture, $"{WordFile.Quoted(t.English)},{t.File},{t.Line}"));
    File.WriteAllText(rest[0], "english,file,line\n" + string.Concat(lines.Select(l => l + "\n")), new System.Text.UTF8Encoding(true));
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{texts.Count} texts"));
    return 0;
}

foreach (var language in languages)
{
    var path = WordFile.PathOf(root, language);
    var known = WordFile.Read(path).Where(r => r.Translation.Length > 0).ToDictionary(r => r.English, r => r.Translation, StringComparer.Ordinal);
    var table = Path.Combine(rest[0], $"missing.{language}.csv");
    if (verb == "merge")
    {
        foreach (var (english, translation) in WordFile.Read(table).Where(r => r.Translation.Length > 0)) known[english] = translation;
        WordFile.Write(path, texts.Where(t => known.ContainsKey(t.English)).Select(t => (t.English, known[t.English])));
    }
    else
    {
        Directory.CreateDirectory(rest[0]);
        WordFile.Write(table, texts.Where(t => !known.ContainsKey(t.English)).Select(t => (t.English, "")));
    }

    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{language}: {texts.Count(t => known.ContainsKey(t.English))} of {texts.Count}"));
}

return 0;

static string Repository()
{
    for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
    {
        if (File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) return folder.FullName;
    }

    throw new DirectoryNotFoundException("the repository was not found above the program");
}

using System.Text;

namespace TenderKit.Words;

/// <summary>The resource file of one language: a table of two columns that a spreadsheet opens with its accents.</summary>
public static class WordFile
{
    private static readonly UTF8Encoding _withMark = new(encoderShouldEmitUTF8Identifier: true);

    public static string PathOf(string root, string language) => Path.Combine(root, "templates", $"words.{language}.csv");

    /// <summary>Rows below the heading.</summary>
    public static List<(string English, string Translation)> Read(string path)
    {
        var rows = Fields(File.ReadAllText(path)).Where(r => r.Count > 1 || r[0].Length > 0).Skip(1);
        return [.. rows.Select(r => (r[0], r.Count > 1 ? r[1] : ""))];
    }

    public static void Write(string path, IEnumerable<(string English, string Translation)> rows)
    {
        var text = new StringBuilder("english,translation\n");
        foreach (var (english, translation) in rows.OrderBy(r => r.English, StringComparer.Ordinal)) text.Append(Quoted(english)).Append(',').Append(Quoted(translation)).Append('\n');
        File.WriteAllText(path, text.ToString(), _withMark);
    }

    public static string Quoted(string field) =>
        field.AsSpan().IndexOfAny(',', '"', '\n') < 0 && field.Trim() == field ? field : "\"" + field.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static List<List<string>> Fields(string text)
    {
        var (rows, row, field, quoted) = (new List<List<string>>(), new List<string>(), new StringBuilder(), false);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted && c == '"' && i + 1 < text.Length && text[i + 1] == '"') field.Append(text[i++]);
            else if (c == '"') quoted = !quoted;
            else if (!quoted && c is ',' or '\n' && !quoted)
            {
                row.Add(field.ToString());
                field.Clear();
                if (c != '\n') continue;
                rows.Add(row);
                row = [];
            }
            else if (c != '\r' || quoted) field.Append(c);
        }

        if (field.Length > 0 || row.Count > 0) rows.Add([.. row, field.ToString()]);
        return rows;
    }
}

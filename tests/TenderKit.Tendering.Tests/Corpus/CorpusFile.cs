using System.Text;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>One messy file of our own making.</summary>
/// <param name="Fault">What is wrong with it.</param>
/// <param name="IsSameList">Whether it holds the six sites of <see cref="PlainList"/> and must be understood as they are.</param>
internal sealed record CorpusFile(string Name, string Fault, byte[] Bytes, bool IsSameList)
{
    public static CorpusFile Csv(string name, string fault, string text, bool same = true, Encoding? encoding = null, bool mark = false)
    {
        var used = encoding ?? new UTF8Encoding(false);
        return new(name + ".csv", fault, [.. mark ? used.GetPreamble() : [], .. used.GetBytes(text)], same);
    }

    public static CorpusFile Xlsx(string name, string fault, bool same, params Sheet[] sheets) => new(name + ".xlsx", fault, Book.Of(sheets), same);
}

/// <summary>The six invented sites most files of the corpus hold.</summary>
internal static class PlainList
{
    public static readonly (string Id, string Name, double Latitude, double Longitude, string Kind, double LengthM, double WidthM)[] Sites =
    [
        ("S1", "Market road", 14.2508, -4.2512, "road", 250, 6), ("S2", "School path", 14.2531, -4.2489, "path", 180.5, 3),
        ("S3", "Clinic street", 14.2575, -4.2548, "road", 1240, 7.5), ("S4", "Bus yard", 14.2496, -4.2601, "yard", 60, 40),
        ("S5", "Lower bridge", 14.2612, -4.2437, "road", 96, 5), ("S6", "Well lane", 14.2448, -4.2577, "path", 320, 2.5),
    ];

    public static readonly string[] Headings = ["No", "Name", "Latitude", "Longitude", "Type", "Length (m)", "Width (m)"];

    /// <summary>The rows as cells of a workbook.</summary>
    public static object?[][] Cells => [.. Sites.Select(s => new object?[] { s.Id, s.Name, s.Latitude, s.Longitude, s.Kind, s.LengthM, s.WidthM })];

    /// <summary>A text with a line per site out of its parts.</summary>
    public static string Lines(Func<(string Id, string Name, double Latitude, double Longitude, string Kind, double LengthM, double WidthM), FormattableString> line) =>
        string.Concat(Sites.Select(s => FormattableString.Invariant(line(s)) + "\n"));

    public static string Csv => string.Join(',', Headings) + "\n" + Rows;

    public static string Rows => Lines(s => $"{s.Id},{s.Name},{s.Latitude},{s.Longitude},{s.Kind},{s.LengthM},{s.WidthM}");
}

using System.Text;

namespace TenderKit.Intake.Tests.Photometry;

/// <summary>Damage as mail, discs and editors do it, and as nobody does it; the same for the same seed.</summary>
internal static class Mutations
{
    private static readonly string[] Words =
        ["x", "-1", "0", "NaN", "Infinity", "-1e308", "1e308", "999999999", "2147483648", "1.5", "1,5", "1e-320", "--", "+-3", "0x10", "\u00e9\u4e2d", "", "1 2 3", new('9', 400)];

    private static readonly Func<string, Random, string>[] Kinds =
    [
        (t, r) => t[..r.Next(t.Length)],
        (t, r) => t[r.Next(t.Length)..],
        (t, r) => Lines(t, r, (lines, i) => lines.RemoveAt(i)),
        (t, r) => Lines(t, r, (lines, i) => lines.Insert(i, lines[i])),
        (t, r) => Lines(t, r, (lines, i) => (lines[i], lines[0]) = (lines[0], lines[i])),
        (t, r) => Lines(t, r, (lines, i) => lines[i] = Words[r.Next(Words.Length)]),
        Word,
        Word,
        Word,
        (t, r) => Bytes(t, r, 1),
        (t, r) => Bytes(t, r, 50),
        (t, _) => t.Replace('\n', ' '),
        (t, _) => t.Replace(' ', '\n'),
        (t, _) => t.Replace('.', ','),
        (t, r) => t.Replace((char)('0' + r.Next(10)), (char)('0' + r.Next(10))),
        (t, r) => t + string.Concat(Enumerable.Repeat(Words[r.Next(Words.Length)] + "\n", 2000)),
        (t, r) => t.Insert(r.Next(t.Length), new string('\0', 300)),
        (t, r) => t.Insert(r.Next(t.Length), "\r\r\n\r"),
        (t, _) => "\uFEFF" + t,
        (t, _) => t + t,
        (t, _) => new string([.. t.Reverse()]),
    ];

    public static int KindCount => Kinds.Length;

    public static byte[] Of(string text, int seed)
    {
        var random = new Random(seed);
        return Encoding.Latin1.GetBytes(Kinds[seed % Kinds.Length](text, random));
    }

    private static string Lines(string text, Random random, Action<List<string>, int> change)
    {
        var lines = text.Split('\n').ToList();
        change(lines, random.Next(lines.Count));
        return string.Join('\n', lines);
    }

    private static string Word(string text, Random random)
    {
        var words = text.Split(' ', '\n');
        var word = words[random.Next(words.Length)];
        var at = word.Length == 0 ? 0 : text.IndexOf(word, random.Next(text.Length), StringComparison.Ordinal);
        return at < 0 ? Words[random.Next(Words.Length)] + text : text.Remove(at, word.Length).Insert(at, Words[random.Next(Words.Length)]);
    }

    private static string Bytes(string text, Random random, int count)
    {
        var characters = text.ToCharArray();
        for (var i = 0; i < count; i++) characters[random.Next(characters.Length)] = (char)random.Next(256);
        return new string(characters);
    }
}

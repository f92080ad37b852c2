using System.Globalization;

namespace TenderKit.Intake.Photometry;

/// <summary>Numbers that follow one another over any number of lines, each with the line it stands on.</summary>
internal sealed class NumberStream
{
    private const double Greatest = 1e12;

    private static readonly char[] Blanks = [' ', '\t', '\f', '\v', '\0', '\u001a', '\u00a0'];

    private readonly string file;
    private readonly List<(string Text, int Line)> words = [];
    private readonly bool decimalComma;
    private readonly int lastLine;
    private int next;

    /// <param name="decimalComma">A comma is a decimal comma; otherwise it parts two numbers.</param>
    public NumberStream(string file, IReadOnlyList<string> lines, int firstIndex, bool decimalComma)
    {
        this.file = file;
        this.decimalComma = decimalComma;
        lastLine = lines.Count;
        var separators = decimalComma ? Blanks : [.. Blanks, ','];
        for (var i = firstIndex; i < lines.Count; i++)
        {
            foreach (var word in lines[i].Split(separators, StringSplitOptions.RemoveEmptyEntries)) words.Add((word, i + 1));
        }
    }

    public int Remaining => words.Count - next;

    /// <summary>Line of the number read last.</summary>
    public int Line => next > 0 ? words[next - 1].Line : 0;

    public double Next(string what)
    {
        if (next == words.Count) throw new RefusedException("TK152", $"the file ends where {what} should follow.", file, lastLine);
        var (text, line) = words[next++];
        return Parse(text, decimalComma) ?? throw new RefusedException("TK151", $"'{Short(text)}' stands where {what} should be.", file, line);
    }

    public int NextCount(string what, int least, int most)
    {
        var value = Next(what);
        if (value >= least && value <= most && value == Math.Floor(value)) return (int)value;
        throw new RefusedException("TK153", string.Create(CultureInfo.InvariantCulture, $"{what} is {value}; it must be a whole number from {least} to {most}."), file, Line);
    }

    /// <summary>So many angles, each greater than the one before.</summary>
    public double[] NextAngles(string what, int count)
    {
        var angles = new double[count];
        for (var i = 0; i < count; i++)
        {
            angles[i] = Next(what);
            if (i == 0 || angles[i] > angles[i - 1]) continue;
            throw new RefusedException("TK153", string.Create(CultureInfo.InvariantCulture, $"{what}: {angles[i]} follows {angles[i - 1]}; angles must ascend."), file, Line);
        }

        return angles;
    }

    /// <summary>A number in invariant text, or null; beyond 1e12 either way it is a damaged file.</summary>
    public static double? Parse(string text, bool decimalComma)
    {
        var plain = decimalComma ? text.Replace(',', '.') : text;
        var ok = double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && Math.Abs(value) <= Greatest;
        return ok ? value : null;
    }

    private static string Short(string text) => text.Length <= 30 ? text : text[..30] + "...";
}

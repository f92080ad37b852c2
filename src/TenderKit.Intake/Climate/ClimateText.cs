using System.Globalization;
using System.Text;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Climate;

/// <summary>The lines of a climate file, and what was found in it.</summary>
internal sealed class ClimateText(string file, string[] lines, List<Diagnostic> found)
{
    public string File => file;

    public string[] Lines => lines;

    public List<Diagnostic> Found => found;

    /// <summary>UTF-8, or Latin-1 where it is not; line ends of any kind.</summary>
    public static ClimateText Of(string file, byte[] bytes) => new(file, Decoded(bytes).Split('\n').Select(l => l.TrimEnd('\r')).ToArray(), []);

    /// <summary>The text without its byte order mark.</summary>
    public static string Decoded(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    /// <summary>A number in invariant text, or null.</summary>
    public static double? Number(string text) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    /// <summary>A whole number, or null.</summary>
    public static int? Whole(string text) => int.TryParse(text.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) ? value : null;

    /// <summary>Notes an error of the head of the file.</summary>
    public void Head(string message, int? line = null) => found.Add(Diagnostic.Error("TK142", message, new Place(file, null, line)));

    /// <summary>Notes an error of a line of data.</summary>
    public void Data(string message, int line) => found.Add(Diagnostic.Error("TK143", message, new Place(file, null, line)));
}

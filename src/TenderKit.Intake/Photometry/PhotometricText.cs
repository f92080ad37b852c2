using System.Text;

using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Photometry;

/// <summary>Bytes of a photometric file as lines: UTF-8 where the bytes are valid UTF-8, else Latin-1; any line ending.</summary>
internal static class PhotometricText
{
    /// <summary>Reads a file by one standard's parser; a refusal becomes an error beside what was found before it.</summary>
    /// <param name="parse">From file name and lines to the file, adding what it notices.</param>
    public static Outcome<PhotometricFile> Read(string fileName, byte[] bytes, Func<string, string[], List<Diagnostic>, PhotometricFile> parse)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        var found = new List<Diagnostic>();
        try
        {
            return Outcome.Of(parse(fileName, Lines(fileName, bytes), found), found);
        }
        catch (RefusedException refused)
        {
            return Outcome.None<PhotometricFile>([.. found, refused.Diagnostic]);
        }
    }

    private const int GreatestBytes = 20_000_000;

    public static string[] Lines(string fileName, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        if (bytes.Length > GreatestBytes) throw new RefusedException("TK150", "larger than 20 MB: not a photometric file.", fileName, null);
        var lines = Text(bytes).TrimStart('\uFEFF').Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
        var end = lines.Length;
        while (end > 0 && lines[end - 1].AsSpan().Trim(" \t\0\u001a").IsEmpty) end--;
        return lines[..end];
    }

    private static string Text(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }
}

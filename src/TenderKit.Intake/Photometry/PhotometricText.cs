using System.Text;

namespace TenderKit.Intake.Photometry;

/// <summary>Bytes of a photometric file as lines: UTF-8 where the bytes are valid UTF-8, else Latin-1; any line ending.</summary>
internal static class PhotometricText
{
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

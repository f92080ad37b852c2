using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Photometry;

/// <summary>Reads a photometric file of either standard, told apart by content first, then by name.</summary>
public static class PhotometryReader
{
    /// <summary>Reads a file; a file of neither standard is refused.</summary>
    /// <param name="fileName">Name without folder.</param>
    /// <param name="bytes">Content.</param>
    public static Outcome<PhotometricFile> Read(string fileName, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        try
        {
            var lines = PhotometricText.Lines(fileName, bytes);
            if (Lm63Reader.TiltLine(lines) >= 0 || HasExtension(fileName, ".ies")) return Lm63Reader.Read(fileName, bytes);
            if (HasExtension(fileName, ".ldt") || LooksLikeEulumdat(lines)) return EulumdatReader.Read(fileName, bytes);
            throw new RefusedException("TK150", "neither an LM-63 nor a EULUMDAT file.", fileName, null);
        }
        catch (RefusedException refused)
        {
            return Outcome.None<PhotometricFile>(refused.Diagnostic);
        }
    }

    private static bool HasExtension(string fileName, string extension) => fileName.EndsWith(extension, StringComparison.OrdinalIgnoreCase);

    private static bool LooksLikeEulumdat(string[] lines) =>
        lines.Length > 50 && Enumerable.Range(1, 5).All(i => NumberStream.Parse(lines[i].Trim(), decimalComma: true) is not null);
}

using System.Diagnostics;
using Xunit;

namespace TenderKit.Documents.Tests;

/// <summary>Reads a written PDF file back with an independent program, where the machine has it.</summary>
internal static class PdfReader
{
    /// <summary>Text of each page.</summary>
    public static IReadOnlyList<string> Pages(byte[] pdf) => With(pdf, file => Run("pdftotext", "-layout", "-enc", "UTF-8", file, "-")).TrimEnd('\f').Split('\f');

    /// <summary>The tree of tags with the text of each, a line an element or a piece of text.</summary>
    public static string Structure(byte[] pdf) => With(pdf, file => Run("pdfinfo", "-struct-text", file));

    private static string With(byte[] pdf, Func<string, string> read)
    {
        var file = Path.Combine(Path.GetTempPath(), $"tenderkit-{Guid.NewGuid():N}.pdf");
        try
        {
            File.WriteAllBytes(file, pdf);
            return read(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = System.Text.Encoding.UTF8 };
        Process? process = null;
        try
        {
            process = Process.Start(start);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Skip.If(true, $"{program} is not installed");
        }

        using (process)
        {
            var output = process!.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
            return output;
        }
    }
}

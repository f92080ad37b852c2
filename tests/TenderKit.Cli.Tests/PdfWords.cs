using System.Diagnostics;
using System.Globalization;
using System.Xml.Linq;
using Xunit;

namespace TenderKit.Cli.Tests;

/// <summary>A word on a page of a PDF file, points from the left and top edges.</summary>
internal sealed record PdfWord(int Page, double Left, double Top, double Right, string Text);

/// <summary>Reads the words of a PDF file with their places by an independent program.</summary>
internal static class PdfWords
{
    public static IReadOnlyList<PdfWord> Of(string file)
    {
        var pages = XDocument.Parse(Run("pdftotext", "-bbox", "-enc", "UTF-8", file, "-")).Descendants().Where(e => e.Name.LocalName == "page");
        return [.. pages.SelectMany((page, i) => page.Elements().Select(w => new PdfWord(i + 1, At(w, "xMin"), At(w, "yMin"), At(w, "xMax"), w.Value)))];
    }

    private static double At(XElement word, string edge) => double.Parse(word.Attribute(edge)!.Value, CultureInfo.InvariantCulture);

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

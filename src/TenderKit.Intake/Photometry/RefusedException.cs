using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Photometry;

/// <summary>Ends the reading of one file; caught by the reader and turned into its diagnostic.</summary>
internal sealed class RefusedException : Exception
{
    public RefusedException(string code, string message, string file, int? line)
        : base(message)
    {
        var where = line is { } l ? string.Create(CultureInfo.InvariantCulture, $"line {l}: ") : "";
        Diagnostic = Diagnostic.Error(code, where + message, new Place(File: file, Row: line));
    }

    public Diagnostic Diagnostic { get; }
}

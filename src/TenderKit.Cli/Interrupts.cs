using System.Globalization;
using System.Runtime.InteropServices;
using TenderKit.Documents.Bids;

namespace TenderKit.Cli;

/// <summary>
/// Ctrl-C and a polite request to end: the program stops at once, whatever it works out, but never between two documents that take
/// their places, and it takes what it had written beside them away.
/// </summary>
internal static class Interrupts
{
    private static readonly List<PosixSignalRegistration> _registrations = [];
    private static string? _catalog;

    /// <summary>Listens from now on, for the whole life of the process.</summary>
    public static void Watch(TextWriter errors)
    {
        foreach (var signal in new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM }) _registrations.Add(PosixSignalRegistration.Create(signal, context => Stop(context, errors)));
    }

    /// <summary>A catalogue file is going to be written.</summary>
    public static void Writing(string catalog) => _catalog = Path.GetFullPath(catalog);

    private static void Stop(PosixSignalContext context, TextWriter errors)
    {
        context.Cancel = true;
        lock (BidFolder.Writing)
        {
            if (_catalog is not null) Clear(string.Create(CultureInfo.InvariantCulture, $"{_catalog}.{Environment.ProcessId}.new"));
            errors.WriteLine("Stopped; no half-written file is left.");
            errors.Flush();
            Environment.Exit(ExitCodes.Stopped);
        }
    }

    private static void Clear(string beside)
    {
        try
        {
            File.Delete(beside);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The next import of this catalogue clears it away
        }
    }
}

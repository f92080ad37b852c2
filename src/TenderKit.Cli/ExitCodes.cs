namespace TenderKit.Cli;

/// <summary>What a command's exit code means.</summary>
public static class ExitCodes
{
    /// <summary>All that was asked for was done.</summary>
    public const int Good = 0;

    /// <summary>Finished, but something asked for could not be met: a site without a design, an unreadable row.</summary>
    public const int SomethingUnmet = 1;

    /// <summary>Could not run; nothing was written.</summary>
    public const int CouldNotRun = 2;

    /// <summary>Stopped from outside (Ctrl-C or a request to end); no half-written file is left.</summary>
    public const int Stopped = 130;
}

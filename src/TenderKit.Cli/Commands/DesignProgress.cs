using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary>Designs a tender and says how far the work has come.</summary>
internal sealed class DesignProgress(Terminal terminal)
{
    public TenderDesign Design(DesignInputs inputs, ImmutableArray<Diagnostic> noticed)
    {
        var meter = terminal.Meter("sites", inputs.Sites.Length);
        return BidDesign.Run(inputs, noticed, _ => meter.Advance(), terminal.Progress);
    }
}

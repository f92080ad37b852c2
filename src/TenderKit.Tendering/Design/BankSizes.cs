using System.Collections.Concurrent;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>What every size of bank of every battery holds in one climate, whatever it feeds: found once and looked up. Safe for several threads.</summary>
internal sealed class BankSizes(SiteClimate climate, DesignInputs inputs)
{
    private readonly ConcurrentDictionary<Battery, Size[]> _known = new(ReferenceEqualityComparer.Instance);

    /// <summary>One size of bank.</summary>
    /// <param name="UsableWh">Usable energy at end of life in the coldest month, Wh.</param>
    public sealed record Size(BatteryModel Model, double UsableWh);

    public Size Of(Battery battery, int inSeries, int strings) =>
        _known.GetOrAdd(battery, b => [.. BankStage.Sizes.Select(s => BankStage.SizeOf(b, s.InSeries, s.Strings, climate, inputs))])[((inSeries - 1) * BankStage.MostStrings) + strings - 1];
}

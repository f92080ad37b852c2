using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Bill;

/// <summary>Finds the rate of each use in the catalogue and remembers what was missing or doubtful.</summary>
internal sealed class ServicePick(PartsCatalog catalog, List<Diagnostic> diagnostics)
{
    private readonly Dictionary<ServiceUse, ServiceRate?> _found = [];

    public ServiceRate? For(ServiceUse use)
    {
        if (_found.TryGetValue(use, out var known)) return known;
        return _found[use] = Look(use);
    }

    /// <remarks>Backfill without a rate is taken to lie in that of the excavation.</remarks>
    private ServiceRate? Look(ServiceUse use)
    {
        var rates = catalog.Services.Where(s => s.Use == use).OrderBy(s => s.UnitPrice).ThenBy(s => s.Code, StringComparer.Ordinal).ToArray();
        if (rates.Length == 0 && use != ServiceUse.Backfill) diagnostics.Add(BillNotices.NoService(use));
        if (rates.FirstOrDefault() is { } rate && !Units(use).Contains(rate.Unit)) diagnostics.Add(BillNotices.WrongUnit(rate, Units(use)));
        if (rates.Length > 1) diagnostics.Add(BillNotices.SeveralServices(use, rates));
        return rates.FirstOrDefault();
    }

    /// <summary>Every rate of a use, for work that is asked for in each kind there is: a crane and an excavator by the hour.</summary>
    public IReadOnlyList<ServiceRate> Every(ServiceUse use)
    {
        var rates = catalog.Services.Where(s => s.Use == use).OrderBy(s => s.Code, StringComparer.Ordinal).ToArray();
        if (rates.Length == 0) diagnostics.Add(BillNotices.NoService(use));
        diagnostics.AddRange(rates.Where(r => !Units(use).Contains(r.Unit)).Select(r => BillNotices.WrongUnit(r, Units(use))));
        return rates;
    }

    /// <summary>Units in which the bill measures a use. A site set-up may be priced once a lot (sum) or for every site (No.).</summary>
    private static string[] Units(ServiceUse use) => use switch
    {
        ServiceUse.SetUpSite or ServiceUse.Train or ServiceUse.Documents => ["sum", "No."],
        ServiceUse.Excavate or ServiceUse.Concrete or ServiceUse.Backfill => ["m3"],
        ServiceUse.Reinforcement => ["kg"],
        ServiceUse.LayCable => ["m"],
        ServiceUse.DayworkLabour or ServiceUse.DayworkSkilled => ["day", "h"],
        ServiceUse.DayworkPlant => ["h", "day"],
        _ => ["No.", "set"],
    };
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Quotes;

/// <summary>Takes what is asked from our own design: its kits are the measure, their parts' ratings the least.</summary>
public static class AskedBuilder
{
    /// <param name="design">The tender, designed.</param>
    /// <param name="bill">Our own bill for the estimate, or null for none.</param>
    /// <param name="stated">The kits the tender states, or null: what its sites ask is the measure.</param>
    /// <param name="inputs">Inputs of the design, for what each site asks where no kits are stated.</param>
    public static Asked Of(TenderDesign design, BillOfQuantities? bill, StatedAsk? stated = null, DesignInputs? inputs = null)
    {
        var head = design.Tender.Head;
        var rates = RatesOf(bill);
        var book = BookOf(design, bill);
        return new Asked(
            stated is null ? [.. design.Kits.Select(k => KitOf(k, design, bill, rates))] : [.. stated.Kits.Where(k => SitesOf(k, design).Any()).Select(k => StatedOf(k, design)).Select(k => k with { Estimate = book?.Of(k) ?? k.Estimate })],
            head.ValidityDays,
            head.DeliveryDays,
            design.Tender.Reliability.AutonomyNights,
            head.Currency,
            head.Exchange.ToImmutableSortedDictionary(e => e.Currency, e => e.Rate, StringComparer.Ordinal),
            LifeOf(design),
            new Ceilings(
                design.Rule("plausible.luminaire"), design.Rule("plausible.module"), design.Rule("plausible.battery_lithium"), design.Rule("plausible.battery_lead"),
                design.Rule("wiring.ambient"), design.Rule("wiring.fuse_factor"), design.Rule("wiring.drop_battery")),
            design.Tender.Quotes)
        {
            IsStated = stated is not null,
            Sites = stated is null && inputs is not null ? Own.SiteNeed.Of(design, inputs) : [],
            Fresh = FreshOf(design),
            LeastIp = (int)design.Rule("luminaire.ip"),
            Book = book,
        };
    }

    private static IEnumerable<SiteDesign> SitesOf(StatedKit kit, TenderDesign design) => design.Sites.Where(s => kit.SiteIds.Contains(s.Site.Id));

    /// <summary>A stated kit: its own lamp through the schedule's full hours at its site, our own use beside the lamp; the module it states is enough by statement.</summary>
    private static AskedKit StatedOf(StatedKit kit, TenderDesign design)
    {
        var duties = SitesOf(kit, design).Select(s =>
        {
            var hours = s.Climate.Lamp.LongestMonthFullHours;
            var own = Math.Max(0, s.Energy.NightlyWh - (s.Energy.System.LampInputW * hours));
            var night = (kit.InputPowerW * kit.LevelFraction * hours) + own;
            return (Night: night, Hours: hours, ArrayWp: s.Energy.Hand.ArrayWp * night / s.Energy.NightlyWh);
        }).ToList();
        var hardest = duties.MaxBy(d => d.Night);
        var duty = new KitDuty(kit.LevelFraction, hardest.Night, hardest.Hours, Math.Min(duties.Max(d => d.ArrayWp), kit.ModuleWp), FreshOf(design));
        return new AskedKit(
            kit.Id, kit.Poles, kit.PolesBySite, kit.FluxLm, kit.InputPowerW, kit.IpCode, kit.ModuleWp, kit.BankV, kit.BatteryAh, kit.BatteryWh, kit.ModuleWp / kit.BankV, kit.HeightM, duty, ImmutableSortedDictionary<string, decimal>.Empty);
    }

    private static ImmutableSortedDictionary<string, double> FreshOf(TenderDesign design) =>
        Enum.GetValues<BatteryChemistry>().ToImmutableSortedDictionary(c => c.ToString(), c => design.Rule("battery.depth." + c), StringComparer.Ordinal);

    private static AskedKit KitOf(Kit kit, TenderDesign design, BillOfQuantities? bill, Dictionary<string, decimal> rates)
    {
        var sites = design.Sites.Where(s => s.KitId == kit.Id).ToList();
        var parts = kit.Parts;
        var hardest = sites.MaxBy(s => s.Energy.NightlyWh)!;
        var duty = new KitDuty(
            hardest.Light.LevelFraction,
            hardest.Energy.NightlyWh,
            hardest.Climate.Lamp.LongestMonthFullHours,
            sites.Max(s => s.Energy.Hand.ArrayWp),
            FreshOf(design));
        return new AskedKit(
            kit.Id,
            sites.GroupBy(s => s.Site.Lot).ToImmutableSortedDictionary(g => g.Key, g => g.Sum(s => s.Poles), StringComparer.Ordinal),
            sites.ToImmutableSortedDictionary(s => s.Site.Id, s => s.Poles, StringComparer.Ordinal),
            parts.Luminaire.FluxLm, parts.Luminaire.InputPowerW, (int)design.Rule("luminaire.ip"), parts.ArrayWp, parts.SystemVoltageV < 18 ? 12 : parts.SystemVoltageV < 36 ? 24 : 48,
            parts.Battery.RatedAh * parts.BatteryStrings, parts.BatteryRatedWh, parts.ArrayWp / parts.SystemVoltageV, sites.Min(s => s.Site.MountingHeightsM[0]), duty, EstimateOf(kit, design, bill, rates));
    }

    private static Dictionary<string, decimal> RatesOf(BillOfQuantities? bill)
    {
        if (bill is null) return [];
        var values = LedgerValues.Evaluate(bill.Ledger);
        return bill.BuildUps.ToDictionary(b => b.PartCode, b => values[b.Rate], StringComparer.Ordinal);
    }

    private static ImmutableSortedDictionary<string, decimal> EstimateOf(Kit kit, TenderDesign design, BillOfQuantities? bill, Dictionary<string, decimal> rates)
    {
        if (bill is null) return ImmutableSortedDictionary<string, decimal>.Empty;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var parts = design.Catalog.All.GroupBy(p => p.Code, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return bill.MakeUp.Where(m => m.KitId == kit.Id && parts.TryGetValue(m.PartCode, out var part) && part is not ServiceRate && rates.ContainsKey(m.PartCode))
            .GroupBy(m => FamilyOf(parts[m.PartCode]))
            .ToImmutableSortedDictionary(g => g.Key, g => g.Sum(m => values[m.PerPole] * rates[m.PartCode]), StringComparer.Ordinal);
    }

    /// <summary>Family of a part in the words of an offer.</summary>
    public static string FamilyOf(Part part) => part switch
    {
        IntegratedUnit => "integrated",
        FoundationSet => "foundation",
        ProtectionDevice { Kind: ProtectionKind.SurgeArrester } => "surge",
        ProtectionDevice { Kind: ProtectionKind.EarthElectrode } => "earth",
        ProtectionDevice => "fuse",
        _ => PartWords.Family(part).One,
    };

    private static EstimateBook? BookOf(TenderDesign design, BillOfQuantities? bill)
    {
        if (bill is null || bill.BuildUps.IsEmpty) return null;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var services = design.Catalog.Services.Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        var factors = bill.BuildUps.Where(b => !services.Contains(b.PartCode) && values[b.Supply] > 0).Select(b => values[b.Rate] / values[b.Supply]).ToList();
        var head = design.Tender.Head;
        return factors.Count == 0 ? null : new EstimateBook(design.Catalog, factors.Average(), c => c == head.Currency ? 1 : head.Exchange.FirstOrDefault(e => e.Currency == c)?.Rate);
    }

    /// <summary>Life by chemistry from our own energy balance; for a chemistry we did not choose, the middle of the catalogue's batteries at the same use and heat.</summary>
    private static ImmutableSortedDictionary<string, double> LifeOf(TenderDesign design)
    {
        static string Group(BatteryChemistry chemistry) => chemistry == BatteryChemistry.LithiumIronPhosphate ? "lithium" : "lead";
        var own = design.Sites.GroupBy(s => Group(s.Parts.Battery.Chemistry)).ToDictionary(g => g.Key, g => g.Max(s => s.Energy.BatteryLifeYears));
        foreach (var group in design.Catalog.Batteries.GroupBy(b => Group(b.Chemistry)).Where(g => !own.ContainsKey(g.Key)))
        {
            var site = design.Sites.MinBy(s => s.Climate.Monthly.MeanC.Average())!;
            var heat = site.Climate.Monthly.MeanC.Average() + design.Rule("battery.enclosure_rise");
            var lives = group.Select(b => BatteryCapacity.LifeYears(b.CalendarYearsAt25C, b.CyclesAtDepth, b.CycleDepthFraction, site.Energy.Simulated.EquivalentFullCyclesPerYear, heat)).Order().ToList();
            own[group.Key] = lives[lives.Count / 2];
        }

        return own.ToImmutableSortedDictionary(StringComparer.Ordinal);
    }
}

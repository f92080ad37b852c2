using System.Collections.Immutable;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Own;

/// <summary>
/// Where the tender states no kits, an offer is judged as it is built: its own light points, split or integrated, are set at the sites they
/// serve best, and what is asked of each is what those sites ask: light, energy through the nights, height. Our own parts are no measure.
/// </summary>
internal static class OfferShape
{
    /// <summary>What is asked, in the light points of the offer; as it was where no lamp was read.</summary>
    public static Asked For(Offer offer, Asked asked, IReadOnlyCollection<string> lots)
    {
        var points = LightPoint.Of(offer, lots);
        var sites = asked.Sites.Where(s => lots.Contains(s.Lot)).ToImmutableArray();
        if (points.IsEmpty || sites.IsEmpty) return asked;
        var first = asked with { Kits = [.. points.Select(p => Bare(p, asked, lots))], IsShaped = true };
        var offered = OfferChecker.KitsOf(LineMatcher.Match([.. offer.Items], first, lots), first, [.. lots]);
        var parts = points.Select(p => offered.FirstOrDefault(o => o.Asked.Id == p.Id) ?? new OfferedKit(first.Kits.First(k => k.Id == p.Id), null, null, null, null, null)).ToList();
        var table = new Allotted[sites.Length, points.Length];
        for (var s = 0; s < sites.Length; s++)
        {
            for (var p = 0; p < points.Length; p++) table[s, p] = Allotment.Of(sites[s], points[p], parts[p], asked);
        }

        var allotted = Allotment.Find(sites, points, table);
        return first with { Kits = [.. points.Select((p, i) => Kit(p, parts[i], [.. Enumerable.Range(0, sites.Length).Where(s => allotted[s] == i).Select(s => table[s, i])], asked, lots))] };
    }

    /// <summary>A kit to match rows by: what a lamp of these watts usually has beside it at these sites.</summary>
    private static AskedKit Bare(LightPoint point, Asked asked, IReadOnlyCollection<string> lots)
    {
        var night = point.InputPowerW * asked.Sites.Average(s => s.FullHoursH) * 0.9;
        var wh = night * asked.AutonomyNights / 0.9;
        var wp = night * asked.Sites.Average(s => s.ArrayWpPerWh);
        var duty = new KitDuty(1, night, asked.Sites.Average(s => s.FullHoursH), wp, asked.Fresh);
        return new AskedKit(point.Id, Spread(point, [], lots), ImmutableSortedDictionary<string, int>.Empty, point.FluxLm, point.InputPowerW, asked.LeastIp, wp, 0, wh / 12, wh, 0, 0, duty, ImmutableSortedDictionary<string, decimal>.Empty);
    }

    private static AskedKit Kit(LightPoint point, OfferedKit parts, ImmutableArray<Allotted> sites, Asked asked, IReadOnlyCollection<string> lots)
    {
        var bare = Bare(point, asked, lots);
        double Night(Allotted a) => (point.InputPowerW * a.FluxLm / point.FluxLm * a.Site.FullHoursH) + a.Site.OwnUseWh;
        var duty = bare.Duty;
        var (flux, watt) = (point.FluxLm, point.InputPowerW);
        if (!sites.IsEmpty)
        {
            var hardest = sites.MaxBy(Night)!;
            (flux, watt) = (hardest.FluxLm, point.InputPowerW * hardest.FluxLm / point.FluxLm);
            duty = new KitDuty(1, Night(hardest), hardest.Site.FullHoursH, sites.Max(a => Night(a) * a.Site.ArrayWpPerWh), asked.Fresh);
        }

        var volts = parts.Battery?.Value("nominal_voltage_v") is { } v ? LineMatcher.VoltClass(v) : 12;
        var wp = parts.ArrayWp ?? duty.NeededArrayWp;
        var wh = parts.BatteryWh ?? duty.NightlyWh * asked.AutonomyNights / asked.FreshOf(parts.Chemistry);
        var needed = sites.Sum(a => a.Poles);
        var share = needed == 0 ? 1 : Math.Min(1, (double)point.Quantity / needed);
        var kit = bare with
        {
            Poles = Spread(point, sites, lots),
            PolesBySite = sites.ToImmutableSortedDictionary(a => a.Site.Id, a => Math.Max(1, (int)Math.Round(needed == 0 ? a.Poles : (double)a.Poles * point.Quantity / needed)), StringComparer.Ordinal),
            FluxLm = flux,
            InputPowerW = watt,
            ModuleWp = wp,
            BankV = volts,
            BatteryAh = wh / volts,
            BatteryWh = wh,
            ChargeA = wp / (parts.Battery?.Value("nominal_voltage_v") ?? volts),
            HeightM = sites.Select(a => a.Site.LeastHeightM).DefaultIfEmpty(0).Max(),
            Duty = duty,
            PolesNeeded = needed,
            FluxBySite = sites.ToImmutableSortedDictionary(a => a.Site.Id, a => a.FluxLm, StringComparer.Ordinal),
            LightBySite = sites.ToImmutableSortedDictionary(a => a.Site.Id, a => a.ReachedFraction < 1 ? a.ReachedFraction : share, StringComparer.Ordinal),
        };
        return kit with { Estimate = asked.Book?.Of(kit with { HeightM = parts.Pole?.Value("height_m") ?? kit.HeightM, FluxLm = point.FluxLm, InputPowerW = point.InputPowerW }) ?? kit.Estimate };
    }

    /// <summary>Quantity by lot: as offered, else as the sites it stands at share it.</summary>
    private static ImmutableSortedDictionary<string, int> Spread(LightPoint point, ImmutableArray<Allotted> sites, IReadOnlyCollection<string> lots)
    {
        if (!point.ByLot.ContainsKey("")) return point.ByLot;
        var byLot = sites.GroupBy(a => a.Site.Lot).ToDictionary(g => g.Key, g => g.Sum(a => a.Poles));
        var rest = point.Quantity;
        var spread = ImmutableSortedDictionary.CreateBuilder<string, int>(StringComparer.Ordinal);
        foreach (var lot in lots.Order(StringComparer.Ordinal))
        {
            var own = byLot.Values.Sum() is > 0 and var all ? (int)Math.Round((double)point.Quantity * byLot.GetValueOrDefault(lot) / all) : 0;
            spread[lot] = Math.Min(rest, own);
            rest -= spread[lot];
        }

        if (rest > 0) spread[spread.MaxBy(l => l.Value).Key] += rest;
        return spread.Where(l => l.Value > 0).ToImmutableSortedDictionary(l => l.Key, l => l.Value, StringComparer.Ordinal);
    }
}

using System.Collections.Immutable;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Own;

/// <summary>One kind of light point as an offer builds it: a lamp, or a whole unit, with its quantity.</summary>
/// <param name="ByLot">Quantity by lot; under an empty name where the offer does not say.</param>
/// <param name="Sites">Sites its rows name; empty where they name none.</param>
internal sealed record LightPoint(string Id, double FluxLm, double InputPowerW, ImmutableSortedDictionary<string, int> ByLot, ImmutableArray<string> Sites)
{
    public int Quantity => ByLot.Values.Sum();

    /// <summary>The kinds of light points of an offer, in its order; the same lamp in another lot, or at another site, is the same kind.</summary>
    public static ImmutableArray<LightPoint> Of(Offer offer, IReadOnlyCollection<string> lots)
    {
        var lamps = Lines(offer);
        if (lamps.Count == 0) return [];
        var efficacy = lamps.Select(l => l.Value("flux_lm") / l.Value("input_power_w")).OfType<double>().Where(e => e is > 20 and < 250).DefaultIfEmpty(130).Average();
        var quantities = Quantities(lamps, offer);
        var points = new List<(string Key, LightPoint Point)>();
        foreach (var (line, quantity) in lamps.Zip(quantities))
        {
            var watt = line.Value("input_power_w") ?? line.Value("flux_lm")!.Value / efficacy;
            var key = string.Join('|', line.Family, line.Value("flux_lm"), watt, line.Value("rated_wp"), line.Value("rated_ah"), line.Value("rated_wh"));
            var lot = lots.Contains(line.Lot) ? line.Lot : "";
            ImmutableArray<string> sites = line.Site.Length > 0 ? [line.Site] : [];
            var same = points.FindIndex(p => p.Key == key && (sites.IsEmpty ? !p.Point.ByLot.ContainsKey(lot) : !p.Point.Sites.IsEmpty));
            if (same < 0 && points.Exists(p => p.Key == key && p.Point.ByLot.GetValueOrDefault(lot) == quantity && sites.IsEmpty)) continue;
            if (same < 0)
            {
                var id = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"P{points.Count + 1}");
                points.Add((key, new LightPoint(id, line.Value("flux_lm") ?? watt * efficacy, watt, ImmutableSortedDictionary<string, int>.Empty.WithComparers(StringComparer.Ordinal).Add(lot, quantity), sites)));
                continue;
            }

            var known = points[same].Point;
            points[same] = (key, known with { ByLot = known.ByLot.SetItem(lot, known.ByLot.GetValueOrDefault(lot) + quantity), Sites = [.. known.Sites.Union(sites)] });
        }

        return [.. points.Select(p => p.Point)];
    }

    private static List<OfferLine> Lines(Offer offer) =>
        [.. offer.Items.Where(l => !l.Spare && l.Quantity is >= 1 && LineMatcher.MatchFamily(l) is "unit" or "luminaire" && !l.Spare && l.Quantity is >= 1 && (l.Value("flux_lm") is > 0 || l.Value("input_power_w") is > 0))];

    /// <summary>Quantities of the lamps; where one differs from the battery beside it, the one that more of the other families add up to.</summary>
    private static List<int> Quantities(List<OfferLine> lamps, Offer offer)
    {
        var own = lamps.ConvertAll(l => (int)l.Quantity!.Value);
        foreach (var lot in lamps.Select(l => l.Lot).Distinct())
        {
            var here = lamps.Select((l, i) => (l, i)).Where(p => p.l.Lot == lot && p.l.Family == "luminaire").Select(p => p.i).ToList();
            var items = offer.Items.Where(l => !l.Spare && l.Lot == lot && l.Quantity is >= 1).ToList();
            var batteries = items.Where(l => l.Family == "battery").Select(l => (int)l.Quantity!.Value).ToList();
            if (batteries.Count != here.Count) continue;
            var off = here.Where((h, k) => own[h] != batteries[k]).ToList();
            if (off.Count != 1) continue;
            var (withLamps, withBatteries) = (here.Sum(h => own[h]), batteries.Sum());
            int Agree(int total) => items.Where(l => l.Family is "module" or "pole" or "controller" or "foundation" or "enclosure").GroupBy(l => l.Family).Count(g => g.Sum(l => l.Quantity ?? 0) == total);
            if (Agree(withBatteries) > Agree(withLamps)) own[off[0]] = batteries[here.IndexOf(off[0])];
        }

        return own;
    }
}

using System.Collections.Immutable;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Quotes.Checks;

namespace TenderKit.Tendering.Quotes.Compare;

/// <summary>Writes the evaluation of each lot of each offer into one ledger, step by step in the published order.</summary>
internal sealed class LotBook(Asked asked, ImmutableArray<CheckedOffer> offers, IReadOnlySet<string>? domestic)
{
    private readonly LedgerBuilder _ledger = new();

    public Ledger Ledger => _ledger.Build();

    /// <summary>The lots of an offer; empty where its currency is not stated or has no rate.</summary>
    public ImmutableArray<LotEvaluation> Add(CheckedOffer offer)
    {
        if (offer.Offer.Terms.Currency is not { } currency || asked.RateOf(currency) is not { } rate) return [];
        return [.. offer.Lots.Select(l => Lot(offer, l, rate))];
    }

    private LotEvaluation Lot(CheckedOffer offer, string lot, decimal rate)
    {
        var name = $"{offer.Offer.File}.{lot}.";
        CellId Put(string step, Expression expression) => _ledger.Add(name + step, expression);
        static decimal Cents(decimal value) => decimal.Round(value, 2, MidpointRounding.AwayFromZero);
        var items = Cents(ItemsOf(offer, lot, _ => true));
        // the last lot takes the rest, so that the lots add up to the offer
        var share = Share(offer, lot);
        var last = lot == offer.Lots[^1];
        decimal Part(decimal whole) => last ? whole - offer.Lots.SkipLast(1).Sum(l => Cents(whole * Share(offer, l))) : Cents(whole * share);
        if (last) items = Cents(offer.Price.Items) - offer.Lots.SkipLast(1).Sum(l => Cents(ItemsOf(offer, l, _ => true)));
        var itemsCell = Put("items", new Literal(items));
        var transport = Put("transport", new Literal(Part(offer.Price.Transport)));
        var discount = Put("discount", new Literal(Part(offer.Price.Discount)));
        var net = Put("net", Cells.SumOf(itemsCell, transport, discount));
        var exchange = Put("rate", new Literal(rate));
        var converted = Put("converted", new Rounded(Cells.Times(net, exchange), 2));
        var added = Put("added", new Literal(Missing(offer, lot)));
        var preferred = asked.Settings.PreferenceFraction > 0 && domestic is not null && !domestic.Contains(offer.Offer.File);
        var fraction = Put("preference_share", new Literal(preferred ? asked.Settings.PreferenceFraction : 0));
        var margin = Put("preference", new Rounded(new Product([Cells.SumOf(converted, added), Cells.Ref(fraction)]), 2));
        var evaluated = Put("evaluated", Cells.SumOf(converted, added, margin));
        var (replacedSum, factorValue) = Replacements(offer, lot, rate);
        var replaced = Put("replaced", new Literal(replacedSum));
        var factor = Put("factor", new Literal(factorValue));
        var years = Put("over_years", new Rounded(new Sum([Cells.Ref(evaluated), Cells.Times(replaced, factor)]), 2));
        var light = (decimal)Math.Round(LumenHours(offer, lot) / 1e6, 3);
        var lumen = Put("megalumen_hours", new Literal(light));
        CellId? per = light > 0 ? Put("per_megalumen_hour", new Rounded(new Quotient(Cells.Ref(years), Cells.Ref(lumen)), 4)) : null;
        return new LotEvaluation(lot, new LotCells(itemsCell, transport, discount, net, exchange, converted, added, fraction, margin, evaluated, replaced, factor, years, lumen, per), offer.Lots.Length > 1 && offer.Lines.Any(l => !offer.Lots.Contains(l.Line.Lot)));
    }

    /// <summary>Items of a lot: rows of that lot, and of common rows the share of its poles.</summary>
    private decimal ItemsOf(CheckedOffer offer, string lot, Func<JudgedLine, bool> which) =>
        offer.Lines.Where(which).Sum(l => (l.CorrectedAmount ?? 0) * ShareOf(offer, l, lot));

    private decimal ShareOf(CheckedOffer offer, JudgedLine line, string lot)
    {
        if (offer.Lots.Length == 1) return 1;
        if (offer.Lots.Contains(line.Line.Lot)) return line.Line.Lot == lot ? 1 : 0;
        var kits = KitsOf(offer).Where(k => line.KitIds.Contains(k.Id)).DefaultIfEmpty().OfType<AskedKit>().ToList();
        if (kits.Count == 0) kits = [.. KitsOf(offer)];
        var all = kits.Sum(k => offer.Lots.Sum(k.PolesOf));
        return all == 0 ? 1m / offer.Lots.Length : (decimal)kits.Sum(k => k.PolesOf(lot)) / all;
    }

    private IEnumerable<AskedKit> KitsOf(CheckedOffer offer) => asked.IsStated ? asked.Kits : offer.Kits.Select(k => k.Asked).DistinctBy(k => k.Id);

    private decimal Share(CheckedOffer offer, string lot) => offer.Price.Items == 0 ? 1m / offer.Lots.Length : ItemsOf(offer, lot, _ => true) / offer.Price.Items;

    /// <summary>What items missing cost elsewhere, in the tender's currency.</summary>
    private decimal Missing(CheckedOffer offer, string lot)
    {
        var sum = 0m;
        foreach (var family in offer.Findings.Where(f => f.Code == "TK805").Select(f => OfferComparison.FamilyIn(f.Message)).Where(f => f.Length > 0).Distinct())
        {
            decimal Of(CheckedOffer o) => ItemsOf(o, lot, l => !l.Line.Spare && l.Line.Family == family) * asked.RateOf(o.Offer.Terms.Currency)!.Value;
            var others = offers.Where(o => !ReferenceEquals(o, offer) && o.Lots.Contains(lot) && o.Offer.Terms.Currency is not null && asked.RateOf(o.Offer.Terms.Currency) is not null).Select(Of).Where(a => a > 0).ToList();
            sum += Math.Max(0, OfferComparison.Added(others, asked.Settings.MissingAtHighest) - Of(offer));
        }

        return decimal.Round(sum, 2, MidpointRounding.AwayFromZero);
    }

    /// <summary>
    /// What is bought again at the offered price: batteries (of a whole light point their share by our estimate), and integrated units as a whole, at the end of each expected life; the first only
    /// after the warranty, since until then the seller replaces it.
    /// </summary>
    private (decimal Price, decimal Factor) Replacements(CheckedOffer offer, string lot, decimal rate)
    {
        var (price, weighed) = (0m, 0m);
        foreach (var line in offer.Lines.Where(l => l.Line.Is("battery", "integrated", "kit") && !l.Line.Spare && l.CorrectedAmount is > 0))
        {
            var group = line.Line.Find("chemistry")?.Text is "LithiumIronPhosphate" ? "lithium" : "lead";
            var life = Math.Max(0.5, asked.LifeYears.GetValueOrDefault(group, 5));
            var warranty = line.Line.Value("warranty_years") ?? offer.Offer.Terms.Warranties.Where(w => w.Family == "battery" || w.Family == "battery " + group || w.Family == "all").Select(w => (double?)w.Years).FirstOrDefault() ?? 0;
            var factor = 0.0;
            for (var year = Math.Max(life, warranty); year < asked.Settings.Years; year += life) factor += 1 / Math.Pow(1 + asked.Settings.DiscountRate, year);
            var amount = line.CorrectedAmount!.Value * ShareOf(offer, line, lot) * rate * (line.Line.Family == "kit" ? BatteryShare(offer, line, group) : 1);
            price += amount;
            weighed += amount * (decimal)factor;
        }

        return (decimal.Round(price, 2), price == 0 ? 0 : decimal.Round(weighed / price, 6));
    }

    /// <summary>Share of the battery in the price of a whole light point, as our own estimate has it: an offer of whole points must not seem to need none.</summary>
    private decimal BatteryShare(CheckedOffer offer, JudgedLine line, string group)
    {
        var kits = KitsOf(offer).Where(k => line.KitIds.Contains(k.Id) && k.Estimate.Count > 0).ToList();
        decimal Battery(AskedKit k) => k.Estimate.GetValueOrDefault("battery " + group, k.Estimate.GetValueOrDefault("battery"));
        var whole = kits.Sum(k => Battery(k) + k.Estimate.Where(e => !e.Key.StartsWith("battery", StringComparison.Ordinal) && !e.Key.EndsWith(EstimateBook.High, StringComparison.Ordinal)).Sum(e => e.Value));
        return whole == 0 ? 0 : kits.Sum(Battery) / whole;
    }

    private double LumenHours(CheckedOffer offer, string lot) =>
        offer.Kits.DistinctBy(k => k.Asked.Id).Sum(k => (k.FluxLm ?? 0) * Math.Min(1, k.FluxLm is > 0 ? k.Asked.Duty.LevelFraction * k.Asked.FluxLm / k.FluxLm.Value : 1) * k.Asked.Duty.FullHoursH * 365 * asked.Settings.Years * k.Asked.PolesOf(lot));
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Quotes.Checks;

namespace TenderKit.Tendering.Quotes.Compare;

/// <summary>
/// Puts offers on one basis, in the published order: price as read, arithmetic corrections, unconditional discounts, one currency at a stated
/// rate, additions for omissions, margin of preference, rank (instructions to bidders of development banks and the United Nations, read).
/// Ranks are given lot by lot, and the least combination of awards is sought with the discounts that hang on several lots.
/// </summary>
public static class OfferComparison
{
    private const int MostCombinations = 100_000;
    private const int LeastOffersForOutliers = 3;

    /// <param name="offers">Offers, each checked.</param>
    /// <param name="domestic">Files whose offers have a claim to the margin of preference: the margin is added to all others.</param>
    /// <param name="runs">Site runs by file, or null.</param>
    public static ComparedOffers Of(ImmutableArray<CheckedOffer> offers, Asked asked, IReadOnlySet<string>? domestic = null, IReadOnlyDictionary<string, ImmutableArray<SiteRun>>? runs = null)
    {
        var book = new LotBook(asked, offers, domestic);
        var lots = offers.Select(book.Add).ToList();
        var ledger = book.Ledger;
        var values = LedgerValues.Evaluate(ledger);
        var evaluated = offers.Zip(lots).Select(p => Evaluate(p.First, p.Second, values, asked) with { Runs = runs?.GetValueOrDefault(p.First.Offer.File, []) ?? [] }).ToList();
        var screened = evaluated.Select(e => e with { Screens = [.. Screens(e, evaluated, asked), .. Outliers(e, evaluated, asked)] }).ToList();
        var ranked = screened.GroupBy(e => string.Join(' ', e.Checked.Lots)).SelectMany(g => Ranked([.. g], asked)).OrderBy(e => string.Join(' ', e.Checked.Lots), StringComparer.Ordinal).ThenBy(e => e.Rank ?? int.MaxValue).ThenBy(e => e.File, StringComparer.Ordinal).ToImmutableArray();
        ImmutableArray<string> names = [.. offers.SelectMany(o => o.Lots).Distinct().Order(StringComparer.Ordinal)];
        return new ComparedOffers(ledger, values, ranked, [.. names.Select(l => RankingOf(l, ranked, values, asked))], Best(names, ranked, values), asked.Currency, asked.Settings.ExchangeDate);
    }

    /// <summary>What a missing item costs elsewhere: 10 and 12 offered, one missing, gives 12 (highest) or 11 (average).</summary>
    public static decimal Added(IReadOnlyCollection<decimal> others, bool highest) => others.Count == 0 ? 0 : highest ? others.Max() : decimal.Round(others.Average(), 2);

    internal static string FamilyIn(string message) => LineMatcher.Matched.Select(f => f.Replace(" set", "", StringComparison.Ordinal)).FirstOrDefault(f => message.Contains("no " + f, StringComparison.Ordinal)) ?? "";

    private static EvaluatedOffer Evaluate(CheckedOffer offer, ImmutableArray<LotEvaluation> lots, IReadOnlyDictionary<CellId, decimal> values, Asked asked)
    {
        var (price, currency) = (offer.Price, offer.Offer.Terms.Currency ?? "no currency stated");
        decimal Sum(Func<LotCells, CellId> pick) => lots.Sum(l => values[pick(l.Cells)]);
        var steps = ImmutableArray.Create(
            new EvaluationStep("price as stated", price.Stated, currency),
            new EvaluationStep("items after arithmetic corrections", price.Items, currency),
            new EvaluationStep("transport", price.Transport, currency),
            new EvaluationStep("unconditional discounts", price.Discount, currency),
            new EvaluationStep("net price, tax left out", price.Corrected - price.Tax, currency));
        var responsive = offer.Overall != OfferChecker.RulesSayNo;
        if (lots.IsEmpty) return new(offer, responsive, steps, null, null, null, null, null, []);
        var rate = asked.RateOf(offer.Offer.Terms.Currency)!.Value;
        var date = asked.Settings.ExchangeDate is { } d ? " on " + d : "";
        var (evaluated, years, light) = (Sum(c => c.Evaluated), Sum(c => c.OverYears), Sum(c => c.MegalumenHours));
        steps = steps.AddRange(
            new EvaluationStep("in one currency", Sum(c => c.Converted), string.Create(CultureInfo.InvariantCulture, $"1 {currency} = {rate:0.######} {asked.Currency}{date}")),
            new EvaluationStep("added for items missing", Sum(c => c.Added), asked.Settings.MissingAtHighest ? "highest price of the other offers" : "average price of the other offers"),
            new EvaluationStep("margin of preference", Sum(c => c.Preference), string.Create(CultureInfo.InvariantCulture, $"{asked.Settings.PreferenceFraction * 100:0.##} % on offers without a claim to it")),
            new EvaluationStep("evaluated price", evaluated, asked.Currency));
        return new(offer, responsive, steps, evaluated, years, light > 0 ? decimal.Round(years / light, 4, MidpointRounding.AwayFromZero) : null, null, null, []) { Lots = lots };
    }

    /// <summary>Offers for the same lots, ranked among themselves.</summary>
    private static IEnumerable<EvaluatedOffer> Ranked(ImmutableArray<EvaluatedOffer> offers, Asked asked)
    {
        var least = offers.Where(e => e is { Responsive: true, Evaluated: > 0 }).Select(e => e.Evaluated!.Value).DefaultIfEmpty(0).Min();
        var ranks = offers.Where(e => e is { Responsive: true, Evaluated: not null }).OrderBy(e => e.Evaluated).ThenBy(e => e.File, StringComparer.Ordinal).Select((e, i) => (e.File, Rank: i + 1)).ToDictionary(p => p.File, p => p.Rank);
        return offers.Select(e => e with
        {
            Score = e.Evaluated is > 0 && least > 0 ? decimal.Round(100 * asked.Settings.PriceWeight * least / e.Evaluated.Value, 2) : null,
            Rank = ranks.TryGetValue(e.File, out var rank) ? rank : null,
        });
    }

    private static LotRanking RankingOf(string lot, ImmutableArray<EvaluatedOffer> offers, IReadOnlyDictionary<CellId, decimal> values, Asked asked)
    {
        var own = offers.Where(o => o.Checked.Lots.Contains(lot)).Select(o => (Offer: o, Lot: o.Lots.FirstOrDefault(l => l.Lot == lot))).ToList();
        var sums = own.Where(o => o is { Offer.Responsive: true, Lot: not null }).OrderBy(o => values[o.Lot!.Cells.Evaluated]).ThenBy(o => o.Offer.File, StringComparer.Ordinal).Select((o, i) => (o.Offer.File, Rank: i + 1)).ToDictionary(p => p.File, p => p.Rank);
        var least = own.Where(o => sums.ContainsKey(o.Offer.File)).Select(o => values[o.Lot!.Cells.Evaluated]).DefaultIfEmpty(0).Min();
        return new LotRanking(lot,
        [
            .. own.Select(o => new LotRank(
                o.Offer.File, o.Lot is { } l ? values[l.Cells.Evaluated] : null, o.Lot is { } y ? values[y.Cells.OverYears] : null,
                o.Lot is { } s && least > 0 && values[s.Cells.Evaluated] > 0 ? decimal.Round(100 * asked.Settings.PriceWeight * least / values[s.Cells.Evaluated], 2) : null, sums.TryGetValue(o.Offer.File, out var rank) ? rank : null))
                .OrderBy(r => r.Rank ?? int.MaxValue).ThenBy(r => r.File, StringComparer.Ordinal),
        ]);
    }

    /// <summary>One award for every lot, least in all; a discount that hangs on several lots counts where its bidder gets all the lots it offers.</summary>
    private static Combination? Best(ImmutableArray<string> lots, ImmutableArray<EvaluatedOffer> offers, IReadOnlyDictionary<CellId, decimal> values)
    {
        var choices = lots.Select(l => offers.Where(o => o.Responsive).SelectMany(o => o.Lots.Where(e => e.Lot == l).Select(e => (Offer: o, Price: values[e.Cells.Evaluated]))).OrderBy(c => c.Price).ThenBy(c => c.Offer.File, StringComparer.Ordinal).ToList()).ToList();
        if (choices.Exists(c => c.Count == 0) || choices.Count == 0) return null;
        while (choices.Aggregate(1.0, (n, c) => n * c.Count) > MostCombinations) choices.MaxBy(c => c.Count)!.RemoveAt(choices.Max(c => c.Count) - 1);
        Combination? best = null;
        foreach (var pick in Product(choices))
        {
            var sum = pick.Sum(p => p.Price);
            var discount = pick.GroupBy(p => p.Offer.File).Where(g => g.Count() > 1 && g.Count() == g.First().Offer.Checked.Lots.Length)
                .Sum(g => -decimal.Round(g.Sum(p => p.Price) * g.First().Offer.Checked.Offer.Terms.Discounts.Select(d => d.Fraction).DefaultIfEmpty(0).Max(), 2, MidpointRounding.AwayFromZero));
            if (best is null || sum + discount < best.Total) best = new Combination([.. lots.Zip(pick, (l, p) => new Award(l, p.Offer.File, p.Price))], sum, discount, sum + discount);
        }

        return best;
    }

    private static IEnumerable<ImmutableArray<T>> Product<T>(List<List<T>> lists)
    {
        IEnumerable<ImmutableArray<T>> all = [[]];
        return lists.Aggregate(all, (sofar, list) => sofar.SelectMany(s => list.Select(l => s.Add(l))));
    }

    /// <summary>Abnormally low: so low that it raises concerns; clarify in writing before anything else.</summary>
    private static IEnumerable<QuoteFinding> Screens(EvaluatedOffer offer, List<EvaluatedOffer> offers, Asked asked)
    {
        if (offer.Evaluated is not { } price) yield break;
        var place = new Place(offer.File, Row: 0);
        var settings = asked.Settings;
        var estimate = asked.IsStated ? asked.EstimateOf(offer.Checked.Lots) : (asked with { Kits = [.. offer.Checked.Kits.Select(k => k.Asked).DistinctBy(k => k.Id)] }).EstimateOf(offer.Checked.Lots);
        const string ask = "Your price is unusually low. Please explain in writing how it is made up.";
        const string source = "screen for abnormally low offers (from memory); clarify in writing before rejecting";
        if (estimate > 0 && price < estimate * (1 - settings.LowBelowEstimateFraction))
            yield return new("TK836", Severity.Warning, place, $"{Say.Money(price)} is {Say.Number((double)(1 - (price / estimate)) * 100)} % below the estimate of {Say.Money(estimate)}", source, ask);
        var sums = offers.Where(o => o.Responsive && o.Evaluated is not null && o.Checked.Lots.SequenceEqual(offer.Checked.Lots)).Select(o => (double)o.Evaluated!.Value).ToList();
        if (sums.Count < settings.LowLeastOffers) yield break;
        var mean = sums.Average();
        var deviation = Math.Sqrt(sums.Sum(s => (s - mean) * (s - mean)) / (sums.Count - 1));
        if ((double)price < mean - (settings.LowDeviations * deviation))
            yield return new("TK836", Severity.Warning, place, $"{Say.Money(price)} is more than {Say.Number(settings.LowDeviations)} standard deviations ({Say.Number(deviation)}) below the mean of {Say.Number(mean)}", source, ask);
    }

    /// <summary>Rates far from the middle of what at least two others ask for the same kits; only where the tender states the kits, so that they are the same goods.</summary>
    private static IEnumerable<QuoteFinding> Outliers(EvaluatedOffer offer, List<EvaluatedOffer> offers, Asked asked)
    {
        if (!asked.IsStated || offers.Count < LeastOffersForOutliers || asked.RateOf(offer.Checked.Offer.Terms.Currency) is not { } own) yield break;
        static string Key(JudgedLine l) => l.Line.Family + "|" + string.Join(' ', l.KitIds);
        foreach (var line in offer.Checked.Lines.Where(l => !l.Line.Spare && l.KitIds.Length > 0 && l.Line.Rate is > 0))
        {
            var others = offers.Where(o => o.File != offer.File).Select(o => (Rate: asked.RateOf(o.Checked.Offer.Terms.Currency), Line: o.Checked.Lines.FirstOrDefault(l => !l.Line.Spare && l.Line.Rate is > 0 && Key(l) == Key(line))))
                .Where(p => p is { Rate: not null, Line: not null }).Select(p => p.Line!.Line.Rate!.Value * p.Rate!.Value).Order().ToList();
            if (others.Count < LeastOffersForOutliers - 1) continue;
            var middle = others.Count % 2 == 1 ? others[others.Count / 2] : (others[(others.Count / 2) - 1] + others[others.Count / 2]) / 2;
            var rate = line.Line.Rate!.Value * own;
            if (rate >= middle * (decimal)asked.Settings.PriceLowRatio && rate <= middle * (decimal)asked.Settings.PriceHighRatio) continue;
            yield return new(
                "TK822", Severity.Warning, line.Line.Place, $"rate {Say.Money(rate)} {asked.Currency} for {line.Line.Family} of {string.Join(", ", line.KitIds)}; the middle of {others.Count} other offers is {Say.Money(middle)}", "rates of the other offers; limits in quotes.price",
                $"Line {line.Line.Place.Row} ({Say.Short(line.Line.Text)}): the unit price is far from what others ask. Please explain or confirm it.");
        }
    }
}

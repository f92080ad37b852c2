using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Checks;

namespace TenderKit.Tendering.Quotes.Compare;

/// <summary>One step of the evaluation of an offer.</summary>
/// <param name="Amount">In the tender's currency, save for the stated and corrected price; null where it cannot be told.</param>
public sealed record EvaluationStep(string Step, decimal? Amount, string How);

/// <summary>An offer on the common basis.</summary>
/// <param name="Responsive">Whether nothing speaks against it by the rules; the committee decides.</param>
/// <param name="Evaluated">Price the ranking goes by; null where it cannot be told.</param>
/// <param name="OverYears">Price and battery replacements over the years asked, discounted.</param>
/// <param name="PerMegalumenHour">Price over the years for a million delivered lumen-hours.</param>
/// <param name="Rank">1 for the lowest evaluated price or the best score among the responsive; null for the others.</param>
public sealed record EvaluatedOffer(
    CheckedOffer Checked, bool Responsive, ImmutableArray<EvaluationStep> Steps, decimal? Evaluated, decimal? OverYears, decimal? PerMegalumenHour, decimal? Score, int? Rank, ImmutableArray<QuoteFinding> Screens);

/// <summary>
/// Puts offers on one basis, in the published order: price as read, arithmetic corrections, unconditional discounts, additions for omissions,
/// one currency at a stated rate, margin of preference, rank (instructions to bidders of development banks and the United Nations, read).
/// </summary>
public static class OfferComparison
{
    /// <param name="offers">Offers, each checked.</param>
    /// <param name="domestic">Files whose offers have no claim to but compete with the margin of preference: the margin is added to all others.</param>
    public static ImmutableArray<EvaluatedOffer> Of(ImmutableArray<CheckedOffer> offers, Asked asked, IReadOnlySet<string>? domestic = null)
    {
        var evaluated = offers.Select(o => Evaluate(o, offers, asked, domestic)).ToList();
        var sums = evaluated.Where(e => e.Responsive && e.Evaluated is not null).Select(e => e.Evaluated!.Value).ToList();
        var least = sums.Count > 0 ? sums.Min() : 0;
        var scored = evaluated.Select(e => e with { Screens = Screens(e, sums, asked), Score = e.Evaluated is > 0 && least > 0 ? asked.Settings.PriceWeight * least / e.Evaluated : null }).ToList();
        var ranked = scored.Where(e => e.Responsive && e.Evaluated is not null).OrderBy(e => e.Evaluated).ThenBy(e => e.Checked.Offer.File, StringComparer.Ordinal).Select((e, i) => (e.Checked.Offer.File, Rank: i + 1)).ToDictionary(p => p.File, p => p.Rank);
        return [.. scored.Select(e => e with { Rank = ranked.TryGetValue(e.Checked.Offer.File, out var rank) ? rank : null }).OrderBy(e => e.Rank ?? int.MaxValue).ThenBy(e => e.Checked.Offer.File, StringComparer.Ordinal)];
    }

    private static EvaluatedOffer Evaluate(CheckedOffer offer, ImmutableArray<CheckedOffer> all, Asked asked, IReadOnlySet<string>? domestic)
    {
        var steps = ImmutableArray.CreateBuilder<EvaluationStep>();
        var price = offer.Price;
        var currency = offer.Offer.Terms.Currency ?? "no currency stated";
        steps.Add(new("price as stated", price.Stated, currency));
        var beforeDiscount = price.Corrected - price.Discount - price.Tax;
        steps.Add(new("arithmetic corrections", beforeDiscount, "items and transport by the correction rules, tax left out, " + currency));
        steps.Add(new("unconditional discounts", price.Discount, "as offered on the corrected sum"));
        var net = price.Corrected - price.Tax;
        var responsive = offer.Overall != OfferChecker.RulesSayNo;
        if (asked.RateOf(offer.Offer.Terms.Currency) is not { } rate || offer.Offer.Terms.Currency is null)
            return new(offer, responsive, steps.ToImmutable(), null, null, null, null, null, []);
        var converted = decimal.Round(net * rate, 2, MidpointRounding.AwayFromZero);
        steps.Add(new("in " + asked.Currency, converted, FormattableString.Invariant($"1 {offer.Offer.Terms.Currency} = {rate:0.######} {asked.Currency}{(asked.Settings.ExchangeDate is { } d ? " on " + d : "")}")));
        var added = Missing(offer, all, asked);
        steps.Add(new("added for items missing", added, asked.Settings.MissingAtHighest ? "highest price of the other offers" : "average price of the other offers"));
        var sum = converted + added;
        if (asked.Settings.PreferenceFraction > 0 && domestic is not null && !domestic.Contains(offer.Offer.File))
        {
            var margin = decimal.Round(sum * asked.Settings.PreferenceFraction, 2, MidpointRounding.AwayFromZero);
            steps.Add(new("margin of preference", margin, FormattableString.Invariant($"{asked.Settings.PreferenceFraction * 100:0.##} % on offers without a claim to it")));
            sum += margin;
        }

        steps.Add(new("evaluated price", sum, asked.Currency));
        var years = OverYears(offer, sum, rate, asked);
        var lumenHours = LumenHours(offer, asked);
        return new(offer, responsive, steps.ToImmutable(), sum, years, lumenHours > 0 ? decimal.Round(years * 1_000_000 / (decimal)lumenHours, 4) : null, null, null, []);
    }

    /// <summary>What a missing item costs elsewhere: 10 and 12 offered, one missing, gives 12 (highest) or 11 (average).</summary>
    public static decimal Added(IReadOnlyCollection<decimal> others, bool highest) => others.Count == 0 ? 0 : highest ? others.Max() : decimal.Round(others.Average(), 2);

    private static decimal Missing(CheckedOffer offer, ImmutableArray<CheckedOffer> all, Asked asked)
    {
        var sum = 0m;
        foreach (var family in offer.Findings.Where(f => f.Code == "TK805").Select(f => FamilyIn(f.Message)))
        {
            var others = all.Where(o => !ReferenceEquals(o, offer) && asked.RateOf(o.Offer.Terms.Currency) is not null)
                .Select(o => o.Lines.Where(l => !l.Line.Spare && l.Line.Family == family && o.Lots.SequenceEqual(offer.Lots)).Sum(l => l.CorrectedAmount ?? 0) * asked.RateOf(o.Offer.Terms.Currency)!.Value).Where(a => a > 0).ToList();
            var own = offer.Lines.Where(l => l.Line.Family == family && !l.Line.Spare).Sum(l => l.CorrectedAmount ?? 0) * asked.RateOf(offer.Offer.Terms.Currency)!.Value;
            sum += Math.Max(0, Added(others, asked.Settings.MissingAtHighest) - own);
        }

        return decimal.Round(sum, 2);
    }

    private static string FamilyIn(string message) => LineMatcher.Matched.Select(f => f.Replace(" set", "", StringComparison.Ordinal)).FirstOrDefault(f => message.Contains("no " + f, StringComparison.Ordinal)) ?? "";

    /// <summary>Batteries are bought again at their offered price at the end of each expected life, discounted; the rest lasts.</summary>
    private static decimal OverYears(CheckedOffer offer, decimal sum, decimal rate, Asked asked)
    {
        var total = (double)sum;
        foreach (var line in offer.Lines.Where(l => l.Line.Family == "battery" && !l.Line.Spare && l.CorrectedAmount is > 0))
        {
            var group = line.Line.Find("chemistry")?.Text is "LithiumIronPhosphate" ? "lithium" : "lead";
            var life = asked.LifeYears.GetValueOrDefault(group, 5);
            for (var year = life; year < asked.Settings.Years; year += life) total += (double)(line.CorrectedAmount!.Value * rate) / Math.Pow(1 + asked.Settings.DiscountRate, year);
        }

        return decimal.Round((decimal)total, 2);
    }

    private static double LumenHours(CheckedOffer offer, Asked asked) =>
        offer.Kits.DistinctBy(k => k.Asked.Id).Sum(k => (k.FluxLm ?? 0) * Math.Min(1, k.FluxLm is > 0 ? k.Asked.Duty.LevelFraction * k.Asked.FluxLm / k.FluxLm.Value : 1) * k.Asked.Duty.FullHoursH * 365 * asked.Settings.Years * offer.Lots.Sum(k.Asked.PolesOf));

    /// <summary>Abnormally low: so low that it raises concerns; clarify in writing before anything else.</summary>
    private static ImmutableArray<QuoteFinding> Screens(EvaluatedOffer offer, List<decimal> sums, Asked asked)
    {
        if (offer.Evaluated is not { } price) return [];
        var found = ImmutableArray.CreateBuilder<QuoteFinding>();
        var place = new Place(offer.Checked.Offer.File, Row: 0);
        var settings = asked.Settings;
        var estimate = asked.EstimateOf(offer.Checked.Lots);
        const string ask = "Your price is unusually low. Please explain in writing how it is made up.";
        if (estimate > 0 && price < estimate * (1 - settings.LowBelowEstimateFraction))
            found.Add(new("TK836", Severity.Warning, place, $"{Say.Money(price)} is {Say.Number((double)(1 - (price / estimate)) * 100)} % below the estimate of {Say.Money(estimate)}", "screen for abnormally low offers (from memory); clarify in writing before rejecting", ask));
        if (sums.Count >= settings.LowLeastOffers && sums.Select(s => (double)s).ToList() is var all)
        {
            var mean = all.Average();
            var deviation = Math.Sqrt(all.Sum(s => (s - mean) * (s - mean)) / (all.Count - 1));
            if ((double)price < mean - (settings.LowDeviations * deviation))
                found.Add(new("TK836", Severity.Warning, place, $"{Say.Money(price)} is more than {Say.Number(settings.LowDeviations)} standard deviations ({Say.Number(deviation)}) below the mean of {Say.Number(mean)}", "screen for abnormally low offers (from memory); clarify in writing before rejecting", ask));
        }

        return found.ToImmutable();
    }
}

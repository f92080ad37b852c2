using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>Rates against our own estimate and against the same goods elsewhere in the offer.</summary>
internal static class PriceChecks
{
    private const string Estimate = "own estimate of the tender; limits in quotes.price";

    /// <summary>How far from a whole power of ten a rate over estimate may lie to be called a misplaced decimal point.</summary>
    private const double TenBand = 1.45;

    /// <summary>Ratio of two rates for the same goods in one offer from which the odd one is asked about.</summary>
    private const double SameGoodsRatio = 1.5;

    private static readonly ImmutableArray<string> InsideKit = ["luminaire", "module", "battery", "controller", "pole", "bracket", "enclosure", "foundation", "cable", "fuse", "surge", "earth"];

    /// <summary>Small parts a whole light point may be estimated without.</summary>
    private static readonly ImmutableArray<string> Small = ["bracket", "enclosure", "foundation", "cable", "fuse", "surge", "earth"];

    private static readonly ImmutableArray<string> InsideUnit = ["luminaire", "module", "battery", "controller"];

    public static IEnumerable<QuoteFinding> Of(Offer offer, ImmutableArray<LineMatch> matches, Asked asked)
    {
        if (asked.RateOf(offer.Terms.Currency) is not { } exchange) yield break;
        var flagged = new HashSet<OfferLine>(ReferenceEqualityComparer.Instance);
        foreach (var match in matches)
        {
            if (match.Line.Rate is not { } rate || rate <= 0 || Expected(match) is not { } expected || expected.Low <= 0) continue;
            if (Odd(match.Line, rate, expected.Low / exchange, expected.High / exchange, asked) is not { } finding) continue;
            flagged.Add(match.Line);
            yield return finding;
        }

        foreach (var group in offer.Items.Where(l => l.Rate is > 0).GroupBy(l => (l.Family, PlainText.Fold(l.Text))).Where(g => g.Count() > 1))
        {
            var (low, high) = (group.MinBy(l => l.Rate)!, group.MaxBy(l => l.Rate)!);
            if (group.Any(flagged.Contains) || high.Rate <= low.Rate * (decimal)SameGoodsRatio) continue;
            var expected = matches.Where(m => ReferenceEquals(m.Line, high)).Select(Expected).FirstOrDefault();
            var odd = expected is { } range && Middle(range.Low, range.High) is var e && Math.Abs(Math.Log((double)(low.Rate!.Value * exchange / e))) > Math.Abs(Math.Log((double)(high.Rate!.Value * exchange / e))) ? low : high;
            var other = ReferenceEquals(odd, high) ? low : high;
            yield return new QuoteFinding(
                "TK822", Severity.Warning, odd.Place, $"rate {Say.Money(odd.Rate!.Value)}, but {Say.Money(other.Rate!.Value)} for the same goods in row {other.Place.Row}", "rates of the same goods within the offer",
                $"Lines {odd.Place.Row} and {other.Place.Row} are the same goods at {Say.Money(odd.Rate.Value)} and {Say.Money(other.Rate.Value)}. Please explain or confirm the unit price.");
        }
    }

    /// <summary>Our estimate for one of a line, mean over the poles it serves, in the tender's currency: the least and the middle price of comparable parts; null when we have none.</summary>
    public static (decimal Low, decimal High)? Expected(LineMatch match)
    {
        ImmutableArray<string> families = match.Family switch
        {
            "unit" => match.Line.Family == "kit" ? InsideKit : InsideUnit,
            "cable set" => ["cable"],
            "protection set" => ["fuse", "surge", "earth"],
            var one => [one],
        };
        var chemistry = match.Line.Find("chemistry") is { } c ? Chemistry.IsLithium(c.Text) ? "battery lithium" : "battery lead" : "battery";
        string Key(AskedKit kit, string family) => family != "battery" ? family : kit.Estimate.ContainsKey(chemistry) ? chemistry : kit.Estimate.ContainsKey("battery") ? "battery" : "battery lithium";
        decimal Of(AskedKit kit, string family, bool high) => kit.Estimate.GetValueOrDefault(Key(kit, family) + (high ? EstimateBook.High : ""), kit.Estimate.GetValueOrDefault(Key(kit, family)));
        var kits = match.Kits.Where(k => families.All(f => k.Estimate.ContainsKey(Key(k, f)) || (families.Length > 4 && Small.Contains(f)))).ToList();
        var poles = kits.Sum(k => k.PolesOf(null));
        decimal Mean(bool high) => kits.Sum(k => families.Sum(f => Of(k, f, high)) * k.PolesOf(null)) / poles;
        return poles == 0 ? null : (Mean(false), Mean(true));
    }

    private static decimal Middle(decimal low, decimal high) => (decimal)Math.Sqrt((double)low * (double)high);

    private static QuoteFinding? Odd(OfferLine line, decimal rate, decimal low, decimal high, Asked asked)
    {
        var expected = Middle(low, high);
        var ratio = (double)(rate / expected);
        if (rate >= low * (decimal)asked.Settings.PriceLowRatio && rate <= high * (decimal)asked.Settings.PriceHighRatio) return null;
        var tens = Math.Round(Math.Log10(ratio));
        if (tens != 0 && Math.Max(ratio / Math.Pow(10, tens), Math.Pow(10, tens) / ratio) <= TenBand * Math.Sqrt((double)(high / low)))
        {
            return new QuoteFinding(
                "TK829", Severity.Warning, line.Place, $"decimal point probably misplaced: rate {Say.Money(rate)}, own estimate {Say.Money(expected)}, {Say.Number(ratio)} times", Estimate,
                $"Line {line.Place.Row} ({Say.Short(line.Text)}): the unit price of {Say.Money(rate)} looks like a misplaced decimal point. Please confirm it.");
        }

        return new QuoteFinding(
            "TK822", Severity.Warning, line.Place, $"rate {Say.Money(rate)} is {Say.Number(ratio)} times our own estimate of {Say.Money(expected)}", Estimate,
            $"Line {line.Place.Row} ({Say.Short(line.Text)}): the unit price of {Say.Money(rate)} is far from what we expect. Please explain or confirm it.");
    }
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Items;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Compare;
using TenderKit.Tendering.Quotes.Reading;
using Xunit;

namespace TenderKit.Tendering.Tests.Quotes.Compare;

/// <summary>Published evaluation rules with their examples.</summary>
public class PublishedEvaluationTests
{
    /// <summary>United Nations instructions to bidders (read): the unit price prevails; 12 x 150.00 shown 1,900.00 is 1,800.00.</summary>
    [Fact]
    public void The_unit_price_prevails()
    {
        var (amount, finding) = ArithmeticChecks.Line(LineOf(12, 150, 1900));
        Assert.Equal(1800m, amount);
        Assert.Equal("TK802", finding!.Code);
    }

    /// <summary>Development-bank standard documents (from memory): unless its decimal point is obviously misplaced, then the total.</summary>
    [Fact]
    public void A_misplaced_decimal_point_leaves_the_total()
    {
        var (amount, finding) = ArithmeticChecks.Line(LineOf(12, 1500, 1800));
        Assert.Equal(1800m, amount);
        Assert.Equal("TK829", finding!.Code);
    }

    /// <summary>Subtotals prevail (from memory): 100 + 200 shown 310 is found, and the price is 300.</summary>
    [Fact]
    public void Subtotals_prevail_over_the_total()
    {
        var offer = OfferOf(LineOf(1, 100, 100), Total(100, LineKind.Subtotal), LineOf(2, 100, 200), Total(200, LineKind.Subtotal), Total(310, LineKind.Total));
        Assert.Contains(ArithmeticChecks.Sums(offer), f => f.Code == "TK803" && f.Message.Contains("300.00", StringComparison.Ordinal));
        Assert.Equal(300m, ArithmeticChecks.Price(offer, [100m, 200m]).Corrected);
    }

    /// <summary>Published county bill of quantities (read): seven bills and their sum; a sum that is one cent off in a million is not.</summary>
    [Fact]
    public void The_summary_of_seven_bills_adds_up()
    {
        decimal[] bills = [1_476_267.96m, 1_448_759.00m, 1_047_035.00m, 2_333_472.00m, 1_315_213.00m, 983_494.00m, 705_903.20m];
        Assert.Empty(ArithmeticChecks.Sums(OfferOf([.. bills.Select(b => LineOf(1, b, b)), Total(9_310_144.16m, LineKind.Total)])));
        Assert.Contains(ArithmeticChecks.Sums(OfferOf([.. bills.Select(b => LineOf(1, b, b)), Total(9_310_244.16m, LineKind.Total)])), f => f.Code == "TK803");
    }

    /// <summary>Missing item at the highest or the average of the other offers (from memory): 10 and 12 give 12 or 11.</summary>
    [Fact]
    public void A_missing_item_is_added_at_the_highest_or_the_average()
    {
        Assert.Equal(12m, OfferComparison.Added([10m, 12m], highest: true));
        Assert.Equal(11m, OfferComparison.Added([10m, 12m], highest: false));
    }

    /// <summary>The first clean offers of the corpus, on one basis.</summary>
    [Fact]
    public void Offers_are_ranked_by_their_evaluated_price_and_low_ones_screened()
    {
        ImmutableArray<CheckedOffer> offers = [.. new[] { "q01.xlsx", "q05.csv", "q19.xlsx" }.Select(f => OfferChecker.Check(QuoteCorpus.Read(f), CorpusAsked.Value))];
        var compared = OfferComparison.Of(offers, CorpusAsked.Value).Offers;
        var ranked = compared.Where(c => c.Rank is not null).ToList();
        Assert.Equal(ranked.OrderBy(r => r.Evaluated).Select(r => r.Checked.Offer.File), ranked.OrderBy(r => r.Rank).Select(r => r.Checked.Offer.File));
        Assert.All(ranked, r => Assert.Equal(r.Evaluated, r.Steps[^1].Amount));
        Assert.Null(compared.Single(c => c.Checked.Offer.File == "q19.xlsx").Evaluated);
        var dear = CorpusAsked.Value with { Kits = [.. CorpusAsked.Value.Kits.Select(k => k with { Estimate = k.Estimate.SetItem("pole", k.Estimate["pole"] * 10) })] };
        Assert.Contains(OfferComparison.Of(offers, dear).Offers.SelectMany(o => o.Screens), s => s.Code == "TK836");
    }

    private static OfferLine LineOf(decimal quantity, decimal rate, decimal amount) =>
        new(new Place("a.csv", Row: 1), LineKind.Item, ItemKind.Pole, "pole", "pole 6 m", "", "", "", false, [], quantity, "No.", rate, amount);

    private static OfferLine Total(decimal amount, LineKind kind) =>
        new(new Place("a.csv", Row: 2), kind, ItemKind.Total, "", "total", "", "", "", false, [], null, "", null, amount);

    private static Offer OfferOf(params ImmutableArray<OfferLine> lines) =>
        new("a.csv", "", "A", lines, new OfferTerms("USD", "DAP", null, null, [], [], [], [], [], []), []);
}

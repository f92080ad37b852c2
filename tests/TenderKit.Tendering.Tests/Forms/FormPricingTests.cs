using System.Collections.Immutable;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Forms;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Forms;

public class FormPricingTests
{
    private static readonly TenderDesign Design = HandMadeDesign.Small();
    private static readonly BillOfQuantities Bill = BillBuilder.Build(Design).Value!;
    private static readonly IReadOnlyDictionary<CellId, decimal> Values = LedgerValues.Evaluate(Bill.Ledger);

    private static decimal OurTotal => Bill.LotSummaries.Sum(l => Values[l.WithContingency]);

    [Fact]
    public void A_form_with_a_line_for_the_whole_light_carries_our_price()
    {
        var priced = Price(true, Line(5, "Complete solar street light", "No.", Design.PoleCount), Line(6, "Training", "LS", 1));

        Assert.Equal(2, priced.Answers.Count(a => a.Rate is not null));
        Assert.All(priced.Unplaced, u => Assert.True(u.Spread));
        Assert.Equal(OurTotal, priced.OurTotal);
        Assert.InRange(priced.FormTotal, OurTotal - (0.005m * Design.PoleCount) - 0.01m, OurTotal + (0.005m * Design.PoleCount) + 0.01m);
        Assert.DoesNotContain(priced.Answers, a => a.QuantityDiffers);
    }

    [Fact]
    public void A_single_item_takes_our_rate_and_nothing_is_spread_when_the_tender_says_so()
    {
        var priced = Price(false, Line(5, "Erection of pole", "No.", 19));
        var answer = Assert.Single(priced.Answers);

        Assert.Equal(1, priced.SpreadFactor);
        Assert.Equal(RateOf(answer.BillCodes[0]), answer.Rate);
        Assert.NotEmpty(priced.Unplaced);
        Assert.DoesNotContain(priced.Unplaced, u => u.Spread);
        Assert.Contains(FormNotices.Of(Form(false), priced, []), d => d.Code == "TK715");
    }

    [Fact]
    public void The_employers_quantity_stays_and_the_difference_is_a_question()
    {
        var form = Form(true, Line(5, "Erection of pole", "No.", 21));
        var priced = FormPricing.Of(Design, Bill, form);
        var answer = Assert.Single(priced.Answers);

        Assert.Equal(21, answer.Line.Quantity);
        Assert.Equal(19, answer.OurQuantity);
        Assert.True(answer.QuantityDiffers);
        Assert.Contains(FormNotices.Of(form, priced, []), d => d.Code == "TK714" && d.Message.Contains("21") && d.Message.Contains("19"));
    }

    [Fact]
    public void Several_lines_of_one_kind_share_our_items_by_their_ratings()
    {
        var priced = Price(true, Line(5, "Photovoltaic module 110 Wp", "No.", 13), Line(6, "Photovoltaic module 170 Wp", "No.", 6));

        Assert.All(priced.Answers, a => Assert.False(a.BillCodes.IsEmpty));
        Assert.Equal(13, priced.Answers[0].OurQuantity);
        Assert.Equal(6, priced.Answers[1].OurQuantity);
    }

    [Fact]
    public void Two_lines_that_fit_alike_are_left_for_the_bidder()
    {
        var form = Form(true, Line(5, "Photovoltaic module", "No.", 50), Line(6, "Solar panel", "No.", 60));
        var priced = FormPricing.Of(Design, Bill, form);

        Assert.All(priced.Answers, a => Assert.Null(a.Rate));
        Assert.All(priced.Answers, a => Assert.Contains("could be meant", a.Remark));
        Assert.Contains(FormNotices.Of(form, priced, []), d => d.Code == "TK713");
    }

    [Fact]
    public void What_other_lines_leave_goes_to_the_line_for_the_rest()
    {
        var priced = Price(true, Line(5, "Photovoltaic module 110 Wp", "No.", 13), Line(6, "Photovoltaic module, other sizes", "No.", 6));

        Assert.Equal(6, priced.Answers[1].OurQuantity);
    }

    [Fact]
    public void The_list_of_the_user_goes_before_our_reading()
    {
        var line = Line(5, "One inspection vehicle", "No.", 1);
        var code = Bill.Parts[5].Lines[0].Code;
        var form = Form(true, line) with { Given = ImmutableDictionary<(string, int), ImmutableArray<string>>.Empty.Add(("Bill", 5), [code]) };

        Assert.Equal(code, Assert.Single(FormPricing.Of(Design, Bill, form).Answers[0].BillCodes));
    }

    [Theory]
    [InlineData("Contingency")]
    [InlineData("VAT 16 %")]
    [InlineData("Provisional sum for relocation of services")]
    public void What_is_not_ours_to_price_is_left_as_it_is(string text) => Assert.StartsWith("left as it is", Price(true, Line(5, text, "%", 5)).Answers[0].Remark);

    private static decimal RateOf(string code) => Values[Bill.Parts.SelectMany(p => p.Lines).First(l => l.Code == code).Rate];

    private static PricedForm Price(bool spread, params FormLine[] lines) => FormPricing.Of(Design, Bill, Form(spread, lines));

    private static PriceForm Form(bool spread, params FormLine[] lines) => new(
        new PriceFormSettings("form.xlsx", [new PriceFormSheet("Bill", 1, 2, 3, 4, 5, 4, null, "")], null, spread, spread), [], [.. lines],
        ImmutableDictionary<(string, int), ImmutableArray<string>>.Empty);

    private static FormLine Line(int row, string text, string unit, decimal quantity) => new("Bill", row, "1.1", text, unit, quantity, "");
}

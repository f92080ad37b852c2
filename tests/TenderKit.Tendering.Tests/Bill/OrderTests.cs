using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Bill;

/// <summary>Orders on a cable whose sale differs; sums done again here from the catalogue's row.</summary>
public class OrderTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(100, 1)]
    [InlineData(100, 500)]
    [InlineData(250, 1)]
    public void Orders_hold_what_is_billed_in_whole_packs_and_never_below_the_least(int pack, int least)
    {
        var design = With(c => c with { OrderMultiple = pack, MinimumOrder = least, PriceBreaks = [] });
        var bill = BillBuilder.Build(design).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);
        foreach (var order in bill.Orders)
        {
            var billed = bill.Parts.SelectMany(p => p.Lines).Where(l => l.PartCode == order.PartCode).Sum(l => values[l.Quantity]);
            Assert.Equal(billed, values[order.Billed]);
            Assert.Equal(values[order.Billed], values[order.Needed] + values[order.Wastage] + values[order.Spares]);
            var part = PartOf(design, order.PartCode);
            Assert.Equal(part.OrderQuantityFor(billed), values[order.Ordered]);
            Assert.Equal(values[order.Ordered] - billed, values[order.LeftOver]);
            Assert.Equal(values[order.Packs] * part.OrderMultiple, values[order.Ordered]);
        }
    }

    [Fact]
    public void The_rate_pays_for_the_whole_order_at_the_price_of_its_quantity()
    {
        var design = With(c => c with { OrderMultiple = 100, MinimumOrder = 1, PriceBreaks = [new PriceBreak(50, c.UnitPrice * 0.9m), new PriceBreak(100, c.UnitPrice * 0.8m), new PriceBreak(100000, c.UnitPrice * 0.1m)] });
        var bill = BillBuilder.Build(design).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var order = bill.Orders.First(o => o.PartCode.StartsWith("CAB", StringComparison.Ordinal));
        var rate = bill.BuildUps.Single(b => b.PartCode == order.PartCode);
        var part = PartOf(design, order.PartCode);

        Assert.True(values[order.LeftOver] > 0);
        Assert.Equal(part.UnitPriceFor(values[order.Ordered]), values[rate.Price]);
        Assert.Equal(part.UnitPrice * 0.8m, values[rate.Price]);
        Assert.Equal((double)(values[order.Ordered] * values[order.Price]), (double)(values[order.Billed] * values[rate.Supply]), 9);
        Assert.Contains(bill.Remarks, r => r.StartsWith("the parts were chosen at the catalogue's prices of single units", StringComparison.Ordinal));
        Assert.Contains(bill.Remarks, r => r.Contains("which the rates pay for", StringComparison.Ordinal));
        Assert.Equal(values[bill.GrandTotal], bill.LotSummaries.Sum(l => values[l.Total]));
    }

    [Fact]
    public void Without_breaks_and_excess_the_rate_is_that_of_single_units()
    {
        var plain = With(c => c with { OrderMultiple = 1, MinimumOrder = 1, PriceBreaks = [] });
        var packed = With(c => c with { OrderMultiple = 100, PriceBreaks = [new PriceBreak(50, c.UnitPrice * 0.9m)] });
        packed = packed with { Tender = packed.Tender with { Prices = packed.Tender.Prices with { Buying = new Buying(false, false) } } };

        Assert.Equal(Total(plain), Total(packed));
        Assert.Contains(BillBuilder.Build(packed).Value!.Remarks, r => r.Contains("which no rate pays for", StringComparison.Ordinal));
    }

    [Fact]
    public void A_part_of_which_nothing_is_left_to_buy_is_not_ordered_and_divides_nothing()
    {
        var bill = BillBuilder.Build(With(c => c with { OrderMultiple = 100, MinimumOrder = 500 })).Value!;
        var none = bill.Ledger.Replace(bill.Schedule.ToDictionary(s => s.Poles, _ => (Expression)new Literal(0)));
        var values = LedgerValues.Evaluate(none);

        Assert.All(bill.Orders.Where(o => values[o.Billed] == 0), o => Assert.Equal((0m, 1m), (values[o.Ordered], values[o.PerBilled])));
        Assert.Contains(bill.Orders, o => values[o.Billed] == 0);
    }

    private static decimal Total(TenderDesign design)
    {
        var bill = BillBuilder.Build(design).Value!;
        return LedgerValues.Evaluate(bill.Ledger)[bill.GrandTotal];
    }

    private static Part PartOf(TenderDesign design, string code) =>
        design.Kits.SelectMany(k => k.Parts.Pieces.Select(p => p.Part).Concat(k.Parts.Circuits.Select(c => (Part)c.Cable)).Concat(k.Parts.Circuits.Select(c => (Part?)c.Fuse).OfType<Part>()).Concat(k.Parts.OtherProtection)).First(p => p.Code == code);

    private static TenderDesign With(Func<Cable, Cable> change)
    {
        var design = HandMadeDesign.Small();
        return design with { Kits = [.. design.Kits.Select(k => k with { Parts = k.Parts with { Circuits = [.. k.Parts.Circuits.Select(c => c with { Cable = change(c.Cable) })] } })] };
    }
}

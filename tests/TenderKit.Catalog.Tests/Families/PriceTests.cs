using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using Xunit;

namespace TenderKit.Catalog.Tests.Families;

public sealed class PriceTests
{
    [Theory]
    [InlineData(0, 180)]
    [InlineData(49.9, 180)]
    [InlineData(50, 43.20)]
    [InlineData(199, 43.20)]
    [InlineData(200, 41)]
    [InlineData(100000, 41)]
    public void PriceOfAQuantityIsThatOfTheLastBreakReached(decimal quantity, decimal price)
    {
        using var folder = Priced("50:43.20;200:41.00");
        Assert.Equal(price, PoleOf(folder).UnitPriceFor(quantity));
    }

    [Theory]
    [InlineData(1, 100)]
    [InlineData(100, 100)]
    [InlineData(101, 150)]
    [InlineData(150.1, 200)]
    public void OrdersAreWholePacksAndNeverBelowTheLeast(decimal quantity, decimal ordered)
    {
        using var folder = new SmallCatalog().With("poles", "code,description,unit_price,currency", "code,description,unit_price,currency,minimum_order,order_multiple").With("poles", "180,USD", "180,USD,75,50");
        Assert.Equal(ordered, PoleOf(folder).OrderQuantityFor(quantity));
    }

    [Fact]
    public void APartWithoutTheseColumnsIsSoldByThePieceAtOnePrice()
    {
        using var folder = new SmallCatalog();
        var pole = PoleOf(folder);
        Assert.Equal((1m, 1m, 180m, 7m), (pole.MinimumOrder, pole.OrderMultiple, pole.UnitPriceFor(1000), pole.OrderQuantityFor(7)));
        Assert.Empty(pole.PriceBreaks);
    }

    [Theory]
    [InlineData("TK604", "50", "no quantity and price")]
    [InlineData("TK604", "50:43.20;fifty:41", "fifty")]
    [InlineData("TK604", "200:43.20;50:41.00", "does not rise")]
    [InlineData("TK604", "50:43.20;50:41.00", "does not rise")]
    [InlineData("TK604", "0:43.20", "above 0")]
    [InlineData("TK604", "50:-1", "below 0")]
    [InlineData("TK613", "50:43.20;200:44.00", "above 43.2")]
    [InlineData("TK613", "50:190", "above 180")]
    public void WhatIsWrongWithAPriceListIsNamed(string code, string breaks, string words)
    {
        using var folder = Priced(breaks);
        var outcome = CatalogImporter.FromFolder(folder.Folder);
        outcome.Value?.Dispose();
        var found = Assert.Single(outcome.Diagnostics);
        Assert.Equal(code, found.Code);
        Assert.Contains(words, found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ADecimalCommaHoldsInAPriceListToo()
    {
        using var folder = new SmallCatalog();
        File.WriteAllText(folder.FileOf("brackets"),
            "code;description;unit_price;currency;price_breaks;max_module_area_m2;min_tilt_degrees;max_tilt_degrees\nK-1;Bracket;30,5;USD;\"50:28,25;100:27,5\";1,5;10;45\n");
        using var store = CatalogImporter.FromFolder(folder.Folder).Value!;
        Assert.Equal<PriceBreak>([new(50, 28.25m), new(100, 27.5m)], store.Load().Brackets[0].PriceBreaks);
    }

    [Fact]
    public void APriceGivenAfterItEndsIsAContradiction()
    {
        using var folder = new SmallCatalog().With("services", "price_valid_until", "price_valid_until,price_date").With("services", "2027-06-30", "2027-06-30,2027-07-01").With("services", "survey,", "survey,,");
        Assert.Contains(CatalogImporter.FromFolder(folder.Folder).Diagnostics, d => d.Code == "TK606" && d.Message.Contains("price_date", StringComparison.Ordinal));
    }

    private static SmallCatalog Priced(string breaks) => new SmallCatalog()
        .With("poles", "code,description,unit_price,currency", "code,description,unit_price,currency,price_breaks").With("poles", "180,USD", "180,USD," + breaks);

    private static Pole PoleOf(SmallCatalog folder)
    {
        using var store = CatalogImporter.FromFolder(folder.Folder).Value!;
        return store.Load().Poles[0];
    }
}

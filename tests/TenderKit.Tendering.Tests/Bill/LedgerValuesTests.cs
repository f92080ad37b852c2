using TenderKit.Tendering.Bill;
using Xunit;

namespace TenderKit.Tendering.Tests.Bill;

public class LedgerValuesTests
{
    [Theory]
    [InlineData("2.345", 2, "2.35")]
    [InlineData("-2.345", 2, "-2.35")]
    [InlineData("2.344999", 2, "2.34")]
    [InlineData("0.5", 0, "1")]
    [InlineData("1250", -2, null)]
    public void Rounds_half_away_from_zero(string value, int decimals, string? expected)
    {
        // OpenFormula 1.2, ROUND: halves go away from zero. Negative places have no use in a bill and are refused.
        var number = decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture);
        if (expected is null)
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => One(new Rounded(new Literal(number), decimals)));
            return;
        }

        Assert.Equal(decimal.Parse(expected, System.Globalization.CultureInfo.InvariantCulture), One(new Rounded(new Literal(number), decimals)));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.01, 1)]
    [InlineData(1, 1)]
    [InlineData(1.2, 2)]
    public void Rounds_up_to_the_next_whole_number(double value, double expected) =>
        Assert.Equal((decimal)expected, One(new RoundedUp(new Literal((decimal)value))));

    [Fact]
    public void Adds_multiplies_divides_and_compares()
    {
        Literal two = new(2), three = new(3), eight = new(8);

        Assert.Equal(13m, One(new Sum([two, three, eight])));
        Assert.Equal(48m, One(new Product([two, three, eight])));
        Assert.Equal(4m, One(new Quotient(eight, two)));
        Assert.Equal(8m, One(new Greatest([two, eight, three])));
        Assert.Equal(2m, One(new Least([three, two, eight])));
        Assert.Equal(0m, One(new Sum([])));
    }

    [Fact]
    public void Follows_references_whatever_their_order()
    {
        var ledger = new Ledger([Cell("c", new Sum([Ref("a"), Ref("b")])), Cell("b", new Product([Ref("a"), new Literal(10)])), Cell("a", new Literal(1.5m))]);

        Assert.Equal(16.5m, LedgerValues.Evaluate(ledger)[new CellId("c")]);
    }

    [Fact]
    public void Refuses_a_circle_an_unknown_name_and_a_double()
    {
        Assert.Throws<ArgumentException>(() => LedgerValues.Evaluate(new Ledger([Cell("a", Ref("b")), Cell("b", Ref("a"))])));
        Assert.Throws<ArgumentException>(() => LedgerValues.Evaluate(new Ledger([Cell("a", Ref("b"))])));
        Assert.Throws<ArgumentException>(() => LedgerValues.Evaluate(new Ledger([Cell("a", new Literal(1)), Cell("a", new Literal(1))])));
    }

    [Fact]
    public void Sums_the_seven_bills_of_a_published_bill_of_quantities()
    {
        // Published county bill of quantities (READ): summary of seven bills.
        decimal[] bills = [1476267.96m, 1448759.00m, 1047035.00m, 2333472.00m, 1315213.00m, 983494.00m, 705903.20m];

        Assert.Equal(9310144.16m, One(new Sum([.. bills.Select(b => new Literal(b))])));
    }

    private static decimal One(Expression expression) => LedgerValues.Evaluate(new Ledger([Cell("x", expression)]))[new CellId("x")];

    private static KeyValuePair<CellId, Expression> Cell(string name, Expression expression) => new(new CellId(name), expression);

    private static Reference Ref(string name) => new(new CellId(name));
}

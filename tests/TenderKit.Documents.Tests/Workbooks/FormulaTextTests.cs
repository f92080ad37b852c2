using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using Xunit;

namespace TenderKit.Documents.Tests.Workbooks;

public class FormulaTextTests
{
    private static readonly Dictionary<string, Address> Places = new()
    {
        ["a"] = new("Bill A", 5, 4), ["b"] = new("Bill A", 6, 4), ["c"] = new("Bill A", 7, 4), ["d"] = new("Bill A", 7, 5), ["x"] = new("Sites", 9, 28),
    };

    [Fact]
    public void Prints_references_near_and_far()
    {
        Assert.Equal("D5", Print(Ref("a")));
        Assert.Equal("Sites!AB9", Print(Ref("x")));
        Assert.Equal("'Bill A'!D5", Print(Ref("a"), "Sites"));
    }

    [Fact]
    public void Draws_neighbours_together_into_ranges()
    {
        Assert.Equal("SUM(D5:D7)", Print(Sum("a", "b", "c")));
        Assert.Equal("SUM(D7:E7)", Print(Sum("c", "d")));
        Assert.Equal("SUM(D5:D6,Sites!AB9)", Print(Sum("a", "b", "x")));
        Assert.Equal("SUM('Bill A'!D5:D7)", Print(Sum("a", "b", "c"), "Sites"));
        Assert.Equal("D5+D7", Print(Sum("a", "c")));
        Assert.Equal("0", Print(Sum()));
    }

    [Fact]
    public void Sets_brackets_where_a_sum_is_multiplied_or_divided()
    {
        Assert.Equal("(D5+D7)*E7", Print(new Product([Sum("a", "c"), Ref("d")])));
        Assert.Equal("SUM(D5:D6)*E7", Print(new Product([Sum("a", "b"), Ref("d")])));
        Assert.Equal("D5/(D6*D7)", Print(new Quotient(Ref("a"), new Product([Ref("b"), Ref("c")]))));
        Assert.Equal("(D5+D6/D7)/E7", Print(new Quotient(new Sum([Ref("a"), new Quotient(Ref("b"), Ref("c"))]), Ref("d"))));
        Assert.Equal("D5*(-2)", Print(new Product([Ref("a"), new Literal(-2)])));
    }

    [Fact]
    public void Sets_brackets_where_a_difference_would_be_misread()
    {
        Assert.Equal("D5-D6", Print(new Difference(Ref("a"), Ref("b"))));
        Assert.Equal("D5-(D6+E7)", Print(new Difference(Ref("a"), Sum("b", "d"))));
        Assert.Equal("D5-(D6-D7)", Print(new Difference(Ref("a"), new Difference(Ref("b"), Ref("c")))));
        Assert.Equal("D5*(D6-D7)", Print(new Product([Ref("a"), new Difference(Ref("b"), Ref("c"))])));
        Assert.Equal("D5/(D6-D7)", Print(new Quotient(Ref("a"), new Difference(Ref("b"), Ref("c")))));
    }

    [Fact]
    public void Rounds_and_compares()
    {
        Assert.Equal("ROUND(D5*E7,2)", Print(new Rounded(new Product([Ref("a"), Ref("d")]), 2)));
        Assert.Equal("ROUNDUP(ROUND(D5*(1+E7),6),0)", Print(new RoundedUp(new Rounded(new Product([Ref("a"), new Sum([new Literal(1), Ref("d")])]), 6))));
        Assert.Equal("MAX(D5:D7)", Print(new Greatest([Ref("a"), Ref("b"), Ref("c")])));
        Assert.Equal("MIN(D5,E7)", Print(new Least([Ref("a"), Ref("d")])));
        Assert.Equal("0.025", Print(new Literal(0.025m)));
    }

    [Fact]
    public void Refuses_a_formula_too_long_for_a_cell() =>
        Assert.Throws<InvalidOperationException>(() => Print(new Sum([.. Enumerable.Repeat(Ref("x"), 1000)])));

    private static string Print(Expression expression, string sheet = "Bill A") => new FormulaText(sheet, cell => Places[cell.Name]).Print(expression);

    private static Reference Ref(string name) => new(new CellId(name));

    private static Sum Sum(params string[] names) => new([.. names.Select(Ref)]);
}

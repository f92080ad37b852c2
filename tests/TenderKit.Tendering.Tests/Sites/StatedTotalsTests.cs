using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Tests.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

public sealed class StatedTotalsTests
{
    private static readonly Site Road = StarterTender.Inputs.Sites[0] with { Kind = SiteKind.Road, LengthM = 400, FixedPoles = 12 };

    private static readonly Site Yard = Road with { Id = "Y", Kind = SiteKind.Yard, LengthM = 60, FixedPoles = 3 };

    [Fact]
    public void Totals_that_hold_are_silent()
    {
        Assert.Empty(new StatedTotals(2, 402, 15).OfList([Road, Yard], 2, default!)); // within one per cent, the yard left out
        Assert.Empty(new StatedTotals(null, 460, null).OfList([Road, Yard], 2, default!)); // with it
        Assert.Empty(new StatedTotals(2, 400, 15).OfDesign([Road, Yard], 15));
    }

    [Fact]
    public void A_difference_names_both_values()
    {
        var found = new StatedTotals(3, 500, 20).OfList([Road, Yard], 3, new Place("sites.csv")).ToList();
        Assert.Equal(3, found.Count);
        Assert.All(found, d => Assert.Equal(("TK128", Severity.Warning), (d.Code, d.Severity)));
        Assert.Contains("states 3 sites and 2 were read of 3 rows", found[0].Message, StringComparison.Ordinal);
        Assert.Contains("states 500 m and the roads and paths of the list add to 400 m, a difference of -100 m", found[1].Message, StringComparison.Ordinal);
        Assert.Contains("states 20 poles and the list adds to 15", found[2].Message, StringComparison.Ordinal);
        var designed = Assert.Single(new StatedTotals(null, null, 20).OfDesign([Road with { FixedPoles = null }], 26));
        Assert.Contains("states 20 poles and the design has 26, a difference of +6", designed.Message, StringComparison.Ordinal);
    }
}

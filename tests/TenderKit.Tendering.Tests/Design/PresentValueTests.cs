using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>Source: worked by hand with the factors 1 / 1.08^n; recomputed.</summary>
public class PresentValueTests
{
    private static readonly ChoiceBasis _ten = new(true, 10, 0.08m);

    /// <summary>3.7 years: after 3, 6, 9, factors 0.793832, 0.630170, 0.500249. 5 years: after 5 only, 0.680583, for 10 is the end. Under a year: after each of 9 years, 6.246888.</summary>
    [Theory]
    [InlineData(3.7, 384.85)]
    [InlineData(5, 136.12)]
    [InlineData(9.99, 100.05)]
    [InlineData(10, 0)]
    [InlineData(0.4, 1249.38)]
    [InlineData(double.PositiveInfinity, 0)]
    public void A_part_of_200_over_ten_years_at_eight_per_cent(double lifeYears, double expected) =>
        Assert.Equal((decimal)expected, Math.Round(PresentValue.OfReplacements(200, lifeYears, _ten), 2));

    [Fact]
    public void Without_discount_replacements_count_at_their_price() => Assert.Equal(600, PresentValue.OfReplacements(200, 3, _ten with { DiscountFraction = 0 }));

    [Fact]
    public void A_shorter_life_never_gives_less()
    {
        for (var life = 0.5; life < 12; life += 0.25)
            Assert.True(PresentValue.OfReplacements(100, life, _ten) >= PresentValue.OfReplacements(100, life + 0.25, _ten));
    }
}

using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Luminance;

public class ThresholdIncrementTests
{
    [Fact]
    public void Formula() => Assert.Equal(0.0975, ThresholdIncrement.Fraction(0.15, 1.0), 1e-12); // EN 13201-3, Lv 0.15, Lav 1.0 gives 9.75 % (read)

    [Fact]
    public void Formulas_meet_at_five_candela() =>
        // 65 / 5^0.8 = 17.94 and 95 / 5^1.05 = 17.53: the standard's two ranges meet within 3 % (from memory)
        Assert.Equal(1, ThresholdIncrement.Fraction(1, 5.0001) / ThresholdIncrement.Fraction(1, 5), 0.03);

    [Fact]
    public void Veil_of_one_lux_ten_degrees_off() => Assert.Equal(0.1, ThresholdIncrement.VeilingCdM2(1, 10), 0.0005); // 10 E / theta^2

    [Theory]
    [InlineData(60, 1.643)] // (1 + (60 / 66.4)^4) / (1 + (23 / 66.4)^4), by hand: 1.6667 / 1.0144
    [InlineData(75, 2.590)]
    public void Older_eyes_see_more_veil(double ageYears, double ratio) =>
        Assert.Equal(ratio, ThresholdIncrement.VeilingCdM2(1, 10, ageYears) / ThresholdIncrement.VeilingCdM2(1, 10), 0.001);

    [Fact]
    public void No_light_no_veil() => Assert.Equal(0, ThresholdIncrement.Fraction(0, 0));

    [Fact]
    public void Walk_agrees_with_a_sum_written_out()
    {
        // isotropic 1000 cd, one row over y 0.5, 8 m up, 30 m apart; driver on the centre line of the first lane
        var section = RoadSection.Of(new RoadLayout(7, 30, 8, 0.5, 0, Arrangement.SingleSided), 2);
        var quality = Roads.Quality(Distributions.Isotropic(4000 * Math.PI), section, 0.8).Carriageway;
        var start = -6.5 / Math.Tan(20 * Math.PI / 180);
        var veils = new[] { 1.75, 5.25 }.Select(y => Enumerable.Range(0, 10).Max(i => Veil(start + (3 * i), y))).ToList();
        var expected = veils.Select((v, lane) => 0.65 * v / Math.Pow(quality.Luminance!.Observers[lane].AverageCdM2 / 0.8, 0.8)).Max();
        Assert.Equal(expected, quality.Glare!.IncrementFraction, 2e-3 * expected);
        Assert.Equal(start, quality.Glare.XM, 1e-9); // nearest to the screening plane glares most
    }

    [Fact]
    public void Grows_with_flux_to_the_power_of_a_fifth_and_is_that_of_new_luminaires()
    {
        var section = Roads.Section(30);
        var one = Roads.Quality(Roads.Beams(3000), section).Carriageway.Glare!;
        Assert.Equal(Math.Pow(2, 0.2) * one.IncrementFraction, Roads.Quality(Roads.Beams(6000), section).Carriageway.Glare!.IncrementFraction, 1e-9);
        Assert.Equal(one.IncrementFraction, Roads.Quality(Roads.Beams(3000), section, 0.5).Carriageway.Glare!.IncrementFraction, 1e-9);
        Assert.Equal(Math.Pow(0.5, 0.2) * one.IncrementFraction, one.AtLevel(0.5).IncrementFraction, 1e-9);
    }

    [Fact]
    public void Luminaires_cut_off_below_the_eye_do_not_glare()
    {
        // nothing above 60 degrees: the first luminaire counted is seen 70 degrees from straight down or flatter
        var sharp = Distributions.Of(90, (_, g) => g <= 60 ? 1000 : 0);
        Assert.Equal(0, Roads.Quality(sharp, RoadSection.Of(new RoadLayout(7, 30, 8, 0, 0, Arrangement.SingleSided), 2)).Carriageway.Glare!.IncrementFraction);
    }

    private static double Veil(double x, double y)
    {
        var sum = 0.0;
        for (var k = -3; k < 30; k++)
        {
            double ahead = (30 * k) - x, aside = 0.5 - y, up = 6.5;
            if (ahead <= 0 || ahead > 500 || up / ahead > Math.Tan(20 * Math.PI / 180) + 1e-9) continue;
            var distance = Math.Sqrt((ahead * ahead) + (aside * aside) + (up * up));
            var sight = 1 * Math.PI / 180;
            var theta = Math.Acos(((ahead * Math.Cos(sight)) - (up * Math.Sin(sight))) / distance);
            var degrees = theta * 180 / Math.PI;
            sum += 10 * (1000 * Math.Cos(theta) / (distance * distance)) / (degrees * degrees);
        }

        return sum;
    }
}

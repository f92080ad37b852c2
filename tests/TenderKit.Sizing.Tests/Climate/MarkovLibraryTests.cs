using MathNet.Numerics.Random;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

/// <summary>Aguiar, Collares-Pereira and Conde, Solar Energy 40 (1988) 269: matrices read in three copies, everything below recomputed from them apart from the product.</summary>
public sealed class MarkovLibraryTests
{
    private static readonly double[] StationaryMeans = [0.2414, 0.3339, 0.3745, 0.4288, 0.4760, 0.5262, 0.5749, 0.6204, 0.6684, 0.7281];
    private static readonly double[] LagOne = [0.391, 0.023, 0.287, 0.313, 0.331, 0.317, 0.231, 0.243, 0.204, 0.265];

    [Fact]
    public void Rows_add_up_to_one_but_for_rounding()
    {
        Assert.Equal(10, MarkovLibrary.Count);
        for (var m = 0; m < 10; m++)
        {
            for (var s = 0; s < 10; s++)
            {
                Assert.Equal(10, MarkovLibrary.Row(m, s).Length);
                Assert.InRange(MarkovLibrary.Row(m, s).Sum(), 0.997 - 1e-9, 1.002 + 1e-9);
            }
        }

        // the entry that one copy of the library prints as 0.530
        Assert.Equal(0, MarkovLibrary.Row(4, 1)[8]);
    }

    [Fact]
    public void Stationary_mean_lies_in_the_class_of_its_matrix()
    {
        for (var m = 0; m < 10; m++)
        {
            var (mean, lag) = Chain(m);
            Assert.Equal(StationaryMeans[m], mean, 0.001);
            Assert.Equal(LagOne[m], lag, 0.005);
            Assert.Equal(m, MarkovLibrary.MatrixFor(mean));
        }
    }

    [Fact]
    public void Simulated_days_have_the_mean_of_the_chain_and_stay_in_its_range()
    {
        for (var m = 0; m < 10; m++)
        {
            var random = new Xoshiro256StarStar(5, threadSafe: false);
            var (least, greatest) = MarkovLibrary.Range(m);
            var (day, sum) = (StationaryMeans[m], 0.0);
            for (var d = 0; d < 30_000; d++)
            {
                day = MarkovLibrary.Next(m, day, random.NextDouble());
                Assert.True(day >= least && day <= greatest);
                sum += day;
            }

            Assert.Equal(StationaryMeans[m], sum / 30_000, 0.005);
        }
    }

    [Theory]
    [InlineData(0.05, 0)]
    [InlineData(0.30, 0)]
    [InlineData(0.301, 1)]
    [InlineData(0.52, 5)]
    [InlineData(0.70, 8)]
    [InlineData(0.75, 9)]
    public void The_mean_of_the_month_chooses_the_matrix(double mean, int matrix) => Assert.Equal(matrix, MarkovLibrary.MatrixFor(mean));

    [Fact]
    public void A_chance_of_nought_gives_the_lowest_and_of_one_the_highest_state_possible()
    {
        // matrix 1 row 1 as printed: states 1 to 8 are possible, 9 and 10 are not
        var (least, greatest) = MarkovLibrary.Range(0);
        Assert.Equal(least, MarkovLibrary.Next(0, least, 0), 1e-9);
        Assert.Equal(least + 0.8 * (greatest - least), MarkovLibrary.Next(0, least, 0.999999999), 1e-6);
    }

    // Unfitted, beyond 25 degrees the library comes within 10 % of typical years for 5, 7 and 10 days; its 3 days are 13 % too dark, in the tropics 38 %
    [Fact]
    public void Dull_spells_beyond_the_tropics()
    {
        var places = TypicalYears.All().Where(t => Math.Abs(t.LatitudeDegrees) > 25).ToList();
        var simulated = places.Select((t, i) => TypicalYears.Simulated(t, new SequenceSettings(8, 100 + i, 0.29, 0, ClearnessShape.Markov))).ToList();
        for (var s = 1; s < 4; s++) Assert.InRange(simulated.Average(p => p[s].Average()) / places.Average(t => t.Lowest[s]), 0.90, 1.10);
    }

    [Fact]
    public void A_dispersion_cannot_be_asked_of_it() =>
        Assert.Throws<ArgumentException>(() => SyntheticYears.Generate(Climates.Constant(40, 0.5), new SequenceSettings(1, 1, 0.29, 0, ClearnessShape.Markov, 0, 1.2), 1));

    /// <summary>Mean and lag-one correlation of the chain at the middles of its states, by repeated multiplication.</summary>
    private static (double Mean, double Lag) Chain(int matrix)
    {
        var (least, greatest) = MarkovLibrary.Range(matrix);
        var middles = Enumerable.Range(0, 10).Select(s => least + (s + 0.5) / 10 * (greatest - least)).ToArray();
        var rows = Enumerable.Range(0, 10).Select(s => MarkovLibrary.Row(matrix, s).Select(p => p / MarkovLibrary.Row(matrix, s).Sum()).ToArray()).ToArray();
        var share = Enumerable.Repeat(0.1, 10).ToArray();
        for (var i = 0; i < 500; i++) share = [.. Enumerable.Range(0, 10).Select(to => Enumerable.Range(0, 10).Sum(from => share[from] * rows[from][to]))];
        var mean = share.Zip(middles, (p, k) => p * k).Sum();
        var variance = share.Zip(middles, (p, k) => p * (k - mean) * (k - mean)).Sum();
        var covariance = Enumerable.Range(0, 10).Sum(a => Enumerable.Range(0, 10).Sum(b => share[a] * rows[a][b] * (middles[a] - mean) * (middles[b] - mean)));
        return (mean, covariance / variance);
    }
}

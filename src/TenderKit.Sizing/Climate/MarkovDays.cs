using MathNet.Numerics.Random;

namespace TenderKit.Sizing.Climate;

/// <summary>Days drawn from <see cref="MarkovLibrary"/>, month by month in their order.</summary>
/// <remarks>
/// A month is drawn again until its mean lies within 0.01 of what it is to be, as the authors do; of <see cref="MostTries"/> months the nearest is kept.
/// The last day of a month is where the next begins.
/// </remarks>
internal sealed class MarkovDays(double[] values, double[] h0, int seed)
{
    private const int MostTries = 200;
    private const double MeanTolerance = 0.01;

    private readonly Xoshiro256StarStar random = new(seed, threadSafe: false);

    /// <param name="targets">Mean clearness of each month of each year, twelve arrays of one value a year.</param>
    public void Fill(double[][] targets)
    {
        var last = targets[11][^1];
        for (var t = 0; t < 12 * targets[0].Length; t++)
        {
            var (month, year) = (t % 12 + 1, t / 12);
            var target = targets[month - 1][year];
            var days = target > 0 ? Nearest(month, target, last) : new double[MonthDays.Count(month)];
            days.CopyTo(values, year * MonthDays.DaysCount + MonthDays.FirstDayIndex(month));
            if (target > 0) last = days[^1];
        }
    }

    private double[] Nearest(int month, double target, double last)
    {
        var (best, off) = (Array.Empty<double>(), double.PositiveInfinity);
        for (var i = 0; i < MostTries && off > MeanTolerance; i++)
        {
            var days = Draw(month, MarkovLibrary.MatrixFor(target), last, out var mean);
            if (Math.Abs(mean - target) < off) (best, off) = (days, Math.Abs(mean - target));
        }

        return best;
    }

    private double[] Draw(int month, int matrix, double last, out double mean)
    {
        var days = new double[MonthDays.Count(month)];
        var (sum, sky) = (0.0, 0.0);
        for (var d = 0; d < days.Length; d++)
        {
            last = days[d] = MarkovLibrary.Next(matrix, last, random.NextDouble());
            var h = h0[MonthDays.FirstDayIndex(month) + d];
            (sum, sky) = (sum + last * h, sky + h);
        }

        mean = sum / sky;
        return days;
    }
}

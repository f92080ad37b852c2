namespace TenderKit.Sizing.Energy.Balance;

/// <summary>Finds the worst run of days of a fixed length.</summary>
internal static class SpellSearch
{
    /// <summary>Sums are taken in whole millionths, so that sliding them is exact and equal spells stay equal.</summary>
    private const double Unit = 1e6;

    /// <summary>
    /// First step of the window with the most unserved energy; of equals the one with the lowest mean of the days' least states; of equals the first.
    /// </summary>
    public static int WorstStep(int dayCount, int length, Func<int, double> unservedWh, Func<int, double> leastFraction)
    {
        var (worst, mostUnserved, leastState) = (0, -1L, 0L);
        var (unserved, state) = (0L, 0L);
        for (var step = 0; step < dayCount; step++)
        {
            unserved += Whole(unservedWh(step));
            state += Whole(leastFraction(step));
            var first = step - length + 1;
            if (first < 0) continue;
            if (unserved > mostUnserved || (unserved == mostUnserved && state < leastState)) (worst, mostUnserved, leastState) = (first, unserved, state);
            unserved -= Whole(unservedWh(first));
            state -= Whole(leastFraction(first));
        }

        return worst;
    }

    private static long Whole(double value) => (long)Math.Round(value * Unit);
}

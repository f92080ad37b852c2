using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// How far the days of one month lie from its mean, over what the distribution of Saunier, Reddy and Kumar says: a fit of our own.
/// </summary>
/// <remarks>
/// Fitted on the 104 typical years of tests/Published/typical-year-dull-spells.csv: the lowest mean of 3, 5, 7 and 10 days in a row of a year over its worst
/// month's mean, averaged over the places of a band, against sequences with the same monthly means, lag-one correlation 0.29 and no spread between years;
/// least squares of the four relative residuals in steps of 0.05. Within 25 degrees (63 places) 0.75, residuals -1, 0, 0, 0 %; each half of the places alone
/// gives 0.75 and leaves at most 2 % on the other half; the places of SWERA alone give 0.70, those of TMY and TMY3 0.80. From 25 to 40 degrees (22 places,
/// all but one in the United States) 1.10, residuals -6, 5, 6, 5 %; beyond 40 (19 places there) 0.80, residuals 1, 2, 2, 0 %. Made straight between the bands.
/// Published distributions pool stations and years, so the days of one month at one place near the equator lie closer to its mean than they say.
/// Much of a typical year is modelled from clouds rather than measured, and it leaves out extreme months by construction: the spread between years and
/// the correlation of months come on top.
/// </remarks>
public static class DailyDispersion
{
    private static readonly (double LatitudeDegrees, double Factor)[] Knots = [(25, 0.75), (30, 1.10), (40, 1.10), (45, 0.80)];

    /// <summary>Deviation of a day from the month's mean over that of the distribution, ratio; linear between the bands. Check value: 13.5 S gives 0.75.</summary>
    /// <param name="latitudeDegrees">Latitude, degrees, -90 to 90.</param>
    public static double Factor(double latitudeDegrees)
    {
        var latitude = Math.Abs(Require.InRange(latitudeDegrees, -90, 90, nameof(latitudeDegrees)));
        if (latitude <= Knots[0].LatitudeDegrees) return Knots[0].Factor;
        for (var i = 1; i < Knots.Length; i++)
        {
            var (from, to) = (Knots[i - 1], Knots[i]);
            if (latitude > to.LatitudeDegrees) continue;
            return from.Factor + (to.Factor - from.Factor) * (latitude - from.LatitudeDegrees) / (to.LatitudeDegrees - from.LatitudeDegrees);
        }

        return Knots[^1].Factor;
    }
}

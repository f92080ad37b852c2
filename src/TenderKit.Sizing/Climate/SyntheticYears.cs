using System.Runtime.InteropServices;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Years of hours whose long-run calendar-month means are the given climate.
/// Daily clearness: the distribution of <see cref="ClearnessDistribution"/>, drawn with lag-one autocorrelation in its normal score
/// (Graham, Hollands and Brunger, Solar Energy 40 (1988) 311). Hours from days: Collares-Pereira and Rabl.
/// </summary>
/// <remarks>
/// The mean of each calendar month over all years is the input; a single month is not forced, so bad years stay bad.
/// The standard deviation of a calendar month's clearness between years is made equal to the rule by stretching each year's own deviation, and the
/// deviations of months in a row are correlated as the rule says (<see cref="MonthDeviations"/>), so that a bad season can last.
/// Scaling a month to its mean stretches its dark tail by little: shifting the normal scores instead brightens the dullest 3 days by 0.01 of the worst month's mean.
/// The Markov library takes the months' deviations from the same normal scores and draws the days by its own matrices, which hold their own autocorrelation.
/// Random numbers: xoshiro256** seeded by the rule, drawn in a fixed order on one thread. Clearness is rounded to 1e-6,
/// irradiation to 0.001 Wh/m2 and temperature to 0.001 K, so that the last bit of a platform's exp and log does not show.
/// </remarks>
public static class SyntheticYears
{
    /// <param name="cautiousFactor">Factor on irradiation for the climate's grade, fraction, 0.5 to 1.</param>
    public static HourlyYears Generate(MonthlyClimate climate, SequenceSettings settings, double cautiousFactor)
    {
        Require.InRange(settings.YearCount, 1, 200, nameof(settings));
        Require.InRange(settings.DayToDayCorrelation, 0, 0.95, nameof(settings));
        Require.InRange(settings.YearToYearSpreadFraction, 0, 0.5, nameof(settings));
        Require.InRange(settings.MonthToMonthCorrelation, 0, 0.95, nameof(settings));
        Require.InRange(settings.DispersionFactor, SequenceSettings.LeastDispersionFactor, SequenceSettings.GreatestDispersionFactor, nameof(settings));
        if (settings is { Shape: ClearnessShape.Markov, DispersionFactor: not 1 }) throw new ArgumentException("the Markov library has no dispersion to change", nameof(settings));
        Require.InRange(cautiousFactor, 0.5, 1, nameof(cautiousFactor));
        var h0 = DailyExtraterrestrial(climate.LatitudeDegrees);
        var clearness = NormalScores(settings);
        Shape(clearness, h0, climate, settings, cautiousFactor);
        return new HourlyYears(
            climate.LatitudeDegrees,
            settings.YearCount,
            ImmutableCollectionsMarshal.AsImmutableArray(Hours(clearness, h0, climate.LatitudeDegrees)),
            ImmutableCollectionsMarshal.AsImmutableArray(DailyTemperature.Hours(climate, settings.YearCount)));
    }

    /// <summary>Turns the normal scores of all days into daily clearness, all months of all years.</summary>
    private static void Shape(double[] scores, double[] h0, MonthlyClimate climate, SequenceSettings settings, double cautiousFactor)
    {
        var means = MeanClearness(climate, h0, cautiousFactor);
        var months = means.Select((mean, i) => new MonthOfYears(scores, h0, i + 1, settings.YearCount, mean)).ToArray();
        var own = months.Select((month, i) => month.Draw(ClearnessDistribution.Of(settings, means[i], climate.LatitudeDegrees))).ToArray();
        var deviations = MonthDeviations.Persisting(own, settings.MonthToMonthCorrelation, settings.YearToYearSpreadFraction);
        var targets = months.Select((month, i) => month.Targets(deviations[i])).ToArray();
        if (settings.Shape == ClearnessShape.Markov) new MarkovDays(scores, h0, settings.Seed + 1).Fill(targets);
        for (var i = 0; i < months.Length; i++) months[i].Scale(targets[i]);
    }

    /// <summary>Mean clearness of the calendar months, weighted by the extraterrestrial irradiation of their days, fraction.</summary>
    private static double[] MeanClearness(MonthlyClimate climate, double[] h0, double cautiousFactor) => [.. Enumerable.Range(1, 12).Select(month =>
    {
        var sky = h0.AsSpan(MonthDays.FirstDayIndex(month), MonthDays.Count(month)).ToArray().Sum();
        var irradiation = climate.IrradiationKWhPerM2[month - 1] * cautiousFactor * MonthDays.Count(month);
        return sky > 0 ? Math.Min(irradiation / sky, ClearnessDistribution.HighestMeanClearness + 0.02) : 0;
    })];

    private static double[] DailyExtraterrestrial(double latitudeDegrees)
    {
        var h0 = new double[MonthDays.DaysCount];
        for (var d = 0; d < h0.Length; d++) h0[d] = SunGeometry.DailyExtraterrestrialKWhPerM2(latitudeDegrees, d + 1);
        return h0;
    }

    /// <summary>Standard normal scores of all days, lag-one autocorrelated.</summary>
    private static double[] NormalScores(SequenceSettings settings)
    {
        var random = new Xoshiro256StarStar(settings.Seed, threadSafe: false);
        var rho = settings.DayToDayCorrelation;
        var fresh = Math.Sqrt(1 - rho * rho);
        var scores = new double[settings.YearCount * MonthDays.DaysCount];
        var last = Draw(random);
        for (var d = 0; d < scores.Length; d++)
        {
            scores[d] = last;
            last = rho * last + fresh * Draw(random);
        }

        return scores;
    }

    private static double Draw(Xoshiro256StarStar random) =>
        Normal.InvCDF(0, 1, Math.Clamp(random.NextDouble(), 1e-12, 1 - 1e-12));

    private static double[] Hours(double[] clearness, double[] h0, double latitudeDegrees)
    {
        var shares = new double[MonthDays.DaysCount][];
        for (var d = 0; d < shares.Length; d++)
        {
            shares[d] = HourlyRatios.GlobalShares(SunGeometry.SunsetHourAngleRad(latitudeDegrees, SunGeometry.DeclinationRad(d + 1)));
        }

        var hours = new double[clearness.Length * 24];
        for (var d = 0; d < clearness.Length; d++)
        {
            var day = d % MonthDays.DaysCount;
            var total = clearness[d] * h0[day] * 1000;
            for (var h = 0; h < 24; h++) hours[d * 24 + h] = Math.Round(total * shares[day][h], 3);
        }

        return hours;
    }
}

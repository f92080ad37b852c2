using System.Collections.Immutable;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class HourlySeriesTests
{
    // Duffie, Beckman and Blair, example 1.5.1 (recomputed): 3 February, equation of time -13.5 min, longitude 89.4 W, meridian 90 W:
    // solar time is the clock less 11.1 min, so 0.185 of the hour from 10 goes to the solar hour from 9
    [Fact]
    public void An_hour_of_the_clock_is_split_over_two_solar_hours()
    {
        var years = Series(43, -89.4, -6, (33, 10, 1000)).ToYears();
        Assert.Equal(185, years.GlobalWhPerM2[33 * 24 + 9], 2.0);
        Assert.Equal(815, years.GlobalWhPerM2[33 * 24 + 10], 2.0);
        Assert.Equal(1000, years.GlobalWhPerM2.Sum(), 0.01);
    }

    [Theory]
    [InlineData(8.98, 38.80, 3)]
    [InlineData(-13.97, 33.79, 2)]
    [InlineData(33.62, -114.72, -8)]
    [InlineData(39.5, 76, 8)]
    [InlineData(0, 179.9, 12)]
    public void Totals_of_days_are_kept_and_noon_is_the_middle_of_the_day(double latitude, double longitude, double offset)
    {
        var series = Sunny(latitude, longitude, offset);
        var years = series.ToYears();
        for (var d = 0; d < 365; d++)
        {
            var clock = series.GlobalWhPerM2.AsSpan(d * 24, 24).ToArray();
            var solar = years.GlobalWhPerM2.AsSpan(d * 24, 24).ToArray();
            Assert.Equal(clock.Sum(), solar.Sum(), 0.02);
            Assert.Equal(12, solar.Select((e, h) => e * (h + 0.5)).Sum() / solar.Sum(), 0.02);
        }
    }

    [Fact]
    public void No_energy_falls_into_the_dark()
    {
        var years = Sunny(33.62, -114.72, -8).ToYears();
        for (var i = 0; i < 8760; i++)
        {
            var half = SunGeometry.DayLengthH(33.62, i / 24 + 1) / 2;
            if (i % 24 + 1 <= 12 - half || i % 24 >= 12 + half) Assert.True(years.GlobalWhPerM2[i] < 0.5, $"{years.GlobalWhPerM2[i]} Wh/m2 at index {i}");
        }
    }

    [Fact]
    public void Energy_beyond_an_end_comes_in_at_the_other()
    {
        var years = Series(80, 0, 5, (0, 0, 10)).ToYears();
        Assert.Equal(10, years.GlobalWhPerM2.Sum(), 0.01);
        Assert.Equal(10, years.GlobalWhPerM2[^6] + years.GlobalWhPerM2[^5], 0.01);
    }

    [Fact]
    public void A_steady_temperature_stays_steady()
    {
        var years = (Sunny(8.98, 38.80, 3) with { AirC = [.. Enumerable.Repeat(17.5, 8760)] }).ToYears();
        Assert.All(years.AirC, t => Assert.Equal(17.5, t, 1e-9));
    }

    // by hand: 10 degC but for one hour of 34 on each day of January, one of them a glitch of 60: mean daily maximum (30 x 34 + 10) / 31
    [Fact]
    public void Months_are_means_and_glitches_are_left_out()
    {
        var air = Enumerable.Repeat(10.0, 2 * 8760).ToArray();
        for (var d = 0; d < 31; d++) air[d * 24 + 14] = air[8760 + d * 24 + 14] = 34;
        air[14] = air[8760 + 14] = 60;
        air[100 * 24] = -4;
        var series = Series(10, 0, 0) with
        {
            Years = [2001, 2002],
            GlobalWhPerM2 = [.. Enumerable.Repeat(200.0, 8760), .. Enumerable.Repeat(300.0, 8760)],
            AirC = [.. air],
        };
        var climate = series.ToMonthly(recordMarginK: 2);
        Assert.All(climate.IrradiationKWhPerM2, h => Assert.Equal(6, h, 1e-9));
        Assert.Equal((30 * 34 + 10) / 31.0, climate.DailyMaxC[0], 1e-9);
        Assert.Equal(10, climate.DailyMinC[0], 1e-9);
        Assert.Equal((31 * 24 * 10 + 30 * 24 - 10) / (31 * 24 - 1.0), climate.MeanC[0], 1e-9);
        Assert.Equal((-6.0, 36.0), (climate.RecordLowC, climate.RecordHighC));
        Assert.Equal((2001, 2), (series.FirstYear, series.YearCount));
    }

    [Fact]
    public void Part_of_a_year_is_a_bug_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => (Series(10, 0, 0) with { AirC = [1, 2] }).ToYears());

    [Fact]
    public void Days_that_are_missing_are_left_out_of_the_means()
    {
        var days = Enumerable.Repeat<double?>(4, 365).ToArray();
        days[0] = null;
        days[1] = 34;
        var means = DailySeries.MonthMeans([.. days]);
        Assert.Equal(5, means[0], 1e-9);
        Assert.Equal(4, means[11], 1e-9);
        Assert.Empty(DailySeries.MonthMeans([]));
    }

    private static HourlySeries Series(double latitude, double longitude, double offset, params (int Day, int Hour, double Wh)[] hours)
    {
        var global = new double[8760];
        foreach (var (day, hour, wh) in hours) global[day * 24 + hour] = wh;
        return new HourlySeries(SeriesKind.MeasuredYears, [2001], latitude, longitude, offset, [.. global], [.. new double[8760]], "test");
    }

    /// <summary>Extraterrestrial irradiation by the hour of the clock, in steps of a minute.</summary>
    private static HourlySeries Sunny(double latitude, double longitude, double offset)
    {
        var global = ImmutableArray.CreateBuilder<double>(8760);
        for (var i = 0; i < 8760; i++)
        {
            var n = i / 24 + 1;
            var declination = SunGeometry.DeclinationRad(n);
            var sum = 0.0;
            for (var minute = 0; minute < 60; minute++)
            {
                var clockH = i % 24 + (minute + 0.5) / 60;
                var solarH = clockH + SunGeometry.SolarLessClockMinutes(longitude, offset, SunGeometry.EquationOfTimeMinutes(n + (clockH - 12) / 24)) / 60;
                sum += Math.Max(0, SunGeometry.CosZenith(latitude, declination, (solarH - 12) * Math.PI / 12)) * 1000 / 60;
            }

            global.Add(sum);
        }

        return Series(latitude, longitude, offset) with { GlobalWhPerM2 = global.ToImmutable() };
    }
}

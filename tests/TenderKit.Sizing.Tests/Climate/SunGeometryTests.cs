using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class SunGeometryTests
{
    private const double MjPerKWh = 3.6;
    private static readonly int[] Fifteenth = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];

    // D&B, Solar Engineering of Thermal Processes, table 1.6.1 (Klein's mean days): dates read, declinations from memory and recomputed
    [Theory]
    [InlineData(1, 17, -20.9)]
    [InlineData(2, 47, -13.0)]
    [InlineData(3, 75, -2.4)]
    [InlineData(4, 105, 9.4)]
    [InlineData(5, 135, 18.8)]
    [InlineData(6, 162, 23.1)]
    [InlineData(7, 198, 21.2)]
    [InlineData(8, 228, 13.5)]
    [InlineData(9, 258, 2.2)]
    [InlineData(10, 288, -9.6)]
    [InlineData(11, 318, -18.9)]
    [InlineData(12, 344, -23.0)]
    public void Klein_mean_days(int month, int day, double printedDegrees)
    {
        Assert.Equal(day, SunGeometry.MeanDayOfMonth(month));
        var spencer = SunGeometry.DeclinationDegrees(day);
        if (Math.Abs(spencer - printedDegrees) <= 0.05) return;

        // The table prints Cooper's declination, wrong by up to 1.4 degrees in October: where Spencer disagrees with it, the NOAA algorithm decides
        var date = new DateTime(1999, 1, 1, 0, 0, 0, DateTimeKind.Utc).AddDays(day - 1);
        Assert.Equal(SunPosition.At(SunPosition.JulianDay(date)).DeclinationDegrees, spencer, 0.12);
    }

    // 1999 almanac, 0 h UT; read. Spencer within 0.06 degrees and 0.5 minutes
    [Theory]
    [InlineData(1, -23.0526, -3.1535)]
    [InlineData(17, -20.8693, -9.7977)]
    [InlineData(213, 18.1811, -6.3563)]
    [InlineData(228, 13.9449, -4.4470)]
    public void Spencer_against_the_1999_almanac(int day, double declinationDegrees, double equationMinutes)
    {
        Assert.Equal(declinationDegrees, SunGeometry.DeclinationDegrees(day), 0.06);
        Assert.Equal(equationMinutes, SunGeometry.EquationOfTimeMinutes(day), 0.5);
    }

    // pvlib-python, tests/data/BIRD_08_16_2012.csv, 1 January; read
    [Fact]
    public void Spencer_series_digits()
    {
        Assert.Equal(-2.91963861, SunGeometry.EquationOfTimeMinutes(1), 1e-3);
        Assert.Equal(-23.05864865, SunGeometry.DeclinationDegrees(1), 1e-4);
    }

    // pvlib-python, tests/test_irradiance.py: extraterrestrial normal, 26 October 2016 (day 300), constant 1366.1 W/m2; read
    [Fact]
    public void Spencer_distance_factor() => Assert.Equal(1383.636203, 1366.1 * SunGeometry.DistanceFactorSpencer(300), 1e-3);

    // FAO-56 example 8, page 80: 20 S, 3 September; read. FAO's own declination (eq. 24) and 0.0820 MJ/m2 min
    [Fact]
    public void Fao_example_8()
    {
        var declination = FaoDeclinationRad(246);
        Assert.Equal(0.985, SunGeometry.DistanceFactor(246), 0.0005);
        Assert.Equal(0.120, declination, 0.0005);
        Assert.Equal(1.527, SunGeometry.SunsetHourAngleRad(-20, declination), 0.0005);
        Assert.Equal(32.2, FaoRaMj(-20, 246), 0.05);
    }

    // FAO-56 example 10, page 84: Rio de Janeiro 22 54 S, May: Ra 25.1, N 10.9; read
    [Fact]
    public void Fao_example_10()
    {
        Assert.Equal(25.1, FaoRaMj(-22.9, 135), 0.05);
        Assert.Equal(10.9, SunGeometry.DayLengthH(-22.9, 135), 0.05);
        Assert.Equal(14.45, (0.25 + 0.5 * 7.1 / 10.9) * 25.1, 0.05);
    }

    [Fact]
    public void Fao_table_2_6_with_the_declination_of_its_own_equation_24()
    {
        foreach (var (latitude, month, printed) in Table("fao56-table-2-6.csv"))
        {
            // 60 N, May prints 36.5, the formula gives 36.66: a slip of copying, most likely; kept and marked
            var tolerance = latitude == 60 && month == 5 ? 0.17 : 0.15;
            Assert.Equal(printed, FaoRaMj(latitude, Fifteenth[month - 1]), tolerance);
        }
    }

    [Fact]
    public void Fao_table_2_7()
    {
        foreach (var (latitude, month, printed) in Table("fao56-table-2-7.csv"))
        {
            var hours = Angle.ToDegrees(SunGeometry.SunsetHourAngleRad(latitude, FaoDeclinationRad(Fifteenth[month - 1]))) * 2 / 15;
            Assert.Equal(printed, hours, 0.07);
        }
    }

    // D&B example 1.5.1: Madison 89.4 W, 10:30 clock of 90 W, 3 February: equation -13.5 min, solar 10:19; from memory, recomputed
    [Fact]
    public void Solar_time_of_Madison()
    {
        var equation = SunGeometry.EquationOfTimeMinutes(34);
        Assert.Equal(-13.5, equation, 0.5);
        Assert.Equal(-11, SunGeometry.SolarLessClockMinutes(-89.4, -6, equation), 1.0);
    }

    // 78 W, clock of 75 W, 12:00, equation -14 min: 11:34 solar; read
    [Fact]
    public void Solar_time_at_78_west() => Assert.Equal(-26, SunGeometry.SolarLessClockMinutes(-78, -5, -14), 1e-9);

    // D&B example 1.6.1: 43 N, 13 February (declination -14), 10:30, tilt 45, 15 west of south: 35 degrees; read, recomputed 35.18
    [Fact]
    public void Incidence_angle()
    {
        var cosine = SunGeometry.CosIncidence(43, Angle.ToRad(-14), Angle.ToRad(-22.5), new PlaneOrientation(45, 195));
        Assert.Equal(35.2, Angle.ToDegrees(Math.Acos(cosine)), 0.2);
        Assert.Equal(1.66, cosine / SunGeometry.CosZenith(43, Angle.ToRad(-14), Angle.ToRad(-22.5)), 0.01); // example 1.8.1
    }

    // D&B example 1.6.2, 43 N; from memory, recomputed (azimuth there from south, west positive)
    [Theory]
    [InlineData(44, 9.5, 66.5, -40.1)]
    [InlineData(182, 18.5, 79.6, 112.0)]
    public void Zenith_and_azimuth(int day, double solarH, double zenithDegrees, double fromSouthDegrees)
    {
        var declination = Angle.ToRad(23.45 * Angle.SinDegrees(360.0 * (284 + day) / 365));
        var (zenith, azimuth) = SunGeometry.Position(43, declination, Angle.ToRad((solarH - 12) * 15));
        Assert.Equal(zenithDegrees, zenith, 0.1);
        Assert.Equal(fromSouthDegrees + 180, azimuth, 0.1);
    }

    // D&B examples 1.10.1 and 1.10.2: 43 N, 15 April; problem statements read, answers recomputed (Cooper's declination 9.41)
    [Fact]
    public void Extraterrestrial_day_and_hour()
    {
        var declination = Angle.ToRad(9.415);
        var normal = SunGeometry.SolarConstantWPerM2 * SunGeometry.DistanceFactor(105);
        Assert.Equal(98.9, Angle.ToDegrees(SunGeometry.SunsetHourAngleRad(43, declination)), 0.05);
        Assert.Equal(33.8, MjPerKWh * SunGeometry.DailyExtraterrestrialKWhPerM2(43, declination, normal), 0.05);
        Assert.Equal(3.79, MjPerKWh / 1000 * SunGeometry.ExtraterrestrialWhPerM2(43, declination, normal, Angle.ToRad(-30), Angle.ToRad(-15)), 0.01);
    }

    // TMY3 Greensboro NC (36.100 N), daily sums of ETR, Wh/m2; read. Spencer within 1.5 %
    [Theory]
    [InlineData(17, 4942)]
    [InlineData(75, 8257)]
    [InlineData(162, 11580)]
    [InlineData(258, 8848)]
    [InlineData(344, 4530)]
    public void Extraterrestrial_day_of_Greensboro(int day, double wh) =>
        Assert.InRange(1000 * SunGeometry.DailyExtraterrestrialKWhPerM2(36.1, day) / wh, 0.985, 1.015);

    // pvlib-python, tests of incidence projection: tilt, azimuth, zenith, sun azimuth, angle; read
    [Theory]
    [InlineData(90, 0, 30, 60, 75.5224878)]
    [InlineData(90, 0, 30, 170, 119.4987042)]
    [InlineData(30, 180, 30, 180, 0)]
    public void Incidence_from_zenith_and_azimuth(double tilt, double azimuth, double zenith, double sunAzimuth, double expectedDegrees)
    {
        // A latitude of 90 turns hour angle and declination into azimuth and elevation: south there is the hour angle zero.
        var cosine = SunGeometry.CosIncidence(90, Angle.ToRad(90 - zenith), Angle.ToRad(sunAzimuth - 180), new PlaneOrientation(tilt, azimuth));
        Assert.Equal(expectedDegrees, Angle.ToDegrees(Math.Acos(Math.Clamp(cosine, -1, 1))), 2e-6);
    }

    // FAO-56 annex 2: 70 N December N = 0, June and July N = 24; read
    [Theory]
    [InlineData(70, 349, 0)]
    [InlineData(70, 166, 24)]
    [InlineData(70, 196, 24)]
    [InlineData(90, 166, 24)]
    [InlineData(90, 349, 0)]
    [InlineData(-90, 349, 24)]
    public void Polar_day_and_night(double latitude, int day, double hours) => Assert.Equal(hours, SunGeometry.DayLengthH(latitude, day));

    [Fact]
    public void Clearness_is_not_a_number_without_sun()
    {
        Assert.True(double.IsNaN(SunGeometry.MonthlyClearness(80, 12, 0)));
        Assert.Equal(0.5, SunGeometry.MonthlyClearness(-13.5, 1, 0.5 * SunGeometry.DailyExtraterrestrialKWhPerM2(-13.5, 17)), 1e-12);
    }

    private static double FaoDeclinationRad(int day) => 0.409 * Math.Sin(2 * Math.PI * day / 365 - 1.39);

    private static double FaoRaMj(double latitude, int day) =>
        MjPerKWh * SunGeometry.DailyExtraterrestrialKWhPerM2(latitude, FaoDeclinationRad(day), SunGeometry.DistanceFactor(day) * 0.0820e6 / 60);

    private static IEnumerable<(double Latitude, int Month, double Printed)> Table(string name) =>
        from row in PublishedTable.Rows(name)
        from month in Enumerable.Range(1, 12)
        select (PublishedTable.Number(row[0]), month, PublishedTable.Number(row[month]));
}

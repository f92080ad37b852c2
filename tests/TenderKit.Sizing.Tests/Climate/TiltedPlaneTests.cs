using CsCheck;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class TiltedPlaneTests
{
    // D&B example 2.20.1: Madison 43 N, tilt 60 south, MJ/m2 a day, ground 0.7 0.7 0.4 0.2 ... 0.4; inputs read
    private static readonly double[] MadisonMj = [6.44, 9.89, 12.86, 16.05, 21.36, 23.04, 22.58, 20.33, 14.59, 10.48, 6.37, 5.74];
    private static readonly double[] MadisonGround = [0.7, 0.7, 0.4, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.4];

    // H0, KT and Hd/H of the same example, recomputed; the book's two-figure values agree (from memory). The book uses Cooper's declination, so do these rows
    [Theory]
    [InlineData(1, 13.36, 0.482, 0.409, 2.79, 2.037, 13.12)]
    [InlineData(2, 18.80, 0.526, 0.366, 2.04, 1.684, 16.66)]
    [InlineData(3, 26.03, 0.494, 0.435, 1.42, 1.209, 15.55)]
    [InlineData(4, 33.77, 0.475, 0.453, 0.96, 0.927, 14.87)]
    [InlineData(5, 39.42, 0.542, 0.390, 0.71, 0.798, 17.04)]
    [InlineData(6, 41.78, 0.552, 0.381, 0.62, 0.741, 17.08)]
    [InlineData(7, 40.55, 0.557, 0.376, 0.66, 0.765, 17.28)]
    [InlineData(8, 35.92, 0.566, 0.368, 0.84, 0.877, 17.82)]
    [InlineData(9, 28.79, 0.507, 0.423, 1.21, 1.064, 15.52)]
    [InlineData(10, 20.90, 0.501, 0.390, 1.81, 1.403, 14.70)]
    [InlineData(11, 14.62, 0.436, 0.458, 2.56, 1.699, 10.82)]
    [InlineData(12, 11.91, 0.482, 0.409, 3.06, 2.116, 12.15)]
    public void Madison(int month, double h0Mj, double clearness, double diffuse, double beamRatio, double ratio, double planeMj)
    {
        var day = SunGeometry.MeanDayOfMonth(month);
        var delta = Angle.ToRad(23.45 * Angle.SinDegrees(360.0 * (284 + day) / 365));
        var h0 = 3.6 * SunGeometry.DailyExtraterrestrialKWhPerM2(43, delta, 1367 * SunGeometry.DistanceFactor(day));
        Assert.Equal(h0Mj, h0, 0.03);
        var kt = MadisonMj[month - 1] / h0;
        Assert.Equal(clearness, kt, 0.003);
        var fraction = DiffuseFraction.Monthly(kt, SunGeometry.SunsetHourAngleRad(43, delta));
        Assert.Equal(diffuse, fraction, 0.003);
        Assert.Equal(beamRatio, DailyBeamRatio(43, delta, new PlaneOrientation(60, 180)), 0.01);
        var r = KleinTheilacker.Ratio(43, delta, new PlaneOrientation(60, 180), fraction, MadisonGround[month - 1]);
        Assert.Equal(ratio, r, 0.002);
        Assert.Equal(planeMj, MadisonMj[month - 1] * r, 0.05);
    }

    // D&B example 2.15.1 (isotropic) and the same hour by Hay and Davies: 40 N, 20 February, 9 to 10 h, tilt 60, ground 0.60; read, recomputed
    [Fact]
    public void One_hour_isotropic_and_hay_davies()
    {
        var cosTilt = Angle.CosDegrees(60);
        Assert.Equal(1.17, SkyModel.Isotropic(0.244, 0.796, 1.713, cosTilt, 0.6), 0.01);
        Assert.Equal(1.25, SkyModel.HayDavies(0.244, 0.796, 2.335, 1.713, cosTilt, 0.6), 0.01);
    }

    // D&B example 2.14.1: 45 N, 4 March, tilt 60 south: Rb at 6:30 is 44, mean from sunrise to 7 is 4.6; read
    [Fact]
    public void Beam_ratio_near_sunrise()
    {
        var delta = Angle.ToRad(-7.15);
        var plane = new PlaneOrientation(60, 180);
        double Ratio(double w) => SunGeometry.CosIncidence(45, delta, w, plane) / SunGeometry.CosZenith(45, delta, w);
        Assert.Equal(44, Ratio(Angle.ToRad(-82.5)), 1.0);
        var ws = SunGeometry.SunsetHourAngleRad(45, delta);
        var steps = Enumerable.Range(0, 1000).Select(i => -ws + (ws - Angle.ToRad(75)) * (i + 0.5) / 1000).ToList();
        var mean = steps.Sum(w => SunGeometry.CosIncidence(45, delta, w, plane)) / steps.Sum(w => SunGeometry.CosZenith(45, delta, w));
        Assert.Equal(4.6, mean, 0.05);
    }

    // pvlib-python fixtures, 32.2 N, tilt 40 south: global, beam normal, diffuse, zenith, sun azimuth; Reindl (HDKR) and Hay-Davies sky diffuse; read
    [Theory]
    [InlineData(1042.48031487, 939.95469881, 118.45831879, 10.56413562, 144.76567754, 104.1317, 102.9949)]
    [InlineData(257.20751138, 646.22886049, 62.03376265, 72.41687122, 287.04104128, 34.1663, 33.1909)]
    [InlineData(79.73860422, 316.1949056, 40.46149818, 82.85457044, 66.71410338, 27.9412, 27.1775)]
    public void Sky_diffuse_of_pvlib(double global, double normal, double diffuse, double zenith, double azimuth, double hdkr, double hayDavies)
    {
        const double ExtraterrestrialNormal = 1321.1655834833093;
        var cosZenith = Angle.CosDegrees(zenith);
        var cosine = SunGeometry.CosIncidence(90, Angle.ToRad(90 - zenith), Angle.ToRad(azimuth - 180), new PlaneOrientation(40, 180));
        var beamRatio = Math.Max(0, cosine) / cosZenith;
        var (beam, cosTilt) = (normal * cosZenith, Angle.CosDegrees(40));
        var i0 = ExtraterrestrialNormal * cosZenith;
        Assert.Equal(hayDavies, SkyModel.HayDavies(beam, diffuse, i0, beamRatio, cosTilt, 0) - beam * beamRatio, 1e-4);

        // the fixture's global is not exactly beam + diffuse; the horizon term takes the square root of their ratio, hence 2e-3
        var sky = SkyModel.HdkrSky(beam, diffuse, i0, beamRatio, cosTilt, Math.Pow(Angle.SinDegrees(20), 3)) - beam * beamRatio;
        Assert.Equal(hdkr, sky, 2e-3);
        Assert.Equal(global, beam + diffuse, 1.0);
    }

    // pvlib-python, tests/test_irradiance.py: isotropic sky, tilt 40, diffuse 100; ground, global 900, albedo 0.25; read
    [Fact]
    public void Sky_and_ground_views()
    {
        Assert.Equal(88.30222215594891, SkyModel.Isotropic(0, 100, 0, Angle.CosDegrees(40), 0), 1e-9);
        Assert.Equal(26.32000014911496, SkyModel.Ground(900, Angle.CosDegrees(40), 0.25), 1e-5);
    }

    [Fact]
    public void Klein_and_theilacker_equals_the_integral_it_stands_for() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Int[1, 12], Gen.Double[0, 90], Gen.Double[0, 360], Gen.Double[0.2, 0.6]).Sample((latitude, month, tilt, azimuth, diffuse) =>
        {
            var delta = SunGeometry.DeclinationRad(SunGeometry.MeanDayOfMonth(month));
            var plane = new PlaneOrientation(tilt, azimuth);
            var closed = KleinTheilacker.BeamRatio(latitude, delta, plane, diffuse);
            return Math.Abs(closed - Math.Max(0, Integral(latitude, delta, plane, diffuse))) < 5e-4 * Math.Max(1, closed);
        });

    // B = 0: H on the plane is H (derived). As printed the formula gives what rt adds up to over the day, 0.991 to 1.003 (43 N: January 0.9953, June 1.0030, recomputed)
    [Fact]
    public void A_flat_plane_receives_the_horizontal() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[0, 360], Gen.Double[0.3, 0.75]).Sample((latitude, azimuth, clearness) =>
        {
            var climate = Climates.Constant(latitude, clearness);
            var flat = TiltedPlane.MonthlyKWhPerM2(climate, new PlaneOrientation(0, azimuth), 0.2);
            return flat.Zip(climate.IrradiationKWhPerM2).All(p => Math.Abs(p.First / p.Second - 1) < 1e-9);
        });

    [Theory]
    [InlineData(43, 1, 0.9953)]
    [InlineData(43, 6, 1.0030)]
    [InlineData(-33, 6, 0.9930)]
    public void The_formula_as_printed_gives_a_flat_plane_what_its_day_adds_up_to(double latitude, int month, double sum)
    {
        var delta = SunGeometry.DeclinationRad(SunGeometry.MeanDayOfMonth(month));
        Assert.Equal(sum, HourlyRatios.GlobalIntegral(SunGeometry.SunsetHourAngleRad(latitude, delta)), 0.0001);
        Assert.Equal(sum, KleinTheilacker.Ratio(latitude, delta, new PlaneOrientation(0, 180), 0.4, 0.2), 0.0001);
        Assert.Equal(0.6, KleinTheilacker.WholeBeamRatio(latitude, delta, new PlaneOrientation(0, 180), 0.4), 1e-12);
    }

    [Fact]
    public void The_southern_hemisphere_mirrors_the_northern() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[-0.4, 0.4], Gen.Double[0, 90], Gen.Double[0, 180]).Sample((latitude, delta, tilt, off) =>
        {
            var north = KleinTheilacker.Ratio(latitude, delta, new PlaneOrientation(tilt, 180 + off), 0.4, 0.2);
            var south = KleinTheilacker.Ratio(-latitude, -delta, new PlaneOrientation(tilt, -off), 0.4, 0.2);
            return Math.Abs(north - south) < 1e-9;
        });

    [Fact]
    public void Hours_on_the_plane_lie_a_little_above_the_isotropic_months()
    {
        // HDKR puts part of the diffuse around the sun: more than the isotropic sky, the more so the steeper the plane
        foreach (var latitude in new[] { -33.9, -13.5, 0.3, 14.7, 40.0 })
        {
            var climate = Climates.Constant(latitude, 0.55);
            var plane = new PlaneOrientation(Math.Max(10, Math.Abs(latitude)), latitude >= 0 ? 180 : 0);
            var years = TiltedPlane.Hourly(SyntheticYears.Generate(climate, new SequenceSettings(20, 5, 0.29, 0.08), 1), plane, 0.2, 0);
            var months = TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2);
            for (var m = 1; m <= 12; m++) Assert.InRange(Climates.MonthMean(years.PlaneWhPerM2, 20, m) / 1000 / months[m - 1], 0.97, 1.10);
        }
    }

    [Fact]
    public void Shading_takes_its_share_of_beam_and_sky_only()
    {
        var years = SyntheticYears.Generate(Climates.Constant(10, 0.5), new SequenceSettings(1, 5, 0.29, 0.08), 1);
        var plane = new PlaneOrientation(30, 180);
        var open = TiltedPlane.Hourly(years, plane, 0.2, 0).PlaneWhPerM2;
        var shaded = TiltedPlane.Hourly(years, plane, 0.2, 0.25).PlaneWhPerM2;
        for (var i = 0; i < open.Length; i++)
        {
            var ground = SkyModel.Ground(years.GlobalWhPerM2[i], Angle.CosDegrees(30), 0.2);
            Assert.Equal((open[i] - ground) * 0.75 + ground, shaded[i], 1e-9);
        }
    }

    [Fact]
    public void No_hour_beats_the_sun_itself() =>
        Gen.Select(Gen.Double[-65, 65], Gen.Double[0, 90], Gen.Double[0, 360], Gen.Bool).Sample(
            (latitude, tilt, azimuth, hourly) =>
            {
                var years = SyntheticYears.Generate(Climates.Constant(latitude, 0.7), new SequenceSettings(1, 9, 0.29, 0.05), 1);
                var split = hourly ? DiffuseSplit.Hourly : DiffuseSplit.Daily;
                return TiltedPlane.Hourly(years, new PlaneOrientation(tilt, azimuth), 0.2, 0, split).PlaneWhPerM2.All(g => g is >= 0 and < 1600);
            },
            iter: 30);

    [Theory]
    [InlineData(50, 180)]
    [InlineData(-30, 0)]
    public void Best_tilt_faces_the_equator_and_beats_its_neighbours(double latitude, double azimuth)
    {
        var climate = Climates.Constant(latitude, 0.5);
        var demand = NightCalendar.MonthlyMeanDarkH(NightCalendar.ForLatitude(latitude, -0.833));
        var best = TiltedPlane.BestForWorstMonth(climate, demand, 10, 0.2);
        Assert.Equal(azimuth, best.AzimuthDegrees);
        double Worst(double tilt) => TiltedPlane.MonthlyKWhPerM2(climate, new PlaneOrientation(tilt, azimuth), 0.2).Zip(demand).Min(p => p.First / p.Second);
        Assert.True(Worst(best.TiltDegrees) >= Worst(best.TiltDegrees - 1) && Worst(best.TiltDegrees) >= Worst(best.TiltDegrees + 1));

        // "about latitude + 10 to 15 for winter design" (from memory), here for a demand that follows the night
        Assert.InRange(best.TiltDegrees - Math.Abs(latitude), 5, 25);
    }

    [Fact]
    public void Best_tilt_keeps_the_least_tilt_for_cleaning()
    {
        var best = TiltedPlane.BestForWorstMonth(Climates.Constant(1, 0.5), [.. Enumerable.Repeat(12.0, 12)], 10, 0.2);
        Assert.Equal(10, best.TiltDegrees);
    }

    /// <summary>Mean beam ratio of a day: integral of cos(incidence) over integral of cos(zenith), both while the sun is up.</summary>
    private static double DailyBeamRatio(double latitude, double delta, PlaneOrientation plane)
    {
        var ws = SunGeometry.SunsetHourAngleRad(latitude, delta);
        var steps = Enumerable.Range(0, 4000).Select(i => -ws + 2 * ws * (i + 0.5) / 4000).ToList();
        return steps.Sum(w => Math.Max(0, SunGeometry.CosIncidence(latitude, delta, w, plane))) / steps.Sum(w => SunGeometry.CosZenith(latitude, delta, w));
    }

    /// <summary>Integral of (rt - rd Hd/H) cos(incidence) / cos(zenith) while the plane sees the sun.</summary>
    private static double Integral(double latitude, double delta, PlaneOrientation plane, double diffuse)
    {
        var ws = SunGeometry.SunsetHourAngleRad(latitude, delta);
        const int Steps = 40000;
        var sum = 0.0;
        for (var i = 0; i < Steps; i++)
        {
            var w = -ws + 2 * ws * (i + 0.5) / Steps;
            var cosine = SunGeometry.CosIncidence(latitude, delta, w, plane);
            if (cosine <= 0) continue;
            var beam = HourlyRatios.Global(w, ws) - diffuse * HourlyRatios.Diffuse(w, ws);
            sum += beam * cosine / SunGeometry.CosZenith(latitude, delta, w);
        }

        return sum * 2 * ws / Steps * 12 / Math.PI;
    }
}

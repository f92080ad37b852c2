using CsCheck;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class HorizonProfileTests
{
    /// <summary>A wall of 40 degrees from north-north-east to south-south-east.</summary>
    private static readonly HorizonProfile EastWall = new([(19.9, 0), (20, 40), (160, 40), (160.1, 0)]);

    private static readonly HourlyYears Years = SyntheticYears.Generate(Climates.Constant(-13.5, 0.55), new SequenceSettings(2, 5, 0.29, 0.08), 1);

    [Theory]
    [InlineData(0, 7.5)]
    [InlineData(45, 10)]
    [InlineData(90, 20)]
    [InlineData(180, 15)]
    [InlineData(270, 10)]
    [InlineData(315, 5)]
    [InlineData(337.5, 6.25)]
    [InlineData(-45, 5)]
    [InlineData(765, 10)]
    public void Elevation_is_straight_between_points_and_runs_round(double azimuth, double elevation)
    {
        var profile = new HorizonProfile([(315, 5), (45, 10), (90, 20), (270, 10)]);
        Assert.Equal(elevation, profile.ElevationDegreesAt(azimuth), 1e-9);
    }

    [Fact]
    public void One_point_is_a_line_all_round_and_none_is_flat()
    {
        Gen.Double[-720, 720].Sample(a => Math.Abs(HorizonProfile.Uniform(12).ElevationDegreesAt(a) - 12) < 1e-9 && HorizonProfile.Flat.ElevationDegreesAt(a) == 0);
        Assert.True(HorizonProfile.Flat.IsFlat && HorizonProfile.Uniform(0).IsFlat && !EastWall.IsFlat);

        Assert.Equal(new HorizonProfile([(10, 5), (200, 7)]), new HorizonProfile([(200, 7), (10, 5)]));

        // both ends of a full turn may be written
        Assert.Equal(4, new HorizonProfile([(0, 4), (180, 8), (360, 4)]).ElevationDegreesAt(360), 1e-12);
    }

    [Fact]
    public void Impossible_points_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new HorizonProfile([(361, 0)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HorizonProfile([(-1, 0)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HorizonProfile([(10, -1)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HorizonProfile([(10, 91)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new HorizonProfile([(10, double.NaN)]));
        Assert.Throws<ArgumentException>(() => new HorizonProfile([(10, 5), (10, 6)]));
        Assert.Throws<ArgumentException>(() => new HorizonProfile([(0, 5), (360, 6)]));
    }

    // Known results of the isotropic sky: horizontal plane within a uniform line cos^2 e; open sky (1 + cos tilt) / 2 (Liu and Jordan)
    [Fact]
    public void Sky_view_of_a_uniform_line_and_of_an_open_sky() =>
        Gen.Select(Gen.Double[0, 90], Gen.Double[0, 90], Gen.Double[0, 360]).Sample((elevation, tilt, azimuth) =>
            Math.Abs(HorizonProfile.Uniform(elevation).SkyViewFraction(new PlaneOrientation(0, azimuth)) - Math.Pow(Angle.CosDegrees(elevation), 2)) < 1e-12
            && Math.Abs(HorizonProfile.Flat.SkyViewFraction(new PlaneOrientation(tilt, azimuth)) - (1 + Angle.CosDegrees(tilt)) / 2) < 1e-12);

    // Derived: a vertical plane facing a uniform line sees 1/2 - (e + sin e cos e) / pi, twice the integral of cos^2 from e to the zenith over pi
    [Theory]
    [InlineData(10)]
    [InlineData(30)]
    [InlineData(60)]
    public void Sky_view_of_a_vertical_plane(double elevation)
    {
        var e = Angle.ToRad(elevation);
        Assert.Equal(0.5 - (e + Math.Sin(e) * Math.Cos(e)) / Math.PI, HorizonProfile.Uniform(elevation).SkyViewFraction(new PlaneOrientation(90, 123)), 1e-9);
    }

    [Fact]
    public void A_level_horizon_changes_nothing()
    {
        var plane = new PlaneOrientation(20, 0);
        var climate = Climates.Constant(-13.5, 0.55);
        var (open, flat) = (TiltedPlane.Hourly(Years, plane, 0.2, 0.1), TiltedPlane.Hourly(Years, plane, 0.2, 0.1, horizon: HorizonProfile.Uniform(0)));
        for (var i = 0; i < open.PlaneWhPerM2.Length; i++) Assert.Equal(open.PlaneWhPerM2[i], flat.PlaneWhPerM2[i], 1e-9);
        var months = TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2);
        Assert.All(months.Zip(TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2, HorizonProfile.Flat)), m => Assert.Equal(m.First, m.Second, 1e-9));

        // a line so low that it cuts neither sun nor sky to speak of goes through the other branch and says the same
        Assert.All(months.Zip(TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2, HorizonProfile.Uniform(1e-9))), m => Assert.Equal(m.First, m.Second, 1e-8));
    }

    [Fact]
    public void More_horizon_is_never_more_sun() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[0, 90], Gen.Double[0, 360], Gen.Double[0, 60].Array[8], Gen.Double[0, 30].Array[8]).Sample(
            (latitude, tilt, azimuth, low, more) =>
            {
                HorizonProfile Line(Func<int, double> elevation) => new([.. Enumerable.Range(0, 8).Select(i => (i * 45.0, elevation(i)))]);
                var (lower, higher) = (Line(i => low[i]), Line(i => low[i] + more[i]));
                var climate = Climates.Constant(latitude, 0.55);
                var plane = new PlaneOrientation(tilt, azimuth);
                double[] Sums(HorizonProfile? line) => [.. TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2, line)];
                return Sums(null).Zip(Sums(lower)).All(m => m.Second <= m.First + 1e-9) && Sums(lower).Zip(Sums(higher)).All(m => m.Second <= m.First + 1e-9);
            },
            iter: 30);

    [Fact]
    public void More_horizon_is_never_more_sun_in_any_hour()
    {
        var plane = new PlaneOrientation(25, 10);
        double[][] hours = [.. new[] { 0.0, 5, 15, 40, 90 }.Select(e => TiltedPlane.Hourly(Years, plane, 0.2, 0, horizon: HorizonProfile.Uniform(e)).PlaneWhPerM2.ToArray())];
        for (var e = 1; e < hours.Length; e++) Assert.All(hours[e].Zip(hours[e - 1]), h => Assert.True(h.First <= h.Second + 1e-9));

        // nothing but the ground is left at the bottom of a well
        for (var i = 0; i < Years.GlobalWhPerM2.Length; i++) Assert.Equal(SkyModel.Ground(Years.GlobalWhPerM2[i], Angle.CosDegrees(25), 0.2), hours[4][i], 1e-9);
    }

    // East of the pole a wall: the morning loses its beam, the afternoon only the sky the wall covers
    [Fact]
    public void A_wall_to_the_east_takes_the_morning_beam()
    {
        var plane = new PlaneOrientation(0, 0);
        var open = TiltedPlane.Hourly(Years, plane, 0, 0).PlaneWhPerM2;
        var walled = TiltedPlane.Hourly(Years, plane, 0, 0, horizon: EastWall).PlaneWhPerM2;
        var sky = EastWall.SkyViewFraction(plane);
        double Share(int hour) => Enumerable.Range(0, 730).Sum(d => walled[d * 24 + hour]) / Enumerable.Range(0, 730).Sum(d => open[d * 24 + hour]);
        Assert.InRange(Share(7), 0.1, 0.6);
        Assert.InRange(sky, 0.75, 0.90);
        for (var d = 0; d < 730; d++)
        {
            for (var h = 13; h < 18; h++)
            {
                if (open[d * 24 + h] <= 1) continue;
                Assert.InRange(walled[d * 24 + h] / open[d * 24 + h], sky - 1e-12, 1);
            }
        }

        // and in parts: as much lost in the morning on the plane facing east as in the evening on the plane facing west behind the mirrored wall
        var west = new HorizonProfile([.. EastWall.Points.Select(p => (360 - p.AzimuthDegrees, p.ElevationDegrees))]);
        var climate = Climates.Constant(-13.5, 0.55);
        var (morning, evening) = (TiltedPlane.MonthlyKWhPerM2(climate, new PlaneOrientation(30, 90), 0.2, EastWall), TiltedPlane.MonthlyKWhPerM2(climate, new PlaneOrientation(30, 270), 0.2, west));
        Assert.All(morning.Zip(evening), m => Assert.Equal(m.First, m.Second, 1e-6));
    }

    [Fact]
    public void Parts_add_up_and_the_ground_stays() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[0, 90], Gen.Double[0, 360], Gen.Double[0, 60]).Sample((latitude, tilt, azimuth, elevation) =>
        {
            var climate = Climates.Constant(latitude, 0.55);
            var plane = new PlaneOrientation(tilt, azimuth);
            var line = new HorizonProfile([(90, elevation), (270, elevation / 2)]);
            var (open, cut) = (TiltedPlane.MonthlyParts(climate, plane, 0.2), TiltedPlane.MonthlyParts(climate, plane, 0.2, line));
            var totals = TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2, line);
            return Enumerable.Range(0, 12).All(m =>
                Math.Abs(cut[m].BeamKWhPerM2 + cut[m].SkyKWhPerM2 + cut[m].GroundKWhPerM2 - totals[m]) < 1e-12
                && cut[m].GroundKWhPerM2 == open[m].GroundKWhPerM2 && cut[m].BeamKWhPerM2 <= open[m].BeamKWhPerM2 + 1e-12 && cut[m].SkyKWhPerM2 <= open[m].SkyKWhPerM2 + 1e-12);
        });

    // The monthly method cuts beam on the mean day and the uniform sky, the hourly one every day and the sky of HDKR: what a line takes agrees within 0.03 of the open plane
    [Fact]
    public void Months_and_hours_lose_alike()
    {
        var climate = Climates.Constant(-13.5, 0.55);
        var years = SyntheticYears.Generate(climate, new SequenceSettings(10, 5, 0.29, 0.08), 1);
        foreach (var (plane, line) in new[] { (new PlaneOrientation(15, 0), EastWall), (new PlaneOrientation(30, 60), HorizonProfile.Uniform(15)), (new PlaneOrientation(10, 0), new([(330, 5), (0, 35), (30, 5)])) })
        {
            var months = TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2, line).Zip(TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2)).Select(m => m.First / m.Second).ToList();
            var (cut, open) = (TiltedPlane.Hourly(years, plane, 0.2, 0, horizon: line), TiltedPlane.Hourly(years, plane, 0.2, 0));
            for (var m = 1; m <= 12; m++) Assert.Equal(months[m - 1], Climates.MonthMean(cut.PlaneWhPerM2, 10, m) / Climates.MonthMean(open.PlaneWhPerM2, 10, m), 0.03);
        }
    }

    [Fact]
    public void The_best_plane_turns_away_from_a_wall()
    {
        var climate = Climates.Constant(-13.5, 0.55);
        var demand = NightCalendar.MonthlyMeanDarkH(NightCalendar.ForLatitude(-13.5, -0.833));
        var facing = TiltedPlane.BestForWorstMonth(climate, demand, 10, 0.2, EastWall);
        var best = TiltedPlane.Best(climate, demand, 10, 0.2, EastWall);
        double Worst(PlaneOrientation plane) => TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2, EastWall).Zip(demand).Min(m => m.First / m.Second);
        Assert.InRange(best.AzimuthDegrees, 270, 358);
        Assert.True(best.TiltDegrees >= 10 && Worst(best) > Worst(facing));
        foreach (var (tilt, turn) in new[] { (1, 0), (-1, 0), (0, 1), (0, -1) }) Assert.True(Worst(best) >= Worst(new PlaneOrientation(Math.Max(10, best.TiltDegrees + tilt), best.AzimuthDegrees + turn)) - 1e-12);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(-30)]
    public void Without_a_horizon_the_best_plane_faces_the_equator(double latitude)
    {
        var climate = Climates.Constant(latitude, 0.5);
        var demand = NightCalendar.MonthlyMeanDarkH(NightCalendar.ForLatitude(latitude, -0.833));
        Assert.Equal(TiltedPlane.BestForWorstMonth(climate, demand, 10, 0.2), TiltedPlane.Best(climate, demand, 10, 0.2));
    }

    // Exhaustive search as the judge of the coarse one
    [Fact]
    public void The_search_finds_what_trying_every_plane_finds()
    {
        var climate = Climates.Of(9, [5.6, 5.9, 5.9, 5.7, 5.8, 5.4, 4.6, 4.8, 5.4, 6.0, 6.1, 5.7]);
        var demand = NightCalendar.MonthlyMeanDarkH(NightCalendar.ForLatitude(9, -0.833));
        double Worst(PlaneOrientation plane) => TiltedPlane.MonthlyKWhPerM2(climate, plane, 0.2).Zip(demand).Min(m => m.First / m.Second);
        var most = Enumerable.Range(0, 16).SelectMany(t => Enumerable.Range(0, 120).Select(a => Worst(new PlaneOrientation(10 + 2 * t, 3 * a)))).Max();
        Assert.True(Worst(TiltedPlane.Best(climate, demand, 10, 0.2)) >= most - 1e-6);
    }
}

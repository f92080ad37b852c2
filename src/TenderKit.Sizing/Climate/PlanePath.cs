using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>The sun seen from one plane through the hours of a 365-day year: everything about an hour that does not depend on its weather.</summary>
internal sealed class PlanePath
{
    private const int StepsPerHour = 12;

    /// <summary>Beam of an hour is not trusted with less sun than this mean cosine of zenith (about 1 degree of elevation).</summary>
    private const double LeastCosZenith = 0.017;

    private static readonly (double Cos, double Sin)[] Steps = [.. Enumerable.Range(0, 24 * StepsPerHour)
        .Select(i => (i + 0.5) / StepsPerHour - 12)
        .Select(h => (Math.Cos(h * Math.PI / 12), Math.Sin(h * Math.PI / 12)))];

    private readonly double[] beamRatio = new double[MonthDays.HoursCount];
    private readonly double[] extraterrestrialWh = new double[MonthDays.HoursCount];
    private readonly double[] diffuseShare = new double[MonthDays.HoursCount];
    private readonly double[] dayExtraterrestrialWh = new double[MonthDays.DaysCount];
    private readonly double[] sunsetRad = new double[MonthDays.DaysCount];
    private readonly double cosTilt;
    private readonly double horizonTerm;
    private readonly double openSky = 1;
    private readonly HorizonProfile? horizon;

    private PlanePath(PlaneOrientation plane, HorizonProfile? horizon)
    {
        this.horizon = horizon is { IsFlat: false } ? horizon : null;
        cosTilt = Angle.CosDegrees(plane.TiltDegrees);
        horizonTerm = Math.Pow(Angle.SinDegrees(plane.TiltDegrees / 2), 3);
        if (this.horizon is { } line) openSky = line.SkyViewFraction(plane) / ((1 + cosTilt) / 2);
    }

    /// <param name="horizon">Cuts the beam of the steps (5 minutes) with the sun below it, and the sky; null for a level one.</param>
    public static PlanePath Of(double latitudeDegrees, PlaneOrientation plane, HorizonProfile? horizon)
    {
        var path = new PlanePath(plane, horizon);
        for (var day = 0; day < MonthDays.DaysCount; day++) path.Prepare(day, latitudeDegrees, plane);
        return path;
    }

    /// <summary>Plane irradiation of the 24 hours of one day, Wh/m2.</summary>
    public void Day(int day, ReadOnlySpan<double> global, Span<double> plane, double albedo, double openFraction, DiffuseSplit split)
    {
        var total = 0.0;
        foreach (var g in global) total += g;
        if (total <= 0) return;
        var clearness = dayExtraterrestrialWh[day] > 0 ? total / dayExtraterrestrialWh[day] : 0;
        var dayDiffuse = total * DiffuseFraction.Daily(clearness, sunsetRad[day]);
        var groundView = albedo * (1 - cosTilt) / 2;
        for (var h = 0; h < 24; h++)
        {
            var g = global[h];
            if (g <= 0) continue;
            var i = day * 24 + h;
            var i0 = extraterrestrialWh[i];
            var diffuse = split == DiffuseSplit.Daily
                ? Math.Min(g, dayDiffuse * diffuseShare[i])
                : g * DiffuseFraction.Hourly(i0 > 0 ? g / i0 : 0);
            var beam = Math.Min(g - diffuse, i0);
            var sky = SkyModel.HdkrSky(beam, g - beam, i0, beamRatio[i], cosTilt, horizonTerm, openSky);
            plane[h] = openFraction * sky + g * groundView;
        }
    }

    private void Prepare(int day, double latitudeDegrees, PlaneOrientation plane)
    {
        var delta = SunGeometry.DeclinationRad(day + 1);
        var normal = SunGeometry.SolarConstantWPerM2 * SunGeometry.DistanceFactor(day + 1);
        sunsetRad[day] = SunGeometry.SunsetHourAngleRad(latitudeDegrees, delta);
        dayExtraterrestrialWh[day] = 1000 * SunGeometry.DailyExtraterrestrialKWhPerM2(latitudeDegrees, delta, normal);
        HourlyRatios.DiffuseShares(sunsetRad[day]).CopyTo(diffuseShare, day * 24);
        var zenith = SunGeometry.IncidenceTerms(latitudeDegrees, delta, new PlaneOrientation(0, 180));
        var incidence = SunGeometry.IncidenceTerms(latitudeDegrees, delta, plane);
        var hidden = horizon is null ? null : Hidden(horizon, latitudeDegrees, delta);
        for (var h = 0; h < 24; h++)
        {
            var (up, toPlane, lit) = HourSums(h, zenith, incidence, hidden);
            var i = day * 24 + h;
            extraterrestrialWh[i] = normal * up / StepsPerHour;
            beamRatio[i] = lit > 0 && up / lit > LeastCosZenith ? toPlane / up : 0;
        }
    }

    /// <summary>Steps of a day with the sun below the horizon line.</summary>
    private static bool[] Hidden(HorizonProfile horizon, double latitudeDegrees, double delta) => [.. Enumerable.Range(0, Steps.Length).Select(s =>
    {
        var (zenith, azimuth) = SunGeometry.Position(latitudeDegrees, delta, ((s + 0.5) / StepsPerHour - 12) * Math.PI / 12);
        return 90 - zenith < horizon.ElevationDegreesAt(azimuth);
    })];

    /// <summary>Sums over the daylight steps of an hour of cos(zenith) and, where the sun is not hidden, of cos(incidence) where positive, and the number of daylight steps.</summary>
    private static (double Up, double ToPlane, int Lit) HourSums(
        int hour, (double Constant, double Cosine, double Sine) zenith, (double Constant, double Cosine, double Sine) incidence, bool[]? hidden)
    {
        var (up, toPlane, lit) = (0.0, 0.0, 0);
        for (var s = hour * StepsPerHour; s < (hour + 1) * StepsPerHour; s++)
        {
            var (cos, sin) = Steps[s];
            var z = zenith.Constant + zenith.Cosine * cos;
            if (z <= 0) continue;
            up += z;
            if (hidden is null || !hidden[s]) toPlane += Math.Max(0, incidence.Constant + incidence.Cosine * cos + incidence.Sine * sin);
            lit++;
        }

        return (up, toPlane, lit);
    }
}

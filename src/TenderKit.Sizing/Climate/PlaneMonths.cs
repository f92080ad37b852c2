using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>Mean daily irradiation of one month on a plane by where it comes from, kWh/m2 a day.</summary>
/// <param name="BeamKWhPerM2">From the sun.</param>
/// <param name="SkyKWhPerM2">From the sky.</param>
/// <param name="GroundKWhPerM2">From the ground.</param>
public sealed record PlaneMonth(double BeamKWhPerM2, double SkyKWhPerM2, double GroundKWhPerM2)
{
    /// <summary>All of it.</summary>
    public double TotalKWhPerM2 => BeamKWhPerM2 + SkyKWhPerM2 + GroundKWhPerM2;
}

/// <summary>
/// The twelve months of a climate behind a horizon, ready for any plane: Klein and Theilacker for the open horizon; of its beam the share is cut that, on the
/// mean day, falls on the plane while the sun stands below the line (steps of 5 minutes, weighted by beam and incidence); the uniform sky is cut to
/// <see cref="HorizonProfile.SkyViewFraction"/>; the ground part stays. A level horizon cuts nothing.
/// </summary>
internal sealed class PlaneMonths
{
    private const int StepsPerHour = 12;

    private readonly Month[] months;
    private readonly HorizonProfile? horizon;
    private readonly double latitudeDegrees;

    public PlaneMonths(MonthlyClimate climate, HorizonProfile? horizon)
    {
        this.horizon = horizon is { IsFlat: false } ? horizon : null;
        latitudeDegrees = climate.LatitudeDegrees;
        months = [.. Enumerable.Range(1, 12).Select(m => new Month(climate, m, this.horizon))];
    }

    public ImmutableArray<PlaneMonth> Of(PlaneOrientation plane, double albedo)
    {
        var cosTilt = Angle.CosDegrees(plane.TiltDegrees);
        var sky = horizon?.SkyViewFraction(plane) ?? (1 + cosTilt) / 2;
        return [.. months.Select(m => new PlaneMonth(
            m.GlobalKWhPerM2 * m.BeamRatio(latitudeDegrees, plane),
            m.GlobalKWhPerM2 * m.DiffuseFraction * sky,
            m.GlobalKWhPerM2 * albedo * (1 - cosTilt) / 2))];
    }

    private sealed class Month
    {
        private readonly double delta;
        private readonly (double Cos, double Sin, double Weight, bool Seen)[] steps = [];

        public Month(MonthlyClimate climate, int month, HorizonProfile? horizon)
        {
            delta = SunGeometry.DeclinationRad(SunGeometry.MeanDayOfMonth(month));
            var clearness = SunGeometry.MonthlyClearness(climate.LatitudeDegrees, month, climate.IrradiationKWhPerM2[month - 1]);
            if (double.IsNaN(clearness)) return;
            var ws = SunGeometry.SunsetHourAngleRad(climate.LatitudeDegrees, delta);
            GlobalKWhPerM2 = climate.IrradiationKWhPerM2[month - 1];
            DiffuseFraction = Climate.DiffuseFraction.Monthly(clearness, ws);
            if (horizon is not null) steps = [.. Steps(climate.LatitudeDegrees, ws, horizon)];
        }

        public double GlobalKWhPerM2 { get; }

        public double DiffuseFraction { get; }

        /// <summary>Beam on the plane over global on the horizontal, fraction.</summary>
        public double BeamRatio(double latitudeDegrees, PlaneOrientation plane)
        {
            if (GlobalKWhPerM2 <= 0) return 0;
            var open = KleinTheilacker.WholeBeamRatio(latitudeDegrees, delta, plane, DiffuseFraction);
            if (steps.Length == 0) return open;
            var terms = SunGeometry.IncidenceTerms(latitudeDegrees, delta, plane);
            var (seen, all) = (0.0, 0.0);
            foreach (var step in steps)
            {
                var beam = step.Weight * Math.Max(0, terms.Constant + terms.Cosine * step.Cos + terms.Sine * step.Sin);
                all += beam;
                if (step.Seen) seen += beam;
            }

            return all > 0 ? open * seen / all : open;
        }

        /// <summary>Daylight of the mean day; the weight is beam over cos(zenith), which in Collares-Pereira and Rabl's form has no pole at sunrise.</summary>
        private IEnumerable<(double Cos, double Sin, double Weight, bool Seen)> Steps(double latitudeDegrees, double ws, HorizonProfile horizon)
        {
            var (a, b) = HourlyRatios.GlobalCoefficients(ws);
            for (var i = 0; i < 24 * StepsPerHour; i++)
            {
                var w = ((i + 0.5) / StepsPerHour - 12) * Math.PI / 12;
                if (Math.Abs(w) >= ws) continue;
                var (zenith, azimuth) = SunGeometry.Position(latitudeDegrees, delta, w);
                yield return (Math.Cos(w), Math.Sin(w), Math.Max(0, a + b * Math.Cos(w) - DiffuseFraction), 90 - zenith >= horizon.ElevationDegreesAt(azimuth));
            }
        }
    }
}

using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Disability glare of the worst observer, for new luminaires.</summary>
/// <param name="IncrementFraction">Threshold increment fTI, fraction (0.15 is 15 %).</param>
/// <param name="VeilingCdM2">Veiling luminance of that observer, initial, cd/m2.</param>
/// <param name="BackgroundCdM2">Average luminance of the surface for that observer, initial, cd/m2.</param>
/// <param name="XM">Where he is along the road, m.</param>
/// <param name="YM">Where he is across the road, m.</param>
/// <param name="Against">Whether he looks against x.</param>
public sealed record GlareResult(
    double IncrementFraction, double VeilingCdM2, double BackgroundCdM2, double XM, double YM, bool Against)
{
    /// <summary>The same at another level: veil and background are linear in it, the increment is taken anew.</summary>
    public GlareResult AtLevel(double levelFraction)
    {
        double veiling = VeilingCdM2 * levelFraction, background = BackgroundCdM2 * levelFraction;
        return this with { VeilingCdM2 = veiling, BackgroundCdM2 = background, IncrementFraction = ThresholdIncrement.Fraction(veiling, background) };
    }
}

/// <summary>
/// Threshold increment. Source: EN 13201-3:2015, 8.5; CIE 140:2000, 7.2 (rules from memory): eye 1.5 m up, line of sight one degree down along the
/// lane; the observer starts where the first luminaire stands in a screening plane 20 degrees up and is moved on in the steps of the grid over one
/// spacing; luminaires above that plane do not count, those ahead do up to 500 m. Veil and background are those of NEW luminaires (initial
/// flux), which is the worse state: fTI grows with flux to the power 0.2.
/// Of rows shifted along the road each gives a start of its own; the standard's break-off below 2 % is not used (both on the safe side).
/// </summary>
public static class ThresholdIncrement
{
    private const double EyeHeightM = 1.5;
    private const double ReachM = 500;
    private const double ScreeningDegrees = 20;
    private const double SightDownDegrees = 1;
    private const double GreatestAngleDegrees = 60;

    private const double AgeOfTheStandardYears = 23;

    /// <summary>
    /// fTI = 65 % Lv / L^0.8 for L from 0.05 to 5 cd/m2, above it 95 % Lv / L^1.05. Source: EN 13201-3:2015, 8.5 (first read, second from memory).
    /// Unit: fraction. Check: Lv 0.15, L 1.0 gives 0.0975.
    /// </summary>
    public static double Fraction(double veilingCdM2, double backgroundCdM2)
    {
        Require.NotNegative(veilingCdM2, nameof(veilingCdM2));
        Require.NotNegative(backgroundCdM2, nameof(backgroundCdM2));
        if (veilingCdM2 == 0) return 0;
        return backgroundCdM2 <= 5 ? 0.65 * veilingCdM2 / Math.Pow(backgroundCdM2, 0.8) : 0.95 * veilingCdM2 / Math.Pow(backgroundCdM2, 1.05);
    }

    /// <summary>
    /// Veiling luminance of one luminaire, Lv = 9.86 (1 + (A / 66.4)^4) E / theta^2, cd/m2, E on the eye square to the line of sight, lx; for the
    /// 23 years of the standard that is 10 E / theta^2. Source: EN 13201-3:2015, 8.5 (from memory). Check: E 1 lx at 10 degrees gives 0.100 cd/m2.
    /// </summary>
    /// <param name="illuminanceLx">Illuminance at the eye, lx.</param>
    /// <param name="angleDegrees">Angle between the line of sight and the luminaire, degrees, above 0.</param>
    /// <param name="ageYears">Age of the observer, years, 15 to 90.</param>
    public static double VeilingCdM2(double illuminanceLx, double angleDegrees, double ageYears = AgeOfTheStandardYears)
    {
        Require.Positive(angleDegrees, nameof(angleDegrees));
        var age = Require.InRange(ageYears, 15, 90, nameof(ageYears)) / 66.4;
        return 9.86 * (1 + (age * age * age * age)) * illuminanceLx / (angleDegrees * angleDegrees);
    }

    /// <summary>The worst place along one line of travel.</summary>
    /// <param name="yM">Line of travel across the road, m.</param>
    /// <param name="backgroundCdM2">Initial average luminance for this observer.</param>
    internal static GlareResult Walk(RoadField field, double yM, double backgroundCdM2, bool against)
    {
        var steps = RoadGrid.PointsAlong(field.SpacingM);
        double worst = -1, worstX = 0;
        foreach (var start in Starts(field, against))
        {
            for (var i = 0; i < steps; i++)
            {
                var x = start + ((against ? -i : i) * field.SpacingM / steps);
                var veiling = AtEye(field, x, yM, against);
                if (veiling > worst) (worst, worstX) = (veiling, x);
            }
        }

        return new GlareResult(Fraction(worst, backgroundCdM2), worst, backgroundCdM2, worstX, yM, against);
    }

    private static IEnumerable<double> Starts(RoadField field, bool against) => field.Rows
        .Select(r => (r.Row.OffsetFraction * field.SpacingM) - ((against ? -1 : 1) * ScreenedM(r.Row)))
        .Distinct();

    private static double ScreenedM(in LuminaireRow row) => Math.Max(0, row.HeightM - EyeHeightM) / Angle.TanDegrees(ScreeningDegrees);

    private static double AtEye(RoadField field, double x, double y, bool against)
    {
        var sum = 0.0;
        foreach (var (mounting, row) in field.Rows)
        {
            var nearestM = ScreenedM(row);
            var (first, last) = against ? field.Between(row, x - ReachM, x - nearestM) : field.Between(row, x + nearestM, x + ReachM);
            for (var k = first; k <= last; k++) sum += OfLuminaire(field, mounting, row, field.XOf(row, k) - x, row.YM - y, against);
        }

        return sum;
    }

    private static double OfLuminaire(RoadField field, in Mounting mounting, in LuminaireRow row, double dx, double dy, bool against)
    {
        var rise = row.HeightM - EyeHeightM;
        var squared = (dx * dx) + (dy * dy) + (rise * rise);
        var aheadM = against ? -dx : dx;
        var cos = ((aheadM * Angle.CosDegrees(SightDownDegrees)) - (rise * Angle.SinDegrees(SightDownDegrees))) / Math.Sqrt(squared);
        var angle = Angle.ToDegrees(Math.Acos(Math.Clamp(cos, -1, 1)));
        if (angle is <= 0 or > GreatestAngleDegrees) return 0;
        return VeilingCdM2(field.IntensityCd(mounting, -dx, -dy, rise) * cos / squared, angle);
    }
}

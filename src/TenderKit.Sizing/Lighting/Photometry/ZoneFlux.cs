namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Flux of a luminaire by zone. Source: IES TM-15-11, luminaire classification system for outdoor luminaires (zones from memory): forward
/// (C 0 to 180 here, the street side) and back, each low (gamma 0 to 30 degrees), medium (30 to 60), high (60 to 80) and very high (80 to
/// 90); uplight low (90 to 100) and high (100 to 180). Check: Lambertian 1000 lm has 125 lm in either low zone (sin^2 30 = 0.25).
/// </summary>
public sealed record ZoneFlux(
    double ForwardLowLm,
    double ForwardMediumLm,
    double ForwardHighLm,
    double ForwardVeryHighLm,
    double BackLowLm,
    double BackMediumLm,
    double BackHighLm,
    double BackVeryHighLm,
    double UplightLowLm,
    double UplightHighLm)
{
    public double TotalLm =>
        ForwardLowLm + ForwardMediumLm + ForwardHighLm + ForwardVeryHighLm + BackLowLm + BackMediumLm + BackHighLm + BackVeryHighLm + UplightLowLm + UplightHighLm;

    /// <summary>Zones by the exact integral of the bilinear surface.</summary>
    public static ZoneFlux Of(LightDistribution distribution)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        double Forward(double from, double to) => distribution.FluxWithinLm(0, 180, from, to);
        double Back(double from, double to) => distribution.FluxWithinLm(180, 360, from, to);
        return new ZoneFlux(
            Forward(0, 30), Forward(30, 60), Forward(60, 80), Forward(80, 90),
            Back(0, 30), Back(30, 60), Back(60, 80), Back(80, 90),
            distribution.FluxWithinLm(0, 360, 90, 100), distribution.FluxWithinLm(0, 360, 100, 180));
    }
}

/// <summary>
/// Backlight, uplight and glare rating, 0 (least light) to 5 each. Source: IES TM-15-11, addendum A, tables; every limit is from
/// memory. Check: a luminaire of relative photometry whose file states B2 U0 G2 rates so.
/// </summary>
/// <param name="Backlight">B, by the back zones low, medium and high.</param>
/// <param name="Uplight">U, by the zones above the horizontal.</param>
/// <param name="Glare">G, by the high and very high zones.</param>
public sealed record ZoneRating(int Backlight, int Uplight, int Glare)
{
    /// <summary>Rounding of a file's intensities must not make an uplight of nothing: under this it counts as none. Our choice, no source.</summary>
    private const double NothingLm = 0.05;

    private static ReadOnlySpan<double> BackHighLm => [110, 500, 1000, 2500, 5000];

    private static ReadOnlySpan<double> BackMediumLm => [220, 1000, 2500, 5000, 8500];

    private static ReadOnlySpan<double> BackLowLm => [110, 500, 1000, 2500, 5000];

    private static ReadOnlySpan<double> UplightLm => [0, 10, 50, 500, 1000];

    private static ReadOnlySpan<double> VeryHighLm => [10, 100, 225, 500, 750];

    private static ReadOnlySpan<double> ForwardHighLm => [660, 1800, 5000, 7500, 12000];

    /// <param name="isSymmetric">The same all round or in four quadrants: the back high zone then counts for glare as the forward one does.</param>
    public static ZoneRating Of(ZoneFlux zones, bool isSymmetric)
    {
        ArgumentNullException.ThrowIfNull(zones);
        var backlight = Math.Max(Step(zones.BackHighLm, BackHighLm), Math.Max(Step(zones.BackMediumLm, BackMediumLm), Step(zones.BackLowLm, BackLowLm)));
        var uplight = Math.Max(Step(zones.UplightLowLm, UplightLm), Step(zones.UplightHighLm, UplightLm));
        var glare = Math.Max(Step(zones.ForwardVeryHighLm, VeryHighLm), Step(zones.BackVeryHighLm, VeryHighLm));
        glare = Math.Max(glare, Step(zones.ForwardHighLm, ForwardHighLm));
        glare = Math.Max(glare, Step(zones.BackHighLm, isSymmetric ? ForwardHighLm : BackHighLm));
        return new ZoneRating(backlight, uplight, glare);
    }

    /// <summary>As printed, e.g. "B2 U0 G2".</summary>
    public override string ToString() => FormattableString.Invariant($"B{Backlight} U{Uplight} G{Glare}");

    private static int Step(double lm, ReadOnlySpan<double> limitsLm)
    {
        var step = 0;
        while (step < limitsLm.Length && lm > limitsLm[step] + NothingLm) step++;
        return step;
    }
}

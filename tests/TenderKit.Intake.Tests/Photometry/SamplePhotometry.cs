using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Tests.Photometry;

/// <summary>
/// The optics of the sample catalogue: one smooth formula, invented. With X = tan(gamma) along the road and Y = tan(gamma) towards the
/// street, in mounting heights, the intensity is proportional to cos(gamma)^-q / ((1 + |X/a|^p) (1 + |(Y - y0)/b|^4)): rising outwards as
/// even light on the ground asks for, and cut off softly at X = a and Y = y0 +- b.
/// </summary>
/// <param name="Words">What it is for.</param>
/// <param name="Rise">q, how fast intensity rises outwards; 3 would be equal light on the ground.</param>
/// <param name="AlongHeights">a, where the light ends along the road, mounting heights.</param>
/// <param name="AlongPower">p, how sharply it ends.</param>
/// <param name="AcrossHeights">b, half the lit depth, mounting heights.</param>
/// <param name="CentreHeights">y0, middle of the lit depth on the street side, mounting heights.</param>
internal sealed record SampleOptic(string Words, double Rise, double AlongHeights, double AlongPower, double AcrossHeights, double CentreHeights)
{
    public double Relative(double planeDegrees, double gammaDegrees)
    {
        if (gammaDegrees >= 90) return 0;
        var gamma = gammaDegrees * Math.PI / 180;
        var plane = planeDegrees * Math.PI / 180;
        double x = Math.Tan(gamma) * Math.Cos(plane), y = Math.Tan(gamma) * Math.Sin(plane);
        return Math.Pow(Math.Cos(gamma), -Rise)
            / ((1 + Math.Pow(Math.Abs(x / AlongHeights), AlongPower)) * (1 + Math.Pow(Math.Abs((y - CentreHeights) / AcrossHeights), 4)));
    }
}

/// <summary>One sample luminaire's file.</summary>
/// <param name="LampFluxLm">Lamp flux of relative photometry, or null for absolute.</param>
internal sealed record SampleLuminaire(string Code, string Description, SampleOptic Optic, double FluxLm, double PowerW, double? LampFluxLm)
{
    public string FileName => Code + ".ies";
}

/// <summary>Writes the photometric files of the sample catalogue.</summary>
internal static class SamplePhotometry
{
    private const double PlaneStepDegrees = 10;
    private const double GammaStepDegrees = 2.5;
    private const int ValuesPerLine = 10;

    private static readonly SampleOptic Path = new("path, long and narrow", 1.6, 2.15, 6, 0.85, 0.25);
    private static readonly SampleOptic Road = new("road, wide along, shallow across", 1.7, 2.2, 6, 0.95, 0.5);
    private static readonly SampleOptic DeepRoad = new("road, wide along, deeper across", 1.7, 2.05, 6, 1.2, 0.75);
    private static readonly SampleOptic Area = new("area, forward throw", 1.5, 1.6, 6, 1.5, 1.0);
    private static readonly SampleOptic Backward = new("plain cover, more light behind than ahead", 0.6, 1.2, 4, 1.1, -0.4);

    public static ImmutableArray<SampleLuminaire> All { get; } =
    [
        new("LUM-A30-40", "area luminaire 30 W 4000 K", Area, 4800, 30, null),
        new("LUM-A40-40", "area luminaire 40 W 4000 K", Area, 6400, 40, null),
        new("LUM-A60-40", "area luminaire 60 W 4000 K", Area, 9600, 60, null),
        new("LUM-B30-40", "luminaire with plain cover 30 W 4000 K", Backward, 4200, 30, 4750),
        new("LUM-P08-30", "path luminaire 8 W 3000 K", Path, 1120, 8, null),
        new("LUM-P15-40", "path luminaire 15 W 4000 K", Path, 2250, 15, null),
        new("LUM-P20-40", "path luminaire 20 W 4000 K", Path, 3100, 20, 3480),
        new("LUM-R15-40", "road luminaire 15 W 4000 K", Road, 2400, 15, null),
        new("LUM-R20-40", "road luminaire 20 W 4000 K", Road, 3300, 20, null),
        new("LUM-R30-30", "road luminaire 30 W 3000 K", Road, 4500, 30, null),
        new("LUM-R30-40", "road luminaire 30 W 4000 K", Road, 4950, 30, null),
        new("LUM-R30-40C", "road luminaire 30 W 4000 K, coated for the coast", Road, 4950, 30, null),
        new("LUM-R40-40", "road luminaire 40 W 4000 K", DeepRoad, 6800, 40, null),
        new("LUM-R40-40S", "road luminaire 40 W 4000 K, made to order", DeepRoad, 6800, 40, null),
        new("LUM-R50-40", "road luminaire 50 W 4000 K", DeepRoad, 8250, 50, null),
        new("LUM-R60-40", "road luminaire 60 W 4000 K", DeepRoad, 10200, 60, null),
        new("LUM-R80-40", "road luminaire 80 W 4000 K", DeepRoad, 13600, 80, null),
        .. new (int PowerW, double FluxLm)[] { (8, 1200), (10, 1550), (12, 1860) }.Select(u => Unit(u.PowerW, u.FluxLm, Path)),
        .. new (int PowerW, double FluxLm)[] { (15, 2400), (20, 3200), (25, 4000), (30, 4800) }.Select(u => Unit(u.PowerW, u.FluxLm, Road)),
        .. new (int PowerW, double FluxLm)[] { (40, 6400), (50, 8000), (60, 9600), (80, 12800) }.Select(u => Unit(u.PowerW, u.FluxLm, DeepRoad)),
        new("INT-120X", "integrated unit sold as 120 W", Road, 1800, 120, null),
    ];

    private static SampleLuminaire Unit(int powerW, double fluxLm, SampleOptic optic) =>
        new(FormattableString.Invariant($"INT-{powerW:00}"), FormattableString.Invariant($"integrated unit {powerW} W 4000 K"), optic, fluxLm, powerW, null);

    /// <summary>An LM-63-2002 file: angle 0 is the street side, left and right equal.</summary>
    public static string Text(SampleLuminaire luminaire)
    {
        var planes = Steps(180, PlaneStepDegrees);
        var gammas = Steps(90, GammaStepDegrees);
        var factor = luminaire.FluxLm / TableFluxLm(luminaire.Optic);
        var text = new StringBuilder();
        text.Append("IESNA:LM-63-2002\n");
        text.Append("[TEST] calculated from a formula, not measured\n");
        text.Append("[TESTLAB] none\n[ISSUEDATE] 01-JUN-2026\n[MANUFAC] sample catalogue\n");
        text.Append(CultureInfo.InvariantCulture, $"[LUMCAT] {luminaire.Code}\n[LUMINAIRE] {luminaire.Description}\n[MORE] {luminaire.Optic.Words}\n");
        text.Append("TILT=NONE\n");
        text.Append(CultureInfo.InvariantCulture, $"1 {luminaire.LampFluxLm ?? -1} 1 {gammas.Length} {planes.Length} 1 2 0.20 0.30 0\n");
        text.Append(CultureInfo.InvariantCulture, $"1 1 {luminaire.PowerW}\n");
        AppendLines(text, gammas, "0.#");
        AppendLines(text, planes, "0.#");
        foreach (var plane in planes) AppendLines(text, [.. gammas.Select(g => factor * luminaire.Optic.Relative(plane + 90, g))], "0.0");
        return text.ToString();
    }

    private static double TableFluxLm(SampleOptic optic)
    {
        var planes = Steps(360, PlaneStepDegrees);
        var gammas = Steps(90, GammaStepDegrees);
        return new LightDistribution(planes, gammas, [.. planes.SelectMany(c => gammas.Select(g => optic.Relative(c, g)))], null, null).FluxLm;
    }

    private static ImmutableArray<double> Steps(double last, double step) => [.. Enumerable.Range(0, (int)(last / step) + 1).Select(i => i * step)];

    private static void AppendLines(StringBuilder text, ImmutableArray<double> values, string format)
    {
        for (var i = 0; i < values.Length; i += ValuesPerLine)
        {
            var line = values.Skip(i).Take(ValuesPerLine).Select(v => v.ToString(format, CultureInfo.InvariantCulture));
            text.AppendJoin(' ', line).Append('\n');
        }
    }
}

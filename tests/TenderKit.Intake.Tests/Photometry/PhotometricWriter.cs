using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Tests.Photometry;

/// <summary>A distribution by formula, and how a file may shorten it.</summary>
/// <param name="Name">For the test's name.</param>
/// <param name="IntensityCd">Candela by C and gamma, degrees.</param>
/// <param name="StepC">Step of the C planes, degrees.</param>
/// <param name="Gammas">Gamma angles.</param>
/// <param name="Lm63Last">Last horizontal angle written: 0, 180 or 360.</param>
/// <param name="Isym">EULUMDAT symmetry indicator.</param>
internal sealed record FormulaLight(
    string Name, Func<double, double, double> IntensityCd, double StepC, ImmutableArray<double> Gammas, double Lm63Last, int Isym)
{
    private const double Degree = Math.PI / 180;

    public static ImmutableArray<FormulaLight> All { get; } =
    [
        new("asymmetric", (c, g) => 900 * Math.Cos(g * Degree) * (1.2 + (0.7 * Math.Sin(c * Degree)) + (0.3 * Math.Cos((c - 10) * Degree))), 15, Steps(90, 5), 360, 0),
        new("left and right equal", (c, g) => 500 * Math.Pow(Math.Cos(g * Degree), 0.5) * (1 + (0.8 * Math.Sin(c * Degree))), 10, Steps(90, 2.5), 180, 3),
        new("the same all round, light upward too", (_, g) => 40 + (g < 70 ? 2 * g : 140 * (180 - g) / 110), 90, [0, 3, 10, 45, 70, 75.5, 90, 120, 180], 0, 1),
    ];

    public LightDistribution Distribution
    {
        get
        {
            var planes = Steps(360, StepC);
            return new LightDistribution(planes, Gammas, [.. planes.SelectMany(c => Gammas.Select(g => At(c, g)))], null, null);
        }
    }

    /// <summary>An LM-63-2002 file of absolute photometry; its horizontal angles start at the street side, C 90.</summary>
    public string Lm63()
    {
        var angles = Lm63Last == 0 ? [0] : Steps(Lm63Last, StepC);
        var text = new StringBuilder();
        text.Append("IESNA:LM-63-2002\n[TEST] formula\n[LUMINAIRE] ").Append(Name).Append("\nTILT=NONE\n");
        text.Append(CultureInfo.InvariantCulture, $"1 -1 1 {Gammas.Length} {angles.Length} 1 2 0.2 0.3 0\n1 1 25\n");
        text.AppendJoin(' ', Gammas.Select(Words)).Append('\n').AppendJoin(' ', angles.Select(Words)).Append('\n');
        foreach (var angle in angles) text.AppendJoin(' ', Gammas.Select(g => Words(At(angle + 90, g)))).Append('\n');
        return text.ToString();
    }

    /// <summary>A EULUMDAT file, candela per 1000 lm.</summary>
    public string Eulumdat()
    {
        var (flux, all) = (Distribution.FluxLm, Steps(360 - StepC, StepC));
        ImmutableArray<double> written = Isym switch { 1 => [0], 3 => [.. Steps(180, StepC).Select(a => (a + 270) % 360)], _ => all };
        string[] head =
        [
            "formula", "2", Words(Isym), Words(all.Length), Words(StepC), Words(Gammas.Length), "0", "r", Name, "n", "f.ldt", "2026",
            "300", "200", "80", "300", "200", "0", "0", "0", "0", "100", "0", "1", "0", "1", "1", "LED", Words(flux), "4000", "70", "25",
        ];
        var values = written.SelectMany(c => Gammas.Select(g => At(c, g) * 1000 / flux));
        return string.Join("\r\n", [.. head, .. Enumerable.Repeat("0.5", 10), .. all.Select(Words), .. Gammas.Select(Words), .. values.Select(Words)]);
    }

    public static ImmutableArray<double> Steps(double last, double step) => [.. Enumerable.Range(0, (int)Math.Round(last / step) + 1).Select(i => i * step)];

    private static string Words(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Words(int value) => value.ToString(CultureInfo.InvariantCulture);

    private double At(double c, double g) => Math.Max(0, IntensityCd(c % 360, g));
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// How a dry road surface turns light into luminance for a driver looking one degree down: reduced luminance coefficients r over tan(gamma),
/// gamma the angle of incidence from the vertical, and beta, the angle in plan between the line of sight beyond the point and the direction
/// from the point to the luminaire. Source: CIE 144:2001; EN 13201-3:2015, clause 5.3 (clause from memory).
/// </summary>
public sealed class RoadSurface
{
    private const double TableScale = 1e-4;

    /// <summary>Surfaces of the R, N, C and W systems known by name but without a table here.</summary>
    private static readonly ImmutableArray<string> NamesWithoutTable =
        ["R1", "R2", "R4", "N1", "N2", "N3", "N4", "C1", "C2", "W1", "W2", "W3", "W4"];

    private readonly AngleAxis tangents;
    private readonly AngleAxis betas;
    private readonly double[] coefficients;

    private RoadSurface(string name, AngleAxis tangents, AngleAxis betas, double[] coefficients)
    {
        (Name, this.tangents, this.betas, this.coefficients) = (name, tangents, betas, coefficients);
        AverageCoefficient = MeanCoefficient();
        S1 = Coefficient(2, 0) / Coefficient(0, 0);
        S2 = AverageCoefficient / Coefficient(0, 0);
    }

    /// <summary>Surface R3, the usual bituminous surface: Q0 0.07, S1 1.11, S2 2.38 by the standard.</summary>
    public static RoadSurface R3 { get; } = Read("R3", RoadSurfaceTables.R3).Value!;

    public string Name { get; }

    /// <summary>
    /// Q0, cd/m2 per lx: the luminance coefficient q = r / cos^3(gamma) averaged over the solid angle of the directions the table covers (cells
    /// with a value). Source: CIE 144:2001 (CIE 66), definition of the average luminance coefficient; the bounds of the solid angle are ours.
    /// Check: R3 gives 0.0699; the standard prints 0.07.
    /// </summary>
    public double AverageCoefficient { get; }

    /// <summary>Specular factor S1 = r(tan 2, beta 0) / r(0, 0). Source: CIE 144:2001. Check: R3 gives 1.109; the standard prints 1.11.</summary>
    public double S1 { get; }

    /// <summary>Specular factor S2 = Q0 / r(0, 0). Source: CIE 144:2001. Check: R3 gives 2.377; the standard prints 2.38.</summary>
    public double S2 { get; }

    /// <summary>A surface by name. Any but R3 is refused: a table without proof by its own integrals is worth less than none.</summary>
    /// <returns>The surface, or diagnostic TK240.</returns>
    public static Outcome<RoadSurface> Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var plain = string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();
        if (plain == "R3") return Outcome.Of(R3);
        var reason = NamesWithoutTable.Contains(plain)
            ? "a standard surface, but no table is held whose integrals prove it"
            : "not the name of a standard surface";
        return Outcome.None<RoadSurface>(Diagnostic.Error("TK240", $"road surface {name.Trim()}: {reason}; use R3 or give a file with the table"));
    }

    /// <summary>
    /// A surface from text: lines of # are comments, then a heading <c>tan_gamma,0,2,...,180</c> of beta in degrees, then one row per tangent from
    /// 0 up, values r x 10^4, blank for zero. Anything else is diagnostic TK241.
    /// </summary>
    public static Outcome<RoadSurface> Read(string name, string text, Place? place = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        var rows = text.ReplaceLineEndings("\n").Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(',')).ToList();
        try
        {
            return Outcome.Of(FromRows(name, rows));
        }
        catch (Exception e) when (e is FormatException or ArgumentException or OverflowException)
        {
            var what = $"road surface {name}: the table is not one of tan(gamma) by beta 0 to 180 degrees ({e.Message}); correct the file";
            return Outcome.None<RoadSurface>(Diagnostic.Error("TK241", what, place));
        }
    }

    /// <summary>The same shape of reflection at another brightness, every r multiplied. Source: CIE 144:2001, scaling by Q0.</summary>
    /// <param name="averageCoefficient">Q0 wanted, cd/m2 per lx, 0.02 to 0.2.</param>
    public RoadSurface WithAverageCoefficient(double averageCoefficient)
    {
        var factor = Require.InRange(averageCoefficient, 0.02, 0.2, nameof(averageCoefficient)) / AverageCoefficient;
        return new RoadSurface(Name, tangents, betas, [.. coefficients.Select(r => r * factor)]);
    }

    /// <summary>
    /// Reduced luminance coefficient r, cd/m2 per lx, linear in tan(gamma) and in beta; zero beyond the table. Source: EN 13201-3:2015, clause 5.3,
    /// linear interpolation in the r-table (from memory). The standard describes a quadratic one as well; it is not used: near the blanks it goes below
    /// zero. On whole roads with R3 it gave 0.6 to 1.7 % less average luminance (recomputed). Check: R3 at tan 2, beta 0: 0.0326.
    /// </summary>
    /// <param name="tangent">Tangent of the angle of incidence, 0 or more.</param>
    /// <param name="betaDegrees">Beta, degrees, 0 to 180.</param>
    public double Coefficient(double tangent, double betaDegrees)
    {
        if (tangent > tangents.Last) return 0;
        var row = tangents.Cell(Math.Max(tangent, 0), out var u);
        var column = betas.Cell(Math.Clamp(betaDegrees, 0, 180), out var v);
        var near = (row * betas.Count) + column;
        var far = near + betas.Count;
        var atNear = coefficients[near] + (v * (coefficients[near + 1] - coefficients[near]));
        var atFar = coefficients[far] + (v * (coefficients[far + 1] - coefficients[far]));
        return atNear + (u * (atFar - atNear));
    }

    private static RoadSurface FromRows(string name, List<string[]> rows)
    {
        if (rows.Count < 3) throw new FormatException("fewer than three lines");
        var betas = new AngleAxis(rows[0].Skip(1).Select(Number), "beta");
        if (betas.Last != 180) throw new FormatException("the last beta is not 180");
        if (rows.FirstOrDefault(r => r.Length != betas.Count + 1) is { } odd) throw new FormatException($"row {odd[0]} has not {betas.Count} values");
        var tangents = new AngleAxis(rows.Skip(1).Select(r => Number(r[0])), "tan_gamma");
        var values = rows.Skip(1).SelectMany(r => r.Skip(1)).Select(v => Require.NotNegative(v.Length == 0 ? 0 : Number(v), "r") * TableScale).ToArray();
        if (values[0] == 0) throw new FormatException("r at 0, 0 is zero");
        return new RoadSurface(name, tangents, betas, values);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>With t = tan(gamma): q dOmega = r t dt dbeta and dOmega = t (1 + t^2)^-1.5 dt dbeta; both exact for the bilinear surface.</summary>
    private double MeanCoefficient()
    {
        double reflected = 0, solidAngle = 0;
        for (var i = 0; i + 1 < tangents.Count; i++)
        {
            for (var j = 0; j + 1 < betas.Count; j++)
            {
                var (share, angle) = OverCell(i, j);
                reflected += share;
                solidAngle += angle;
            }
        }

        return reflected / solidAngle;
    }

    private (double Reflected, double SolidAngle) OverCell(int i, int j)
    {
        double t0 = tangents.Degrees[i], t1 = tangents.Degrees[i + 1];
        var near = (i * betas.Count) + j;
        var r0 = (coefficients[near] + coefficients[near + 1]) / 2;
        var r1 = (coefficients[near + betas.Count] + coefficients[near + betas.Count + 1]) / 2;
        if (r0 + r1 == 0) return (0, 0);
        var turn = Angle.ToRad(betas.Degrees[j + 1] - betas.Degrees[j]);
        var reflected = turn * (t1 - t0) / 6 * ((r0 * t0) + ((r0 + r1) * (t0 + t1)) + (r1 * t1));
        return (reflected, turn * ((1 / Math.Sqrt(1 + (t0 * t0))) - (1 / Math.Sqrt(1 + (t1 * t1)))));
    }
}

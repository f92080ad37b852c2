namespace TenderKit.Sizing.Lighting;

/// <summary>
/// The same bilinear surface as the distribution's own, on axes of equal steps, so that a direction finds its cell by one multiplication.
/// The step is the greatest that meets every listed angle (to 0.001 degree), so no corner of the surface is lost: the table is exact, not
/// resampled. Axes that share no such step, or need too many cells, have no table.
/// </summary>
internal sealed class IntensityTable
{
    private const double PerDegree = 1000;
    private const double Tolerance = 1e-9;
    private const int MostCells = 1 << 18;

    private IntensityTable(double[] values, int planes, int gammas, double lastGammaDegrees)
    {
        Values = values;
        Planes = planes;
        Gammas = gammas;
        PlaneCellsPerRad = (planes - 1) / (2 * Math.PI);
        GammaCellsPerRad = (gammas - 1) / lastGammaDegrees * (180 / Math.PI);
    }

    /// <summary>Intensities, cd, plane by plane.</summary>
    public double[] Values { get; }

    public int Planes { get; }

    public int Gammas { get; }

    public double PlaneCellsPerRad { get; }

    public double GammaCellsPerRad { get; }

    /// <summary>The table of a distribution, or null when its angles share no step that is coarse enough.</summary>
    public static IntensityTable? Of(LightDistribution distribution)
    {
        var (planes, gammas) = (CellsOf(distribution.PlanesDegrees), CellsOf(distribution.GammasDegrees));
        if (planes == 0 || gammas == 0 || (long)(planes + 1) * (gammas + 1) > MostCells) return null;
        var last = distribution.GammasDegrees[^1];
        var values = new double[(planes + 1) * (gammas + 1)];
        for (var p = 0; p <= planes; p++)
        {
            for (var g = 0; g <= gammas; g++)
            {
                values[(p * (gammas + 1)) + g] = distribution.IntensityCd(360.0 * p / planes, last * g / gammas);
            }
        }

        return new IntensityTable(values, planes + 1, gammas + 1, last);
    }

    /// <summary>Cells of the coarsest equal steps that meet every angle, or 0.</summary>
    private static int CellsOf(ReadOnlySpan<double> degrees)
    {
        long common = 0;
        foreach (var angle in degrees)
        {
            var units = Math.Round(angle * PerDegree);
            if (Math.Abs((angle * PerDegree) - units) > Tolerance * PerDegree) return 0;
            common = GreatestCommonDivisor(common, (long)units);
        }

        return (int)Math.Min(MostCells, Math.Round(degrees[^1] * PerDegree) / common);
    }

    private static long GreatestCommonDivisor(long a, long b)
    {
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }
}

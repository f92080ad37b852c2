using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Dirt in the air round a luminaire, as CIE 154 sorts it.</summary>
public enum Pollution
{
    Low,
    Medium,
    High,
}

/// <summary>Maintenance factor: what is left of the light at the date of maintenance.</summary>
public static class Maintenance
{
    private static readonly double[] CleaningYears = [1.0, 1.5, 2.0, 2.5, 3.0];

    /// <summary>MF = LLMF x LSF x LMF. Source: CIE 154:2003. Check: 0.98 x 0.95 x 0.90 = 0.8379.</summary>
    /// <param name="lumenFraction">Lamp lumen maintenance (LLMF), 0 to 1.</param>
    /// <param name="survivalFraction">Lamp survival (LSF), 0 to 1; 1 where failed luminaires are replaced at once.</param>
    /// <param name="dirtFraction">Luminaire maintenance (LMF), 0 to 1.</param>
    public static double Factor(double lumenFraction, double survivalFraction, double dirtFraction) =>
        Require.InRange(lumenFraction, 0, 1, nameof(lumenFraction))
        * Require.InRange(survivalFraction, 0, 1, nameof(survivalFraction))
        * Require.InRange(dirtFraction, 0, 1, nameof(dirtFraction));

    /// <summary>
    /// Lumen maintenance of a LED from its rated life to 80 %: LLMF = 0.80^(hours / L80). Source: exponential decay as in IES TM-21
    /// (from memory). Valid: up to twice L80. Check: 50,000 h at L80 100,000 h gives 0.894.
    /// </summary>
    /// <param name="hours">Burning hours at the date of maintenance, h.</param>
    /// <param name="lifeL80H">Rated life to 80 % of the first flux, h.</param>
    public static double LumenFraction(double hours, double lifeL80H)
    {
        Require.Positive(lifeL80H, nameof(lifeL80H));
        Require.InRange(hours, 0, 2 * lifeL80H, nameof(hours));
        return Math.Pow(0.80, hours / lifeL80H);
    }

    /// <summary>
    /// Luminaire maintenance (LMF) by ingress protection, pollution and cleaning interval, linear between the years of the table. Source:
    /// CIE 154:2003; 1 and 3 years read, but for IP6X at medium pollution, which with all years between is from memory. A shorter interval
    /// than one year counts as one. Check: IP5X, high, 3 years: 0.76.
    /// </summary>
    /// <param name="ipCode">Ingress protection, 20 to 69; the first figure counts: 2 to 4 read as IP2X, 5, 6.</param>
    /// <param name="pollution">Dirt in the air.</param>
    /// <param name="cleaningYears">Cleaning interval, years, above 0 to 3.</param>
    public static double DirtFraction(int ipCode, Pollution pollution, double cleaningYears)
    {
        Require.InRange(ipCode, 20, 69, nameof(ipCode));
        Require.Positive(cleaningYears, nameof(cleaningYears));
        Require.InRange(cleaningYears, 0, CleaningYears[^1], nameof(cleaningYears));
        var row = Row(ipCode / 10, pollution);
        var place = Math.Max(0, (cleaningYears - CleaningYears[0]) / 0.5);
        var i = Math.Min((int)place, row.Length - 2);
        return row[i] + ((place - i) * (row[i + 1] - row[i]));
    }

    private static double[] Row(int firstFigure, Pollution pollution) => (firstFigure, pollution) switch
    {
        (6, Pollution.High) => [0.91, 0.90, 0.88, 0.85, 0.83],
        (6, Pollution.Medium) => [0.92, 0.91, 0.89, 0.88, 0.87],
        (6, _) => [0.93, 0.92, 0.91, 0.90, 0.90],
        (5, Pollution.High) => [0.89, 0.87, 0.84, 0.80, 0.76],
        (5, Pollution.Medium) => [0.90, 0.88, 0.86, 0.84, 0.82],
        (5, _) => [0.92, 0.91, 0.90, 0.89, 0.88],
        (_, Pollution.High) => [0.53, 0.48, 0.45, 0.43, 0.42],
        (_, Pollution.Medium) => [0.62, 0.58, 0.56, 0.54, 0.53],
        _ => [0.82, 0.80, 0.79, 0.78, 0.78],
    };
}

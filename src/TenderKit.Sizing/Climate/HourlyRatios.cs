namespace TenderKit.Sizing.Climate;

/// <summary>Share of a day's irradiation that falls in an hour: global by Collares-Pereira and Rabl (1979), diffuse by Liu and Jordan (1960). D&amp;B eq. 2.13.2 and 2.13.4.</summary>
public static class HourlyRatios
{
    /// <summary>a and b of Collares-Pereira and Rabl (D&amp;B eq. 2.13.2b and c).</summary>
    public static (double A, double B) GlobalCoefficients(double sunsetHourAngleRad)
    {
        var s = Math.Sin(sunsetHourAngleRad - Math.PI / 3);
        return (0.409 + 0.5016 * s, 0.6609 - 0.4767 * s);
    }

    /// <summary>rt at an hour angle: hourly over daily global irradiation, fraction. Check value: 38 S in January, 8 to 9 h gives 0.076 (D&amp;B example 2.13.1).</summary>
    public static double Global(double hourAngleRad, double sunsetHourAngleRad)
    {
        var (a, b) = GlobalCoefficients(sunsetHourAngleRad);
        return (a + b * Math.Cos(hourAngleRad)) * Diffuse(hourAngleRad, sunsetHourAngleRad);
    }

    /// <summary>
    /// What rt adds up to over a day: a + b (ws - sin ws cos ws) / (2 (sin ws - ws cos ws)), from D&amp;B eq. 2.13.2 integrated from sunrise to sunset. Check value: 43 N on 17 January gives 0.9953.
    /// </summary>
    public static double GlobalIntegral(double sunsetHourAngleRad)
    {
        var (a, b) = GlobalCoefficients(sunsetHourAngleRad);
        var (sin, cos) = (Math.Sin(sunsetHourAngleRad), Math.Cos(sunsetHourAngleRad));
        return a + b * (sunsetHourAngleRad - sin * cos) / (2 * (sin - sunsetHourAngleRad * cos));
    }

    /// <summary>rd at an hour angle: hourly over daily diffuse irradiation, fraction; 0 with the sun down.</summary>
    public static double Diffuse(double hourAngleRad, double sunsetHourAngleRad)
    {
        if (Math.Abs(hourAngleRad) >= sunsetHourAngleRad) return 0;
        var cosine = Math.Cos(sunsetHourAngleRad);
        return Math.PI / 24 * (Math.Cos(hourAngleRad) - cosine) / (Math.Sin(sunsetHourAngleRad) - sunsetHourAngleRad * cosine);
    }

    /// <summary>
    /// rt of the 24 solar hours, each integrated over its daylight part in closed form and the whole scaled to add up to 1
    /// (unscaled, rt adds up to 0.991 to 1.003). All zero when the sun does not rise.
    /// </summary>
    public static double[] GlobalShares(double sunsetHourAngleRad)
    {
        var (a, b) = GlobalCoefficients(sunsetHourAngleRad);
        return Shares(a, b, sunsetHourAngleRad);
    }

    /// <summary>rd of the 24 solar hours, made like <see cref="GlobalShares"/>.</summary>
    public static double[] DiffuseShares(double sunsetHourAngleRad) => Shares(1, 0, sunsetHourAngleRad);

    private static double[] Shares(double a, double b, double ws)
    {
        var shares = new double[24];
        if (ws < 1e-3) return shares;
        var sum = 0.0;
        for (var h = 0; h < 24; h++)
        {
            var from = Math.Clamp((h - 12) * Math.PI / 12, -ws, ws);
            var to = Math.Clamp((h - 11) * Math.PI / 12, -ws, ws);
            shares[h] = to > from ? Integral(a, b, ws, to) - Integral(a, b, ws, from) : 0;
            sum += shares[h];
        }

        for (var h = 0; h < 24; h++) shares[h] /= sum;
        return shares;
    }

    private static double Integral(double a, double b, double ws, double w) =>
        a * Math.Sin(w) + b * (w / 2 + Math.Sin(2 * w) / 4) - Math.Cos(ws) * (a * w + b * Math.Sin(w));
}

using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>What a stated wind speed is: how long it is averaged and how seldom it is passed; always at 10 m over open country.</summary>
public enum WindDefinition
{
    /// <summary>Mean of ten minutes, passed once in 50 years: EN 1991-1-4.</summary>
    TenMinuteMean50,

    /// <summary>Mean of an hour, passed once in 50 years.</summary>
    HourlyMean50,

    /// <summary>Gust of three seconds, passed once in 50 years: AS/NZS 1170.2 and IS 875-3 as usually mapped.</summary>
    Gust50,

    /// <summary>Gust of three seconds, passed once in 700 years: ASCE 7-16, risk category II.</summary>
    Gust700,
}

/// <summary>A stated wind speed turned into the one a standard works with.</summary>
/// <param name="Factor">What the stated speed was multiplied by.</param>
/// <param name="SpeedMPerS">The speed the standard works with, m/s.</param>
/// <param name="Source">Where the factor comes from, in words.</param>
public sealed record ConvertedWind(double Factor, double SpeedMPerS, string Source);

/// <summary>Turns wind speeds of one definition into another.</summary>
public static class WindSpeeds
{
    /// <summary>Gust of three seconds over the mean of an hour: Durst (1960) as in ASCE 7-16 figure C26.5-1 (from memory).</summary>
    public const double GustOverHour = 1.52;

    /// <summary>Mean of ten minutes over the mean of an hour: Durst (1960) as in ASCE 7-16 figure C26.5-1 (from memory).</summary>
    public const double TenMinutesOverHour = 1.065;

    private const string Source = "Durst 1960 and Peterka and Shahid 1998, both as in the commentary of ASCE 7-16 (from memory)";

    /// <summary>
    /// Speed of a return period over that of 50 years: Peterka and Shahid (1998), ASCE 7-16 (C26.5-2), 0.36 + 0.1 ln(12 T) (from memory).
    /// </summary>
    /// <param name="returnYears">Return period T, 5 to 3000 years.</param>
    /// <returns>Ratio. Check value: 700 years 1.264; 50 years 1.000.</returns>
    public static double ReturnFactor(double returnYears) => 0.36 + 0.1 * Math.Log(12 * Require.InRange(returnYears, 5, 3000, nameof(returnYears)));

    /// <summary>A stated speed in the definition wanted; both ratios of averaging and return period in one factor.</summary>
    /// <param name="speedMPerS">As stated, m/s.</param>
    /// <param name="stated">What it is.</param>
    /// <param name="wanted">What is wanted.</param>
    /// <returns>Check value: a 3-second gust of 50 years as a mean of ten minutes: 1.065 / 1.52 = 0.701.</returns>
    public static ConvertedWind Convert(double speedMPerS, WindDefinition stated, WindDefinition wanted)
    {
        Require.Positive(speedMPerS, nameof(speedMPerS));
        if (stated == wanted) return new ConvertedWind(1, speedMPerS, "as stated, no conversion");
        var factor = OverHourlyMean50(wanted) / OverHourlyMean50(stated);
        return new ConvertedWind(factor, factor * speedMPerS, Source);
    }

    private static double OverHourlyMean50(WindDefinition definition) => definition switch
    {
        WindDefinition.HourlyMean50 => 1,
        WindDefinition.TenMinuteMean50 => TenMinutesOverHour,
        WindDefinition.Gust50 => GustOverHour,
        WindDefinition.Gust700 => GustOverHour * ReturnFactor(700),
        _ => throw new ArgumentOutOfRangeException(nameof(definition), definition, "is not a definition of wind speed"),
    };
}

using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Which standard gives the wind.</summary>
public enum WindStandard
{
    En1991,
    Asce7,
}

/// <summary>
/// The wind at one place by one standard. EN 1991-1-4 gives characteristic pressures, to be multiplied by the partial factor of wind; ASCE 7
/// gives pressures of strength, of which allowable-stress work takes 0.6. <see cref="CharacteristicNPerM2"/> is the same level for both, so
/// that one set of checks serves both.
/// </summary>
/// <param name="Standard">The standard.</param>
/// <param name="SpeedMPerS">Speed the standard works with: mean of ten minutes in 50 years, or gust in 700 years, m/s.</param>
/// <param name="Terrain">Terrain category; for ASCE 7 exposure D is 0 and I, C is II, B is III and IV.</param>
public sealed record WindCase(WindStandard Standard, double SpeedMPerS, Terrain Terrain)
{
    /// <summary>Directionality factor of round poles: ASCE 7-16 table 26.6-1 (from memory).</summary>
    public const double RoundPoleDirectionality = 0.95;

    /// <summary>Factor on wind of strength for allowable-stress work: ASCE 7-16 2.4.1, 0.6 W (from memory).</summary>
    public const double AllowableStressFactor = 0.6;

    /// <summary>The wind a standard works with, out of a speed of any definition.</summary>
    public static (WindCase Wind, ConvertedWind Conversion) Of(WindStandard standard, double statedMPerS, WindDefinition stated, Terrain terrain)
    {
        var converted = WindSpeeds.Convert(statedMPerS, stated, Wanted(standard));
        return (new WindCase(standard, converted.SpeedMPerS, terrain), converted);
    }

    /// <summary>The definition of speed a standard works with.</summary>
    public static WindDefinition Wanted(WindStandard standard) => standard == WindStandard.En1991 ? WindDefinition.TenMinuteMean50 : WindDefinition.Gust700;

    /// <summary>Exposure category nearest to a terrain category: by roughness length, 0.005, 0.02 and 0.15 m for D, C, B (ASCE 7-16 C26.7, from memory).</summary>
    public static Exposure ExposureOf(Terrain terrain) => terrain switch
    {
        Terrain.Zero or Terrain.I => Exposure.D,
        Terrain.II => Exposure.C,
        _ => Exposure.B,
    };

    /// <summary>Peak pressure as the standard prints it, N/m2.</summary>
    /// <param name="heightM">Height above ground, m, 0 to 200.</param>
    /// <returns>Check value: EN, 26 m/s, II, 8 m: 934.7 N/m2; ASCE, 45 m/s, C, 8 m: 1126 N/m2.</returns>
    public double PeakPressureNPerM2(double heightM) => Standard == WindStandard.En1991
        ? Wind.PeakPressureNPerM2(SpeedMPerS, Terrain, heightM)
        : Wind.Asce7PressureNPerM2(SpeedMPerS, ExposureOf(Terrain), heightM, RoundPoleDirectionality);

    /// <summary>Share of the printed pressure at the characteristic level.</summary>
    public double CharacteristicFraction => Standard == WindStandard.En1991 ? 1 : AllowableStressFactor;

    /// <summary>Pressure at the characteristic level, N/m2: for deflection, foundations, and with its factor for strength.</summary>
    public double CharacteristicNPerM2(double heightM) => CharacteristicFraction * PeakPressureNPerM2(heightM);

    /// <summary>Factor on characteristic loads for strength: the rule for EN, 1 / 0.6 for ASCE.</summary>
    /// <param name="partialFactor">Partial factor of wind of EN 1990, 1 to 2.</param>
    public double StrengthFactor(double partialFactor) =>
        Standard == WindStandard.En1991 ? Require.InRange(partialFactor, 1, 2, nameof(partialFactor)) : 1 / AllowableStressFactor;
}

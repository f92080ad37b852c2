using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Everything one pole's screening needs.</summary>
/// <param name="Shaft">The shaft.</param>
/// <param name="Items">What else catches wind.</param>
/// <param name="Wind">The wind.</param>
/// <param name="DynamicFactor">Structural factor on every force, 0.8 to 2.</param>
/// <param name="PartialFactor">Partial factor of wind for strength by EN 1990, 1 to 2; ASCE 7 has its own.</param>
/// <param name="SteelFactor">Partial factor of steel, 1 to 1.5.</param>
/// <param name="EmbeddedDiameterM">Width of what bears on the soil: the pole, or the concrete round it, m.</param>
/// <param name="BearingKPaPerM">Allowable lateral bearing per metre of depth, kPa/m.</param>
/// <param name="ShaftForceCoefficient">Force coefficient of the shaft, or null for that of a galvanised cylinder at each Reynolds number.</param>
public sealed record PoleScreenInputs(
    PoleShaft Shaft,
    ImmutableArray<WindItem> Items,
    WindCase Wind,
    double DynamicFactor,
    double PartialFactor,
    double SteelFactor,
    double EmbeddedDiameterM,
    double BearingKPaPerM,
    double? ShaftForceCoefficient = null);

/// <summary>What the screening of one pole gives. Screening only: to be checked and signed by a licensed structural engineer.</summary>
/// <param name="PeakPressureNPerM2">Peak pressure of the standard at the pole's head, N/m2.</param>
/// <param name="Load">Forces, shear, moment and stresses under the standard's pressures.</param>
/// <param name="UtilisationFraction">Greatest design stress over design strength, fraction; 1 is all of it.</param>
/// <param name="EmbedmentM">Depth of a pole set into the ground, nonconstrained, m.</param>
/// <param name="ConstrainedEmbedmentM">Depth when rigid paving holds it at the surface, m.</param>
public sealed record PoleScreenResult(double PeakPressureNPerM2, PoleLoad Load, double UtilisationFraction, double EmbedmentM, double ConstrainedEmbedmentM);

/// <summary>Screening of one pole: wind, section, embedment.</summary>
public static class PoleScreen
{
    /// <summary>
    /// Loads by <see cref="Wind.OnPole(PoleShaft, ImmutableArray{WindItem}, Func{double, double}, double?, double)"/> under the standard's own
    /// pressures; utilisation at the strength level of the standard; embedment by IBC 1807.3.2 at its allowable-stress level.
    /// </summary>
    public static PoleScreenResult Run(PoleScreenInputs inputs)
    {
        var wind = inputs.Wind;
        var load = Wind.OnPole(inputs.Shaft, inputs.Items, wind.PeakPressureNPerM2, inputs.ShaftForceCoefficient, inputs.DynamicFactor);
        var strengthFactor = wind.CharacteristicFraction * wind.StrengthFactor(inputs.PartialFactor);
        var utilisation = load.GreatestStressMPa * strengthFactor / (inputs.Shaft.YieldMPa / Require.InRange(inputs.SteelFactor, 1, 1.5, nameof(inputs.SteelFactor)));
        var forceN = load.BaseShearN * wind.CharacteristicFraction;
        var armM = load.BaseMomentNm / load.BaseShearN;
        return new PoleScreenResult(
            wind.PeakPressureNPerM2(inputs.Shaft.HeightM),
            load,
            utilisation,
            Foundation.EmbeddedDepthM(forceN, armM, inputs.EmbeddedDiameterM, inputs.BearingKPaPerM),
            Foundation.ConstrainedDepthM(forceN, armM, inputs.EmbeddedDiameterM, inputs.BearingKPaPerM));
    }
}

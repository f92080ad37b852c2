using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Photometry;

/// <summary>What a distribution itself tells: against its header, and about where its light goes.</summary>
internal static class Findings
{
    private const double GreatestRatio = 1.03;
    private const double LeastRatio = 0.4;
    private const double NearOne = 0.95;
    private const double GreatestRatioError = 0.05;
    private const double LeastStreetFraction = 0.48;
    private const double GreatestUpwardFraction = 0.01;

    /// <summary>Compares the flux by integration with the header.</summary>
    /// <param name="ratio">Flux by integration over stated flux.</param>
    /// <param name="statedRatio">Light output ratio the file states, or null when it states none.</param>
    public static IEnumerable<Diagnostic> OfFlux(double fluxLm, double statedLm, double ratio, double? statedRatio, Place place)
    {
        var figures = string.Create(CultureInfo.InvariantCulture, $"{fluxLm:0.#} lm by integration, {statedLm:0.#} lm stated, ratio {ratio:0.000}");
        var contradicted = statedRatio is { } s ? Math.Abs((ratio / s) - 1) > GreatestRatioError : ratio is > GreatestRatio or < LeastRatio;
        if (contradicted)
        {
            var against = statedRatio is { } r ? string.Create(CultureInfo.InvariantCulture, $" against a light output ratio of {r:0.000}") : "";
            yield return Diagnostic.Warning("TK156", $"the candela values contradict the header: {figures}{against}. The candela values are used; ask the maker which is right.", place);
        }
        else if (ratio < NearOne)
        {
            yield return Diagnostic.Note("TK157", $"relative photometry with losses in the luminaire: {figures}. The flux by integration is used.", place);
        }
    }

    /// <summary>Reports light to the house side and light above the horizontal.</summary>
    public static IEnumerable<Diagnostic> OfDirection(LightDistribution distribution, Place place)
    {
        if (distribution.StreetSideFraction < LeastStreetFraction)
        {
            yield return Diagnostic.Warning(
                "TK161",
                string.Create(CultureInfo.InvariantCulture, $"{1 - distribution.StreetSideFraction:P0} of the light goes to the house side, behind the pole. Check that the file is not turned round before using it."),
                place);
        }

        if (distribution.UpwardFraction > GreatestUpwardFraction)
        {
            yield return Diagnostic.Warning(
                "TK162",
                string.Create(CultureInfo.InvariantCulture, $"{distribution.UpwardFraction:P1} of the light goes above the horizontal (limit {GreatestUpwardFraction:P0}): lost, and it brightens the sky."),
                place);
        }
    }
}

using System.Text.Json.Nodes;
using TenderKit.Sizing.Structure;
using TenderKit.Sizing.Wiring;
using static TenderKit.Documents.Machine.BidJson;

namespace TenderKit.Documents.Machine;

/// <summary>Screening of one pole and of one circuit, for machines.</summary>
public static class GroundJson
{
    /// <summary>One pole.</summary>
    public static JsonObject Pole(PoleScreenInputs inputs, ConvertedWind conversion, PoleScreenResult result) => new()
    {
        ["standard"] = inputs.Wind.Standard == WindStandard.En1991 ? "en" : "asce",
        ["windMPerS"] = Number(inputs.Wind.SpeedMPerS),
        ["windConversionFactor"] = Number(conversion.Factor),
        ["windConversionSource"] = conversion.Source,
        ["loadLevel"] = inputs.Wind.Standard == WindStandard.En1991 ? "characteristic" : "strength",
        ["peakPressurePa"] = Number(result.PeakPressureNPerM2),
        ["baseShearN"] = Number(result.Load.BaseShearN),
        ["baseMomentNm"] = Number(result.Load.BaseMomentNm),
        ["sectionStressMPa"] = Number(result.Load.BaseStressMPa),
        ["greatestStressMPa"] = Number(result.Load.GreatestStressMPa),
        ["greatestStressHeightM"] = Number(result.Load.GreatestStressHeightM),
        ["yieldMPa"] = Number(inputs.Shaft.YieldMPa),
        ["utilisationFraction"] = Number(result.UtilisationFraction),
        ["headDeflectionM"] = Number(result.Load.HeadDeflectionM),
        ["embedmentM"] = Number(result.EmbedmentM),
        ["constrainedEmbedmentM"] = Number(result.ConstrainedEmbedmentM),
        ["embeddedWidthM"] = Number(inputs.EmbeddedDiameterM),
        ["soilKPaPerM"] = Number(inputs.BearingKPaPerM),
        ["forces"] = Array(result.Load.Forces.Select(f => new JsonObject
        {
            ["name"] = f.Name,
            ["forceN"] = Number(f.ForceN),
            ["heightM"] = Number(f.HeightM),
            ["momentNm"] = Number(f.MomentNm),
        })),
    };

    /// <summary>One circuit.</summary>
    public static JsonObject Circuit(CircuitScreenInputs inputs, CircuitScreenResult result) => new()
    {
        ["resistanceOhm"] = Number(result.ResistanceOhm),
        ["resistanceOf"] = "one conductor, one way",
        ["loopResistanceOhm"] = Number(2 * result.ResistanceOhm),
        ["dropV"] = Number(result.DropV),
        ["dropFraction"] = Number(result.DropFraction),
        ["capacityA"] = Number(result.CapacityA),
        ["fuseA"] = result.FuseA is { } fuse ? Number(fuse) : null,
        ["conductorTemperatureC"] = Number(inputs.ConductorC),
        ["ambientC"] = Number(inputs.AmbientC),
    };
}

using System.Text.Json.Nodes;
using TenderKit.Intake.Photometry;
using TenderKit.Sizing.Lighting;
using static TenderKit.Documents.Machine.BidJson;

namespace TenderKit.Documents.Machine;

/// <summary>Light of one photometric file, and of one road layout, for machines.</summary>
public static class LightJson
{
    /// <summary>What the file says by itself.</summary>
    public static JsonObject Analysis(PhotometricFile file, PhotometricAnalysis analysis) => new()
    {
        ["file"] = file.FileName,
        ["fileFormat"] = file.Format,
        ["fluxLm"] = Number(analysis.FluxLm),
        ["statedFluxLm"] = Optional(analysis.StatedFluxLm),
        ["lightOutputRatioFraction"] = Optional(analysis.LightOutputRatio),
        ["powerW"] = Optional(analysis.PowerW),
        ["efficacyLmPerW"] = Optional(analysis.EfficacyLmPerW),
        ["peakIntensityCd"] = Number(analysis.PeakIntensityCd),
        ["peakPlaneDegrees"] = Number(analysis.PeakPlaneDegrees),
        ["peakGammaDegrees"] = Number(analysis.PeakGammaDegrees),
        ["symmetry"] = analysis.Symmetry.ToString(),
        ["streetSideFraction"] = Number(analysis.StreetSideFraction),
        ["upwardFraction"] = Number(analysis.UpwardFraction),
        ["zoneFluxLm"] = Zones(analysis.Zones),
        ["backlightUplightGlare"] = analysis.Rating.ToString(),
        ["glareIntensityClass"] = analysis.GlareClass == 0 ? null : FormattableString.Invariant($"G*{analysis.GlareClass}"),
    };

    /// <summary>What a layout gives, maintained, at full level.</summary>
    /// <param name="verdict">The class asked for against what is reached, or null when none was asked for.</param>
    public static void AddLayout(JsonObject root, RoadQuality quality, ClassVerdict? verdict)
    {
        var road = quality.Carriageway;
        root["gridPointsAlong"] = road.Illuminance.PointsAlong;
        root["gridPointsAcross"] = road.Illuminance.PointsAcross;
        root["averageLx"] = Number(road.Illuminance.AverageLx);
        root["minimumLx"] = Number(road.Illuminance.MinimumLx);
        root["maximumLx"] = Number(road.Illuminance.MaximumLx);
        root["uniformityFraction"] = Number(road.Illuminance.OverallUniformity);
        root["edgeRatioFraction"] = Optional(road.EdgeRatio);
        root["minimumVerticalLx"] = Number(road.Spatial.MinimumVerticalLx);
        root["minimumSemicylindricalLx"] = Number(road.Spatial.MinimumSemicylindricalLx);
        root["averageLuminanceCdPerM2"] = Optional(road.Luminance?.AverageCdM2);
        root["luminanceUniformityFraction"] = Optional(road.Luminance?.OverallUniformity);
        root["longitudinalUniformityFraction"] = Optional(road.Luminance?.LongitudinalUniformity);
        root["thresholdIncrementFraction"] = Optional(road.Glare?.IncrementFraction);
        root["class"] = verdict?.Class.Name;
        root["meets"] = verdict?.Met;
        root["governs"] = verdict?.Governing.Limit;
        root["limits"] = verdict is null ? null : Array(verdict.Checks.Select(Limit));
        root["sidewalks"] = Array(quality.Sidewalks.Select(SidewalkOf));
    }

    private static JsonObject SidewalkOf(StripQuality strip) => new()
    {
        ["name"] = strip.Name,
        ["averageLx"] = Number(strip.Illuminance.AverageLx),
        ["minimumLx"] = Number(strip.Illuminance.MinimumLx),
        ["uniformityFraction"] = Number(strip.Illuminance.OverallUniformity),
        ["class"] = strip.Class?.Name,
        ["meets"] = strip.Verdict?.Met,
        ["governs"] = strip.Verdict?.Governing.Limit,
    };

    private static JsonObject Limit(LimitCheck check) => new()
    {
        ["limit"] = check.Limit,
        ["comparison"] = check.Comparison == Sizing.Basics.Comparison.AtLeast ? "at least" : "at most",
        ["required"] = Number(check.Required),
        ["reached"] = Number(check.Reached),
        ["unit"] = check.Unit,
        ["met"] = check.Met,
    };

    private static JsonNode? Optional(double? value) => value is { } v ? Number(v) : null;

    private static JsonObject Zones(ZoneFlux zones)
    {
        return new JsonObject
        {
            ["forwardLow"] = Number(zones.ForwardLowLm),
            ["forwardMedium"] = Number(zones.ForwardMediumLm),
            ["forwardHigh"] = Number(zones.ForwardHighLm),
            ["forwardVeryHigh"] = Number(zones.ForwardVeryHighLm),
            ["backLow"] = Number(zones.BackLowLm),
            ["backMedium"] = Number(zones.BackMediumLm),
            ["backHigh"] = Number(zones.BackHighLm),
            ["backVeryHigh"] = Number(zones.BackVeryHighLm),
            ["uplightLow"] = Number(zones.UplightLowLm),
            ["uplightHigh"] = Number(zones.UplightHighLm),
        };
    }
}

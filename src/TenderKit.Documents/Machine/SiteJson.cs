using System.Text.Json.Nodes;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using static TenderKit.Documents.Machine.BidJson;

namespace TenderKit.Documents.Machine;

/// <summary>One site's design for machines.</summary>
internal static class SiteJson
{
    public static JsonObject Of(SiteDesign design)
    {
        var site = design.Site;
        return new JsonObject
        {
            ["siteId"] = site.Id,
            ["name"] = site.Name,
            ["lot"] = site.Lot,
            ["latitudeDegrees"] = site.LatitudeDegrees,
            ["longitudeDegrees"] = site.LongitudeDegrees,
            ["kind"] = site.Kind.ToString().ToLowerInvariant(),
            ["lengthM"] = site.LengthM,
            ["widthM"] = site.WidthM,
            ["schedule"] = site.Schedule.Name,
            ["scheduleInWords"] = ScheduleWords.Of(site.Schedule),
            ["surveyed"] = site.IsSurveyed,
            ["surveyedOn"] = site.SurveyedOn?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
            ["poles"] = design.Poles,
            ["kit"] = design.KitId,
            ["light"] = Light(design),
            ["horizon"] = site.Horizon is { } skyline ? Tendering.Sites.HorizonText.Of(skyline) : null,
            ["climate"] = Climate(design.Climate),
            ["energy"] = Energy(design.Energy),
            ["structure"] = Structure(design.Structure),
            ["checks"] = Checks(design.Checks),
        };
    }

    private static JsonObject Light(SiteDesign design)
    {
        var light = design.Light;
        return new JsonObject
        {
            ["target"] = design.Site.Target.Name,
            ["mountingHeightM"] = light.Layout?.MountingHeightM ?? light.Yard!.MountingHeightM,
            ["spacingM"] = Number(light.SpacingM),
            ["arrangement"] = light.Area is not null ? "DrawnArea" : light.Layout?.Arrangement.ToString() ?? (light.Yard!.BothSides ? "BothLongSides" : "OneLongSide"),
            ["areaM2"] = light.Area is { } area ? Number(area.Area.AreaM2) : null,
            ["gridPoints"] = light.Area is null ? null : light.Result.Points.Length,
            ["levelFraction"] = Number(light.LevelFraction),
            ["maintenanceFactor"] = Number(design.MaintenanceFactor),
            ["averageLx"] = Number(light.Result.AverageLx),
            ["minimumLx"] = Number(light.Result.MinimumLx),
            ["maximumLx"] = Number(light.Result.MaximumLx),
            ["overallUniformity"] = Number(light.Result.OverallUniformity),
            ["governingLimit"] = light.GoverningLimit,
        };
    }

    private static JsonObject Climate(SiteClimate climate) => new()
    {
        ["source"] = climate.Monthly.Source,
        ["years"] = climate.Monthly.YearCount,
        ["yearSpreadFraction"] = climate.Monthly.YearSpreadFraction is { } spread ? Number(spread) : null,
        ["nearestStationKm"] = climate.Monthly.NearestStationKm is { } km ? Number(km) : null,
        ["grade"] = ClimateGrades.Words(climate.Monthly.Grade),
        ["cautiousFactor"] = Number(climate.CautiousFactor),
        ["cautiousFactorRule"] = ClimateGrades.RuleId(climate.Monthly.Grade),
        ["horizontalKWhPerM2Day"] = Numbers(climate.Monthly.IrradiationKWhPerM2),
        ["planeKWhPerM2Day"] = Numbers(climate.PlaneKWhPerM2),
        ["tiltDegrees"] = Number(climate.Plane.TiltDegrees),
        ["azimuthDegrees"] = Number(climate.Plane.AzimuthDegrees),
        ["darkHours"] = Numbers(climate.DarkHours),
        ["fullPowerHours"] = Numbers(climate.Lamp.MonthlyFullHours),
    };

    private static JsonObject Energy(EnergyDesign energy) => new()
    {
        ["lampInputW"] = Number(energy.LampInputW),
        ["nightlyWh"] = Number(energy.NightlyWh),
        ["usableWh"] = Number(energy.UsableWh),
        ["autonomyNights"] = Number(energy.AutonomyNights),
        ["handDesignMonth"] = energy.Hand.DesignMonth,
        ["handBatteryRatedWh"] = Number(energy.Hand.BatteryRatedWh),
        ["handArrayRatioWp"] = Number(energy.Hand.ArrayRatioWp),
        ["handArrayRecoveryWp"] = Number(energy.Hand.ArrayRecoveryWp),
        ["simulatedYears"] = energy.Simulated.YearCount,
        ["lossOfLoadFraction"] = Number(energy.Simulated.LossOfLoadFraction),
        ["darkNightsPerYear"] = Number(energy.Simulated.DarkNightsPerYear),
        ["darkNightsPerYearUpper90"] = Number(energy.Simulated.DarkNightsUpperBound),
        ["worstYearDarkNights"] = energy.Simulated.WorstYearDarkNights,
        ["longestDarkRunNights"] = energy.Simulated.LongestDarkRunNights,
        ["lowestStateFraction"] = Numbers(energy.Simulated.LowestStateByMonth),
        ["fullChargeDaysFraction"] = Number(energy.Simulated.FullChargeDaysFraction),
        ["longestWithoutFullDays"] = energy.Simulated.LongestWithoutFullDays,
        ["equivalentFullCyclesPerYear"] = Number(energy.Simulated.EquivalentFullCyclesPerYear),
        ["batteryLifeYears"] = Number(energy.BatteryLifeYears),
        ["supplyWhPerDay"] = Numbers(energy.Simulated.MonthlySupplyWhPerDay),
        ["demandWhPerDay"] = Numbers(energy.Simulated.MonthlyDemandWhPerDay),
        ["ledgerWh"] = Ledger(energy.Simulated.Ledger),
        ["onOwnSeries"] = energy.OnOwnSeries is { } proof ? OwnSeries(proof) : null,
    };

    private static JsonObject OwnSeries(Sizing.Energy.SeriesProof proof) => new()
    {
        ["kind"] = proof.Kind switch { SeriesKind.MeasuredYears => "measured years", SeriesKind.SatelliteYears => "satellite years", _ => "typical year" },
        ["source"] = proof.Source,
        ["years"] = proof.Years,
        ["judged"] = OwnSeriesCheck.IsJudged(proof),
        ["caution"] = proof.Caution,
        ["lossOfLoadFraction"] = Number(proof.Result.LossOfLoadFraction),
        ["darkNightsPerYear"] = Number(proof.Result.DarkNightsPerYear),
        ["darkNightsPerYearUpper90"] = Number(proof.Result.DarkNightsUpperBound),
        ["worstYearDarkNights"] = proof.Result.WorstYearDarkNights,
        ["longestDarkRunNights"] = proof.Result.LongestDarkRunNights,
        ["lowestStateFraction"] = Numbers(proof.Result.LowestStateByMonth),
        ["supplyWhPerDay"] = Numbers(proof.Result.MonthlySupplyWhPerDay),
        ["ledgerWh"] = Ledger(proof.Result.Ledger),
    };

    private static JsonObject Ledger(Sizing.Energy.EnergyLedger ledger) => new()
    {
        ["in"] = Number(ledger.InWh),
        ["lamp"] = Number(ledger.LampWh),
        ["ownUse"] = Number(ledger.OwnUseWh),
        ["losses"] = Number(ledger.LossesWh),
        ["dumped"] = Number(ledger.DumpedWh),
        ["storeChange"] = Number(ledger.StoreChangeWh),
        ["unserved"] = Number(ledger.UnservedWh),
    };

    private static JsonObject Structure(StructureDesign structure) => new()
    {
        ["peakPressureNPerM2"] = Number(structure.PeakPressureNPerM2),
        ["baseShearN"] = Number(structure.Load.BaseShearN),
        ["baseMomentNm"] = Number(structure.Load.BaseMomentNm),
        ["baseStressMPa"] = Number(structure.Load.BaseStressMPa),
        ["headDeflectionM"] = Number(structure.Load.HeadDeflectionM),
        ["overturningSafety"] = Number(structure.Foundation.OverturningSafetyFactor),
        ["groundPressureKPa"] = Number(structure.Foundation.GroundPressureKPa),
        ["concreteM3"] = Number(structure.Foundation.ConcreteM3),
        ["excavationM3"] = Number(structure.Foundation.ExcavationM3),
        ["backfillM3"] = Number(structure.Foundation.BackfillM3),
        ["swayPeriodS"] = Number(structure.PeriodS),
        ["dynamicFactor"] = Number(structure.DynamicFactor),
        ["windMPerS"] = structure.Wind is { } wind ? Number(wind.SpeedMPerS) : null,
        ["windConversionFactor"] = structure.Conversion is { } conversion ? Number(conversion.Factor) : null,
        ["doorStressMPa"] = structure.DoorStressMPa is { } door ? Number(door) : null,
        ["boltTensionN"] = structure.Bolts is { } bolts ? Number(bolts.TensionN) : null,
        ["boltUseFraction"] = structure.Bolts is { } used ? Number(used.UseFraction) : null,
        ["basePlateMm"] = structure.Bolts is { } plate ? Number(plate.PlateMm) : null,
        ["embedmentM"] = structure.EmbedmentM is { } embedment ? Number(embedment) : null,
    };
}

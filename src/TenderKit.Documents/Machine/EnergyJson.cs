using System.Collections.Immutable;
using System.Text.Json.Nodes;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using static TenderKit.Documents.Machine.BidJson;

namespace TenderKit.Documents.Machine;

/// <summary>How a system was found.</summary>
/// <param name="Array">Whether the array was to be found.</param>
/// <param name="Battery">Whether the battery was to be found.</param>
/// <param name="Target">What it had to keep.</param>
/// <param name="Curve">Systems of equal reliability, where both were to be found.</param>
/// <param name="PricePerWp">Relative price of array.</param>
/// <param name="PricePerWh">Relative price of battery.</param>
public sealed record EnergySearch(bool Array, bool Battery, DarkNightTarget Target, ImmutableArray<ReliabilityPoint> Curve, double PricePerWp, double PricePerWh);

/// <summary>Energy of one pole at one place, for machines.</summary>
public static class EnergyJson
{
    /// <summary>Sun, night and load by month, with where the climate comes from.</summary>
    public static JsonObject Years(PoleYears pole)
    {
        var inputs = pole.Inputs;
        var climate = inputs.Climate;
        return new JsonObject
        {
            ["latitudeDegrees"] = Number(climate.LatitudeDegrees),
            ["longitudeDegrees"] = Number(climate.LongitudeDegrees),
            ["climateGrade"] = ClimateGrades.Words(climate.Grade),
            ["climateSource"] = climate.Source,
            ["cautiousFactorFraction"] = Number(inputs.CautiousFactor),
            ["cautiousFactorRule"] = ClimateGrades.RuleId(climate.Grade),
            ["tiltDegrees"] = Number(inputs.Plane.TiltDegrees),
            ["azimuthDegrees"] = Number(inputs.Plane.AzimuthDegrees),
            ["shadedFraction"] = Number(inputs.ShadedFraction),
            ["schedule"] = inputs.Schedule.Name,
            ["scheduleInWords"] = ScheduleWords.Of(inputs.Schedule),
            ["lampW"] = Number(inputs.LampW),
            ["years"] = inputs.Sequence.YearCount,
            ["seed"] = inputs.Sequence.Seed,
            ["extraterrestrialWhPerM2Day"] = Wh(pole.ExtraterrestrialKWhPerM2),
            ["horizontalWhPerM2Day"] = Wh(climate.IrradiationKWhPerM2),
            ["planeWhPerM2Day"] = Wh(pole.PlaneKWhPerM2),
            ["simulatedPlaneWhPerM2Day"] = Wh(pole.SimulatedPlaneKWhPerM2),
            ["meanC"] = Numbers(climate.MeanC),
            ["nightH"] = Numbers(pole.NightH),
            ["fullHoursH"] = Numbers(pole.Lamp.MonthlyFullHours),
            ["loadWh"] = Numbers(pole.LoadWh),
        };
    }

    /// <summary>What a system makes of it.</summary>
    public static void AddSystem(JsonObject root, PoleEnergy energy)
    {
        var (array, battery, control, _) = energy.System;
        var result = energy.Result;
        root["demandWhPerDay"] = Numbers(result.MonthlyDemandWhPerDay);
        root["supplyWhPerDay"] = Numbers(result.MonthlySupplyWhPerDay);
        root["lowestStateOfChargeFraction"] = Numbers(result.LowestStateByMonth);
        root["arrayWp"] = Number(array.ArrayWp);
        root["moduleVoltageV"] = Number(array.MaximumPowerVoltageV);
        root["arrayDeratingFraction"] = Number(array.DeratingFactor);
        root["batteryAh"] = Number(battery.RatedWh / battery.NominalVoltageV);
        root["batteryV"] = Number(battery.NominalVoltageV);
        root["batteryWh"] = Number(battery.RatedWh);
        root["battery"] = BatteryOf(battery);
        root["control"] = control.Kind == ControlKind.Tracking ? "mppt" : "pwm";
        root["controlEfficiencyFraction"] = Number(control.Efficiency);
        root["controlChargeA"] = Number(control.ChargeCurrentA);
        root["ownUseW"] = Number(control.OwnUseW);
        root["lampInputW"] = Number(energy.System.LampInputW);
        root["lossOfLoadFraction"] = Number(result.LossOfLoadFraction);
        root["darkNightsPerYear"] = Number(result.DarkNightsPerYear);
        root["darkNightsPerYearLow"] = Number(result.DarkNightRange.LowPerYear);
        root["darkNightsPerYearHigh"] = Number(result.DarkNightRange.HighPerYear);
        root["darkNightsUpperBound"] = Number(result.DarkNightsUpperBound);
        root["worstYearDarkNights"] = result.WorstYearDarkNights;
        root["longestDarkRunNights"] = result.LongestDarkRunNights;
        root["autonomyNights"] = Number(energy.AutonomyNights);
        root["equivalentFullCyclesPerYear"] = Number(result.EquivalentFullCyclesPerYear);
        root["fullChargeDaysFraction"] = Number(result.FullChargeDaysFraction);
        root["longestWithoutFullDays"] = result.LongestWithoutFullDays;
        root["darkNightsByYear"] = Array(result.DarkNightsByYear.Select(n => (JsonNode)n));
        root["lossOfLoadByMonthFraction"] = Numbers(result.LossOfLoadByMonth);
        root["recoveries"] = result.Recovery.Count;
        root["longestRecoveryDays"] = Number(result.Recovery.LongestDays);
        root["meanRecoveryDays"] = Number(result.Recovery.MeanDays);
        root["recoveryUnfinished"] = result.Recovery.IsUnfinished;
        root["worstMonth"] = result.WorstMonth;
        root["worstSpell"] = SpellOf(result.WorstSpell);
        root["ledger"] = LedgerOf(result.Ledger);
        root["energyBalanceErrorFraction"] = Number(energy.BalanceErrorFraction);
    }

    /// <summary>The same system on the user's own years.</summary>
    public static JsonObject OwnSeries(SeriesProof proof) => new()
    {
        ["kind"] = proof.Kind.ToString(),
        ["years"] = proof.Years,
        ["source"] = proof.Source,
        ["caution"] = proof.Caution,
        ["darkNightsPerYear"] = Number(proof.Result.DarkNightsPerYear),
        ["darkNightsPerYearLow"] = Number(proof.Result.DarkNightRange.LowPerYear),
        ["darkNightsPerYearHigh"] = Number(proof.Result.DarkNightRange.HighPerYear),
        ["darkNightsByYear"] = Array(proof.Result.DarkNightsByYear.Select(n => (JsonNode)n)),
        ["lossOfLoadFraction"] = Number(proof.Result.LossOfLoadFraction),
        ["longestDarkRunNights"] = proof.Result.LongestDarkRunNights,
        ["lowestStateOfChargeFraction"] = Numbers(proof.Result.LowestStateByMonth),
    };

    /// <summary>The same system with its module facing several ways.</summary>
    public static JsonArray Headings(HeadingStudy study) => Array(study.Headings.Select(h => new JsonObject
    {
        ["tiltDegrees"] = Number(h.Plane.TiltDegrees),
        ["azimuthDegrees"] = Number(h.Plane.AzimuthDegrees),
        ["simulatedPlaneWhPerM2Day"] = Wh(h.PlaneKWhPerM2),
        ["lossOfLoadFraction"] = Number(h.Result.LossOfLoadFraction),
        ["darkNightsPerYear"] = Number(h.Result.DarkNightsPerYear),
        ["darkNightsUpperBound"] = Number(h.Result.DarkNightsUpperBound),
        ["lowestStateOfChargeFraction"] = Numbers(h.Result.LowestStateByMonth),
        ["governs"] = ReferenceEquals(h, study.Worst),
    }));

    /// <summary>How the system was found.</summary>
    public static void AddSearch(JsonObject root, EnergySearch search)
    {
        root["arrayFound"] = search.Array;
        root["batteryFound"] = search.Battery;
        root["darkNightsPerYearTarget"] = Number(search.Target.DarkNightsPerYear);
        root["judgedBy"] = search.Target.ByUpperBound ? "upper-bound" : "mean";
        if (!search.Array || !search.Battery) return;
        root["pricePerWp"] = Number(search.PricePerWp);
        root["pricePerWh"] = Number(search.PricePerWh);
        root["equalReliability"] = Array(search.Curve.Select(p => PointOf(p, search)));
    }

    /// <summary>The design rules used.</summary>
    public static JsonArray Rules(IEnumerable<DesignRule> rules) => Array(rules.Select(r => new JsonObject
    {
        ["id"] = r.Id,
        ["value"] = Number(r.Value),
        ["unit"] = r.Unit,
        ["source"] = r.Overridden ? "changed by the user" : r.Source,
    }));

    /// <summary>What was noticed.</summary>
    public static JsonArray Diagnostics(IEnumerable<Diagnostic> diagnostics) => Array(diagnostics.Select(DiagnosticJson));

    private static JsonArray Wh(ImmutableArray<double> kWh) => Array(kWh.Select(v => Number(v * 1000)));

    private static JsonObject BatteryOf(BatteryModel battery) => new()
    {
        ["type"] = battery.Chemistry.ToString(),
        ["ratedHours"] = Number(battery.RatedHours),
        ["peukertExponent"] = Number(battery.PeukertExponent),
        ["usableDepthFraction"] = Number(battery.UsableDepthFraction),
        ["endOfLifeFraction"] = Number(battery.EndOfLifeFraction),
        ["chargeEfficiencyFraction"] = Number(battery.ChargeEfficiency),
        ["dischargeEfficiencyFraction"] = Number(battery.DischargeEfficiency),
        ["selfDischargePerMonthFraction"] = Number(battery.SelfDischargePerMonthFraction),
        ["leastChargeC"] = Number(battery.LeastChargeC),
        ["basis"] = "common practice for the type; depth, end of life and enclosure are design rules",
    };

    private static JsonObject SpellOf(WorstSpell spell) => new()
    {
        ["firstDay"] = YearDay.Text(spell.FirstDayOfYear),
        ["year"] = spell.Year,
        ["stateOfChargeFraction"] = Numbers(spell.States),
        ["disconnectFraction"] = Numbers(spell.DisconnectByDay),
        ["reconnectFraction"] = Numbers(spell.ReconnectByDay),
    };

    private static JsonObject LedgerOf(EnergyLedger ledger) => new()
    {
        ["inWh"] = Number(ledger.InWh),
        ["lampWh"] = Number(ledger.LampWh),
        ["ownUseWh"] = Number(ledger.OwnUseWh),
        ["lossesWh"] = Number(ledger.LossesWh),
        ["dumpedWh"] = Number(ledger.DumpedWh),
        ["storeChangeWh"] = Number(ledger.StoreChangeWh),
        ["demandWh"] = Number(ledger.DemandWh),
        ["unservedWh"] = Number(ledger.UnservedWh),
    };

    private static JsonObject PointOf(ReliabilityPoint point, EnergySearch search) => new()
    {
        ["arrayWp"] = Number(point.ArrayWp),
        ["batteryAh"] = Number(point.BatteryAh),
        ["batteryWh"] = Number(point.BatteryWh),
        ["darkNightsPerYear"] = Number(point.Result.DarkNightsPerYear),
        ["price"] = Number(point.Price(search.PricePerWp, search.PricePerWh)),
    };
}

using System.Collections.Immutable;

namespace TenderKit.Sizing.Energy;

/// <summary>What a part of the night is tied to.</summary>
public enum NightAnchor
{
    Dusk,
    Midnight,
    Dawn,
}

/// <summary>One part of the night, from one moment to another, at a level.</summary>
/// <param name="LevelFraction">Light level, fraction of the full level, 0 to 1.</param>
/// <param name="PresenceFraction">Expected fraction of the time the level is called for (presence detection), 0 to 1; 1 without detection.</param>
/// <param name="ClassName">Lighting class asked of this part, perhaps a lower one than the site's, or null.</param>
public sealed record SchedulePart(
    NightAnchor FromAnchor, double FromOffsetH, NightAnchor ToAnchor, double ToOffsetH, double LevelFraction, double PresenceFraction = 1, string? ClassName = null);

/// <summary>A lighting schedule: parts of the night; where parts overlap the higher level holds; the rest of the night burns at the rest level.</summary>
/// <param name="RestClassName">Lighting class asked of the rest, or null.</param>
public sealed record LightingSchedule(string Name, ImmutableArray<SchedulePart> Parts, double RestLevelFraction, string? RestClassName = null)
{
    public static readonly LightingSchedule DuskToDawn = new("dusk-to-dawn", [], 1);

    /// <summary>Seasons with parts of their own; outside all of them the schedule's own parts hold. Where seasons overlap the first holds.</summary>
    public ImmutableArray<ScheduleSeason> Seasons { get; init; } = [];

    /// <summary>The schedule's own parts and those of each season, as schedules without seasons: all that a lamp and a controller must be able to do.</summary>
    public ImmutableArray<LightingSchedule> Programmes => Seasons.IsEmpty ? [this] : [Plain, .. Seasons.Select(On)];

    /// <summary>Every level asked for in any season, the levels of the rest among them, fractions.</summary>
    public IEnumerable<double> Levels => Programmes.SelectMany(p => p.Parts.Select(q => q.LevelFraction).Append(p.RestLevelFraction));

    private LightingSchedule Plain => Seasons.IsEmpty ? this : this with { Seasons = [] };

    /// <summary>What holds on the night that begins on a day of the year, 1 to 365.</summary>
    public LightingSchedule On(int dayOfYear) => Seasons.FirstOrDefault(s => s.Holds(dayOfYear)) is { } season ? On(season) : Plain;

    /// <summary>A season's parts under this schedule's name.</summary>
    public LightingSchedule On(ScheduleSeason season) => new(Name, season.Parts, season.RestLevelFraction, season.RestClassName);
}

/// <summary>A part of the year with a schedule of its own, first and last day included; a season that begins after it ends goes over the end of the year.</summary>
/// <param name="FromDayOfYear">First evening, 1 to 365 of a year without 29 February.</param>
/// <param name="ToDayOfYear">Last evening, 1 to 365.</param>
/// <param name="Parts">Parts of its nights.</param>
/// <param name="RestLevelFraction">Level of the rest of its nights, fraction.</param>
/// <param name="RestClassName">Lighting class asked of the rest, or null.</param>
public sealed record ScheduleSeason(
    int FromDayOfYear, int ToDayOfYear, ImmutableArray<SchedulePart> Parts, double RestLevelFraction, string? RestClassName = null)
{
    /// <summary>Whether it holds on the night that begins on a day of the year.</summary>
    public bool Holds(int dayOfYear) => FromDayOfYear <= ToDayOfYear
        ? dayOfYear >= FromDayOfYear && dayOfYear <= ToDayOfYear
        : dayOfYear >= FromDayOfYear || dayOfYear <= ToDayOfYear;
}

/// <summary>Equivalent full-power fraction of each hour of a 365-day year (local solar time).</summary>
/// <param name="HourFraction">8760 values, 0 to 1; index = day x 24 + hour.</param>
/// <param name="MonthlyFullHours">Equivalent full hours a night, mean of each month, h.</param>
public sealed record LampHours(ImmutableArray<double> HourFraction, ImmutableArray<double> MonthlyFullHours)
{
    public double LongestMonthFullHours => MonthlyFullHours.Max();
}

public enum ControlKind
{
    PulseWidth,
    Tracking,
}

public enum BatteryChemistry
{
    FloodedLeadAcid,
    AgmLeadAcid,
    GelLeadAcid,
    TubularLeadAcid,
    LithiumIronPhosphate,
}

/// <summary>The array as the energy balance sees it.</summary>
/// <param name="ArrayWp">Rated power of all modules, Wp.</param>
/// <param name="MaximumPowerVoltageV">Vmp of one string, V.</param>
/// <param name="MaximumPowerCurrentA">Imp of all strings, A.</param>
/// <param name="PowerCoefficientPerK">Power temperature coefficient, 1/K, negative.</param>
/// <param name="NoctC">Nominal operating cell temperature, degC.</param>
/// <param name="DeratingFactor">Product of soiling, mismatch, ageing and wiring, fraction.</param>
public sealed record ArrayModel(
    double ArrayWp, double MaximumPowerVoltageV, double MaximumPowerCurrentA, double PowerCoefficientPerK, double NoctC, double DeratingFactor);

/// <summary>The battery as the energy balance sees it.</summary>
/// <param name="RatedWh">Rated energy at its rated rate, Wh.</param>
/// <param name="NominalVoltageV">Bank voltage, V.</param>
/// <param name="RatedHours">Rate of the rating, h (10 for C/10).</param>
/// <param name="PeukertExponent">k, 1.0 to 1.4.</param>
/// <param name="UsableDepthFraction">Greatest depth of discharge allowed, fraction.</param>
/// <param name="EndOfLifeFraction">Capacity left at end of life, fraction of rated.</param>
/// <param name="ChargeEfficiency">Energy stored over energy in, fraction.</param>
/// <param name="DischargeEfficiency">Energy out over energy drawn from store, fraction.</param>
/// <param name="SelfDischargePerMonthFraction">At 25 degC, fraction a month.</param>
/// <param name="EnclosureRiseK">Battery above air temperature, K.</param>
/// <param name="LeastChargeC">No charging below this, degC.</param>
/// <param name="GreatestRateFactor">Greatest gain of capacity credited to a discharge slower than the rating, 1 to 1.2.</param>
/// <param name="AbsorptionTimeH">Lead-acid only: in the last tenth the battery takes at most what is missing over this time, h (2 h: a twentieth of the capacity an hour at 90 %; common practice, no source).</param>
public sealed record BatteryModel(
    BatteryChemistry Chemistry,
    double RatedWh,
    double NominalVoltageV,
    double RatedHours,
    double PeukertExponent,
    double UsableDepthFraction,
    double EndOfLifeFraction,
    double ChargeEfficiency,
    double DischargeEfficiency,
    double SelfDischargePerMonthFraction,
    double EnclosureRiseK,
    double LeastChargeC,
    double AbsorptionTimeH = 2,
    double GreatestRateFactor = BatteryCapacity.GreatestRateFactor);

/// <summary>The charge controller as the energy balance sees it.</summary>
/// <param name="ChargeCurrentA">Rated charge current of all controllers, A.</param>
/// <param name="Efficiency">Conversion efficiency, fraction (1 for pulse-width control).</param>
/// <param name="OwnUseW">Own use, day and night, W.</param>
/// <param name="ReconnectFraction">State of charge, fraction of usable, at which the lamp is reconnected after a disconnect; 0 switches hysteresis off.</param>
public sealed record ControlModel(ControlKind Kind, double ChargeCurrentA, double Efficiency, double OwnUseW, double ReconnectFraction);

/// <summary>One pole's power system.</summary>
/// <param name="LampInputW">Electrical input of the lamp at full level, wiring losses included, W.</param>
public sealed record PowerSystem(ArrayModel Array, BatteryModel Battery, ControlModel Control, double LampInputW);

/// <summary>Where the energy of the simulated years went, Wh; In = Lamp + OwnUse + Losses + Dumped + StoreChange.</summary>
public sealed record EnergyLedger(
    double InWh, double LampWh, double OwnUseWh, double LossesWh, double DumpedWh, double StoreChangeWh, double DemandWh, double UnservedWh);

/// <summary>Result of an hourly energy balance over all years of a sequence.</summary>
/// <param name="LossOfLoadFraction">Unserved over demanded lamp energy.</param>
/// <param name="DarkNightsPerYear">Mean nights a year with any step below the level asked for.</param>
/// <param name="DarkNightsUpperBound">Upper 90 % bound of that mean, from the spread between years.</param>
/// <param name="WorstYearDarkNights">Dark nights of the worst year.</param>
/// <param name="LongestDarkRunNights">Longest run of dark nights.</param>
/// <param name="LowestStateByMonth">Lowest state of charge of each month, fraction of rated capacity at end of life.</param>
/// <param name="FullChargeDaysFraction">Share of days on which full charge is reached.</param>
/// <param name="LongestWithoutFullDays">Longest run of days without full charge.</param>
/// <param name="EquivalentFullCyclesPerYear">Energy discharged a year over capacity.</param>
/// <param name="MonthlySupplyWhPerDay">Energy the array could deliver to the battery terminals, mean of each month, Wh a day.</param>
/// <param name="MonthlyDemandWhPerDay">Lamp and own use, mean of each month, Wh a day.</param>
/// <param name="WorstMonthStates">Hourly state of charge over the worst calendar month simulated, fraction.</param>
/// <param name="WorstMonth">That month, 1 to 12.</param>
/// <param name="WorstMonthYear">Its year in the sequence, 1-based.</param>
public sealed record EnergyResult(
    int YearCount,
    double LossOfLoadFraction,
    double DarkNightsPerYear,
    double DarkNightsUpperBound,
    int WorstYearDarkNights,
    int LongestDarkRunNights,
    ImmutableArray<double> LowestStateByMonth,
    double FullChargeDaysFraction,
    int LongestWithoutFullDays,
    double EquivalentFullCyclesPerYear,
    ImmutableArray<double> MonthlySupplyWhPerDay,
    ImmutableArray<double> MonthlyDemandWhPerDay,
    ImmutableArray<double> WorstMonthStates,
    int WorstMonth,
    int WorstMonthYear,
    EnergyLedger Ledger)
{
    /// <summary>Where the mean number of dark nights a year lies, two-sided 90 %.</summary>
    public DarkNightRange DarkNightRange { get; init; } = new(0, 0);

    /// <summary>Dark nights of each year, in order.</summary>
    public ImmutableArray<int> DarkNightsByYear { get; init; } = [];

    /// <summary>Mean length of a run of dark nights; where no night was dark, the length assumed for the bound.</summary>
    public double MeanRunNights { get; init; } = 1;

    /// <summary>Time from empty back to full.</summary>
    public RecoveryTimes Recovery { get; init; } = RecoveryTimes.None;

    /// <summary>Unserved over demanded lamp energy of each calendar month, January first; 0 where nothing is asked.</summary>
    public ImmutableArray<double> LossOfLoadByMonth { get; init; } = [.. Enumerable.Repeat(0.0, 12)];

    /// <summary>The worst 30 consecutive days.</summary>
    public WorstSpell WorstSpell { get; init; } = WorstSpell.None;
}

/// <summary>Inputs of the hand method.</summary>
public sealed record HandInputs(
    double NightlyWh,
    ImmutableArray<double> MonthlyPlaneKWhPerM2,
    ImmutableArray<double> MonthlyDemandWh,
    double AutonomyNights,
    double UsableDepthFraction,
    double EndOfLifeFraction,
    double TemperatureFactor,
    double DischargeEfficiency,
    double ChargeEfficiency,
    double ArrayDeratingFactor,
    double ArrayToLoadRatio,
    double RecoveryDays);

/// <summary>Result of the hand method.</summary>
/// <param name="DesignMonth">Month with the least plane irradiation per demand, 1 to 12.</param>
/// <param name="BatteryRatedWh">Rated energy needed for the autonomy, Wh.</param>
/// <param name="ArrayRatioWp">Array needed for the array-to-load ratio in the design month, Wp.</param>
/// <param name="ArrayRecoveryWp">Array needed to refill the battery from empty within the recovery days, Wp.</param>
public sealed record HandResult(int DesignMonth, double BatteryRatedWh, double ArrayRatioWp, double ArrayRecoveryWp)
{
    public double ArrayWp => Math.Max(ArrayRatioWp, ArrayRecoveryWp);
}

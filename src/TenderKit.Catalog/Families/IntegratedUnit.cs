using System.Collections.Immutable;
using TenderKit.Sizing.Energy;

namespace TenderKit.Catalog.Families;

/// <summary>
/// Lamp, module, battery and controller in one housing on the pole's arm. The module is fixed to the lamp head and faces where the road
/// dictates. The four families it unites are seen through <see cref="AsLuminaire"/>, <see cref="AsModule"/>, <see cref="AsBattery"/> and
/// <see cref="AsController"/>, so that it stands the same checks as separate parts; its price, weight and lead time stay its own.
/// </summary>
public sealed record IntegratedUnit : Part
{
    /// <summary>Input power of the lamp at full level, driver included, W.</summary>
    public required double InputPowerW { get; init; }

    /// <summary>Luminous flux at full level, lm.</summary>
    public required double FluxLm { get; init; }

    /// <summary>LM-63 file name in the catalogue's <c>photometry</c> folder.</summary>
    public required string PhotometricFile { get; init; }

    /// <summary>Lowest level it can be dimmed to, fraction; 1 when it cannot be dimmed.</summary>
    public required double LeastLevelFraction { get; init; }

    public required int ColourTemperatureK { get; init; }

    /// <summary>Ingress protection, e.g. 66.</summary>
    public required int IpCode { get; init; }

    /// <summary>Impact protection, e.g. 8.</summary>
    public required int IkCode { get; init; }

    /// <summary>Rated life to 80 % of initial flux, h.</summary>
    public required double LifeL80H { get; init; }

    /// <summary>Area of the head seen by the wind from the side, module left out, m2.</summary>
    public required double WindAreaM2 { get; init; }

    /// <summary>Highest ambient temperature, degC.</summary>
    public required double MaxAmbientC { get; init; }

    public required double RatedWp { get; init; }

    public required double OpenCircuitV { get; init; }

    public required double ShortCircuitA { get; init; }

    public required double MaximumPowerV { get; init; }

    public required double MaximumPowerA { get; init; }

    /// <summary>Power temperature coefficient, 1/K, negative.</summary>
    public required double PowerCoefficientPerK { get; init; }

    /// <summary>Open-circuit voltage temperature coefficient, 1/K, negative.</summary>
    public required double VoltageCoefficientPerK { get; init; }

    public required double NoctC { get; init; }

    public required double ModuleLengthM { get; init; }

    public required double ModuleWidthM { get; init; }

    /// <summary>Tilt of the module against the head's own axis, degrees, positive where it faces more towards the arm's end; 0 when it lies flat on the head. The arm's rise tips it back by as much.</summary>
    public required double ModuleTiltDegrees { get; init; }

    public required BatteryChemistry Chemistry { get; init; }

    public required double NominalVoltageV { get; init; }

    public required double RatedAh { get; init; }

    /// <summary>Hours of the rating: 10 for C/10.</summary>
    public required double RatedHours { get; init; }

    public required double PeukertExponent { get; init; }

    /// <summary>Greatest depth of discharge the maker allows in daily use, fraction.</summary>
    public required double MaxDepthFraction { get; init; }

    /// <summary>Cycles at <see cref="CycleDepthFraction"/> to end of life.</summary>
    public required double CyclesAtDepth { get; init; }

    public required double CycleDepthFraction { get; init; }

    /// <summary>Calendar life at 25 degC, years.</summary>
    public required double CalendarYearsAt25C { get; init; }

    public required double ChargeEfficiency { get; init; }

    public required double DischargeEfficiency { get; init; }

    public required double SelfDischargePerMonthFraction { get; init; }

    /// <summary>No charging below this, degC.</summary>
    public required double LeastChargeC { get; init; }

    /// <summary>Highest operating temperature of the battery, degC.</summary>
    public required double MaxOperatingC { get; init; }

    /// <summary>Greatest charge current, A.</summary>
    public required double MaxChargeA { get; init; }

    /// <summary>Weight of the battery inside, kg.</summary>
    public required double BatteryWeightKg { get; init; }

    public required ControlKind Kind { get; init; }

    /// <summary>Conversion efficiency of the controller, fraction; 1 for pulse-width control.</summary>
    public required double Efficiency { get; init; }

    public required double OwnUseW { get; init; }

    /// <summary>Parts of the night with levels of their own it can hold.</summary>
    public required int ScheduleParts { get; init; }

    /// <summary>Whether it lowers the lamp by itself when the battery runs low; light below the level asked for counts as dark.</summary>
    public bool DimsOnLowBattery { get; init; }

    /// <summary>Least spigot diameter the fitter takes, mm; null when not known.</summary>
    public double? SpigotMinMm { get; init; }

    /// <summary>Greatest spigot diameter the fitter takes, mm; null when not known.</summary>
    public double? SpigotMaxMm { get; init; }

    public double RatedWh => NominalVoltageV * RatedAh;

    /// <summary>The lamp inside; without price.</summary>
    public Luminaire AsLuminaire() => new()
    {
        Code = Code, Description = Description, UnitPrice = 0, Currency = Currency, Certificates = Certificates, WarrantyYears = WarrantyYears,
        InputPowerW = InputPowerW, FluxLm = FluxLm, PhotometricFile = PhotometricFile, MinVoltageV = 0, MaxVoltageV = 1000,
        LeastLevelFraction = LeastLevelFraction, ColourTemperatureK = ColourTemperatureK, IpCode = IpCode, IkCode = IkCode, LifeL80H = LifeL80H,
        WindAreaM2 = WindAreaM2, MaxAmbientC = MaxAmbientC, WeightKg = WeightKg, SpigotMinMm = SpigotMinMm, SpigotMaxMm = SpigotMaxMm,
    };

    /// <summary>The module on the head; without price and weight.</summary>
    public Module AsModule() => new()
    {
        Code = Code, Description = Description, UnitPrice = 0, Currency = Currency, Certificates = Certificates, WarrantyYears = WarrantyYears,
        RatedWp = RatedWp, OpenCircuitV = OpenCircuitV, ShortCircuitA = ShortCircuitA, MaximumPowerV = MaximumPowerV, MaximumPowerA = MaximumPowerA,
        PowerCoefficientPerK = PowerCoefficientPerK, VoltageCoefficientPerK = VoltageCoefficientPerK, NoctC = NoctC, LengthM = ModuleLengthM, WidthM = ModuleWidthM,
        MaxSeriesFuseA = 2 * ShortCircuitA,
    };

    /// <summary>The battery inside; without price, its weight for the plausibility of its energy only.</summary>
    public Battery AsBattery() => new()
    {
        Code = Code, Description = Description, UnitPrice = 0, Currency = Currency, Certificates = Certificates, WarrantyYears = WarrantyYears,
        Chemistry = Chemistry, NominalVoltageV = NominalVoltageV, RatedAh = RatedAh, RatedHours = RatedHours, PeukertExponent = PeukertExponent,
        MaxDepthFraction = MaxDepthFraction, CyclesAtDepth = CyclesAtDepth, CycleDepthFraction = CycleDepthFraction, CalendarYearsAt25C = CalendarYearsAt25C,
        ChargeEfficiency = ChargeEfficiency, DischargeEfficiency = DischargeEfficiency, SelfDischargePerMonthFraction = SelfDischargePerMonthFraction,
        LeastChargeC = LeastChargeC, MaxOperatingC = MaxOperatingC, MaxChargeA = MaxChargeA, WeightKg = BatteryWeightKg,
    };

    /// <summary>The controller inside; made for its own battery, lamp and module, so its limits are theirs.</summary>
    public Controller AsController() => new()
    {
        Code = Code, Description = Description, UnitPrice = 0, Currency = Currency, Certificates = Certificates, WarrantyYears = WarrantyYears,
        Kind = Kind, SystemVoltagesV = [.. new[] { 12.0, 24.0 }], RatedChargeA = MaxChargeA, RatedLoadA = 1000, MaxArrayV = 1000, MaxArrayWpPerV = 0,
        MaxArrayShortCircuitA = 1000, Efficiency = Efficiency, OwnUseW = OwnUseW, Chemistries = ImmutableArray.Create(Chemistry), ScheduleParts = ScheduleParts,
        Dimming = LeastLevelFraction < 1, AdjustableDisconnect = true, MaxAmbientC = MaxAmbientC,
    };
}

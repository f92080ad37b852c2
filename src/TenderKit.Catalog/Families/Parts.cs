using System.Collections.Immutable;
using TenderKit.Sizing.Energy;

namespace TenderKit.Catalog.Families;

/// <summary>What every part has. A csv column is the property's name in snake case: <c>UnitPrice</c> is <c>unit_price</c>, <c>RatedWp</c> is <c>rated_wp</c>.</summary>
public abstract record Part
{
    /// <summary>Item code, unique over all families.</summary>
    public required string Code { get; init; }

    /// <summary>Description a stranger can buy from; no brand.</summary>
    public required string Description { get; init; }

    /// <summary>Supply price of one unit of sale, in <see cref="Currency"/>.</summary>
    public required decimal UnitPrice { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }

    public DateOnly? PriceValidUntil { get; init; }

    public int LeadTimeDays { get; init; }

    public double WarrantyYears { get; init; }

    /// <summary>Weight of one unit of sale, kg.</summary>
    public double WeightKg { get; init; }

    /// <summary>Shipping volume of one unit of sale, m3.</summary>
    public double VolumeM3 { get; init; }

    /// <summary>Harmonised System code, indicative.</summary>
    public string CustomsCode { get; init; } = "";

    /// <summary>Certificates and standards claimed, separated by ';'.</summary>
    public string Certificates { get; init; } = "";

    /// <summary>Day the price was given.</summary>
    public DateOnly? PriceDate { get; init; }

    /// <summary>Least quantity the seller takes an order for, in units of sale.</summary>
    public decimal MinimumOrder { get; init; } = 1;

    /// <summary>Pack size: an order is a whole multiple of it (a drum of cable, a pallet of modules), in units of sale.</summary>
    public decimal OrderMultiple { get; init; } = 1;

    /// <summary>Unit prices of larger quantities, by rising quantity; as text <c>50:43.20;200:41.00</c>. Below the first, <see cref="UnitPrice"/> holds.</summary>
    public ImmutableArray<PriceBreak> PriceBreaks { get; init; } = [];

    /// <summary>File of the data sheet that states the ratings.</summary>
    public string DataSheetFile { get; init; } = "";

    /// <summary>Page of the data sheet with the ratings, 1-based.</summary>
    public int? DataSheetPage { get; init; }

    /// <summary>Country of origin, two letters of ISO 3166-1; empty when not known.</summary>
    public string Origin { get; init; } = "";

    /// <summary>Unit price when this quantity is bought at once, in <see cref="Currency"/>.</summary>
    /// <param name="quantity">Units of sale, 0 or more.</param>
    public decimal UnitPriceFor(decimal quantity)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(quantity);
        return PriceBreaks.LastOrDefault(b => b.FromQuantity <= quantity)?.UnitPrice ?? UnitPrice;
    }

    /// <summary>Least quantity that can be ordered to have this quantity: never below the minimum order, in whole packs.</summary>
    /// <param name="quantity">Units of sale, above 0.</param>
    public decimal OrderQuantityFor(decimal quantity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(quantity);
        return Math.Ceiling(Math.Max(quantity, MinimumOrder) / OrderMultiple) * OrderMultiple;
    }
}

public sealed record Luminaire : Part
{
    /// <summary>Input power at full level, driver included, W.</summary>
    public required double InputPowerW { get; init; }

    /// <summary>Luminous flux at full level, lm.</summary>
    public required double FluxLm { get; init; }

    /// <summary>LM-63 file name in the catalogue's <c>photometry</c> folder.</summary>
    public required string PhotometricFile { get; init; }

    /// <summary>Lowest input voltage, V DC.</summary>
    public required double MinVoltageV { get; init; }

    /// <summary>Highest input voltage, V DC.</summary>
    public required double MaxVoltageV { get; init; }

    /// <summary>Lowest level it can be dimmed to, fraction; 1 when it cannot be dimmed.</summary>
    public required double LeastLevelFraction { get; init; }

    public required int ColourTemperatureK { get; init; }

    /// <summary>Ingress protection, e.g. 66.</summary>
    public required int IpCode { get; init; }

    /// <summary>Impact protection, e.g. 8.</summary>
    public required int IkCode { get; init; }

    /// <summary>Rated life to 80 % of initial flux, h.</summary>
    public required double LifeL80H { get; init; }

    /// <summary>Area seen by the wind, m2.</summary>
    public required double WindAreaM2 { get; init; }

    /// <summary>Highest ambient temperature, degC.</summary>
    public required double MaxAmbientC { get; init; }

    /// <summary>Least spigot diameter the fitter takes, mm; null when not known.</summary>
    public double? SpigotMinMm { get; init; }

    /// <summary>Greatest spigot diameter the fitter takes, mm; null when not known.</summary>
    public double? SpigotMaxMm { get; init; }

    /// <summary>How the supply is connected, in open-standard words: cable tail, cable gland, 2-pole DC plug; empty when not known.</summary>
    public string Connector { get; init; } = "";
}

public sealed record Module : Part
{
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

    public required double LengthM { get; init; }

    public required double WidthM { get; init; }

    /// <summary>Greatest series fuse allowed by the maker, A.</summary>
    public required double MaxSeriesFuseA { get; init; }

    /// <summary>How the cables end, in open-standard words; empty when not known.</summary>
    public string Connector { get; init; } = "";

    /// <summary>Length of each of the two cables, m; null when not known.</summary>
    public double? CableLengthM { get; init; }
}

public sealed record Battery : Part
{
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

    /// <summary>Highest operating temperature, degC.</summary>
    public required double MaxOperatingC { get; init; }

    /// <summary>Greatest charge current, A.</summary>
    public required double MaxChargeA { get; init; }

    /// <summary>Width of the case, mm; null when not known.</summary>
    public double? WidthMm { get; init; }

    /// <summary>Height of the case with its terminals, mm; null when not known.</summary>
    public double? HeightMm { get; init; }

    /// <summary>Depth of the case, mm; null when not known.</summary>
    public double? DepthMm { get; init; }

    /// <summary>Absorption charge voltage the maker asks for at 25 degC, V for the whole battery; null when not known.</summary>
    public double? AbsorptionV { get; init; }

    public double RatedWh => NominalVoltageV * RatedAh;

    /// <summary>
    /// Whether the enclosure must let gas out: every lead-acid battery gives off hydrogen when it is charged, the sealed ones little
    /// (IEC 62485-2, ventilation; from memory).
    /// </summary>
    public bool NeedsVenting => Chemistry != BatteryChemistry.LithiumIronPhosphate;
}

public sealed record Controller : Part
{
    public required ControlKind Kind { get; init; }

    /// <summary>System voltages, V.</summary>
    public required ImmutableArray<double> SystemVoltagesV { get; init; }

    public required double RatedChargeA { get; init; }

    public required double RatedLoadA { get; init; }

    /// <summary>Greatest open-circuit array voltage, V.</summary>
    public required double MaxArrayV { get; init; }

    /// <summary>Greatest array power per volt of system voltage, Wp/V; 0 when not limited.</summary>
    public required double MaxArrayWpPerV { get; init; }

    /// <summary>Greatest array short-circuit current, A.</summary>
    public required double MaxArrayShortCircuitA { get; init; }

    /// <summary>Conversion efficiency, fraction; 1 for pulse-width control.</summary>
    public required double Efficiency { get; init; }

    public required double OwnUseW { get; init; }

    public required ImmutableArray<BatteryChemistry> Chemistries { get; init; }

    /// <summary>Parts of the night with levels of their own it can hold.</summary>
    public required int ScheduleParts { get; init; }

    /// <summary>Whether it can dim the luminaire (otherwise only on and off).</summary>
    public required bool Dimming { get; init; }

    /// <summary>Adjustable disconnect and reconnect voltages.</summary>
    public required bool AdjustableDisconnect { get; init; }

    public required double MaxAmbientC { get; init; }

    /// <summary>Lowest absorption voltage that can be set, V per 12 V of system voltage; null when not known.</summary>
    public double? LeastAbsorptionV { get; init; }

    /// <summary>Highest absorption voltage that can be set, V per 12 V of system voltage; null when not known.</summary>
    public double? GreatestAbsorptionV { get; init; }

    /// <summary>Temperature compensation of the charge voltages, mV/K for a 2 V cell, negative; 0 for none, null when not known.</summary>
    public double? TemperatureCompensationMvPerK { get; init; }

    /// <summary>Whether several may charge one battery side by side; null when not known.</summary>
    public bool? ParallelAllowed { get; init; }

    /// <summary>Ingress protection, e.g. 67; null when not known.</summary>
    public int? IpCode { get; init; }
}

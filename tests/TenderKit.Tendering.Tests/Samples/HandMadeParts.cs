using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Wiring;

namespace TenderKit.Tendering.Tests.Samples;

/// <summary>An invented catalogue for tests: every part, price and rating is made up.</summary>
public static class HandMadeParts
{
    public static readonly ImmutableArray<Luminaire> Luminaires =
    [
        Lamp("LUM-15", "LED street luminaire, 12/24 V DC, dimmable driver, die-cast aluminium", 15, 2250, 62m),
        Lamp("LUM-30", "LED street luminaire, 12/24 V DC, dimmable driver, die-cast aluminium", 30, 4650, 88m),
        Lamp("LUM-45", "LED street luminaire, 12/24 V DC, dimmable driver, die-cast aluminium", 45, 7100, 117m),
    ];

    public static readonly ImmutableArray<Module> Modules =
    [
        Panel("MOD-060", 60, 22.3, 3.5, 18.4, 3.26, 0.67, 0.68, 34.5m),
        Panel("MOD-110", 110, 22.6, 6.3, 18.7, 5.88, 1.03, 0.68, 52m),
        Panel("MOD-170", 170, 22.8, 9.6, 18.9, 8.99, 1.48, 0.68, 74m),
    ];

    public static readonly ImmutableArray<Battery> Batteries = [Cell("BAT-L060", 60, 148m), Cell("BAT-L100", 100, 231m)];

    public static readonly ImmutableArray<Controller> Controllers =
    [
        Control("CON-T10", ControlKind.Tracking, 10, 0.96, 41m), Control("CON-P20", ControlKind.PulseWidth, 20, 1, 19.5m),
    ];

    public static readonly ImmutableArray<Pole> Poles = [Mast("POL-060", 6, 140, 68, 96, 15800m), Mast("POL-080", 8, 175, 76, 148, 24600m)];

    public static readonly ImmutableArray<FoundationSet> Foundations =
    [
        Base("FND-080", 0.8, 1.0, 16, 22.5, 3150m), Base("FND-100", 1.0, 1.2, 20, 38, 4480m),
    ];

    public static readonly ImmutableArray<Cable> Cables = [Wire("CAB-2X1.5", 1.5, false, 118m), Wire("CAB-2X2.5", 2.5, true, 164m), Wire("CAB-2X4", 4, true, 246m)];

    public static readonly ImmutableArray<ProtectionDevice> Protection =
    [
        Guard("PRO-F10", "Cartridge fuse, slow, with holder, direct current", ProtectionKind.Fuse, 10, 58, 2.4m, 0.05),
        Guard("PRO-F15", "Cartridge fuse, slow, with holder, direct current", ProtectionKind.Fuse, 15, 58, 2.6m, 0.05),
        Guard("PRO-SPD", "Surge arrester, type 2, direct current, pluggable", ProtectionKind.SurgeArrester, 0, 75, 18.9m, 0.15),
        Guard("PRO-ROD", "Earth electrode, copper-bonded steel, 16 mm x 1.5 m, with clamp", ProtectionKind.EarthElectrode, 0, 0, 11.2m, 2.6),
    ];

    public static readonly ImmutableArray<Enclosure> Enclosures =
    [
        new() { Code = "ENC-30", Description = "Lockable steel enclosure, vented, pole mounted, anti-theft fixings", UnitPrice = 7900m, Currency = "KES", PriceValidUntil = PricesHold, LeadTimeDays = 21, WarrantyYears = 5, WeightKg = 11, VolumeM3 = 0.06, CustomsCode = "7326.90", UsableVolumeL = 30, MaxContentKg = 40, IpCode = 55, WindAreaM2 = 0.12 },
    ];

    public static readonly ImmutableArray<Bracket> Brackets =
    [
        new() { Code = "BRK-12", Description = "Pole-top module bracket, galvanised steel, adjustable tilt", UnitPrice = 3850m, Currency = "KES", PriceValidUntil = PricesHold, LeadTimeDays = 21, WarrantyYears = 10, WeightKg = 8.5, VolumeM3 = 0.03, CustomsCode = "7308.90", MaxModuleAreaM2 = 1.6, MinTiltDegrees = 5, MaxTiltDegrees = 45 },
    ];

    public static readonly ImmutableArray<ServiceRate> Services =
    [
        Work("SRV-SETUP", "Site set-up: store, access, signs and guarding, clearing away", "sum", ServiceUse.SetUpSite, 185000m),
        Work("SRV-SURVEY", "Survey and peg one pole position, with record sheet", "No.", ServiceUse.Survey, 640m),
        Work("SRV-EXC", "Excavate pole foundation by hand in soil, cart away surplus", "m3", ServiceUse.Excavate, 1450m),
        Work("SRV-CON", "Concrete grade C25/30 in pole foundation, with formwork and cure", "m3", ServiceUse.Concrete, 16900m),
        Work("SRV-REB", "Reinforcement, deformed bars, cut, bent and fixed", "kg", ServiceUse.Reinforcement, 185m),
        Work("SRV-POLE", "Erect pole on anchor bolts, plumb, grout under base plate", "No.", ServiceUse.ErectPole, 5200m),
        Work("SRV-KIT", "Fit module, luminaire, enclosure, battery and controller on one pole, connect", "No.", ServiceUse.FitKit, 3900m),
        Work("SRV-CAB", "Draw cable in pole or duct", "m", ServiceUse.LayCable, 65m),
        Work("SRV-COM", "Test, set and commission one pole, with record", "No.", ServiceUse.Commission, 1850m),
        Work("SRV-TRAIN", "Training of the employer's technicians, two days, eight persons", "sum", ServiceUse.Train, 98000m),
        Work("SRV-DOC", "As-built drawings, manuals and spare-parts list, three sets", "sum", ServiceUse.Documents, 54000m),
        Work("SRV-MNT", "Maintenance of one pole for one year: two visits, cleaning, tests, report", "No.", ServiceUse.MaintainYear, 2150m),
        Work("SRV-FIX", "Fixings, glands, terminals, labels and sealing for one pole", "set", ServiceUse.FixingsPerPole, 1250m),
    ];

    public static readonly PartsCatalog Catalog = new(
        Luminaires, Modules, Batteries, Controllers, Poles, Foundations, Cables, Protection, Enclosures, Brackets, Services);

    private static DateOnly PricesHold => new(2027, 6, 30);

    private static Luminaire Lamp(string code, string words, double watts, double flux, decimal price) => new()
    {
        Code = code, Description = words, UnitPrice = price, Currency = "USD", PriceValidUntil = PricesHold, LeadTimeDays = 45, WarrantyYears = 5, WeightKg = 3.4, VolumeM3 = 0.018,
        CustomsCode = "9405.41", Certificates = "IEC 60598-2-3; IEC 62262", InputPowerW = watts, FluxLm = flux, PhotometricFile = "lum-road.ies", MinVoltageV = 10, MaxVoltageV = 30,
        LeastLevelFraction = 0.2, ColourTemperatureK = 3000, IpCode = 66, IkCode = 8, LifeL80H = 60000, WindAreaM2 = 0.05, MaxAmbientC = 50,
    };

    private static Module Panel(string code, double wp, double voc, double isc, double vmp, double imp, double length, double width, decimal price) => new()
    {
        Code = code, Description = "Photovoltaic module, monocrystalline silicon, framed, 36 cells", UnitPrice = price, Currency = "USD", PriceValidUntil = PricesHold, LeadTimeDays = 45, WarrantyYears = 10,
        WeightKg = 7 * length, VolumeM3 = 0.04 * length, CustomsCode = "8541.43", Certificates = "IEC 61215; IEC 61730", RatedWp = wp, OpenCircuitV = voc, ShortCircuitA = isc,
        MaximumPowerV = vmp, MaximumPowerA = imp, PowerCoefficientPerK = -0.0037, VoltageCoefficientPerK = -0.0028, NoctC = 45, LengthM = length, WidthM = width, MaxSeriesFuseA = 15,
    };

    private static Battery Cell(string code, double ah, decimal price) => new()
    {
        Code = code, Description = "Battery, lithium iron phosphate, sealed, with protection circuit", UnitPrice = price, Currency = "EUR", PriceValidUntil = PricesHold, LeadTimeDays = 60, WarrantyYears = 5,
        WeightKg = 0.12 * ah, VolumeM3 = 0.00016 * ah, CustomsCode = "8507.60", Certificates = "IEC 62619; UN 38.3", Chemistry = BatteryChemistry.LithiumIronPhosphate, NominalVoltageV = 12.8, RatedAh = ah,
        RatedHours = 5, PeukertExponent = 1.02, MaxDepthFraction = 0.8, CyclesAtDepth = 3000, CycleDepthFraction = 0.8, CalendarYearsAt25C = 12, ChargeEfficiency = 0.97,
        DischargeEfficiency = 0.97, SelfDischargePerMonthFraction = 0.03, LeastChargeC = 0, MaxOperatingC = 55, MaxChargeA = 0.5 * ah,
    };

    private static Controller Control(string code, ControlKind kind, double amps, double efficiency, decimal price) => new()
    {
        Code = code, Description = "Charge controller with lamp output and night schedule", UnitPrice = price, Currency = "USD", PriceValidUntil = PricesHold, LeadTimeDays = 45, WarrantyYears = 3, WeightKg = 0.4,
        VolumeM3 = 0.001, CustomsCode = "8504.40", Certificates = "IEC 62509", Kind = kind, SystemVoltagesV = [12, 24], RatedChargeA = amps, RatedLoadA = amps, MaxArrayV = 55, MaxArrayWpPerV = 20,
        MaxArrayShortCircuitA = 15, Efficiency = efficiency, OwnUseW = 0.12, Chemistries = [BatteryChemistry.LithiumIronPhosphate, BatteryChemistry.GelLeadAcid], ScheduleParts = 5, Dimming = true,
        AdjustableDisconnect = true, MaxAmbientC = 55,
    };

    private static Pole Mast(string code, double height, double baseMm, double topMm, double kg, decimal price) => new()
    {
        Code = code, Description = "Tapered round steel pole, hot-dip galvanised, base plate, cable entry, single arm", UnitPrice = price, Currency = "KES", PriceValidUntil = PricesHold, LeadTimeDays = 30,
        WarrantyYears = 10, WeightKg = kg, VolumeM3 = 0.25, CustomsCode = "7308.90", Certificates = "EN 40-5; ISO 1461", HeightM = height, BaseDiameterMm = baseMm, TopDiameterMm = topMm, WallMm = 3,
        YieldMPa = 235, ArmReachM = 1, ArmTiltDegrees = 5, BasePlateMm = 300, ZincUm = 70,
    };

    private static FoundationSet Base(string code, double side, double depth, double bolt, double steelKg, decimal price) => new()
    {
        Code = code, Description = "Anchor bolt set with template, nuts and washers, galvanised", UnitPrice = price, Currency = "KES", PriceValidUntil = PricesHold, LeadTimeDays = 14, WarrantyYears = 10, WeightKg = 9,
        VolumeM3 = 0.01, CustomsCode = "7318.15", LengthM = side, WidthM = side, DepthM = depth, AnchorBoltMm = bolt, AnchorBoltCount = 4, AnchorBoltLengthMm = 700, ReinforcementKg = steelKg,
    };

    private static Cable Wire(string code, double mm2, bool outdoor, decimal price) => new()
    {
        Code = code, Description = outdoor ? "Cable, copper, sheathed, ultraviolet resistant" : "Cable, copper, sheathed", UnitPrice = price, Currency = "KES", PriceValidUntil = PricesHold,
        LeadTimeDays = 14, WarrantyYears = 1, WeightKg = 0.06 + (0.03 * mm2), VolumeM3 = 0.0002, CustomsCode = "8544.49", Certificates = "IEC 60228", Cores = 2, CrossSectionMm2 = mm2,
        ConductorClass = ConductorClass.Flexible5, Insulation = outdoor ? CableInsulation.CrossLinked90 : CableInsulation.Pvc70, Outdoor = outdoor,
    };

    private static ProtectionDevice Guard(string code, string words, ProtectionKind kind, double amps, double volts, decimal price, double kg) => new()
    {
        Code = code, Description = words, UnitPrice = price, Currency = "USD", PriceValidUntil = PricesHold, LeadTimeDays = 30, WarrantyYears = 1, WeightKg = kg, VolumeM3 = 0.0003, CustomsCode = "8536.10",
        Kind = kind, RatedA = amps, RatedV = volts,
    };

    private static ServiceRate Work(string code, string words, string unit, ServiceUse use, decimal price) =>
        new() { Code = code, Description = words, UnitPrice = price, Currency = "KES", PriceValidUntil = PricesHold, Unit = unit, Use = use };
}

using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>The starter tender as read, and an integrated unit of our own invention.</summary>
internal static class StarterTender
{
    private static readonly Lazy<DesignInputs> _inputs = new(() => TenderLoader.Load(Path.Combine(Root(), "templates", "starter", "tender.yaml")).Inputs!);

    public static DesignInputs Inputs => _inputs.Value;

    /// <summary>20 W lamp, 100 Wp flat on the head, 640 Wh of lithium iron phosphate.</summary>
    public static readonly IntegratedUnit Unit = new()
    {
        Code = "INT-20", Description = "Integrated unit 20 W", UnitPrice = 300, Currency = "USD", WeightKg = 18, VolumeM3 = 0.12, InputPowerW = 15, FluxLm = 2250,
        PhotometricFile = "LUM-R15-40.ies", LeastLevelFraction = 0.1, ColourTemperatureK = 4000, IpCode = 66, IkCode = 8, LifeL80H = 60000, WindAreaM2 = 0.06, MaxAmbientC = 55,
        RatedWp = 100, OpenCircuitV = 22.2, ShortCircuitA = 5.8, MaximumPowerV = 18.3, MaximumPowerA = 5.46, PowerCoefficientPerK = -0.0038, VoltageCoefficientPerK = -0.0029,
        NoctC = 47, ModuleLengthM = 1.0, ModuleWidthM = 0.55, ModuleTiltDegrees = 0, Chemistry = BatteryChemistry.LithiumIronPhosphate, NominalVoltageV = 12.8, RatedAh = 50,
        RatedHours = 5, PeukertExponent = 1.03, MaxDepthFraction = 0.9, CyclesAtDepth = 3000, CycleDepthFraction = 0.8, CalendarYearsAt25C = 12, ChargeEfficiency = 0.98,
        DischargeEfficiency = 0.98, SelfDischargePerMonthFraction = 0.03, LeastChargeC = 0, MaxOperatingC = 60, MaxChargeA = 25, BatteryWeightKg = 6, Kind = ControlKind.Tracking,
        Efficiency = 0.95, OwnUseW = 0.1, ScheduleParts = 5, DimsOnLowBattery = false,
    };

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "catalog-sample"))) folder = folder.Parent!;
        return folder.FullName;
    }
}

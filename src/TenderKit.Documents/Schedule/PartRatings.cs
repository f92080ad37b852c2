using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Schedule;

/// <summary>The ratings of a part in one line, no price.</summary>
internal static class PartRatings
{
    public static string Of(Part part) => part switch
    {
        Luminaire p => $"{N(p.InputPowerW)} W; {N(p.FluxLm)} lm; {N(p.ColourTemperatureK)} K; {N(p.MinVoltageV)} to {N(p.MaxVoltageV)} V DC; IP{p.IpCode:00}; "
            + $"IK{p.IkCode:00}; L80 {N(p.LifeL80H)} h",
        Module p => $"{N(p.RatedWp)} Wp; Vmp {N(p.MaximumPowerV)} V; Imp {N(p.MaximumPowerA)} A; Voc {N(p.OpenCircuitV)} V; Isc {N(p.ShortCircuitA)} A; "
            + $"{N(p.LengthM)} × {N(p.WidthM)} m",
        Battery p => $"{Words.Of(p.Chemistry)}; {N(p.NominalVoltageV)} V; {N(p.RatedAh)} Ah at C/{N(p.RatedHours)}; {N(p.RatedWh)} Wh; {N(p.CyclesAtDepth)} "
            + $"cycles at {Figures.Percent(p.CycleDepthFraction)} depth",
        Controller p => $"{Words.Of(p.Kind)}; {string.Join('/', p.SystemVoltagesV.Select(N))} V; charge {N(p.RatedChargeA)} A; load {N(p.RatedLoadA)} A; array "
            + $"up to {N(p.MaxArrayV)} V; own use {N(p.OwnUseW)} W",
        Pole p => $"{N(p.HeightM)} m; {N(p.BaseDiameterMm)}/{N(p.TopDiameterMm)} mm; wall {N(p.WallMm)} mm; yield {N(p.YieldMPa)} MPa; arm {N(p.ArmReachM)} m; "
            + $"zinc {N(p.ZincUm)} µm",
        Bracket p => $"up to {N(p.MaxModuleAreaM2)} m²; tilt {N(p.MinTiltDegrees)} to {N(p.MaxTiltDegrees)}°",
        Enclosure p => $"{N(p.UsableVolumeL)} L; {N(p.MaxContentKg)} kg; IP{p.IpCode:00}",
        FoundationSet p => $"block {N(p.LengthM)} × {N(p.WidthM)} × {N(p.DepthM)} m; {N(p.AnchorBoltCount)} bolts M{N(p.AnchorBoltMm)} × "
            + $"{N(p.AnchorBoltLengthMm)} mm; steel {N(p.ReinforcementKg)} kg",
        Cable p => $"{N(p.Cores)} × {N(p.CrossSectionMm2)} mm²",
        ProtectionDevice { Kind: ProtectionKind.EarthElectrode } => "–",
        ProtectionDevice p => string.Join("; ", new[] { p.RatedA > 0 ? N(p.RatedA) + " A" : "", p.RatedV > 0 ? N(p.RatedV) + " V DC" : "" }.Where(t =>
            t.Length > 0)),
        IntegratedUnit p => $"{N(p.InputPowerW)} W; {N(p.FluxLm)} lm; {N(p.RatedWp)} Wp; {Words.Of(p.Chemistry)} {N(p.RatedWh)} Wh; {Words.Of(p.Kind)}; IP{p.IpCode:00}; IK{p.IkCode:00}",
        _ => "",
    };

    private static string N(double value) => Figures.Short(value);
}

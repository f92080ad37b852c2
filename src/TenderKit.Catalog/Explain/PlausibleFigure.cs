using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;

namespace TenderKit.Catalog.Explain;

/// <summary>A ratio of two properties of a part against what is to be expected of it.</summary>
/// <param name="What">Such as rated power over area.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Least">Least to be expected; null for no limit.</param>
/// <param name="Greatest">Greatest to be expected; null for no limit.</param>
public sealed record PlausibleFigure(string What, double Value, string Unit, double? Least, double? Greatest)
{
    /// <summary>Whether the value lies within both limits.</summary>
    public bool IsPlausible => Value >= (Least ?? double.MinValue) && Value <= (Greatest ?? double.MaxValue);

    /// <summary>The figures of a part; none for a family that has none.</summary>
    public static IEnumerable<PlausibleFigure> Of(Part part) => part switch
    {
        Luminaire p => [Light(p.FluxLm, p.InputPowerW)],
        Module p => [Area(p.RatedWp, p.LengthM, p.WidthM)],
        Battery { WeightKg: > 0 } p => [Weight(p.RatedWh, p.WeightKg, p.Chemistry)],
        IntegratedUnit p => [Light(p.FluxLm, p.InputPowerW), Area(p.RatedWp, p.ModuleLengthM, p.ModuleWidthM), Weight(p.RatedWh, p.BatteryWeightKg, p.Chemistry)],
        _ => [],
    };

    private static PlausibleFigure Light(double fluxLm, double inputW) =>
        new("flux over input power", fluxLm / inputW, "lm/W", PartContradiction.LeastLmPerW, PartContradiction.GreatestLmPerW);

    private static PlausibleFigure Area(double ratedWp, double lengthM, double widthM) =>
        new("rated power over area", ratedWp / (lengthM * widthM), "W/m2", null, PartContradiction.GreatestModuleWPerM2);

    private static PlausibleFigure Weight(double ratedWh, double weightKg, BatteryChemistry chemistry) =>
        new("rated energy over weight", ratedWh / weightKg, "Wh/kg", null, PartContradiction.GreatestWhPerKg(chemistry));
}

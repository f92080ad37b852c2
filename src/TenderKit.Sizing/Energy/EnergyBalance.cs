using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Hour by hour energy balance of one pole over all years of a sequence.</summary>
public static class EnergyBalance
{
    public static EnergyResult Run(PlaneYears years, LampHours lamp, PowerSystem system) => throw new NotImplementedException();
}

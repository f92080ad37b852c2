using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>
/// What follows the first cost of a design on the whole site, at present value; nothing where the tender chooses by first cost. Batteries are replaced
/// at their expected life, luminaires when they have burnt the hours of L80, an integrated unit as a whole at the shorter of the two; no life is stated of
/// controllers, modules and the rest, so they stay.
/// </summary>
public sealed class LaterCosts(SiteClimate climate, DesignInputs inputs, Costs costs)
{
    private readonly ChoiceBasis _basis = inputs.Tender.Choice;
    private readonly double _litHoursPerYear = climate.Lamp.HourFraction.Count(f => f > 0);

    /// <summary>The least that can follow when only the light is known: its lamps, with an integrated unit the unit.</summary>
    public decimal LeastOf(LightOption light) => !_basis.ByPresentValue ? 0
        : light.Poles * PresentValue.OfReplacements(costs.Of((Part?)light.Integrated ?? light.Luminaire), LampYears(light.Luminaire), _basis);

    /// <summary>The least that can follow with some number of a battery: its calendar life, which cycling only shortens.</summary>
    public decimal LeastOf(LightOption light, Battery battery, int count) => !_basis.ByPresentValue ? 0
        : LeastOf(light) + (light.Poles * PresentValue.OfReplacements(costs.Of(battery) * count, CalendarYears(battery), _basis));

    /// <summary>The least that can follow a whole candidate whose energy balance is not run.</summary>
    public decimal LeastOf(Candidate candidate) => candidate.Light.Integrated is not null
        ? LeastOf(candidate.Light)
        : LeastOf(candidate.Light, candidate.Power.Bank.Battery, candidate.Power.Bank.InSeries * candidate.Power.Bank.Strings);

    /// <summary>What follows with the battery life of the energy balance.</summary>
    public decimal Of(Candidate candidate, double batteryLifeYears)
    {
        if (!_basis.ByPresentValue) return 0;
        var (light, bank) = (candidate.Light, candidate.Power.Bank);
        return light.Integrated is { } unit
            ? light.Poles * PresentValue.OfReplacements(costs.Of(unit), Math.Min(batteryLifeYears, LampYears(light.Luminaire)), _basis)
            : LeastOf(light) + (light.Poles * PresentValue.OfReplacements(costs.Of(bank.Battery) * bank.InSeries * bank.Strings, batteryLifeYears, _basis));
    }

    /// <summary>Years in which the lamp burns the hours of L80; an hour lit in part counts whole.</summary>
    private double LampYears(Luminaire luminaire) => _litHoursPerYear > 0 && luminaire.LifeL80H > 0 ? luminaire.LifeL80H / _litHoursPerYear : double.PositiveInfinity;

    private double CalendarYears(Battery battery) => BatteryCapacity.LifeYears(
        battery.CalendarYearsAt25C, battery.CyclesAtDepth, battery.CycleDepthFraction, 0, climate.Monthly.MeanC.Average() + inputs.Rules["battery.enclosure_rise"]);
}

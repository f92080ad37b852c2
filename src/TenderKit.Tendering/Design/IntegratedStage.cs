using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Integrated units: lamp, module, battery and controller in one housing, so nothing is chosen but the unit and its pole. Its module faces where the
/// arm points or away from it: across the road where the bearing of the road is known, else anywhere; of these headings the worst governs.
/// </summary>
internal static class IntegratedStage
{
    /// <summary>Checks that mean nothing inside a sealed unit: its maker has matched these parts, and their limits are not stated but only projected.</summary>
    private static readonly ImmutableHashSet<string> MakersOwn =
    [
        "controller.load_current", "controller.disconnect", "controller.charge_current", "array.cold_voltage", "array.short_circuit", "array.power",
        "luminaire.lowest_voltage", "luminaire.highest_voltage",
    ];

    /// <summary>Weather on the module for each heading the road may give it, the one with the least sun for its load first.</summary>
    public static ImmutableArray<SiteWeather> Weathers(IntegratedUnit unit, PoleShape shape, Site site, SiteWeather weather, DesignInputs inputs) =>
    [
        .. Headings.PlanesOf(site.BearingDegrees, RoadSide.Both, shape.ArmTiltDegrees, unit.ModuleTiltDegrees)
            .Select(plane => inputs.Shared.OnPlane(weather, plane, () => Turned(weather, plane, site, inputs)))
            .OrderBy(w => LeastSunPerHour(w.Climate)).ThenBy(w => w.Climate.Plane.AzimuthDegrees),
    ];

    /// <summary>The unit's own bank and array under its lamp at the level used; null when a check refuses it.</summary>
    public static PowerOption? Power(LightOption light, IntegratedUnit unit, Site site, SiteClimate climate, DesignInputs inputs, Rejections banks, Rejections arrays) =>
        BankStage.Inside(unit, light, site, climate, inputs, banks) is { } bank && ArrayStage.Exactly(bank, unit.AsModule(), 1, 1, climate, inputs, arrays) is { } power
            ? power
            : null;

    /// <summary>What bank and array of a unit are checked for, as far as it means anything inside a sealed unit.</summary>
    public static ImmutableArray<Check> PowerChecks(PowerOption power, LightOption light, Site site, SiteClimate climate, DesignInputs inputs) =>
        [.. PowerStages.Checks(power, light, site, climate, inputs).Where(c => !MakersOwn.Contains(c.Id))];

    /// <summary>Tilt of the module against the level, degrees.</summary>
    public static double TiltDegrees(IntegratedUnit unit, PoleShape shape) => Headings.PlaneOf(0, shape.ArmTiltDegrees, unit.ModuleTiltDegrees).TiltDegrees;

    /// <summary>No circuit is made on site; the pole is earthed.</summary>
    public static WiringOption Wiring(DesignInputs inputs, Costs costs) => new(
        [],
        [.. inputs.Catalog.Protection.Where(p => p.Kind == ProtectionKind.EarthElectrode).OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal).Take(1)],
        []);

    private static SiteWeather Turned(SiteWeather weather, PlaneOrientation plane, Site site, DesignInputs inputs)
    {
        var albedo = inputs.Rules["climate.albedo"];
        var climate = weather.Climate;
        ImmutableArray<double> usable =
            [.. TiltedPlane.MonthlyKWhPerM2(climate.Monthly, plane, albedo, site.Horizon).Select(h => h * climate.CautiousFactor * (1 - site.ShadedFraction))];
        return weather with
        {
            Climate = climate with { Plane = plane, PlaneKWhPerM2 = usable },
            HoursOf = () => TiltedPlane.Hourly(weather.Plane.Weather, plane, albedo, site.ShadedFraction, horizon: site.Horizon),
        };
    }

    private static double LeastSunPerHour(SiteClimate climate) => Enumerable.Range(0, 12)
        .Where(m => climate.Lamp.MonthlyFullHours[m] > 0).Select(m => climate.PlaneKWhPerM2[m] / climate.Lamp.MonthlyFullHours[m]).DefaultIfEmpty(0).Min();
}

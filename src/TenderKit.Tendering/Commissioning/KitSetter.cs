using System.Collections.Immutable;
using TenderKit.Sizing.Settings;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Commissioning;

/// <summary>Works out how each kit of a design is to be set, connected and tested.</summary>
public static class KitSetter
{
    /// <summary>Settings of one kit; set-points serve every site of it: the coldest and the hottest, the slowest night's rate, which disconnects first.</summary>
    public static KitSettings Of(TenderDesign design, Kit kit)
    {
        ImmutableArray<SiteDesign> sites = [.. design.Sites.Where(s => s.KitId == kit.Id)];
        var parts = kit.Parts;
        var systemV = SystemVoltage.ClassOf(parts.SystemVoltageV) ?? 12 * Math.Max(1, Math.Round(parts.SystemVoltageV / 12.8));
        var coldC = sites.Min(s => s.Climate.Monthly.RecordLowC);
        var hotC = sites.Max(s => s.Climate.Monthly.DailyMaxC.Max() + s.Energy.System.Battery.EnclosureRiseK);
        var compensation = (parts.Controller.TemperatureCompensationMvPerK ?? design.Rule("controller.compensation")) / 1000;
        var inputs = new SettingInputs(
            parts.Battery.Chemistry,
            systemV,
            sites.Min(s => s.Energy.System.Battery.UsableDepthFraction),
            sites.Max(NightHours),
            Math.Clamp(compensation, -0.008, 0),
            coldC,
            hotC,
            parts.Battery.AbsorptionV * parts.BatteriesInSeries,
            parts.Controller.LeastAbsorptionV * systemV / 12,
            parts.Controller.GreatestAbsorptionV * systemV / 12);
        var settings = SetPoints.Of(inputs);
        return new KitSettings(
            kit.Id, systemV, settings, coldC, hotC, parts.Battery.MaxChargeA * parts.BatteryStrings,
            PoleWork.Order(parts), PoleWork.Tests(parts, settings, design.Rule("wiring.earth_ohm")), [.. sites.Select(SiteOf)]);
    }

    /// <summary>Hours in which the longest month's night would empty the battery at its mean rate.</summary>
    private static double NightHours(SiteDesign site) => site.Energy.System.Battery.RatedWh / (site.Energy.NightlyWh / site.Climate.DarkHours.Max());

    private static SiteSettings SiteOf(SiteDesign site)
    {
        var (target, light, factor) = (site.Site.Target, site.Light, site.MaintenanceFactor);
        return new SiteSettings(
            site.Site.Id, site.Site.Schedule.Name, light.LevelFraction, site.Climate.Plane.TiltDegrees, site.Climate.Plane.AzimuthDegrees, target.Name, factor,
            target.AverageLx > 0 ? target.AverageLx / factor : null,
            target.MinimumLx / factor,
            light.Result.AverageLx / factor,
            light.Result.MinimumLx / factor,
            GridOf(site));
    }

    private static string GridOf(SiteDesign site)
    {
        var result = site.Light.Result;
        if (site.Light.Area is { } area) return FormattableString.Invariant($"{result.Points.Length} points over the area as drawn, {area.Area.AreaM2:0} m2");
        return FormattableString.Invariant($"{result.PointsAlong} x {result.PointsAcross} points over ") + (site.Light.Yard is { } yard
            ? FormattableString.Invariant($"the yard, {yard.LengthM:0.#} x {yard.WidthM:0.#} m")
            : FormattableString.Invariant($"one bay, {site.Light.SpacingM:0.0} x {site.Site.WidthM:0.0} m"));
    }
}

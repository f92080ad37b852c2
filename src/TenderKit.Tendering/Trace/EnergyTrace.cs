using System.Collections.Immutable;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using static TenderKit.Tendering.Trace.FigureList;

namespace TenderKit.Tendering.Trace;

/// <summary>The load of the night, the sun of the worst month, array, battery and what the years of hours say of them.</summary>
internal static class EnergyTrace
{
    public static ImmutableArray<TracedFigure> Of(TenderDesign design, SiteDesign site)
    {
        var list = new FigureList(design, TraceGroup.Energy);
        AddLoad(list, site);
        AddSun(list, site);
        AddArray(list, site);
        AddBattery(list, site);
        AddYears(list, site);
        return list.Figures;
    }

    private static int Month(SiteDesign site) => site.Energy.Hand.DesignMonth;

    private static void AddLoad(FigureList list, SiteDesign site)
    {
        var (parts, lamp) = (site.Parts, site.Climate.Lamp);
        list.Add(
            "energy.lamp_input", "Luminaire input at the level used", site.Energy.LampInputW, "W", "lamp_input",
            Part("Pl", "rated input", parts.Luminaire.InputPowerW, "W", parts.Luminaire), Given("k", "level of the luminaire", site.Light.LevelFraction, "", TraceOrigin.Search),
            list.Rule("d", "wiring.drop_lamp", "loss of the lamp circuit at its limit"));
        void Night(string id, string name, double wh, double hours) => list.Add(
            id, name, wh, "Wh", "night", list.Figure("P", "energy.lamp_input"), Given("t", "hours at full power", hours, "h", TraceOrigin.Tender),
            Part("Po", "own use of the controller", site.Energy.System.Control.OwnUseW, "W", parts.Integrated is { } unit ? unit : parts.Controller));
        Night("energy.night", "Energy of the longest month's night", site.Energy.NightlyWh, lamp.LongestMonthFullHours);
        Night("energy.demand", FormattableString.Invariant($"Energy of a night of month {Month(site)}"), site.Energy.HandInputs.MonthlyDemandWh[Month(site) - 1], lamp.MonthlyFullHours[Month(site) - 1]);
    }

    private static void AddSun(FigureList list, SiteDesign site)
    {
        var (month, climate) = (Month(site), site.Climate);
        var open = climate.PlaneKWhPerM2[month - 1] / climate.CautiousFactor / (1 - site.Site.ShadedFraction);
        list.Add(
            "energy.plane", FormattableString.Invariant($"Irradiation on the module plane, month {month}, as the source has it"), open, "kWh/m2 a day", "plane_month",
            Given("H", "horizontal irradiation", climate.Monthly.IrradiationKWhPerM2[month - 1], "kWh/m2 a day", TraceOrigin.Climate),
            Given("month", "month with the least sun for its load", month, "", TraceOrigin.Climate), Given("latitude", "latitude of the climate", climate.Monthly.LatitudeDegrees, "degrees", TraceOrigin.Climate),
            Given("tilt", "tilt of the plane", climate.Plane.TiltDegrees, "degrees", TraceOrigin.Search), Given("azimuth", "azimuth of the plane from north", climate.Plane.AzimuthDegrees, "degrees", TraceOrigin.Search),
            list.Rule("albedo", "climate.albedo", "reflectance of the ground"), List("horizon", "horizon, azimuth and elevation in turn; none for a level one", Skyline(site), "degrees", TraceOrigin.Site));
        list.Add(
            "energy.plane_taken", FormattableString.Invariant($"Irradiation on the module plane, month {month}, as taken"), climate.PlaneKWhPerM2[month - 1], "kWh/m2 a day", "plane_taken",
            list.Figure("H", "energy.plane"), Given("f", "fraction for the grade of the climate", climate.CautiousFactor, "", TraceOrigin.Rule, ClimateGrades.RuleId(climate.Monthly.Grade)),
            Given("s", "shaded", site.Site.ShadedFraction, "", TraceOrigin.Site));
    }

    private static IEnumerable<double> Skyline(SiteDesign site) => site.Site.Horizon?.Points.SelectMany(p => new[] { p.AzimuthDegrees, p.ElevationDegrees }) ?? [];

    private static void AddArray(FigureList list, SiteDesign site)
    {
        var (parts, hand) = (site.Parts, site.Energy.HandInputs);
        TraceInput?[] Losses() =>
        [
            list.Figure("HT", "energy.plane_taken"), Given("f", "array derating: soiling, mismatch, ageing, wiring, control", hand.ArrayDeratingFactor, "", TraceOrigin.Rule, "energy.soiling, energy.mismatch, energy.ageing, energy.wiring"),
            Part("nc", "charge efficiency", hand.ChargeEfficiency, "", parts.Battery), Part("nd", "discharge efficiency", hand.DischargeEfficiency, "", parts.Battery),
        ];
        list.Add(
            "array.ratio", "Array for the array-to-load ratio", site.Energy.Hand.ArrayRatioWp, "Wp", "array_ratio",
            [list.Rule("r", "energy.array_to_load", "array-to-load ratio"), list.Figure("W", "energy.demand"), .. Losses()]);
        list.Add(
            "array.recovery", "Array to refill from empty", site.Energy.Hand.ArrayRecoveryWp, "Wp", "array_recovery",
            [list.Figure("W", "energy.demand"), Given("N", "nights of autonomy asked for", hand.AutonomyNights, "nights", TraceOrigin.Tender), list.Figure("Wn", "energy.night"), list.Rule("T", "energy.recovery_days", "days to refill"), .. Losses()]);
        list.Add(
            "array.rated", "Array offered", parts.ArrayWp, "Wp", "array_rated", Given("n", "modules", parts.ModuleCount, "", TraceOrigin.Search),
            Part("Wp", "rated power of a module", parts.Module.RatedWp, "Wp", parts.Integrated is { } unit ? unit : parts.Module));
        list.Add("array.yield", FormattableString.Invariant($"Yield for the load, a day of month {Month(site)}"), YieldWh(site), "Wh", "array_yield", [list.Figure("A", "array.rated"), .. Losses()]);
    }

    private static double YieldWh(SiteDesign site)
    {
        var hand = site.Energy.HandInputs;
        return site.Parts.ArrayWp * hand.MonthlyPlaneKWhPerM2[Month(site) - 1] * hand.ArrayDeratingFactor * hand.ChargeEfficiency * hand.DischargeEfficiency;
    }

    private static void AddBattery(FigureList list, SiteDesign site)
    {
        var (parts, model, hand) = (site.Parts, site.Energy.System.Battery, site.Energy.HandInputs);
        Catalog.Families.Part store = parts.Integrated is { } unit ? unit : parts.Battery;
        var nights = Given("N", "nights of autonomy asked for", hand.AutonomyNights, "nights", TraceOrigin.Tender);
        var endOfLife = list.Rule("a", "battery.end_of_life", "capacity left at end of life");
        var depth = Given("D", "usable depth, maker's or rule's, the smaller", model.UsableDepthFraction, "", TraceOrigin.Rule, "battery.depth." + model.Chemistry);
        var discharge = Part("nd", "discharge efficiency", model.DischargeEfficiency, "", store);
        list.Add(
            "battery.temperature", "Capacity in the coldest month over that at 25 °C", hand.TemperatureFactor, "", "battery_temperature",
            Given("t", "mean temperature of the coldest month", site.Climate.Monthly.MeanC.Min(), "degC", TraceOrigin.Climate),
            Part("chemistry", "0 to 3 lead-acid, 4 lithium iron phosphate", (double)model.Chemistry, "", store));
        var cap = model.Chemistry == BatteryChemistry.LithiumIronPhosphate ? BatteryCapacity.GreatestLithiumRateFactor : BatteryCapacity.GreatestRateFactor;
        list.Add(
            "battery.rate", "Capacity at the slow rate over the rated", Math.Min(model.GreatestRateFactor, BatteryCapacity.RateFactor(model.Chemistry, model.RatedHours, hand.AutonomyNights * site.Climate.Lamp.LongestMonthFullHours, model.PeukertExponent)), "", "battery_rate",
            Given("g", "greatest gain credited", Math.Min(cap, model.GreatestRateFactor), "", TraceOrigin.Rule, "battery.rate_gain"), nights, Given("t", "hours at full power, longest month", site.Climate.Lamp.LongestMonthFullHours, "h", TraceOrigin.Tender),
            Part("H", "hours of the rating", model.RatedHours, "h", store), Part("p", "Peukert's exponent", model.PeukertExponent, "", store));
        list.Add(
            "battery.usable", "Usable energy at end of life, coldest month", site.Energy.UsableWh, "Wh", "battery_usable",
            Part("W", "rated energy", model.RatedWh, "Wh", store), endOfLife, list.Figure("T", "battery.temperature"), list.Figure("R", "battery.rate"), depth, discharge);
        list.Add(
            "battery.hand", "Battery by hand, rated energy", site.Energy.Hand.BatteryRatedWh, "Wh", "battery_hand",
            nights, list.Figure("Wn", "energy.night"), depth, endOfLife, list.Figure("T", "battery.temperature"), discharge);
        list.Add("battery.autonomy", "Autonomy at end of life", site.Energy.AutonomyNights, "nights", "autonomy", list.Figure("U", "battery.usable"), list.Figure("W", "energy.night"));
    }

    private static void AddYears(FigureList list, SiteDesign site)
    {
        var (run, battery) = (site.Energy.Simulated, site.Parts.Battery);
        if (!run.DarkNightsByYear.IsEmpty)
        {
            var years = List("y", "dark nights of each year", run.DarkNightsByYear.Select(n => (double)n), "nights", TraceOrigin.Simulation);
            var count = Given("Y", "years simulated", run.YearCount, "years", TraceOrigin.Rule, "climate.years");
            list.Add("energy.dark_nights", "Dark nights a year, mean", run.DarkNightsPerYear, "nights", "dark_nights", years, count);
            list.Add("energy.dark_bound", "Dark nights a year, upper 90 % bound", run.DarkNightsUpperBound, "nights", "dark_bound", years, count, Given("r", "mean length of a run of dark nights, 3 where there is none", run.MeanRunNights, "nights", TraceOrigin.Simulation));
        }

        Catalog.Families.Part store = site.Parts.Integrated is { } unit ? unit : battery;
        var meanC = site.Climate.Monthly.MeanC.Average() + site.Energy.System.Battery.EnclosureRiseK;
        list.Add(
            "battery.life", "Expected life of the battery", site.Energy.BatteryLifeYears, "years", "battery_life",
            Part("C", "calendar life at 25 °C", battery.CalendarYearsAt25C, "years", store), Given("T", "mean temperature of the battery", meanC, "degC", TraceOrigin.Climate),
            Part("n", "cycles of its rating", battery.CyclesAtDepth, "", store), Part("D", "depth of those cycles", battery.CycleDepthFraction, "", store),
            Given("c", "full cycles a year", run.EquivalentFullCyclesPerYear, "", TraceOrigin.Simulation));
    }
}

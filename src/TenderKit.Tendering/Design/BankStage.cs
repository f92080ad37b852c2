using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Batteries in series and in parallel with a controller that suits them and the luminaire, and the autonomy they give.</summary>
/// <param name="LampInputW">Lamp input, wiring losses included, W.</param>
/// <param name="NightlyWh">Lamp and own use over the longest month's night and day, Wh.</param>
/// <param name="UsableWh">Usable energy at end of life in the coldest month, Wh.</param>
public sealed record BankOption(
    Battery Battery, int InSeries, int Strings, Controller Controller, BatteryModel Model, double LampInputW, double NightlyWh, double UsableWh, ImmutableArray<Check> Checks)
{
    public double AutonomyNights => UsableWh / NightlyWh;

    public double BankV => SystemVoltage.BankV(Battery, InSeries);
}

/// <summary>Third step: battery banks with controllers, for one luminaire at one level.</summary>
public static class BankStage
{
    private const int MostInSeries = 2;
    private const int MostStrings = 4;

    /// <summary>Every size of bank that is tried.</summary>
    public static IEnumerable<(int InSeries, int Strings)> Sizes =>
        Enumerable.Range(1, MostInSeries).SelectMany(s => Enumerable.Range(1, MostStrings).Select(p => (s, p)));

    /// <summary>Nights of autonomy at end of life in the coldest month, for a controller of some own use.</summary>
    public static double AutonomyNights(Battery battery, int inSeries, int strings, double ownUseW, LightOption light, SiteClimate climate, DesignInputs inputs)
    {
        var model = ModelOf(battery, inSeries, strings, inputs.Rules);
        return UsableWh(model, climate, inputs) / NightlyWh(LampInputW(light, inputs.Rules), ownUseW, climate);
    }

    /// <summary>For each battery, series count and controller: the fewest strings that give the autonomy, and one more for the simulation to fall back on.</summary>
    public static IEnumerable<BankOption> Options(LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        foreach (var battery in inputs.Catalog.Batteries)
            foreach (var inSeries in Enumerable.Range(1, MostInSeries))
                foreach (var controller in inputs.Catalog.Controllers)
                    foreach (var option in FewestStrings(battery, inSeries, controller, light, site, climate, inputs, rejections))
                        yield return option;
    }

    /// <summary>One bank with one controller, or null when a check refuses it.</summary>
    public static BankOption? Exactly(
        Battery battery, int inSeries, int strings, Controller controller, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        if (!Suit(battery, inSeries, controller)) return null;
        var option = Build(battery, inSeries, strings, controller, light, site, climate, inputs);
        return rejections.Accept(() => FormattableString.Invariant($"{battery.Code} x {inSeries * strings} with {controller.Code}"), option.Checks) ? option : null;
    }

    /// <summary>Whether the controller is made for the bank's voltage and chemistry.</summary>
    private static bool Suit(Battery battery, int inSeries, Controller controller) =>
        SystemVoltage.ClassOf(SystemVoltage.BankV(battery, inSeries)) is { } voltageClass
        && controller.SystemVoltagesV.Contains(voltageClass)
        && controller.Chemistries.Contains(battery.Chemistry);

    private static IEnumerable<BankOption> FewestStrings(
        Battery battery, int inSeries, Controller controller, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        if (!Suit(battery, inSeries, controller)) yield break;
        var found = 0;
        for (var strings = 1; strings <= MostStrings && found < 2; strings++)
        {
            if (Exactly(battery, inSeries, strings, controller, light, site, climate, inputs, rejections) is not { } option) continue;
            found++;
            yield return option;
        }
    }

    private static BankOption Build(
        Battery battery, int inSeries, int strings, Controller controller, LightOption light, Site site, SiteClimate climate, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var model = ModelOf(battery, inSeries, strings, rules);
        var lampW = LampInputW(light, rules);
        var option = new BankOption(
            battery, inSeries, strings, controller, model, lampW, NightlyWh(lampW, controller.OwnUseW, climate), UsableWh(model, climate, inputs), []);
        return option with { Checks = [.. BankChecks(option, light, site, climate, inputs)] };
    }

    /// <summary>Lamp input with the lamp circuit's losses at their limit, W.</summary>
    private static double LampInputW(LightOption light, RuleSet rules) => light.LampInputW / (1 - rules["wiring.drop_lamp"]);

    /// <summary>Lamp input at full level with its circuit's losses, W: what a lamp draws when it is tested before its level is set.</summary>
    public static double FullInputW(LightOption light, RuleSet rules) => light.Luminaire.InputPowerW / (1 - rules["wiring.drop_lamp"]);

    /// <summary>Lamp over the longest month's night and own use over the whole day, Wh.</summary>
    private static double NightlyWh(double lampInputW, double ownUseW, SiteClimate climate) => (lampInputW * climate.Lamp.LongestMonthFullHours) + (ownUseW * 24);

    /// <summary>Usable energy at end of life in the coldest month, emptied over the nights of autonomy, Wh.</summary>
    private static double UsableWh(BatteryModel model, SiteClimate climate, DesignInputs inputs) =>
        BatteryCapacity.UsableWh(model, climate.Monthly.MeanC.Min(), inputs.Tender.Reliability.AutonomyNights * climate.Lamp.LongestMonthFullHours);

    private static BatteryModel ModelOf(Battery battery, int inSeries, int strings, RuleSet rules) => new(
        battery.Chemistry,
        battery.RatedWh * inSeries * strings,
        SystemVoltage.BankV(battery, inSeries),
        battery.RatedHours,
        battery.PeukertExponent,
        Math.Min(battery.MaxDepthFraction, rules["battery.depth." + battery.Chemistry]),
        rules["battery.end_of_life"],
        battery.ChargeEfficiency,
        battery.DischargeEfficiency,
        battery.SelfDischargePerMonthFraction,
        rules["battery.enclosure_rise"],
        battery.LeastChargeC,
        GreatestRateFactor: rules["battery.rate_gain"]);

    private static IEnumerable<Check> BankChecks(BankOption option, LightOption light, Site site, SiteClimate climate, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var bankV = option.BankV;
        var lowestV = bankV * rules["controller.lowest_cell_fraction"];
        var hot = climate.Monthly.DailyMaxC.Max() + rules["battery.enclosure_rise"];
        yield return new Check(
            "battery.plausible", "Battery", "rated energy over weight", Comparison.AtMost,
            rules[PlausibleRule(option.Battery.Chemistry)], option.Battery.RatedWh / option.Battery.WeightKg, "Wh/kg",
            "design rule " + PlausibleRule(option.Battery.Chemistry), 0);
        yield return new Check(
            "battery.autonomy", "Battery", "autonomy at end of life, coldest month", Comparison.AtLeast,
            inputs.Tender.Reliability.AutonomyNights, option.AutonomyNights, "nights", "tender, reliability; IEEE 1013 method");
        yield return new Check(
            "battery.hot", "Battery", "highest operating temperature", Comparison.AtLeast,
            hot, option.Battery.MaxOperatingC, "degC", "mean daily maximum of the hottest month and design rule battery.enclosure_rise", 0);
        yield return new Check(
            "battery.cold_charge", "Battery", "lowest charging temperature", Comparison.AtMost,
            climate.Monthly.DailyMinC.Min(), option.Battery.LeastChargeC, "degC", "mean daily minimum of the coldest month", 0);
        yield return new Check(
            "luminaire.lowest_voltage", "Luminaire", "lowest input voltage", Comparison.AtMost,
            lowestV, light.Luminaire.MinVoltageV, "V", "bank voltage at disconnect, design rule controller.lowest_cell_fraction", 1);
        yield return new Check(
            "luminaire.highest_voltage", "Luminaire", "highest input voltage", Comparison.AtLeast,
            bankV * rules["controller.charge_voltage"], light.Luminaire.MaxVoltageV, "V", "bank voltage while charging, design rule controller.charge_voltage", 1);
        yield return new Check(
            "controller.load_current", "Controller", "rated load current", Comparison.AtLeast,
            rules["controller.load_factor"] * FullInputW(light, rules) / lowestV, option.Controller.RatedLoadA, "A", "design rule controller.load_factor", 1);
        yield return new Check(
            "controller.schedule_parts", "Controller", "parts of the night it can hold", Comparison.AtLeast,
            SchedulePartCount(site.Schedule), option.Controller.ScheduleParts, "", $"lighting schedule {site.Schedule.Name}", 0);
        yield return Check.YesNo(
            "controller.dimming", "Controller", "dims the luminaire",
            NeedsDimming(site.Schedule, light.Light.LevelFraction), option.Controller.Dimming, $"lighting schedule {site.Schedule.Name} and the level used");
        yield return Check.YesNo(
            "controller.disconnect", "Controller", "adjustable disconnect and reconnect",
            true, option.Controller.AdjustableDisconnect, "the depth of discharge is set on the controller");
        yield return new Check(
            "controller.ambient", "Controller", "highest ambient temperature", Comparison.AtLeast,
            hot, option.Controller.MaxAmbientC, "degC", "mean daily maximum of the hottest month and design rule battery.enclosure_rise", 0);
    }

    private static string PlausibleRule(BatteryChemistry chemistry) =>
        chemistry == BatteryChemistry.LithiumIronPhosphate ? "plausible.battery_lithium" : "plausible.battery_lead";

    private static int SchedulePartCount(LightingSchedule schedule) => schedule.Programmes.Max(p => Math.Max(1, p.Parts.Length + (p.RestLevelFraction > 0 ? 1 : 0)));

    private static bool NeedsDimming(LightingSchedule schedule, double trimmedLevelFraction) =>
        trimmedLevelFraction < 1 || schedule.Levels.Any(l => l is > 0 and < 1);
}

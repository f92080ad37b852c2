using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Batteries in series and in parallel with a controller that suits them and the luminaire, and the autonomy they give.</summary>
/// <param name="LampInputW">Lamp input, wiring losses included, W.</param>
/// <param name="NightlyWh">Lamp and own use over the longest month's night and day, Wh.</param>
/// <param name="UsableWh">Usable energy at end of life in the coldest month, Wh.</param>
public sealed record BankOption(
    Battery Battery, int InSeries, int Strings, Controller Controller, BatteryModel Model, double LampInputW, double NightlyWh, double UsableWh)
{
    public double AutonomyNights => UsableWh / NightlyWh;

    public double BankV => SystemVoltage.BankV(Battery, InSeries);

    /// <summary>Controllers side by side, each with its share of the modules.</summary>
    public int ControllerCount { get; init; } = 1;

    /// <summary>All of them as one.</summary>
    public Controller Control => ControllerSet.Of(Controller, ControllerCount);
}

/// <summary>Third step: battery banks with controllers, for one luminaire at one level.</summary>
public static class BankStage
{
    private static readonly Controller _ideal = new()
    {
        Code = "", Description = "", UnitPrice = 0, Currency = "", Kind = ControlKind.Tracking, SystemVoltagesV = [], RatedChargeA = 0, RatedLoadA = 0, MaxArrayV = 0,
        MaxArrayWpPerV = 0, MaxArrayShortCircuitA = 0, Efficiency = 1, OwnUseW = 0, Chemistries = [], ScheduleParts = 0, Dimming = true, AdjustableDisconnect = true, MaxAmbientC = 0,
    };

    private const int MostInSeries = 2;
    internal const int MostStrings = 4;

    /// <summary>Every size of bank that is tried.</summary>
    public static IEnumerable<(int InSeries, int Strings)> Sizes =>
        Enumerable.Range(1, MostInSeries).SelectMany(s => Enumerable.Range(1, MostStrings).Select(p => (s, p)));

    /// <summary>A size of bank in a climate.</summary>
    internal static BankSizes.Size SizeOf(Battery battery, int inSeries, int strings, SiteClimate climate, DesignInputs inputs)
    {
        var model = ModelOf(battery, inSeries, strings, inputs.Rules);
        return new BankSizes.Size(model, UsableWh(model, climate, inputs));
    }

    /// <summary>Nights of autonomy at end of life in the coldest month, for a controller of some own use.</summary>
    public static double AutonomyNights(Battery battery, int inSeries, int strings, double ownUseW, LightOption light, SiteClimate climate, DesignInputs inputs)
    {
        return inputs.Shared.BanksOf(climate, inputs).Of(battery, inSeries, strings).UsableWh / NightlyWh(LampInputW(light, inputs.Rules), ownUseW, climate);
    }

    /// <summary>Batteries that suit the place and the luminaire, with their series counts, and the fewest strings that could give the autonomy.</summary>
    public static IEnumerable<(Battery Battery, int InSeries, int LeastStrings)> Batteries(LightOption light, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        foreach (var battery in inputs.Catalog.Batteries)
        {
            foreach (var inSeries in Enumerable.Range(1, MostInSeries).Where(s => SystemVoltage.ClassOf(SystemVoltage.BankV(battery, s)) is not null))
            {
                if (!rejections.Accept(() => battery.Code, list => StoreChecks(list, battery, SystemVoltage.BankV(battery, inSeries), light, climate, inputs.Rules))) continue;
                yield return (battery, inSeries, LeastStrings(battery, inSeries, 0, light, climate, inputs));
            }
        }
    }

    /// <summary>Controllers that suit the luminaire, the schedule and the place at a bank voltage.</summary>
    public static ImmutableArray<Controller> Controllers(double bankV, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections) =>
        SystemVoltage.ClassOf(bankV) is not { } voltageClass
            ? []
            : [.. inputs.Catalog.Controllers.Where(c =>
                c.SystemVoltagesV.Contains(voltageClass) && rejections.Accept(() => c.Code, list => ControlChecks(list, c, bankV, light, site, climate, inputs.Rules)))];

    /// <summary>For each controller: the fewest strings of a battery that give the autonomy, and more for the simulation to fall back on.</summary>
    /// <param name="controllers">Those that suit otherwise: see <see cref="Controllers"/>.</param>
    public static IEnumerable<BankOption> Options(
        Battery battery, int inSeries, ImmutableArray<Controller> controllers, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        foreach (var controller in controllers.Where(c => c.Chemistries.Contains(battery.Chemistry)))
        {
            foreach (var count in ControllerSet.CountsOf(controller))
            {
                for (var strings = LeastStrings(battery, inSeries, controller.OwnUseW * count, light, climate, inputs); strings <= MostStrings; strings++)
                {
                    if (Exactly(battery, inSeries, strings, controller, light, site, climate, inputs, rejections, count) is { } option) yield return option;
                }
            }
        }
    }

    /// <summary>Fewest strings that give the autonomy, or the most that are tried.</summary>
    private static int LeastStrings(Battery battery, int inSeries, double ownUseW, LightOption light, SiteClimate climate, DesignInputs inputs)
    {
        var strings = 1;
        while (strings < MostStrings && AutonomyNights(battery, inSeries, strings, ownUseW, light, climate, inputs) < inputs.Tender.Reliability.AutonomyNights) strings++;
        return strings;
    }

    /// <summary>A bank with a controller that does nothing but use its own power: what a bank of these batteries needs at least.</summary>
    internal static BankOption Ideal(Battery battery, int inSeries, int strings, double ownUseW, LightOption light, SiteClimate climate, DesignInputs inputs)
    {
        var size = inputs.Shared.BanksOf(climate, inputs).Of(battery, inSeries, strings);
        var lampW = LampInputW(light, inputs.Rules);
        return new BankOption(battery, inSeries, strings, _ideal with { OwnUseW = ownUseW }, size.Model, lampW, NightlyWh(lampW, ownUseW, climate), size.UsableWh);
    }

    /// <summary>One bank with one controller, or null when a check refuses it.</summary>
    public static BankOption? Exactly(
        Battery battery, int inSeries, int strings, Controller controller, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections,
        int controllerCount = 1)
    {
        if (!Suit(battery, inSeries, controller)) return null;
        var option = Build(battery, inSeries, strings, controller, light, site, climate, inputs, controllerCount);
        return rejections.Accept(() => FormattableString.Invariant($"{battery.Code} x {inSeries * strings} with {controller.Code}"), list => BankChecks(list, option, light, site, climate, inputs)) ? option : null;
    }

    /// <summary>The bank inside an integrated unit, made for its own controller; null when a check refuses it.</summary>
    internal static BankOption? Inside(IntegratedUnit unit, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        var option = Build(unit.AsBattery(), 1, 1, unit.AsController(), light, site, climate, inputs);
        return rejections.Accept(() => unit.Code, list => BankChecks(list, option, light, site, climate, inputs)) ? option : null;
    }

    /// <summary>Whether the controller is made for the bank's voltage and chemistry.</summary>
    private static bool Suit(Battery battery, int inSeries, Controller controller) =>
        SystemVoltage.ClassOf(SystemVoltage.BankV(battery, inSeries)) is { } voltageClass
        && controller.SystemVoltagesV.Contains(voltageClass)
        && controller.Chemistries.Contains(battery.Chemistry);

    private static BankOption Build(
        Battery battery, int inSeries, int strings, Controller controller, LightOption light, Site site, SiteClimate climate, DesignInputs inputs, int controllerCount = 1)
    {
        var size = inputs.Shared.BanksOf(climate, inputs).Of(battery, inSeries, strings);
        var lampW = LampInputW(light, inputs.Rules);
        return new BankOption(
            battery, inSeries, strings, controller, size.Model, lampW, NightlyWh(lampW, controller.OwnUseW * controllerCount, climate), size.UsableWh)
        {
            ControllerCount = controllerCount,
        };
    }

    /// <summary>Lamp input with the lamp circuit's losses at their limit, W.</summary>
    internal static double LampInputW(LightOption light, RuleSet rules) => light.LampInputW / (1 - rules["wiring.drop_lamp"]);

    /// <summary>Lamp input at full level with its circuit's losses, W: what a lamp draws when it is tested before its level is set.</summary>
    public static double FullInputW(LightOption light, RuleSet rules) => light.Luminaire.InputPowerW / (1 - rules["wiring.drop_lamp"]);

    /// <summary>Lamp over the longest month's night and own use over the whole day, Wh.</summary>
    internal static double NightlyWh(double lampInputW, double ownUseW, SiteClimate climate) => (lampInputW * climate.Lamp.LongestMonthFullHours) + (ownUseW * 24);

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

    /// <summary>Everything a bank with its controller is checked for.</summary>
    internal static void BankChecks(CheckList list, BankOption option, LightOption light, Site site, SiteClimate climate, DesignInputs inputs)
    {
        StoreChecks(list, option.Battery, option.BankV, light, climate, inputs.Rules);
        list.AtLeast(
            "battery.autonomy", "Battery", "autonomy at end of life, coldest month", inputs.Tender.Reliability.AutonomyNights, option.AutonomyNights, "nights", "tender, reliability; IEEE 1013 method");
        ControlChecks(list, option.Controller, option.BankV, light, site, climate, inputs.Rules);
        FitChecks.Absorption(list, option);
    }

    private static double HotC(SiteClimate climate, RuleSet rules) => climate.Monthly.DailyMaxC.Max() + rules["battery.enclosure_rise"];

    /// <summary>What a battery is checked for whatever its controller.</summary>
    private static void StoreChecks(CheckList list, Battery battery, double bankV, LightOption light, SiteClimate climate, RuleSet rules)
    {
        list.AtMost(
            "battery.plausible", "Battery", "rated energy over weight", rules[PlausibleRule(battery.Chemistry)], battery.RatedWh / battery.WeightKg, "Wh/kg",
            $"design rule {PlausibleRule(battery.Chemistry)}", 0);
        list.AtLeast(
            "battery.hot", "Battery", "highest operating temperature", HotC(climate, rules), battery.MaxOperatingC, "degC", "mean daily maximum of the hottest month and design rule battery.enclosure_rise", 0);
        list.AtMost(
            "battery.cold_charge", "Battery", "lowest charging temperature", climate.Monthly.DailyMinC.Min(), battery.LeastChargeC, "degC", "mean daily minimum of the coldest month", 0);
        list.AtMost(
            "luminaire.lowest_voltage", "Luminaire", "lowest input voltage", bankV * rules["controller.lowest_cell_fraction"], light.Luminaire.MinVoltageV, "V", "bank voltage at disconnect, design rule controller.lowest_cell_fraction", 1);
        list.AtLeast(
            "luminaire.highest_voltage", "Luminaire", "highest input voltage", bankV * rules["controller.charge_voltage"], light.Luminaire.MaxVoltageV, "V", "bank voltage while charging, design rule controller.charge_voltage", 1);
    }

    /// <summary>What a controller is checked for whatever its battery, but for the bank's voltage.</summary>
    private static void ControlChecks(CheckList list, Controller controller, double bankV, LightOption light, Site site, SiteClimate climate, RuleSet rules)
    {
        list.AtLeast(
            "controller.load_current", "Controller", "rated load current", rules["controller.load_factor"] * FullInputW(light, rules) / (bankV * rules["controller.lowest_cell_fraction"]), controller.RatedLoadA, "A", "design rule controller.load_factor", 1);
        list.AtLeast(
            "controller.schedule_parts", "Controller", "parts of the night it can hold", SchedulePartCount(site.Schedule), controller.ScheduleParts, "", $"lighting schedule {site.Schedule.Name}", 0);
        list.YesNo(
            "controller.dimming", "Controller", "dims the luminaire",
            NeedsDimming(site.Schedule, light.Light.LevelFraction), controller.Dimming, $"lighting schedule {site.Schedule.Name} and the level used");
        list.YesNo(
            "controller.disconnect", "Controller", "adjustable disconnect and reconnect",
            true, controller.AdjustableDisconnect, "the depth of discharge is set on the controller");
        list.AtLeast(
            "controller.ambient", "Controller", "highest ambient temperature", HotC(climate, rules), controller.MaxAmbientC, "degC", "mean daily maximum of the hottest month and design rule battery.enclosure_rise", 0);
    }

    private static string PlausibleRule(BatteryChemistry chemistry) =>
        chemistry == BatteryChemistry.LithiumIronPhosphate ? "plausible.battery_lithium" : "plausible.battery_lead";

    private static int SchedulePartCount(LightingSchedule schedule) => schedule.Programmes.Max(p => Math.Max(1, p.Parts.Length + (p.RestLevelFraction > 0 ? 1 : 0)));

    private static bool NeedsDimming(LightingSchedule schedule, double trimmedLevelFraction) =>
        trimmedLevelFraction < 1 || schedule.Levels.Any(l => l is > 0 and < 1);
}

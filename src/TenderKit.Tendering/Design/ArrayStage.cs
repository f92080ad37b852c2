using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>A complete power side: modules on a bank with its controller, not yet simulated.</summary>
public sealed record PowerOption(
    BankOption Bank, Module Module, int ModuleCount, int ModulesInSeries, PowerSystem System, HandInputs HandInputs, HandResult Hand);

/// <summary>Fourth step: modules for a bank, by the hand method and the controller's limits.</summary>
public static class ArrayStage
{
    internal const int MostModules = 4;

    /// <summary>For one module and series count: the fewest modules that satisfy the hand method, and more for the simulation to fall back on.</summary>
    public static IEnumerable<PowerOption> Options(BankOption bank, Module module, int inSeries, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        var hand = HandInputsFor(bank, ControlFactor(bank, module, inSeries), climate, inputs);
        var sized = HandMethod.Size(hand);
        for (var count = LeastCount(sized.ArrayWp, module, inSeries); count <= MostModules; count += inSeries)
        {
            if (!Shared(bank, count, inSeries)) continue;
            var option = Build(bank, module, count, inSeries, hand, sized, climate, inputs);
            if (rejections.Accept(() => NameOf(option), list => ArrayChecks(list, option, climate, inputs.Rules))) yield return option;
        }
    }

    /// <summary>Modules with their numbers in series, and the fewest that could satisfy the hand method: with a controller that loses nothing.</summary>
    public static IEnumerable<(Module Module, int InSeries, int LeastCount)> Modules(BankOption bank, SiteClimate climate, DesignInputs inputs)
    {
        var neededWp = HandMethod.Size(HandInputsFor(bank, 1, climate, inputs)).ArrayWp;
        foreach (var module in inputs.Catalog.Modules)
        {
            foreach (var inSeries in SeriesCounts(bank.Control))
                yield return (module, inSeries, LeastCount(neededWp, module, inSeries));
        }
    }

    /// <summary>Whether controllers side by side each get as many strings.</summary>
    private static bool Shared(BankOption bank, int count, int inSeries) => count / inSeries % bank.ControllerCount == 0;

    /// <summary>Fewest modules of some power, in whole strings, or the most that are tried.</summary>
    private static int LeastCount(double neededWp, Module module, int inSeries) =>
        inSeries * (int)Math.Clamp(Math.Ceiling((neededWp / module.RatedWp / inSeries) - 1e-9), 1, MostModules / inSeries);

    /// <summary>One number of one module on a bank, or null when a check refuses it.</summary>
    public static PowerOption? Exactly(BankOption bank, Module module, int count, int inSeries, SiteClimate climate, DesignInputs inputs, Rejections rejections)
    {
        if (!Shared(bank, count, inSeries)) return null;
        var hand = HandInputsFor(bank, ControlFactor(bank, module, inSeries), climate, inputs);
        var option = Build(bank, module, count, inSeries, hand, HandMethod.Size(hand), climate, inputs);
        return rejections.Accept(() => NameOf(option), list => ArrayChecks(list, option, climate, inputs.Rules)) ? option : null;
    }

    private static string NameOf(PowerOption option) => FormattableString.Invariant($"{option.Module.Code} x {option.ModuleCount} on {option.Bank.Controller.Code}");

    private static IEnumerable<int> SeriesCounts(Controller controller) => controller.Kind == ControlKind.Tracking || controller.SystemVoltagesV.Max() > 12 ? [1, 2] : [1];

    /// <summary>Inputs of the hand method.</summary>
    /// <param name="controlFactor">Share of the array's power that the controller passes on, fraction.</param>
    public static HandInputs HandInputsFor(BankOption bank, double controlFactor, SiteClimate climate, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var derating = rules["energy.soiling"] * rules["energy.mismatch"] * rules["energy.ageing"] * rules["energy.wiring"] * controlFactor;
        var coldest = climate.Monthly.MeanC.Min();
        return new HandInputs(
            bank.NightlyWh,
            climate.PlaneKWhPerM2,
            [.. climate.Lamp.MonthlyFullHours.Select(h => (bank.LampInputW * h) + (bank.Control.OwnUseW * 24))],
            inputs.Tender.Reliability.AutonomyNights,
            bank.Model.UsableDepthFraction,
            bank.Model.EndOfLifeFraction,
            BatteryCapacity.TemperatureFactor(bank.Model.Chemistry, coldest),
            bank.Model.DischargeEfficiency,
            bank.Model.ChargeEfficiency,
            derating,
            rules["energy.array_to_load"],
            rules["energy.recovery_days"]);
    }

    /// <summary>Share of the array's power that the controller passes on: its efficiency, or with pulse-width control the battery's voltage over the string's.</summary>
    private static double ControlFactor(BankOption bank, Module module, int inSeries) => bank.Control.Kind == ControlKind.Tracking
        ? bank.Control.Efficiency
        : Math.Min(1, ChargeVoltage.AtV(bank.Model.Chemistry, bank.BankV, 0.5) / (module.MaximumPowerV * inSeries));

    private static PowerOption Build(
        BankOption bank, Module module, int count, int inSeries, HandInputs hand, HandResult sized, SiteClimate climate, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var array = new ArrayModel(
            module.RatedWp * count,
            module.MaximumPowerV * inSeries,
            module.MaximumPowerA * (count / inSeries),
            module.PowerCoefficientPerK,
            module.NoctC,
            rules["energy.soiling"] * rules["energy.mismatch"] * rules["energy.ageing"] * rules["energy.wiring"]);
        var control = new ControlModel(bank.Control.Kind, bank.Control.RatedChargeA, bank.Control.Efficiency, bank.Control.OwnUseW, rules["battery.reconnect"]);
        return new PowerOption(bank, module, count, inSeries, new PowerSystem(array, bank.Model, control, bank.LampInputW), hand, sized);
    }

    /// <summary>Everything an array with its controller is checked for.</summary>
    internal static void ArrayChecks(CheckList list, PowerOption option, SiteClimate climate, RuleSet rules)
    {
        var module = option.Module;
        var controller = option.Bank.Control;
        var strings = option.ModuleCount / option.ModulesInSeries;
        var arrayWp = option.System.Array.ArrayWp;
        var bankV = option.Bank.BankV;
        var chargeA = GreatestChargeA(option, rules);
        var coldV = ArrayVoltage.ColdOpenCircuitV(module.OpenCircuitV, module.VoltageCoefficientPerK, option.ModulesInSeries, climate.Monthly.RecordLowC);
        var hotV = module.MaximumPowerV * option.ModulesInSeries * (1 + (module.VoltageCoefficientPerK * (HotCellC(climate, module) - 25)));
        list.AtMost(
            "module.plausible", "Module", "rated power over area", rules["plausible.module"], module.RatedWp / (module.LengthM * module.WidthM), "W/m2", "design rule plausible.module", 0);
        list.AtLeast(
            "array.ratio", "Array", "rated power for the array-to-load ratio in the design month", option.Hand.ArrayRatioWp, arrayWp, "Wp", "design rule energy.array_to_load; IEEE 1562", 0);
        list.AtLeast(
            "array.recovery", "Array", "rated power to refill an empty battery in time", option.Hand.ArrayRecoveryWp, arrayWp, "Wp", "design rule energy.recovery_days", 0);
        list.AtLeast(
            "array.hot_voltage", "Array", "maximum-power voltage of a hot string", bankV * rules["controller.charge_voltage"], hotV, "V", "design rule controller.charge_voltage", 1);
        list.AtLeast(
            "array.cold_voltage", "Controller", "greatest array voltage", coldV, controller.MaxArrayV, "V", "open-circuit voltage at the record low; IEC 62548", 1);
        list.AtLeast(
            "array.short_circuit", "Controller", "greatest array short-circuit current", module.ShortCircuitA * strings, controller.MaxArrayShortCircuitA, "A", "short-circuit current of all strings; maker's limit of the controller", 1);
        list.AtLeast(
            "controller.charge_current", "Controller", "rated charge current", chargeA, controller.RatedChargeA, "A", ChargeBasis(controller), 1);
        if (controller.MaxArrayWpPerV > 0)
            list.AtLeast(
            "array.power", "Controller", "greatest array power", arrayWp, controller.MaxArrayWpPerV * SystemVoltage.ClassOf(bankV)!.Value, "Wp", "array power; maker's limit of the controller", 0);
        list.AtLeast(
            "battery.charge_current", "Battery", "greatest charge current", Math.Min(chargeA, controller.RatedChargeA), option.Bank.Battery.MaxChargeA * option.Bank.Strings, "A", "greatest charge current; maker's limit of the battery", 1);
    }

    /// <summary>Charge current the controller must be rated for, A: with pulse-width control the short-circuit current with its factor, with tracking the array's power at the lowest battery voltage.</summary>
    private static double GreatestChargeA(PowerOption option, RuleSet rules) => option.Bank.Control.Kind == ControlKind.PulseWidth
        ? rules["controller.charge_factor"] * option.Module.ShortCircuitA * (option.ModuleCount / option.ModulesInSeries)
        : option.System.Array.ArrayWp * option.Bank.Control.Efficiency / (option.Bank.BankV * rules["controller.lowest_cell_fraction"]);

    private static string ChargeBasis(Controller controller) => controller.Kind == ControlKind.PulseWidth
        ? "short-circuit current times design rule controller.charge_factor"
        : "array power times efficiency over the lowest battery voltage";

    /// <summary>Cell temperature at 1000 W/m2 and the hottest month's mean daily maximum, degC.</summary>
    private static double HotCellC(SiteClimate climate, Module module) => climate.Monthly.DailyMaxC.Max() + ((module.NoctC - 20) / 800 * 1000);
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Settings;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Commissioning;

/// <summary>The order in which a pole is connected, and the tests that show it works. Common practice, no source; the makers' instructions prevail.</summary>
public static class PoleWork
{
    /// <summary>Steps in order; a pole is parted in the reverse order.</summary>
    public static ImmutableArray<ConnectionStep> Order(PoleParts parts)
    {
        if (parts.Integrated is not null) return SealedOrder();
        var fused = parts.Circuits.Any(c => c.Fuse is not null) ? ", its fuse drawn until both ends are fast, then put in" : "";
        (string What, string Reason)[] steps =
        [
            ("Pole, module frame and surge arrester to the earth electrode", "a stroke or a fault must find its way to earth before anything is live or touched"),
            ("Battery to the controller" + fused, "the controller finds its system voltage and its set-points from the battery; a module first can drive it to a voltage that destroys it or sets the wrong one"),
            ("Set the controller: battery type, set-points, schedule", "with nothing charging and nothing lit a wrong setting does no harm"),
            ("Modules to the controller, covered or with their plugs open until the ends are fast", "modules are live whenever there is light; a plug made or parted under load draws an arc"),
            ("Luminaire to the controller, its fuse last", "the lamp is switched only by a controller that already knows battery and night, and its cable is dead while it is worked on"),
        ];
        return [.. steps.Select((s, i) => new ConnectionStep(i + 1, s.What, s.Reason))];
    }

    /// <summary>An integrated unit is closed by its maker: it is earthed, mounted, switched on and set.</summary>
    private static ImmutableArray<ConnectionStep> SealedOrder() =>
    [
        new(1, "Pole and head of the unit to the earth electrode", "a stroke or a fault must find its way to earth before anything is live or touched"),
        new(2, "Unit on its spigot, turned square to the road, bolts tightened as the maker states", "the module is part of the unit: where the head faces, the module faces"),
        new(3, "Switch on at the unit's own switch, as its maker states", "the battery inside is live and is delivered switched off"),
        new(4, "Set the schedule by the unit's switch or remote, read it back", "the unit runs its maker's schedule until it is given that of this site"),
    ];

    /// <summary>Tests in the order they are done.</summary>
    public static ImmutableArray<PoleTest> Tests(PoleParts parts, ControllerSettings settings, double earthOhm)
    {
        if (parts.Integrated is { } unit) return SealedTests(unit, earthOhm);
        var voc = parts.Module.OpenCircuitV * parts.ModulesInSeries;
        var strings = parts.ModuleCount / parts.ModulesInSeries;
        return
        [
            new("Earth", "measure the electrode with the pole apart", Text($"{earthOhm:0.#} Ohm or less, and what the local code asks")),
            new("Polarity", "meter at each end before any fuse goes in", "plus on plus at battery, module and luminaire"),
            new("Array voltage", "meter at the open plugs, sun on the modules", Text($"{voc * 0.85:0.0} to {voc * 1.15:0.0} V")),
            new("Fuses", "read each fuse", Fuses(parts)),
            new("Set-points", "read them back from the controller", Text($"absorption {settings.At25C.AbsorptionV:0.0} V, float {settings.At25C.FloatV:0.0} V, off {settings.DisconnectV:0.0} V, on {settings.ReconnectV:0.0} V at 25 degC")),
            new("Charging", "clamp meter in full sun, battery not full", Text($"about {parts.Module.MaximumPowerA * strings * 0.7:0.0} A or more from the modules in 700 W/m2, voltage rising")),
            new("Lamp by hand", "manual test of the controller", "lamp at full level, then at each level of the schedule"),
            new("Dusk", "cover the modules", "lamp on within the delay the controller states; off again when uncovered"),
            new("Disconnect", "test function, or a supply in place of the battery lowered slowly", Text($"lamp off at {settings.DisconnectV:0.0} V, on again at {settings.ReconnectV:0.0} V, each within 0.2 V")),
            new("Box and glands", "look and pull by hand", parts.Battery.Chemistry == BatteryChemistry.LithiumIronPhosphate ? "dry, cables fast, lid and lock close" : "dry, cables fast, vents open, lid and lock close"),
            new("Light when new", "meter at the height of the ground, lamp burnt in, dry night without moon", "average and minimum of the table below"),
        ];
    }

    /// <summary>What can be tested without opening the unit.</summary>
    private static ImmutableArray<PoleTest> SealedTests(IntegratedUnit unit, double earthOhm) =>
    [
        new("Earth", "measure the electrode with the pole apart", Text($"{earthOhm:0.#} Ohm or less, and what the local code asks")),
        new("Serial number", "read the plate of the unit", Text($"{unit.Code}: {unit.RatedWp:0.#} Wp, {unit.RatedWh:0} Wh")),
        new("Housing", "look at seals, glass and module", "whole, dry, nothing loose"),
        new("Module", "look from below and from afar", "free of shade and of the pole's own shadow as far as the site allows, clean"),
        new("Charging", "read the unit's own sign of charging in sun", "charging, as the maker's sheet shows it"),
        new("Lamp by hand", "remote or test switch", "lamp at full level, then at each level of the schedule"),
        new("Dusk", "cover the whole module", "lamp on within the delay the maker states; off again when uncovered"),
        new("Schedule", "read it back from the unit, or watch one night", "the hours and levels of the schedule"),
        new("Whole night", "look before dawn after the first sunny day", "lamp still lit at the level of the schedule"),
        new("Light when new", "meter at the height of the ground, lamp burnt in, dry night without moon", "average and minimum of the table below"),
    ];

    private static string Fuses(PoleParts parts)
    {
        var fuses = parts.Circuits.Where(c => c.Fuse is not null).Select(c => Text($"{c.Name} {c.Fuse!.RatedA:0.#} A")).ToArray();
        return fuses.Length == 0 ? "as the maker of the unit states" : string.Join(", ", fuses);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using System.Collections.Immutable;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Design;
using static TenderKit.Tendering.Trace.FigureList;

namespace TenderKit.Tendering.Trace;

/// <summary>Currents, voltage drops and fuses of a pole's circuits; nothing for an integrated unit, whose circuits are its maker's.</summary>
internal static class WiringTrace
{
    private const string Array = "module to controller";
    private const string Battery = "controller to battery";
    private const string Lamp = "controller to luminaire";

    public static ImmutableArray<TracedFigure> Of(TenderDesign design, SiteDesign site)
    {
        var list = new FigureList(design, TraceGroup.Wiring);
        if (site.Parts.Integrated is not null) return [];
        AddCharge(list, site);
        foreach (var circuit in Ordered(site)) AddCircuit(list, site, circuit);
        return list.Figures;
    }

    /// <summary>The lamp's circuit before the battery's, whose current rests on it.</summary>
    private static IEnumerable<Circuit> Ordered(SiteDesign site) => site.Parts.Circuits.DistinctBy(c => c.Name).OrderBy(c => c.Name == Battery);

    private static void AddCharge(FigureList list, SiteDesign site)
    {
        var (parts, control) = (site.Parts, site.Energy.System.Control);
        var name = parts.ControllerCount == 1 ? "Charge current to be carried" : "Charge current to be carried, all controllers";
        var strings = parts.ModuleCount / parts.ModulesInSeries;
        if (control.Kind == ControlKind.PulseWidth)
        {
            if (list.RuleValue("controller.charge_factor") is { } factor)
                list.Add(
                    "controller.charge_current", name, factor * parts.Module.ShortCircuitA * strings, "A", "charge_pulse", list.Rule("f", "controller.charge_factor", "factor on the short-circuit current"),
                    Part("Isc", "short-circuit current of a string", parts.Module.ShortCircuitA, "A", parts.Module), Given("n", "strings", strings, "", TraceOrigin.Search));
            return;
        }

        if (list.RuleValue("controller.lowest_cell_fraction") is { } lowest)
            list.Add(
                "controller.charge_current", name, parts.ArrayWp * control.Efficiency / (parts.SystemVoltageV * lowest), "A", "charge_tracking",
                Given("A", "array offered", parts.ArrayWp, "Wp", TraceOrigin.Search), Part("e", "efficiency of the controller", control.Efficiency, "", parts.Controller),
                Given("V", "voltage of the battery", parts.SystemVoltageV, "V", TraceOrigin.Search), list.Rule("u", "controller.lowest_cell_fraction", "lowest voltage over nominal"));
    }

    private static void AddCircuit(FigureList list, SiteDesign site, Circuit circuit)
    {
        var parts = site.Parts;
        var (id, pairs, voltageV) = circuit.Name switch
        {
            Array => ("array", parts.ModulesInSeries + 1, parts.Module.MaximumPowerV * parts.ModulesInSeries),
            Battery => ("battery", 0, parts.SystemVoltageV),
            _ => ("lamp", 1, parts.SystemVoltageV),
        };
        AddCurrent(list, parts, circuit, id);
        list.Add(
            $"wiring.{id}.drop", $"Voltage drop, {circuit.Name}", circuit.DropFraction * 100, "%", "drop",
            Given("L", "length, one way", circuit.LengthM, "m", TraceOrigin.Search), list.Figure("I", $"wiring.{id}.current"),
            Given("R", "resistance at 20 °C", Conductor.ResistanceOhmPerKm(circuit.Cable.ConductorClass, circuit.Cable.CrossSectionMm2), "Ohm/km", TraceOrigin.Standard, "IEC 60228:2004"),
            list.Rule("t", "wiring.ambient", "temperature of the conductor"), Given("n", "pairs of plugs", pairs, "", TraceOrigin.Search), list.Rule("Rc", "wiring.connector_milliohm", "resistance of a plug"),
            Given("V", "voltage of the circuit", voltageV, "V", TraceOrigin.Part, circuit.Name == Array ? parts.Module.Code : parts.Battery.Code));
        if (circuit.Fuse is { } fuse && list.RuleValue("wiring.fuse_factor") is { } factor)
            list.Add(
                $"wiring.{id}.fuse", FormattableString.Invariant($"Least fuse, {circuit.Name}; offered {fuse.RatedA:0.##} A"), circuit.CurrentA * factor, "A", "fuse",
                list.Rule("f", "wiring.fuse_factor", "factor on the current"), list.Figure("I", $"wiring.{id}.current"));
    }

    private static void AddCurrent(FigureList list, PoleParts parts, Circuit circuit, string id)
    {
        var (formula, inputs) = circuit.Name switch
        {
            Array => ("array_current", new TraceInput?[]
            {
                Part("Im", "maximum-power current of a string", parts.Module.MaximumPowerA, "A", parts.Module),
                Given("n", "strings on a controller", (double)(parts.ModuleCount / parts.ModulesInSeries / parts.ControllerCount), "", TraceOrigin.Search),
            }),
            Battery => ("battery_current", [list.Figure("Il", "wiring.lamp.current"), Part("Ic", "rated charge current", parts.Controller.RatedChargeA, "A", parts.Controller)]),
            Lamp => ("lamp_current",
            [
                Part("P", "rated input of the luminaire", parts.Luminaire.InputPowerW, "W", parts.Luminaire), list.Rule("d", "wiring.drop_lamp", "loss of the lamp circuit at its limit"),
                Given("V", "voltage of the battery", parts.SystemVoltageV, "V", TraceOrigin.Part, parts.Battery.Code), list.Rule("u", "controller.lowest_cell_fraction", "lowest voltage over nominal"),
            ]),
            _ => ("", []),
        };
        if (formula.Length > 0) list.Add($"wiring.{id}.current", $"Current, {circuit.Name}", circuit.CurrentA, "A", formula, inputs);
    }
}

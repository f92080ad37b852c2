using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>Cables, fuses and other protection of one pole.</summary>
public sealed record WiringOption(ImmutableArray<Circuit> Circuits, ImmutableArray<ProtectionDevice> Other, ImmutableArray<Check> Checks);

/// <summary>Sixth step: the cheapest cable that keeps the drop and carries its fuse, for each circuit.</summary>
public sealed class WiringStage(DesignInputs inputs, Costs costs, Rejections rejections)
{
    /// <summary>What a circuit must do before a cable is chosen.</summary>
    /// <param name="CarriedA">Current its cable must carry where no fuse guards it, A.</param>
    /// <param name="ConnectorPairs">Pairs of plugs in it.</param>
    /// <param name="BreakingA">Short-circuit current its fuse must break, A; 0 where the controller or the module limits it.</param>
    private sealed record Demand(
        string Id, string Name, double LengthM, double CurrentA, double CarriedA, double VoltageV, double DropLimit, bool Outdoor, bool Fused, int ConnectorPairs, double BreakingA = 0);

    /// <summary>Null when some circuit has no cable or fuse.</summary>
    public WiringOption? Find(LightOption light, PowerOption power)
    {
        var circuits = ImmutableArray.CreateBuilder<Circuit>();
        var checks = ImmutableArray.CreateBuilder<Check>();
        foreach (var demand in Demands(light, power))
        {
            if (Choose(demand) is not var (circuit, circuitChecks)) return null;
            circuits.Add(circuit);
            checks.AddRange(circuitChecks);
        }

        var other = Others(power, circuits, checks);
        return other is null ? null : new WiringOption(circuits.ToImmutable(), [.. other], checks.ToImmutable());
    }

    /// <summary>The wiring of a given kit under this site's currents and lengths; null when a circuit does not suit.</summary>
    public WiringOption? Given(LightOption light, PowerOption power, PoleParts kit)
    {
        var circuits = ImmutableArray.CreateBuilder<Circuit>();
        var checks = ImmutableArray.CreateBuilder<Check>();
        foreach (var (demand, given) in Demands(light, power).Zip(kit.Circuits))
        {
            if (Try(demand, given.Cable, (_, _) => given.Fuse) is not var (circuit, circuitChecks)) return null;
            circuits.Add(circuit);
            checks.AddRange(circuitChecks);
        }

        var other = Others(power, circuits, checks);
        return other is not null && other.Select(o => o.Code).SequenceEqual(kit.OtherProtection.Select(o => o.Code))
            ? new WiringOption(circuits.ToImmutable(), [.. other], checks.ToImmutable())
            : null;
    }

    private IEnumerable<Demand> Demands(LightOption light, PowerOption power)
    {
        var rules = inputs.Rules;
        var up = light.Shape.HeightM - rules["wiring.box_height"] + rules["wiring.slack"];
        var controllers = power.Bank.ControllerCount;
        var strings = power.ModuleCount / power.ModulesInSeries / controllers;
        var bankV = power.Bank.BankV;
        var lowestV = bankV * rules["controller.lowest_cell_fraction"];
        var lampA = BankStage.FullInputW(light, rules) / lowestV;
        var batteryA = Math.Max(lampA, power.Bank.Controller.RatedChargeA);
        var shortCircuitA = rules["controller.charge_factor"] * power.Module.ShortCircuitA * strings;
        var array = new Demand(
            "wiring.array", "module to controller", up, power.Module.MaximumPowerA * strings, shortCircuitA, power.Module.MaximumPowerV * power.ModulesInSeries,
            rules["wiring.drop_array"], true, false, power.ModulesInSeries + 1);
        var battery = new Demand(
            "wiring.battery", "controller to battery", rules["wiring.slack"], batteryA, batteryA, bankV, rules["wiring.drop_battery"], false, true, 0,
            rules["wiring.breaking_current"] * power.Bank.Battery.RatedAh * power.Bank.Strings);
        foreach (var demand in Enumerable.Repeat(array, controllers).Concat(Enumerable.Repeat(battery, controllers))) yield return demand;
        yield return new Demand("wiring.lamp", "controller to luminaire", up + light.Shape.ArmReachM, lampA, lampA, bankV, rules["wiring.drop_lamp"], false, true, 1);
    }

    private (Circuit Circuit, ImmutableArray<Check> Checks)? Choose(Demand demand)
    {
        foreach (var cable in inputs.Catalog.Cables.Where(c => c.Outdoor || !demand.Outdoor).OrderBy(costs.Of).ThenBy(c => c.Code, StringComparer.Ordinal))
        {
            if (Try(demand, cable, FuseFor) is { } found) return found;
        }

        return null;
    }

    private (Circuit Circuit, ImmutableArray<Check> Checks)? Try(Demand demand, Cable cable, Func<Demand, double, ProtectionDevice?> fuseFor)
    {
        var ohmPerKm = Conductor.AtTemperatureOhmPerKm(Conductor.ResistanceOhmPerKm(cable.ConductorClass, cable.CrossSectionMm2), inputs.Rules["wiring.ambient"]);
        var connectorsV = CircuitScreen.ConnectorsV(demand.ConnectorPairs, inputs.Rules["wiring.connector_milliohm"] / 1000, demand.CurrentA);
        var drop = (Conductor.DropV(demand.LengthM, demand.CurrentA, ohmPerKm) + connectorsV) / demand.VoltageV;
        var capacityA = Conductor.CapacityA(cable.Insulation, cable.CrossSectionMm2, inputs.Rules["wiring.ambient"]);
        var fuse = demand.Fused ? fuseFor(demand, capacityA) : null;
        var checks = CircuitChecks(demand, drop, capacityA, fuse);
        return rejections.Accept(() => FormattableString.Invariant($"{cable.Code} from {demand.Name}"), checks)
            ? (new Circuit(demand.Name, cable, demand.LengthM, demand.CurrentA, drop, capacityA, fuse), checks)
            : null;
    }

    /// <summary>The smallest fuse above the working current with its factor that can break what may flow, the cheapest with its holder; null when the catalogue has none.</summary>
    private ProtectionDevice? FuseFor(Demand demand, double cableCapacityA)
    {
        var (lowA, _) = Protection.BatteryFuseA(demand.CurrentA, inputs.Rules["wiring.fuse_factor"], Math.Max(cableCapacityA, demand.CurrentA * inputs.Rules["wiring.fuse_factor"]));
        return inputs.Catalog.Protection
            .Where(p => p.Kind == ProtectionKind.Fuse && p.RatedA >= lowA && p.RatedV >= demand.VoltageV * inputs.Rules["controller.charge_voltage"] && (p.BreakingA ?? demand.BreakingA) >= demand.BreakingA)
            .OrderBy(p => p.RatedA).ThenBy(p => NoHolderFor(p)).ThenBy(WithHolder).ThenBy(p => p.Code, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private ImmutableArray<Check> CircuitChecks(Demand demand, double drop, double capacityA, ProtectionDevice? fuse)
    {
        var checks = ImmutableArray.CreateBuilder<Check>();
        checks.Add(new Check(
            demand.Id + ".drop", "Cable", $"voltage drop, {demand.Name}", Comparison.AtMost,
            demand.DropLimit * 100, drop * 100, "%", "design rule " + demand.Id.Replace("wiring.", "wiring.drop_", StringComparison.Ordinal)));
        checks.Add(new Check(
            demand.Id + ".capacity", "Cable", $"current-carrying capacity, {demand.Name}", Comparison.AtLeast,
            fuse?.RatedA ?? demand.CarriedA, capacityA, "A", "IEC 60364-5-52 at design rule wiring.ambient; " + (fuse is null ? "short-circuit current times design rule controller.charge_factor" : "not below its fuse"), 1));
        if (demand.Fused)
        {
            checks.Add(new Check(
                demand.Id + ".fuse", "Fuse", $"rated current, {demand.Name}", Comparison.AtLeast,
                demand.CurrentA * inputs.Rules["wiring.fuse_factor"], fuse?.RatedA ?? 0, "A", "design rule wiring.fuse_factor", 1));
            if (demand.BreakingA > 0 && fuse?.BreakingA is { } breakingA)
                checks.Add(new Check(
                    demand.Id + ".breaking", "Fuse", $"breaking capacity, {demand.Name}", Comparison.AtLeast, demand.BreakingA / 1000, breakingA / 1000, "kA", "design rule wiring.breaking_current", 1));
        }

        return checks.ToImmutable();
    }

    /// <summary>String fuses where parallel strings need them, a holder for each fuse where the catalogue lists holders, one surge arrester, one earth electrode.</summary>
    private List<ProtectionDevice>? Others(PowerOption power, IEnumerable<Circuit> circuits, ImmutableArray<Check>.Builder checks)
    {
        var others = new List<ProtectionDevice>();
        var strings = power.ModuleCount / power.ModulesInSeries;
        if (Protection.StringFusesNeeded(strings / power.Bank.ControllerCount, power.Module.ShortCircuitA, power.Module.MaxSeriesFuseA))
        {
            var (lowA, highA) = Protection.StringFuseA(power.Module.ShortCircuitA, power.Module.MaxSeriesFuseA);
            var fuse = CheapestOf(ProtectionKind.Fuse, p => p.RatedA >= lowA && p.RatedA <= highA && p.RatedV >= power.Module.OpenCircuitV * power.ModulesInSeries);
            var check = new Check(
                "wiring.string_fuse", "Fuse", "string fuse, rated current", Comparison.AtLeast,
                lowA, fuse?.RatedA ?? 0, "A", "IEC 62548, 1.5 to 2.4 times the short-circuit current", 1);
            if (!rejections.Accept(() => "string fuse", [check])) return null;
            checks.Add(check);
            others.AddRange(Enumerable.Repeat(fuse!, strings));
        }

        if (Holders([.. circuits.Select(c => c.Fuse).OfType<ProtectionDevice>(), .. others], checks) is not { } holders) return null;
        others.AddRange(holders);
        if (CheapestOf(ProtectionKind.SurgeArrester, p => p.RatedV >= power.Module.OpenCircuitV * power.ModulesInSeries) is { } arrester) others.Add(arrester);
        if (CheapestOf(ProtectionKind.EarthElectrode, _ => true) is { } electrode) others.Add(electrode);
        return others;
    }

    /// <summary>A holder for each fuse out of a catalogue that lists holders; in one that lists none the fuses come with theirs. Null when a fuse has none.</summary>
    private List<ProtectionDevice>? Holders(ImmutableArray<ProtectionDevice> fuses, ImmutableArray<Check>.Builder checks)
    {
        var holders = new List<ProtectionDevice>();
        if (inputs.Catalog.Protection.All(p => p.Kind != ProtectionKind.FuseHolder)) return holders;
        foreach (var fuse in fuses)
        {
            var holder = HolderFor(fuse);
            var check = new Check("wiring.holder", "Fuse holder", $"rated current, for fuse {fuse.Code}", Comparison.AtLeast, fuse.RatedA, holder?.RatedA ?? 0, "A", "rated current and voltage of the fuse in it", 0);
            if (!rejections.Accept(() => "fuse holder", [check])) return null;
            if (checks.All(c => c.Id != check.Id)) checks.Add(check);
            holders.Add(holder!);
        }

        return holders;
    }

    private ProtectionDevice? HolderFor(ProtectionDevice fuse) => CheapestOf(ProtectionKind.FuseHolder, p => p.RatedA >= fuse.RatedA && p.RatedV >= fuse.RatedV);

    private bool NoHolderFor(ProtectionDevice fuse) => HolderFor(fuse) is null;

    private decimal WithHolder(ProtectionDevice fuse) => costs.Of(fuse) + (HolderFor(fuse) is { } holder ? costs.Of(holder) : 0);

    private ProtectionDevice? CheapestOf(ProtectionKind kind, Func<ProtectionDevice, bool> fits) =>
        inputs.Catalog.Protection.Where(p => p.Kind == kind && fits(p)).OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal).FirstOrDefault();
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>What carries a kit: bracket, enclosure, pole and foundation.</summary>
public sealed record SupportOption(
    Bracket? Bracket, Enclosure? Enclosure, Pole Pole, FoundationSet Foundation, StructureDesign Structure, ImmutableArray<Check> Checks);

/// <summary>Fifth step: the cheapest parts that carry modules, battery and luminaire in the site's wind and soil.</summary>
public sealed class SupportStage(Site site, SiteClimate climate, DesignInputs inputs, Costs costs, Rejections rejections)
{
    private const double GravityMPerS2 = 9.81;
    private readonly Dictionary<(string Luminaire, PoleShape Shape, string Module, int Modules, string Battery, int Batteries, string Controller, int Controllers), SupportOption?> _known = [];
    private readonly Dictionary<PoleShape, ImmutableArray<(Pole Pole, FoundationSet Set, decimal Cost)>> _stands = [];
    private (double HeaviestKg, double LeastModuleM2, double LeastBoxM2)? _most;
    private ImmutableArray<Bracket>? _brackets;
    private ImmutableArray<Enclosure>? _enclosures;
    private readonly CheckList _numbers = new(false);
    private readonly CivilCosts _civil = new(inputs.Catalog, costs, inputs.Tender.Prices.MaintenanceYears);
    private readonly (WindCase Wind, ConvertedWind Conversion) _wind = AtLeast(site.Wind, 10);

    /// <summary>Null when nothing carries it.</summary>
    public SupportOption? Find(LightOption light, PowerOption power)
    {
        var key = (light.Luminaire.Code, light.Shape, power.Module.Code, power.ModuleCount, power.Bank.Battery.Code, power.Bank.InSeries * power.Bank.Strings, power.Bank.Controller.Code, power.Bank.ControllerCount);
        if (_known.TryGetValue(key, out var known)) return known;
        return _known[key] = Build(light, power);
    }

    /// <summary>The cheapest bracket for a number of modules; null when none suits.</summary>
    internal Bracket? BracketFor(Module module, int count, out ImmutableArray<Check> checks) => Cheapest(_brackets ??= ByCost(inputs.Catalog.Brackets), (list, b) => BracketChecks(list, b, module, count), out checks);

    /// <summary>The cheapest enclosure for a bank with its controller; null when none suits.</summary>
    internal Enclosure? EnclosureFor(BankOption bank, out ImmutableArray<Check> checks) => Cheapest(_enclosures ??= ByCost(inputs.Catalog.Enclosures), (list, e) => EnclosureChecks(list, e, bank), out checks);

    /// <summary>Cost of the cheapest box with room for so many of a battery and strong enough for them: never above that of a box which takes the controller too.</summary>
    internal decimal? BoxCost(Battery battery, int count)
    {
        foreach (var box in _enclosures ??= ByCost(inputs.Catalog.Enclosures))
        {
            if (box.UsableVolumeL >= battery.VolumeM3 * count * 1000 && box.MaxContentKg >= battery.WeightKg * count && box.IpCode >= inputs.Rules["enclosure.ip"]) return costs.Of(box);
        }

        return null;
    }

    private SupportOption? Build(LightOption light, PowerOption power)
    {
        ImmutableArray<Check> bracketChecks = [], enclosureChecks = [];
        var separate = light.Integrated is null;
        var bracket = separate ? BracketFor(power.Module, power.ModuleCount, out bracketChecks) : null;
        var enclosure = separate ? EnclosureFor(power.Bank, out enclosureChecks) : null;
        if (separate && (bracket is null || enclosure is null)) return null;
        if (!WindCovered()) return null;
        var (poles, grounds) = (new Rejections(), new Rejections());
        var loads = new Dictionary<Pole, PoleUnderWind?>(ReferenceEqualityComparer.Instance);
        foreach (var (pole, set, _) in StandsOf(light.Shape))
        {
            if (!loads.TryGetValue(pole, out var under)) loads[pole] = under = UnderWind(light, power, bracket, enclosure, pole, poles);
            if (under is null || !grounds.Accept(() => $"{set.Code} under {pole.Code}", list => FoundationChecks.Of(list, set, pole, under.Load, under.CarriedN, site, inputs.Rules))) continue;
            return Carried(light, under, bracket, enclosure, pole, set, [.. bracketChecks, .. enclosureChecks]);
        }

        rejections.Take(grounds.HasAny ? grounds : poles, grounds.HasAny ? 2 : 1);
        return null;
    }

    /// <summary>A pole that stands the wind on all it carries.</summary>
    private sealed record PoleUnderWind(PoleLoad Load, double CarriedN, double PeriodS, double DynamicFactor);

    /// <summary>
    /// Poles of a shape with the foundations that suit them, the cheapest pair first; of equals the cheaper pole, then the cheaper foundation. What a pair
    /// costs with its works does not depend on what it carries, so the first that stands is the least.
    /// </summary>
    private ImmutableArray<(Pole Pole, FoundationSet Set, decimal Cost)> StandsOf(PoleShape shape)
    {
        if (_stands.TryGetValue(shape, out var known)) return known;
        var sets = inputs.Catalog.Foundations.OrderBy(costs.Of).ThenBy(f => f.Code, StringComparer.Ordinal).ToArray();
        return _stands[shape] =
        [
            .. PolesOf(shape)
                .SelectMany(p => sets.Where(f => FoundationChecks.Suits(f, p)).Select(f => (Pole: p, Set: f, Cost: costs.Of(p) + costs.Of(f) + _civil.Of(f, FoundationChecks.Amounts(f, p, inputs.Rules)))))
                .OrderBy(s => s.Cost),
        ];
    }

    /// <summary>Null when the pole is too weak or does not fit.</summary>
    private PoleUnderWind? UnderWind(LightOption light, PowerOption power, Bracket? bracket, Enclosure? enclosure, Pole pole, Rejections poles)
    {
        var shaft = PoleChecks.ShaftOf(pole);
        var periodS = Sway.PeriodS(shaft, HeadKg(light, power) + (bracket?.WeightKg ?? 0));
        var dynamicFactor = Math.Max(inputs.Rules["structure.dynamic_factor"], Sway.DynamicFactor(Math.Min(periodS, 10)));
        var load = Wind.OnPole(shaft, WindItems(light, ModuleAreaM2(power), enclosure?.WindAreaM2), _wind.Wind.CharacteristicNPerM2, structuralFactor: dynamicFactor);
        if (!poles.Accept(() => pole.Code, list => ChecksOf(list, light, bracket, enclosure, pole, load))) return null;
        var carriedN = (pole.WeightKg + (bracket?.WeightKg ?? 0) + (enclosure?.WeightKg ?? 0) + light.Luminaire.WeightKg + (light.Integrated is null ? ContentKg(power) : 0)) * GravityMPerS2;
        return new PoleUnderWind(load, carriedN, periodS, dynamicFactor);
    }

    private void ChecksOf(CheckList list, LightOption light, Bracket? bracket, Enclosure? enclosure, Pole pole, PoleLoad load)
    {
        PoleChecks.Of(list, pole, load, site, inputs.Rules);
        FitChecks.HeadOnPole(list, light.Luminaire, pole);
        if (bracket is not null) FitChecks.BracketOnPole(list, bracket, pole);
        if (enclosure is not null) FitChecks.BoxOnPole(list, enclosure, pole, inputs.Rules);
    }

    private SupportOption Carried(LightOption light, PoleUnderWind under, Bracket? bracket, Enclosure? enclosure, Pole pole, FoundationSet set, ImmutableArray<Check> before)
    {
        var (wind, conversion) = _wind;
        GroundedPole? ground = null;
        var checks = CheckList.Record(list =>
        {
            ChecksOf(list, light, bracket, enclosure, pole, under.Load);
            ground = FoundationChecks.Of(list, set, pole, under.Load, under.CarriedN, site, inputs.Rules);
        });
        var structure = new StructureDesign(under.Load, ground!.Block, wind.PeakPressureNPerM2(pole.HeightM))
        {
            Wind = wind, Conversion = conversion, PeriodS = under.PeriodS, DynamicFactor = under.DynamicFactor, DoorStressMPa = PoleChecks.DoorStressMPa(pole, under.Load), Bolts = ground.Bolts, EmbedmentM = ground.EmbedmentM,
        };
        return new SupportOption(bracket, enclosure, pole, set, structure, [.. before, .. checks]);
    }

    /// <summary>Whether the standard covers the wind; a speed below it counts as its least.</summary>
    private bool WindCovered() => rejections.Accept(
        () => "every pole",
        [
            new Check(
                "pole.wind", "Wind", "speed in the definition of the standard", Comparison.AtMost,
                _wind.Wind.Standard == WindStandard.En1991 ? 70 : 100, _wind.Wind.SpeedMPerS, "m/s", "range the standard's profile is used in", 1),
        ]);

    /// <summary>
    /// The least a pole and its foundation can cost under a luminaire with some area of modules and box: poles that carry these, with
    /// foundations that suit them and stand against that wind under the heaviest load there could be. Zero when none does: the search then says why.
    /// Never above the cost of a pole that is found: its loads are at least these, since its areas are and its structural factor is the design rule's or, by
    /// its sway, more; stress, door, deflection, overturning and embedment all grow with shear and moment, overturning falls with the weight, and
    /// what hangs on the pole weighs no more than taken here (a box carries no more than its limit). Bolts, ground pressure and the width of the hole,
    /// which more weight or wind could turn either way, are left out of it, so no pole is lost that a candidate could have.
    /// </summary>
    /// <param name="moduleAreaM2">Area of the modules, m2; null for the smallest there is.</param>
    /// <param name="boxAreaM2">Area of the box seen by the wind, m2; null for the smallest there is.</param>
    internal decimal LeastCost(LightOption light, double? moduleAreaM2, double? boxAreaM2)
    {
        var most = _most ??= (
            Most(inputs.Catalog.Brackets.Select(b => b.WeightKg)) + Most(inputs.Catalog.Enclosures.Select(e => e.WeightKg + e.MaxContentKg)) + (ArrayStage.MostModules * Most(inputs.Catalog.Modules.Select(m => m.WeightKg))),
            inputs.Catalog.Modules.Select(m => m.LengthM * m.WidthM).DefaultIfEmpty(0).Min(), inputs.Catalog.Enclosures.Select(e => e.WindAreaM2).DefaultIfEmpty(0).Min());
        var heaviestKg = light.Luminaire.WeightKg + most.HeaviestKg;
        var items = WindItems(
            light,
            light.Integrated is { } own ? own.ModuleLengthM * own.ModuleWidthM : moduleAreaM2 ?? most.LeastModuleM2,
            light.Integrated is not null ? null : boxAreaM2 ?? most.LeastBoxM2);
        var carriedN = new Dictionary<Pole, (PoleLoad Load, double CarriedN)?>(ReferenceEqualityComparer.Instance);
        foreach (var (pole, set, cost) in StandsOf(light.Shape))
        {
            if (!carriedN.TryGetValue(pole, out var under)) carriedN[pole] = under = LeastLoad(pole, items, heaviestKg);
            if (under is { } u && Stands(set, pole, u.Load, u.CarriedN)) return cost;
        }

        return 0;
    }

    /// <summary>The least load and the greatest weight a pole can have with such items; null when even these are too much.</summary>
    private (PoleLoad Load, double CarriedN)? LeastLoad(Pole pole, ImmutableArray<WindItem> items, double heaviestKg)
    {
        var load = Wind.OnPole(PoleChecks.ShaftOf(pole), items, _wind.Wind.CharacteristicNPerM2, structuralFactor: inputs.Rules["structure.dynamic_factor"]);
        PoleChecks.Of(_numbers.Clear(), pole, load, site, inputs.Rules);
        return _numbers.Complies ? (load, (pole.WeightKg + heaviestKg) * GravityMPerS2) : null;
    }

    /// <summary>Whether a foundation stands in all that more weight on it can only help.</summary>
    private bool Stands(FoundationSet set, Pole pole, PoleLoad load, double carriedN)
    {
        FoundationChecks.Holds(_numbers.Clear(), set, pole, load, carriedN, site, inputs.Rules);
        return _numbers.Complies;
    }

    private static double Most(IEnumerable<double> values) => values.DefaultIfEmpty(0).Max();

    private IEnumerable<Pole> PolesOf(PoleShape shape) =>
        inputs.Catalog.Poles
            .Where(shape.IsShapeOf)
            .OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal);

    /// <summary>The first part in order of cost that complies.</summary>
    private TPart? Cheapest<TPart>(ImmutableArray<TPart> byCost, Action<CheckList, TPart> addChecks, out ImmutableArray<Check> checks)
        where TPart : Part
    {
        var refused = new Rejections();
        foreach (var part in byCost)
        {
            if (!refused.Accept(() => part.Code, list => addChecks(list, part))) continue;
            checks = CheckList.Record(list => addChecks(list, part));
            return part;
        }

        rejections.Take(refused, 0);
        checks = [];
        return null;
    }

    private ImmutableArray<TPart> ByCost<TPart>(ImmutableArray<TPart> parts)
        where TPart : Part => [.. parts.OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal)];

    private void BracketChecks(CheckList list, Bracket bracket, Module module, int count)
    {
        list.AtLeast("bracket.area", "Bracket", "module area it carries", module.LengthM * module.WidthM * count, bracket.MaxModuleAreaM2, "m2", "module area");
        list.AtMost("bracket.least_tilt", "Bracket", "least tilt", climate.Plane.TiltDegrees, bracket.MinTiltDegrees, "degrees", "best tilt for the worst month", 0);
        list.AtLeast("bracket.most_tilt", "Bracket", "greatest tilt", climate.Plane.TiltDegrees, bracket.MaxTiltDegrees, "degrees", "best tilt for the worst month", 0);
    }

    private void EnclosureChecks(CheckList list, Enclosure enclosure, BankOption bank)
    {
        var batteries = bank.InSeries * bank.Strings;
        var volumeL = ((bank.Battery.VolumeM3 * batteries) + bank.Control.VolumeM3) * 1000;
        var weightKg = (bank.Battery.WeightKg * batteries) + bank.Control.WeightKg;
        list.AtLeast("enclosure.volume", "Enclosure", "usable volume", volumeL, enclosure.UsableVolumeL, "l", "battery and controller, packed", 1);
        list.AtLeast("enclosure.content", "Enclosure", "content it carries", weightKg, enclosure.MaxContentKg, "kg", "battery and controller", 1);
        FitChecks.BatteryInBox(list, bank, enclosure, inputs.Rules);
    }

    private ImmutableArray<WindItem> WindItems(LightOption light, double moduleAreaM2, double? boxAreaM2)
    {
        var rules = inputs.Rules;
        var tilt = light.Integrated is { } unit ? IntegratedStage.TiltDegrees(unit, light.Shape) : climate.Plane.TiltDegrees;
        var projection = Math.Max(Angle.SinDegrees(tilt), rules["structure.module_least_projection"]);
        return
        [
            new("modules", moduleAreaM2 * projection, rules["structure.module_force_coefficient"], light.Shape.HeightM),
            new("luminaire", light.Luminaire.WindAreaM2, rules["structure.luminaire_force_coefficient"], light.Shape.HeightM),
            .. boxAreaM2 is { } areaM2 ? [new WindItem("enclosure", areaM2, rules["structure.box_force_coefficient"], rules["wiring.box_height"])] : Array.Empty<WindItem>(),
        ];
    }

    private static (WindCase Wind, ConvertedWind Conversion) AtLeast((WindCase Wind, ConvertedWind Conversion) wind, double leastMPerS) =>
        (wind.Wind with { SpeedMPerS = Math.Max(leastMPerS, wind.Wind.SpeedMPerS) }, wind.Conversion);

    private static double ModuleAreaM2(PowerOption power) => power.Module.LengthM * power.Module.WidthM * power.ModuleCount;

    private static double HeadKg(LightOption light, PowerOption power) => light.Luminaire.WeightKg + (power.Module.WeightKg * power.ModuleCount);

    private static double ContentKg(PowerOption power) =>
        (power.Module.WeightKg * power.ModuleCount) + (power.Bank.Battery.WeightKg * power.Bank.InSeries * power.Bank.Strings) + power.Bank.Control.WeightKg;
}

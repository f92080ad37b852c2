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
    private readonly Dictionary<string, SupportOption?> _known = new(StringComparer.Ordinal);
    private readonly CivilCosts _civil = new(inputs.Catalog, costs, inputs.Tender.Prices.MaintenanceYears);
    private readonly (WindCase Wind, ConvertedWind Conversion) _wind = AtLeast(site.Wind, 10);

    /// <summary>Null when nothing carries it.</summary>
    public SupportOption? Find(LightOption light, PowerOption power)
    {
        var key = FormattableString.Invariant(
            $"{light.Luminaire.Code}|{light.Shape}|{power.Module.Code}|{power.ModuleCount}|{power.Bank.Battery.Code}|{power.Bank.InSeries * power.Bank.Strings}|{power.Bank.Controller.Code}|{power.Bank.ControllerCount}");
        if (_known.TryGetValue(key, out var known)) return known;
        return _known[key] = Build(light, power);
    }

    /// <summary>The cheapest bracket for a number of modules; null when none suits.</summary>
    internal Bracket? BracketFor(Module module, int count, out ImmutableArray<Check> checks) => Cheapest(inputs.Catalog.Brackets, b => BracketChecks(b, module, count), out checks);

    /// <summary>The cheapest enclosure for a bank with its controller; null when none suits.</summary>
    internal Enclosure? EnclosureFor(BankOption bank, out ImmutableArray<Check> checks) => Cheapest(inputs.Catalog.Enclosures, e => EnclosureChecks(e, bank), out checks);

    private SupportOption? Build(LightOption light, PowerOption power)
    {
        ImmutableArray<Check> bracketChecks = [], enclosureChecks = [];
        var separate = light.Integrated is null;
        var bracket = separate ? BracketFor(power.Module, power.ModuleCount, out bracketChecks) : null;
        var enclosure = separate ? EnclosureFor(power.Bank, out enclosureChecks) : null;
        if (separate && (bracket is null || enclosure is null)) return null;
        if (!WindCovered()) return null;
        var (poles, grounds) = (new Rejections(), new Rejections());
        var best = PolesOf(light.Shape).Select(pole => Carry(light, power, bracket, enclosure, pole, poles, grounds)).OfType<SupportOption>().MinBy(CostOf);
        if (best is null) rejections.Take(grounds.HasAny ? grounds : poles, grounds.HasAny ? 2 : 1);
        return best is null ? null : best with { Checks = [.. bracketChecks, .. enclosureChecks, .. best.Checks] };
    }

    /// <summary>One pole with the foundation that costs least under it; null when it is too weak or nothing holds it.</summary>
    private SupportOption? Carry(LightOption light, PowerOption power, Bracket? bracket, Enclosure? enclosure, Pole pole, Rejections poles, Rejections grounds)
    {
        var (wind, conversion) = _wind;
        var shaft = PoleChecks.ShaftOf(pole);
        var periodS = Sway.PeriodS(shaft, HeadKg(light, power) + (bracket?.WeightKg ?? 0));
        var dynamicFactor = Math.Max(inputs.Rules["structure.dynamic_factor"], Sway.DynamicFactor(Math.Min(periodS, 10)));
        var load = Wind.OnPole(shaft, WindItems(light, ModuleAreaM2(power), enclosure?.WindAreaM2), wind.CharacteristicNPerM2, structuralFactor: dynamicFactor);
        ImmutableArray<Check> poleChecks =
        [
            .. PoleChecks.Of(pole, load, site, inputs.Rules), .. FitChecks.HeadOnPole(light.Luminaire, pole),
            .. bracket is null ? [] : FitChecks.BracketOnPole(bracket, pole), .. enclosure is null ? [] : FitChecks.BoxOnPole(enclosure, pole, inputs.Rules),
        ];
        if (!poles.Accept(() => pole.Code, poleChecks)) return null;
        var carriedN = (pole.WeightKg + (bracket?.WeightKg ?? 0) + (enclosure?.WeightKg ?? 0) + light.Luminaire.WeightKg + (light.Integrated is null ? ContentKg(power) : 0)) * GravityMPerS2;
        SupportOption? Grounded(FoundationSet set)
        {
            var ground = FoundationChecks.Of(set, pole, load, carriedN, site, inputs.Rules);
            if (!grounds.Accept(() => $"{set.Code} under {pole.Code}", ground.Checks)) return null;
            var structure = new StructureDesign(load, ground.Block, wind.PeakPressureNPerM2(pole.HeightM))
            {
                Wind = wind, Conversion = conversion, PeriodS = periodS, DynamicFactor = dynamicFactor, DoorStressMPa = PoleChecks.DoorStressMPa(pole, load), Bolts = ground.Bolts, EmbedmentM = ground.EmbedmentM,
            };
            return new SupportOption(bracket, enclosure, pole, set, structure, [.. poleChecks, .. ground.Checks]);
        }

        return inputs.Catalog.Foundations.Where(f => FoundationChecks.Suits(f, pole)).OrderBy(costs.Of).ThenBy(f => f.Code, StringComparer.Ordinal)
            .Select(Grounded).OfType<SupportOption>().MinBy(CostOf);
    }

    /// <summary>Direct cost of pole and foundation with their civil works.</summary>
    private decimal CostOf(SupportOption option) => costs.Of(option.Pole) + costs.Of(option.Foundation) + _civil.Of(option.Foundation, option.Structure.Foundation);

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
    /// <param name="costOf">Least cost of a pole on a foundation.</param>
    internal decimal LeastCost(LightOption light, double? moduleAreaM2, double? boxAreaM2, Func<Pole, FoundationSet, decimal> costOf)
    {
        var heaviestKg = light.Luminaire.WeightKg + Most(inputs.Catalog.Brackets.Select(b => b.WeightKg)) + Most(inputs.Catalog.Enclosures.Select(e => e.WeightKg + e.MaxContentKg))
            + (ArrayStage.MostModules * Most(inputs.Catalog.Modules.Select(m => m.WeightKg)));
        var items = WindItems(
            light,
            light.Integrated is { } own ? own.ModuleLengthM * own.ModuleWidthM : moduleAreaM2 ?? inputs.Catalog.Modules.Select(m => m.LengthM * m.WidthM).DefaultIfEmpty(0).Min(),
            light.Integrated is not null ? null : boxAreaM2 ?? inputs.Catalog.Enclosures.Select(e => e.WindAreaM2).DefaultIfEmpty(0).Min());
        decimal? least = null;
        foreach (var pole in PolesOf(light.Shape))
        {
            var load = Wind.OnPole(PoleChecks.ShaftOf(pole), items, _wind.Wind.CharacteristicNPerM2, structuralFactor: inputs.Rules["structure.dynamic_factor"]);
            if (PoleChecks.Of(pole, load, site, inputs.Rules).Any(c => !c.Complies)) continue;
            foreach (var set in inputs.Catalog.Foundations.Where(f => FoundationChecks.Suits(f, pole)))
            {
                if (costOf(pole, set) is var cost && !(cost >= least) && Stands(set, pole, load, (pole.WeightKg + heaviestKg) * GravityMPerS2)) least = cost;
            }
        }

        return least ?? 0;
    }

    /// <summary>Whether a foundation stands in all that more weight on it can only help.</summary>
    private bool Stands(FoundationSet set, Pole pole, PoleLoad load, double carriedN) =>
        FoundationChecks.Of(set, pole, load, carriedN, site, inputs.Rules).Checks.Where(c => c.Id is "foundation.overturning" or "foundation.embedment").All(c => c.Complies);

    private static double Most(IEnumerable<double> values) => values.DefaultIfEmpty(0).Max();

    private IEnumerable<Pole> PolesOf(PoleShape shape) =>
        inputs.Catalog.Poles
            .Where(shape.IsShapeOf)
            .OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal);

    private TPart? Cheapest<TPart>(IEnumerable<TPart> parts, Func<TPart, ImmutableArray<Check>> checksOf, out ImmutableArray<Check> checks)
        where TPart : Part
    {
        var refused = new Rejections();
        foreach (var part in parts.OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal))
        {
            var found = checks = checksOf(part);
            if (refused.Accept(() => part.Code, found)) return part;
        }

        rejections.Take(refused, 0);
        checks = [];
        return null;
    }

    private ImmutableArray<Check> BracketChecks(Bracket bracket, Module module, int count) =>
    [
        new(
            "bracket.area", "Bracket", "module area it carries", Comparison.AtLeast,
            module.LengthM * module.WidthM * count, bracket.MaxModuleAreaM2, "m2", "module area"),
        new(
            "bracket.least_tilt", "Bracket", "least tilt", Comparison.AtMost,
            climate.Plane.TiltDegrees, bracket.MinTiltDegrees, "degrees", "best tilt for the worst month", 0),
        new(
            "bracket.most_tilt", "Bracket", "greatest tilt", Comparison.AtLeast,
            climate.Plane.TiltDegrees, bracket.MaxTiltDegrees, "degrees", "best tilt for the worst month", 0),
    ];

    private ImmutableArray<Check> EnclosureChecks(Enclosure enclosure, BankOption bank)
    {
        var batteries = bank.InSeries * bank.Strings;
        var volumeL = ((bank.Battery.VolumeM3 * batteries) + bank.Control.VolumeM3) * 1000;
        var weightKg = (bank.Battery.WeightKg * batteries) + bank.Control.WeightKg;
        return
        [
            new(
                "enclosure.volume", "Enclosure", "usable volume", Comparison.AtLeast,
                volumeL, enclosure.UsableVolumeL, "l", "battery and controller, packed", 1),
            new(
                "enclosure.content", "Enclosure", "content it carries", Comparison.AtLeast,
                weightKg, enclosure.MaxContentKg, "kg", "battery and controller", 1),
            .. FitChecks.BatteryInBox(bank, enclosure, inputs.Rules),
        ];
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

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

    /// <summary>Null when nothing carries it.</summary>
    public SupportOption? Find(LightOption light, PowerOption power)
    {
        var key = FormattableString.Invariant(
            $"{light.Luminaire.Code}|{light.Shape}|{power.Module.Code}|{power.ModuleCount}|{power.Bank.Battery.Code}|{power.Bank.InSeries * power.Bank.Strings}|{power.Bank.Controller.Code}");
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
        var bracket = light.Integrated is null ? BracketFor(power.Module, power.ModuleCount, out bracketChecks) : null;
        var enclosure = light.Integrated is null ? EnclosureFor(power.Bank, out enclosureChecks) : null;
        if (light.Integrated is null && (bracket is null || enclosure is null)) return null;
        foreach (var pole in PolesOf(light.Shape))
        {
            var load = Wind.OnPole(
                ShaftOf(pole), WindItems(light, ModuleAreaM2(power), enclosure?.WindAreaM2), site.BasicWindMPerS, site.Terrain, structuralFactor: inputs.Rules["structure.dynamic_factor"]);
            var poleChecks = PoleChecks(pole, load);
            if (!rejections.Accept(() => pole.Code, poleChecks)) continue;
            var carriedN = (pole.WeightKg + (bracket?.WeightKg ?? 0) + (enclosure?.WeightKg ?? 0) + light.Luminaire.WeightKg + (light.Integrated is null ? ContentKg(power) : 0)) * GravityMPerS2;
            var foundation = Cheapest(inputs.Catalog.Foundations, f => FoundationChecks(BlockOf(f, load, carriedN)), out var foundationChecks);
            if (foundation is null) continue;
            var structure = new StructureDesign(load, BlockOf(foundation, load, carriedN), Wind.PeakPressureNPerM2(site.BasicWindMPerS, site.Terrain, pole.HeightM));
            return new SupportOption(bracket, enclosure, pole, foundation, structure, [.. bracketChecks, .. enclosureChecks, .. poleChecks, .. foundationChecks]);
        }

        return null;
    }

    /// <summary>
    /// The least a pole and its foundation can cost under a luminaire with some area of modules and box: poles that carry these, with
    /// blocks that stand against that wind under the heaviest load there could be. Zero when none does: the search then says why.
    /// </summary>
    /// <param name="moduleAreaM2">Area of the modules, m2; null for the smallest there is.</param>
    /// <param name="boxAreaM2">Area of the box seen by the wind, m2; null for the smallest there is.</param>
    /// <param name="costOf">Least cost of a pole on a block.</param>
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
            var load = Wind.OnPole(ShaftOf(pole), items, site.BasicWindMPerS, site.Terrain, structuralFactor: inputs.Rules["structure.dynamic_factor"]);
            if (PoleChecks(pole, load).Any(c => !c.Complies)) continue;
            foreach (var set in inputs.Catalog.Foundations)
            {
                var block = BlockOf(set, load, (pole.WeightKg + heaviestKg) * GravityMPerS2);
                if (FoundationChecks(block).Where(c => c.Id == "foundation.overturning").All(c => c.Complies) && costOf(pole, set) is var cost && !(cost >= least)) least = cost;
            }
        }

        return least ?? 0;
    }

    private static double Most(IEnumerable<double> values) => values.DefaultIfEmpty(0).Max();

    private IEnumerable<Pole> PolesOf(PoleShape shape) =>
        inputs.Catalog.Poles
            .Where(shape.IsShapeOf)
            .OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal);

    private TPart? Cheapest<TPart>(IEnumerable<TPart> parts, Func<TPart, ImmutableArray<Check>> checksOf, out ImmutableArray<Check> checks)
        where TPart : Part
    {
        foreach (var part in parts.OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal))
        {
            var found = checks = checksOf(part);
            if (rejections.Accept(() => part.Code, found)) return part;
        }

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

    private static ImmutableArray<Check> EnclosureChecks(Enclosure enclosure, BankOption bank)
    {
        var batteries = bank.InSeries * bank.Strings;
        var volumeL = ((bank.Battery.VolumeM3 * batteries) + bank.Controller.VolumeM3) * 1000;
        var weightKg = (bank.Battery.WeightKg * batteries) + bank.Controller.WeightKg;
        return
        [
            new(
                "enclosure.volume", "Enclosure", "usable volume", Comparison.AtLeast,
                volumeL, enclosure.UsableVolumeL, "l", "battery and controller, packed", 1),
            new(
                "enclosure.content", "Enclosure", "content it carries", Comparison.AtLeast,
                weightKg, enclosure.MaxContentKg, "kg", "battery and controller", 1),
        ];
    }

    private ImmutableArray<Check> PoleChecks(Pole pole, PoleLoad load) =>
    [
        new(
            "pole.stress", "Pole", "greatest design stress of the shaft", Comparison.AtMost,
            pole.YieldMPa / inputs.Rules["structure.steel_factor"], load.GreatestStressMPa * inputs.Rules["structure.wind_factor"], "MPa",
            "EN 1991-1-4 wind; design rules structure.wind_factor, structure.steel_factor", 0),
        new(
            "pole.deflection", "Pole", "deflection of the head", Comparison.AtMost,
            inputs.Rules["structure.deflection"] * pole.HeightM, load.HeadDeflectionM, "m", "design rule structure.deflection"),
    ];

    private ImmutableArray<Check> FoundationChecks(BlockResult block) =>
    [
        new(
            "foundation.overturning", "Foundation", "safety against overturning", Comparison.AtLeast,
            inputs.Rules["structure.overturning"], block.OverturningSafetyFactor, "", "design rule structure.overturning; soil at the sides left out"),
        new(
            "foundation.pressure", "Foundation", "ground pressure", Comparison.AtMost,
            site.Soil.BearingKPa, block.GroundPressureKPa, "kPa", $"soil class {site.Soil.Name}" + (site.SoilStated ? "" : ", the worst, since none was stated"), 0),
    ];

    private BlockResult BlockOf(FoundationSet set, PoleLoad load, double carriedN) =>
        Foundation.Block(new BlockFoundation(set.LengthM, set.WidthM, set.DepthM), load.BaseShearN, load.BaseMomentNm, carriedN, inputs.Rules["structure.concrete_weight"]);

    private ImmutableArray<WindItem> WindItems(LightOption light, double moduleAreaM2, double? boxAreaM2)
    {
        var rules = inputs.Rules;
        var tilt = light.Integrated is { } unit ? unit.ModuleTiltDegrees + light.Shape.ArmTiltDegrees : climate.Plane.TiltDegrees;
        var projection = Math.Max(Angle.SinDegrees(tilt), rules["structure.module_least_projection"]);
        return
        [
            new("modules", moduleAreaM2 * projection, rules["structure.module_force_coefficient"], light.Shape.HeightM),
            new("luminaire", light.Luminaire.WindAreaM2, rules["structure.luminaire_force_coefficient"], light.Shape.HeightM),
            .. boxAreaM2 is { } areaM2 ? [new WindItem("enclosure", areaM2, rules["structure.box_force_coefficient"], rules["wiring.box_height"])] : Array.Empty<WindItem>(),
        ];
    }

    private static PoleShaft ShaftOf(Pole pole) => new(pole.HeightM, pole.BaseDiameterMm, pole.TopDiameterMm, pole.WallMm, pole.YieldMPa);

    private static double ModuleAreaM2(PowerOption power) => power.Module.LengthM * power.Module.WidthM * power.ModuleCount;

    private static double ContentKg(PowerOption power) =>
        (power.Module.WeightKg * power.ModuleCount) + (power.Bank.Battery.WeightKg * power.Bank.InSeries * power.Bank.Strings) + power.Bank.Controller.WeightKg;
}

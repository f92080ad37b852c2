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
            $"{light.Luminaire.Code}|{light.Shape}|{power.Module.Code}|{power.ModuleCount}|{power.Bank.Battery.Code}|{power.Bank.InSeries * power.Bank.Strings}");
        if (_known.TryGetValue(key, out var known)) return known;
        return _known[key] = Build(light, power);
    }

    private SupportOption? Build(LightOption light, PowerOption power)
    {
        var bracket = Cheapest(inputs.Catalog.Brackets, b => BracketChecks(b, power), out var bracketChecks);
        var enclosure = Cheapest(inputs.Catalog.Enclosures, e => EnclosureChecks(e, power), out var enclosureChecks);
        if (bracket is null || enclosure is null) return null;
        if (!WindCovered()) return null;
        var (poles, grounds) = (new Rejections(), new Rejections());
        var best = PolesOf(light.Shape).Select(pole => Carry(light, power, bracket, enclosure, pole, poles, grounds)).OfType<SupportOption>().MinBy(CostOf);
        if (best is null) rejections.Take(grounds.HasAny ? grounds : poles, grounds.HasAny ? 2 : 1);
        return best is null ? null : best with { Checks = [.. bracketChecks, .. enclosureChecks, .. best.Checks] };
    }

    /// <summary>One pole with the foundation that costs least under it; null when it is too weak or nothing holds it.</summary>
    private SupportOption? Carry(LightOption light, PowerOption power, Bracket bracket, Enclosure enclosure, Pole pole, Rejections poles, Rejections grounds)
    {
        var (wind, conversion) = _wind;
        var shaft = PoleChecks.ShaftOf(pole);
        var periodS = Sway.PeriodS(shaft, HeadKg(light, power) + bracket.WeightKg);
        var dynamicFactor = Math.Max(inputs.Rules["structure.dynamic_factor"], Sway.DynamicFactor(Math.Min(periodS, 10)));
        var load = Wind.OnPole(shaft, WindItems(light, power, enclosure), wind.CharacteristicNPerM2, structuralFactor: dynamicFactor);
        var poleChecks = PoleChecks.Of(pole, load, site, inputs.Rules);
        if (!poles.Accept(() => pole.Code, poleChecks)) return null;
        var carriedN = (pole.WeightKg + bracket.WeightKg + enclosure.WeightKg + light.Luminaire.WeightKg + ContentKg(power)) * GravityMPerS2;
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

    private ImmutableArray<Check> BracketChecks(Bracket bracket, PowerOption power) =>
    [
        new(
            "bracket.area", "Bracket", "module area it carries", Comparison.AtLeast,
            ModuleAreaM2(power), bracket.MaxModuleAreaM2, "m2", "module area"),
        new(
            "bracket.least_tilt", "Bracket", "least tilt", Comparison.AtMost,
            climate.Plane.TiltDegrees, bracket.MinTiltDegrees, "degrees", "best tilt for the worst month", 0),
        new(
            "bracket.most_tilt", "Bracket", "greatest tilt", Comparison.AtLeast,
            climate.Plane.TiltDegrees, bracket.MaxTiltDegrees, "degrees", "best tilt for the worst month", 0),
    ];

    private static ImmutableArray<Check> EnclosureChecks(Enclosure enclosure, PowerOption power)
    {
        var batteries = power.Bank.InSeries * power.Bank.Strings;
        var volumeL = ((power.Bank.Battery.VolumeM3 * batteries) + power.Bank.Controller.VolumeM3) * 1000;
        var weightKg = (power.Bank.Battery.WeightKg * batteries) + power.Bank.Controller.WeightKg;
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

    private ImmutableArray<WindItem> WindItems(LightOption light, PowerOption power, Enclosure enclosure)
    {
        var rules = inputs.Rules;
        var projection = Math.Max(Angle.SinDegrees(climate.Plane.TiltDegrees), rules["structure.module_least_projection"]);
        return
        [
            new("modules", ModuleAreaM2(power) * projection, rules["structure.module_force_coefficient"], light.Shape.HeightM),
            new("luminaire", light.Luminaire.WindAreaM2, rules["structure.luminaire_force_coefficient"], light.Shape.HeightM),
            new("enclosure", enclosure.WindAreaM2, rules["structure.box_force_coefficient"], rules["wiring.box_height"]),
        ];
    }

    private static (WindCase Wind, ConvertedWind Conversion) AtLeast((WindCase Wind, ConvertedWind Conversion) wind, double leastMPerS) =>
        (wind.Wind with { SpeedMPerS = Math.Max(leastMPerS, wind.Wind.SpeedMPerS) }, wind.Conversion);

    private static double ModuleAreaM2(PowerOption power) => power.Module.LengthM * power.Module.WidthM * power.ModuleCount;

    private static double HeadKg(LightOption light, PowerOption power) => light.Luminaire.WeightKg + (power.Module.WeightKg * power.ModuleCount);

    private static double ContentKg(PowerOption power) =>
        (power.Module.WeightKg * power.ModuleCount) + (power.Bank.Battery.WeightKg * power.Bank.InSeries * power.Bank.Strings) + power.Bank.Controller.WeightKg;
}

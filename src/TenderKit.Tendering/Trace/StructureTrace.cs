using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Design;
using static TenderKit.Tendering.Trace.FigureList;

namespace TenderKit.Tendering.Trace;

/// <summary>Wind on the pole, what it does at the base, and the ground that holds it; nothing where the wind of the design is not recorded.</summary>
internal static class StructureTrace
{
    public static ImmutableArray<TracedFigure> Of(TenderDesign design, SiteDesign site)
    {
        var list = new FigureList(design, TraceGroup.Structure);
        if (site.Structure.Wind is not { } wind) return [];
        AddPressure(list, site, wind, "structure.pressure", "Wind pressure at the head", site.Parts.Pole.HeightM);
        if (list.RuleValue("wiring.box_height") is { } boxM && site.Parts.Enclosure is not null)
            AddPressure(list, site, wind, "structure.pressure_box", "Wind pressure at the enclosure", boxM);
        AddForces(list, site, wind);
        AddBase(list, site);
        if (site.Structure.EmbedmentM is null) AddBlock(list, site);
        else AddEmbedment(list, site);
        return list.Figures;
    }

    private static void AddPressure(FigureList list, SiteDesign site, WindCase wind, string id, string name, double heightM) => list.Add(
        id, name, wind.PeakPressureNPerM2(heightM), "N/m2", wind.Standard == WindStandard.En1991 ? "wind_pressure" : "wind_pressure_asce",
        Given("v", "wind speed in the definition of the standard", wind.SpeedMPerS, "m/s", TraceOrigin.Site), Given("terrain", "terrain category", (double)wind.Terrain, "", TraceOrigin.Site),
        Given("z", "height", heightM, "m", TraceOrigin.Part, site.Parts.Pole.Code));

    private static void AddForces(FigureList list, SiteDesign site, WindCase wind)
    {
        var (parts, structure, pole) = (site.Parts, site.Structure, site.Parts.Pole);
        var factor = Given("b", "structural factor: design rule or sway, the greater", structure.DynamicFactor, "", TraceOrigin.Rule, "structure.dynamic_factor");
        var level = Given("x", "share of the pressure at the characteristic level", wind.CharacteristicFraction, "", TraceOrigin.Standard, wind.Standard == WindStandard.En1991 ? "EN 1990" : "ASCE 7-16");
        if (list.RuleValue("structure.module_least_projection") is { } least)
            list.Add(
                "structure.module_area", "Area of the modules in the wind",
                parts.ModuleCount * parts.Module.LengthM * parts.Module.WidthM * Math.Max(Angle.SinDegrees(site.Climate.Plane.TiltDegrees), least), "m2", "module_area",
                Given("n", "modules", parts.ModuleCount, "", TraceOrigin.Search), Part("l", "length", parts.Module.LengthM, "m", Owner(parts)), Part("w", "width", parts.Module.WidthM, "m", Owner(parts)),
                Given("a", "tilt", site.Climate.Plane.TiltDegrees, "degrees", TraceOrigin.Search), list.Rule("p", "structure.module_least_projection", "least share of the area"));
        void Force(string name, string words, string pressure, string rule, TraceInput? area)
        {
            if (structure.Load.Forces.FirstOrDefault(f => f.Name == name) is { } force)
                list.Add($"structure.force_{name}", words, force.ForceN, "N", "wind_force", factor, level, list.Figure("q", pressure), list.Rule("c", rule, "force coefficient"), area);
        }

        Force("modules", "Wind on the modules", "structure.pressure", "structure.module_force_coefficient", list.Figure("A", "structure.module_area"));
        Force("luminaire", "Wind on the luminaire", "structure.pressure", "structure.luminaire_force_coefficient", Part("A", "area", parts.Luminaire.WindAreaM2, "m2", parts.Integrated is { } unit ? unit : parts.Luminaire));
        if (parts.Enclosure is { } box) Force("enclosure", "Wind on the enclosure", "structure.pressure_box", "structure.box_force_coefficient", Part("A", "area", box.WindAreaM2, "m2", box));
        if (structure.Load.Forces.FirstOrDefault(f => f.Name == "pole shaft") is { } shaft)
            list.Add(
                "structure.force_shaft", "Wind on the shaft", shaft.ForceN, "N", "wind_shaft", factor, level, Given("v", "wind speed in the definition of the standard", wind.SpeedMPerS, "m/s", TraceOrigin.Site),
                Given("terrain", "terrain category", (double)wind.Terrain, "", TraceOrigin.Site), Part("H", "height", pole.HeightM, "m", pole),
                Part("D1", "diameter at the base", pole.BaseDiameterMm, "mm", pole), Part("D2", "diameter at the top", pole.TopDiameterMm, "mm", pole));
    }

    private static Catalog.Families.Part Owner(PoleParts parts) => parts.Integrated is { } unit ? unit : parts.Module;

    private static void AddBase(FigureList list, SiteDesign site)
    {
        var (load, pole) = (site.Structure.Load, site.Parts.Pole);
        var forces = List("F", "wind on the shaft, the modules, the luminaire and the enclosure where there is one", load.Forces.Select(f => f.ForceN), "N", TraceOrigin.Figure, "structure.force_shaft");
        list.Add("structure.shear", "Shear at the base", load.BaseShearN, "N", "base_shear", forces);
        list.Add("structure.moment", "Moment at the base", load.BaseMomentNm, "Nm", "base_moment", forces, List("h", "heights of these forces", load.Forces.Select(f => f.HeightM), "m", TraceOrigin.Part, pole.Code));
        list.Add(
            "structure.stress", "Stress at the base, before factors", load.BaseStressMPa, "MPa", "base_stress", list.Figure("M", "structure.moment"),
            Part("D", "diameter at the base", pole.BaseDiameterMm, "mm", pole), Part("t", "wall", pole.WallMm, "mm", pole));
    }

    private static void AddBlock(FigureList list, SiteDesign site)
    {
        var set = site.Parts.Foundation;
        var (length, width, depth) = (Part("L", "length of the block", set.LengthM, "m", set), Part("B", "width of the block", set.WidthM, "m", set), Part("h", "depth of the block", set.DepthM, "m", set));
        if (list.RuleValue("structure.concrete_weight") is not { } concrete) return;
        var massesKg = MassesKg(site.Parts).ToImmutableArray();
        var unitKN = concrete - (site.Site.Ground.FloodProne ? Foundation.WaterKNPerM3 : 0);
        list.Add(
            "foundation.weight", "Weight on the ground", (massesKg.Sum() * 9.81) + (set.LengthM * set.WidthM * set.DepthM * unitKN * 1000), "N", "weight",
            List("m", "masses of the pole and what it carries", massesKg, "kg", TraceOrigin.Part), length, width, depth,
            Given("g", site.Site.Ground.FloodProne ? "unit weight of the concrete under water" : "unit weight of the concrete", unitKN, "kN/m3", TraceOrigin.Rule, "structure.concrete_weight"));
        var shorter = Part("B", "shorter side of the block", Math.Min(set.LengthM, set.WidthM), "m", set);
        list.Add(
            "foundation.overturning", "Safety against overturning", site.Structure.Foundation.OverturningSafetyFactor, "", "overturning",
            list.Figure("N", "foundation.weight"), shorter, list.Figure("M", "structure.moment"), list.Figure("V", "structure.shear"), depth);
        list.Add("foundation.concrete", "Concrete of a block", site.Structure.Foundation.ConcreteM3, "m3", "block", length, width, depth);
    }

    private static void AddEmbedment(FigureList list, SiteDesign site)
    {
        var (set, pole, load) = (site.Parts.Foundation, site.Parts.Pole, site.Structure.Load);
        var holeM = Math.Min(set.LengthM, set.WidthM);
        var share = site.Site.Ground.FloodProne ? list.RuleValue("structure.submerged_bearing") ?? 1 : 1;
        var soil = site.Site.Soil.LateralBearingKPaPerM * share;
        var leverM = load.BaseMomentNm / load.BaseShearN;
        var depthM = Foundation.EmbeddedDepthM(load.BaseShearN, leverM, holeM, soil);
        list.Add(
            "foundation.embedment", "Depth in the ground that the wind asks for", depthM, "m", "embedment",
            list.Figure("V", "structure.shear"), Given("e", "moment over shear", leverM, "m", TraceOrigin.Figure, "structure.moment"), Given("S", site.Site.Ground.FloodProne ? "lateral bearing of the soil under water" : "lateral bearing of the soil", soil, "kPa/m", TraceOrigin.Site),
            Part("b", "width of the hole", holeM, "m", set), Given("D", "the depth itself", depthM, "m", TraceOrigin.Search));
        list.Add(
            "foundation.depth", "Depth in the ground needed", site.Structure.EmbedmentM!.Value, "m", "depth_needed", list.Figure("D", "foundation.embedment"),
            Given("p", "planting depth for the height", Foundation.PlantingDepthM(Math.Min(pole.HeightM, 12)), "m", TraceOrigin.Standard, "EN 40-2"));
        list.Add("foundation.concrete", "Concrete and pole in the hole", site.Structure.Foundation.ConcreteM3, "m3", "block", Part("L", "length of the hole", set.LengthM, "m", set), Part("B", "width of the hole", set.WidthM, "m", set), Part("h", "depth of the hole", set.DepthM, "m", set));
    }

    /// <summary>Masses that press on the ground, kg: pole, bracket, enclosure, luminaire, and for separate parts modules, batteries and controllers.</summary>
    private static IEnumerable<double> MassesKg(PoleParts p)
    {
        yield return p.Pole.WeightKg;
        yield return p.Luminaire.WeightKg;
        if (p.Bracket is { } bracket) yield return bracket.WeightKg;
        if (p.Enclosure is { } enclosure) yield return enclosure.WeightKg;
        if (p.Integrated is not null) yield break;
        yield return p.Module.WeightKg * p.ModuleCount;
        yield return p.Battery.WeightKg * p.BatteryCount;
        yield return p.Controller.WeightKg * p.ControllerCount;
    }
}

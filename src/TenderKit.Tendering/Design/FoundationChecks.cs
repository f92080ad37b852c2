using TenderKit.Catalog.Families;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>A foundation under one pole: what it does and how it was checked.</summary>
/// <param name="Bolts">Null for a pole set into the ground.</param>
/// <param name="EmbedmentM">Null for a flanged pole.</param>
public sealed record GroundedPole(BlockResult Block, BoltDesign? Bolts, double? EmbedmentM);

/// <summary>
/// Blocks with anchor bolts under flanged poles, and concrete round poles set into the ground: a set without bolts is of the second
/// kind. All under characteristic loads; bolts at the strength level.
/// </summary>
public static class FoundationChecks
{
    /// <summary>Part of a bolt above the concrete, plate, levelling nut and nut, m; common practice, no source.</summary>
    private const double ProjectionM = 0.08;

    /// <summary>Property class taken for bolts whose class is not stated: the weakest, 4.6 (ISO 898-1, from memory).</summary>
    private const double WeakestTensileMPa = 400;
    private const double WeakestYieldMPa = 240;

    /// <summary>Whether pole and set belong together: flanged with bolts, or set into the ground without.</summary>
    public static bool Suits(FoundationSet set, Pole pole) => (set.AnchorBoltCount > 0) == (pole.DirectBuriedLengthM <= 0);

    /// <param name="list">Takes the checks.</param>
    public static GroundedPole Of(CheckList list, FoundationSet set, Pole pole, PoleLoad load, double carriedN, Site site, RuleSet rules) =>
        pole.DirectBuriedLengthM > 0 ? Buried(list, set, pole, load, carriedN, site, rules) : Flanged(list, set, pole, load, carriedN, site, rules);

    /// <summary>Of these checks the ones that more weight can only help: overturning, and the depth of a pole set into the ground.</summary>
    public static void Holds(CheckList list, FoundationSet set, Pole pole, PoleLoad load, double carriedN, Site site, RuleSet rules)
    {
        if (pole.DirectBuriedLengthM > 0) DepthCheck(list, set, pole, load, site, rules);
        else OverturningCheck(list, BlockOf(set, load, carriedN, site, rules), site, rules);
    }

    private static GroundedPole Flanged(CheckList list, FoundationSet set, Pole pole, PoleLoad load, double carriedN, Site site, RuleSet rules)
    {
        var block = BlockOf(set, load, carriedN, site, rules);
        var bolts = BoltsOf(set, pole, load, carriedN, site, rules);
        BlockChecks(list, block, site, rules);
        BoltChecks(list, set, pole, bolts);
        return new GroundedPole(block, bolts, null);
    }

    /// <summary>The amounts of a foundation alone, which depend on no load: all that its works cost by.</summary>
    public static BlockResult Amounts(FoundationSet set, Pole pole, RuleSet rules)
    {
        var volumeM3 = set.LengthM * set.WidthM * set.DepthM;
        if (pole.DirectBuriedLengthM > 0) return new BlockResult(0, 0, volumeM3, volumeM3);
        var (concreteM3, dugM3) = (Foundation.Block(new BlockFoundation(set.LengthM, set.WidthM, set.DepthM), 1, 1, 1, rules["structure.concrete_weight"], false).ConcreteM3, DugM3(set, rules));
        return new BlockResult(0, 0, concreteM3, dugM3) { BackfillM3 = dugM3 - concreteM3 };
    }

    private static double DugM3(FoundationSet set, RuleSet rules)
    {
        var spaceM = 2 * rules["structure.working_space"];
        return (set.LengthM + spaceM) * (set.WidthM + spaceM) * set.DepthM;
    }

    private static BlockResult BlockOf(FoundationSet set, PoleLoad load, double carriedN, Site site, RuleSet rules)
    {
        var size = new BlockFoundation(set.LengthM, set.WidthM, set.DepthM);
        BlockResult Result(bool submerged) => Foundation.Block(size, load.BaseShearN, load.BaseMomentNm, carriedN, rules["structure.concrete_weight"], submerged);
        var (dry, wet) = (Result(false), Result(site.Ground.FloodProne));
        var dugM3 = DugM3(set, rules);
        return new BlockResult(
            Math.Min(dry.OverturningSafetyFactor, wet.OverturningSafetyFactor), Math.Max(dry.GroundPressureKPa, wet.GroundPressureKPa), dry.ConcreteM3, dugM3)
        {
            BackfillM3 = dugM3 - dry.ConcreteM3,
        };
    }

    private static void BlockChecks(CheckList list, BlockResult block, Site site, RuleSet rules)
    {
        OverturningCheck(list, block, site, rules);
        list.AtMost("foundation.pressure", "Foundation", "ground pressure", site.Soil.BearingKPa, block.GroundPressureKPa, "kPa", $"{SoilWords(site)}{WaterWords(site)}", 0);
    }

    private static void OverturningCheck(CheckList list, BlockResult block, Site site, RuleSet rules) => list.AtLeast(
        "foundation.overturning", "Foundation", "safety against overturning", rules["structure.overturning"], block.OverturningSafetyFactor, "",
        $"design rule structure.overturning; soil at the sides left out{WaterWords(site)}");

    private static string WaterWords(Site site) => site.Ground.FloodProne ? "; block under water, flood-prone" : "";

    /// <summary>Null where the table of bolts does not know the diameter.</summary>
    private static BoltDesign? BoltsOf(FoundationSet set, Pole pole, PoleLoad load, double carriedN, Site site, RuleSet rules)
    {
        if (!AnchorBolts.IsKnown(set.AnchorBoltMm) || set.AnchorBoltCount < 3) return null;
        var factor = site.Wind.Wind.StrengthFactor(rules["structure.wind_factor"]);
        var spacingMm = set.BoltSpacingMm ?? Math.Max(pole.BaseDiameterMm, pole.BasePlateMm - (4 * set.AnchorBoltMm));
        var tensionN = AnchorBolts.TensionN(load.BaseMomentNm * factor, carriedN, set.AnchorBoltCount, spacingMm * Math.Sqrt(2));
        var shearN = load.BaseShearN * factor / set.AnchorBoltCount;
        return new BoltDesign(
            spacingMm,
            tensionN,
            shearN,
            AnchorBolts.UseFraction(tensionN, shearN, set.AnchorBoltMm, set.BoltTensileMPa ?? WeakestTensileMPa, set.BoltYieldMPa ?? WeakestYieldMPa, rules["structure.bolt_factor"]),
            AnchorBolts.BondLengthM(tensionN, set.AnchorBoltMm, rules["structure.bond"]),
            AnchorBolts.PlateMm(tensionN, pole.YieldMPa, rules["structure.steel_factor"]));
    }

    private static void BoltChecks(CheckList list, FoundationSet set, Pole pole, BoltDesign? bolts)
    {
        list.YesNo("bolts.known", "Anchor bolts", "three or more, of a size of ISO 898-1", true, bolts is not null, "ISO 898-1, coarse thread M12 to M36");
        if (bolts is null) return;
        list.AtMost(
            "bolts.use", "Anchor bolts", "use of the worst bolt in tension and shear", 100, bolts.UseFraction * 100, "%",
            $"EN 1993-1-8; class {(set.BoltTensileMPa is null ? "4.6, the weakest, since none is stated" : set.BoltGrade)}; design rule structure.bolt_factor", 0);
        list.AtLeast(
            "bolts.bond", "Anchor bolts", "length", bolts.BondLengthM + ProjectionM, set.AnchorBoltLengthMm / 1000, "m",
            "bond in the concrete, hooks and end plates left out; design rule structure.bond");
        if (set.BoltSpacingMm is { } spacingMm && pole.BasePlateMm > 0)
            list.AtMost(
            "bolts.plate", "Anchor bolts", "side of the base plate that holds them", pole.BasePlateMm, spacingMm + (3 * set.AnchorBoltMm), "mm",
                "bolt circle of the set on the plate of the pole, 1.5 bolt diameters to the edge; EN 1993-1-8", 0);
    }

    private static GroundedPole Buried(CheckList list, FoundationSet set, Pole pole, PoleLoad load, double carriedN, Site site, RuleSet rules)
    {
        var (depthM, neededM) = DepthCheck(list, set, pole, load, site, rules);
        var volumeM3 = set.LengthM * set.WidthM * set.DepthM;
        var pressureKPa = (carriedN + (volumeM3 * rules["structure.concrete_weight"] * 1000)) / (set.LengthM * set.WidthM) / 1000;
        list.AtLeast(
            "foundation.hole", "Foundation", "width of the hole", (pole.BaseDiameterMm / 1000) + (2 * rules["structure.surround"]), Math.Min(set.LengthM, set.WidthM), "m", "design rule structure.surround");
        list.AtMost("foundation.pressure", "Foundation", "ground pressure", site.Soil.BearingKPa, pressureKPa, "kPa", $"{SoilWords(site)}", 0);
        return new GroundedPole(new BlockResult(depthM / neededM, pressureKPa, volumeM3, volumeM3), null, neededM);
    }

    private static (double DepthM, double NeededM) DepthCheck(CheckList list, FoundationSet set, Pole pole, PoleLoad load, Site site, RuleSet rules)
    {
        var holeM = Math.Min(set.LengthM, set.WidthM);
        var lateral = site.Soil.LateralBearingKPaPerM * (site.Ground.FloodProne ? rules["structure.submerged_bearing"] : 1);
        var byLoadM = Foundation.EmbeddedDepthM(load.BaseShearN, load.BaseMomentNm / load.BaseShearN, holeM, lateral);
        var neededM = Math.Max(byLoadM, Foundation.PlantingDepthM(Math.Min(pole.HeightM, 12)));
        var depthM = Math.Min(set.DepthM, pole.DirectBuriedLengthM);
        var water = site.Ground.FloodProne ? "; under water, flood-prone, design rule structure.submerged_bearing" : "";
        list.AtLeast(
            "foundation.embedment", "Foundation", "depth in the ground", neededM, depthM, "m", $"IBC 1807.3.2, nothing holding it at the surface; EN 40-2 as the least; {SoilWords(site)}{water}");
        return (depthM, neededM);
    }

    private static string SoilWords(Site site) => $"soil class {site.Soil.Name}" + (site.SoilStated ? "" : ", the worst, since none was stated");
}

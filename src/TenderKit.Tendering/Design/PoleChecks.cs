using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>What a pole must stand: wind at its weakest section and at its door, deflection, air that eats its zinc, traffic that hits it.</summary>
public static class PoleChecks
{
    public static PoleShaft ShaftOf(Pole pole) => new(pole.HeightM, pole.BaseDiameterMm, pole.TopDiameterMm, pole.WallMm, pole.YieldMPa);

    /// <summary>Every check of a pole under its characteristic loads.</summary>
    public static ImmutableArray<Check> Of(Pole pole, PoleLoad load, Site site, RuleSet rules) =>
        [.. Strength(pole, load, site, rules), .. Durability(pole, site, rules), .. Traffic(pole, site, rules)];

    /// <summary>Stress at the door under characteristic loads, MPa; null without a door or when its size is not known.</summary>
    public static double? DoorStressMPa(Pole pole, PoleLoad load) => pole is { DoorWidthMm: > 0 and var widthMm, DoorBottomM: { } bottomM }
        ? Wind.DoorStressMPa(ShaftOf(pole), load, bottomM, Math.Min(widthMm, Tube.DiameterMm(ShaftOf(pole), bottomM) - pole.WallMm))
        : null;

    private static IEnumerable<Check> Strength(Pole pole, PoleLoad load, Site site, RuleSet rules)
    {
        var wind = site.Wind.Wind;
        var factor = wind.StrengthFactor(rules["structure.wind_factor"]);
        var strengthMPa = pole.YieldMPa / rules["structure.steel_factor"];
        var basis = wind.Standard == WindStandard.En1991
            ? "EN 1991-1-4 wind; design rules structure.wind_factor, structure.steel_factor"
            : "ASCE 7-16 wind at the level of strength; design rule structure.steel_factor";
        yield return new Check(
            "pole.stress", "Pole", "greatest design stress of the shaft", Comparison.AtMost, strengthMPa, load.GreatestStressMPa * factor, "MPa", basis, 0);
        if (DoorStressMPa(pole, load) is { } doorMPa)
            yield return new Check(
                "pole.door", "Pole", "design stress at the door, the open section without its frame", Comparison.AtMost, strengthMPa, doorMPa * factor, "MPa", basis, 0);
        if (pole.MomentCapacityNm is { } capacityNm)
            yield return new Check(
                "pole.moment", "Pole", "design moment at the ground", Comparison.AtMost, capacityNm, load.BaseMomentNm * factor, "Nm", "maker's limit of the pole; " + basis, 0);
        yield return new Check(
            "pole.deflection", "Pole", "deflection of the head", Comparison.AtMost,
            rules["structure.deflection"] * pole.HeightM, load.HeadDeflectionM, "m", "design rule structure.deflection");
    }

    /// <summary>The corrosivity its maker states, or the life of its zinc at the greatest loss of the category.</summary>
    private static IEnumerable<Check> Durability(Pole pole, Site site, RuleSet rules)
    {
        var category = site.Ground.Corrosivity ?? SiteGround.Assumed;
        var words = $"ISO 9223 category {category}" + (site.Ground.Corrosivity is null ? ", taken since none was stated" : "");
        if (pole.CorrosionCategory is { } stated)
            yield return Check.YesNo("pole.corrosion", "Pole", $"protected for corrosivity {category}", true, stated >= category, words + "; maker's statement");
        else
            yield return new Check(
                "pole.zinc", "Pole", "life of the zinc", Comparison.AtLeast, rules["structure.zinc_years"], ZincLife.Years(pole.ZincUm, category), "years", words + "; design rule structure.zinc_years", 0);
    }

    private static IEnumerable<Check> Traffic(Pole pole, Site site, RuleSet rules)
    {
        if (site.Ground.TrafficKmPerH < rules["structure.fast_traffic"]) yield break;
        yield return new Check(
            "pole.passive_safety", "Pole", "speed class of passive safety", Comparison.AtLeast,
            PassiveSafety.ClassFor(site.Ground.TrafficKmPerH), PassiveSafety.SpeedOf(pole.PassiveSafetyClass), "km/h", "EN 12767; traffic stated; design rule structure.fast_traffic", 0);
    }
}

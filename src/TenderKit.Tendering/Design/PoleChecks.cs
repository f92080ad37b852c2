using TenderKit.Catalog.Families;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>What a pole must stand: wind at its weakest section and at its door, deflection, air that eats its zinc, traffic that hits it.</summary>
public static class PoleChecks
{
    public static PoleShaft ShaftOf(Pole pole) => new(pole.HeightM, pole.BaseDiameterMm, pole.TopDiameterMm, pole.WallMm, pole.YieldMPa);

    /// <summary>Every check of a pole under its characteristic loads.</summary>
    public static void Of(CheckList list, Pole pole, PoleLoad load, Site site, RuleSet rules)
    {
        Strength(list, pole, load, site, rules);
        Durability(list, pole, site, rules);
        Traffic(list, pole, site, rules);
    }

    /// <summary>Stress at the door under characteristic loads, MPa; null without a door or when its size is not known.</summary>
    public static double? DoorStressMPa(Pole pole, PoleLoad load) => pole is { DoorWidthMm: > 0 and var widthMm, DoorBottomM: { } bottomM }
        ? Wind.DoorStressMPa(ShaftOf(pole), load, bottomM, Math.Min(widthMm, Tube.DiameterMm(ShaftOf(pole), bottomM) - pole.WallMm))
        : null;

    private static void Strength(CheckList list, Pole pole, PoleLoad load, Site site, RuleSet rules)
    {
        var wind = site.Wind.Wind;
        var factor = wind.StrengthFactor(rules["structure.wind_factor"]);
        var strengthMPa = pole.YieldMPa / rules["structure.steel_factor"];
        var basis = wind.Standard == WindStandard.En1991
            ? "EN 1991-1-4 wind; design rules structure.wind_factor, structure.steel_factor"
            : "ASCE 7-16 wind at the level of strength; design rule structure.steel_factor";
        list.AtMost(
            "pole.stress", "Pole", "greatest design stress of the shaft", strengthMPa, load.GreatestStressMPa * factor, "MPa", basis, 0);
        if (DoorStressMPa(pole, load) is { } doorMPa)
            list.AtMost(
            "pole.door", "Pole", "design stress at the door, the open section without its frame", strengthMPa, doorMPa * factor, "MPa", basis, 0);
        if (pole.MomentCapacityNm is { } capacityNm)
            list.AtMost(
            "pole.moment", "Pole", "design moment at the ground", capacityNm, load.BaseMomentNm * factor, "Nm", $"maker's limit of the pole; {basis}", 0);
        list.AtMost(
            "pole.deflection", "Pole", "deflection of the head", rules["structure.deflection"] * pole.HeightM, load.HeadDeflectionM, "m", "design rule structure.deflection");
    }

    /// <summary>The corrosivity its maker states, or the life of its zinc at the greatest loss of the category.</summary>
    private static void Durability(CheckList list, Pole pole, Site site, RuleSet rules)
    {
        var category = site.Ground.Corrosivity ?? SiteGround.Assumed;
        var words = !list.IsRecording ? "" : site.Ground.Corrosivity is null ? $"ISO 9223 category {category}, taken since none was stated" : $"ISO 9223 category {category}";
        if (pole.CorrosionCategory is { } stated)
            list.YesNo(
            "pole.corrosion", "Pole", list.IsRecording ? $"protected for corrosivity {category}" : "", true, stated >= category, $"{words}; maker's statement");
        else
            list.AtLeast(
            "pole.zinc", "Pole", "life of the zinc", rules["structure.zinc_years"], ZincLife.Years(pole.ZincUm, category), "years", $"{words}; design rule structure.zinc_years", 0);
    }

    private static void Traffic(CheckList list, Pole pole, Site site, RuleSet rules)
    {
        if (site.Ground.TrafficKmPerH < rules["structure.fast_traffic"]) return;
        list.AtLeast(
            "pole.passive_safety", "Pole", "speed class of passive safety", PassiveSafety.ClassFor(site.Ground.TrafficKmPerH), PassiveSafety.SpeedOf(pole.PassiveSafetyClass), "km/h", "EN 12767; traffic stated; design rule structure.fast_traffic", 0);
    }
}

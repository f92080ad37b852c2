using TenderKit.Documents.Layout;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Commissioning;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>Wind, foundation and order of connection in words.</summary>
internal static class StructureWords
{
    /// <summary>The wind as stated, and what it became where it was converted.</summary>
    public static string Wind(SiteDesign site)
    {
        var stated = $"wind {Figures.Short(site.Site.BasicWindMPerS)} m/s";
        if (site.Structure is not { Wind: { } wind, Conversion: { } conversion }) return "basic " + stated;
        var standard = wind.Standard == WindStandard.En1991 ? "EN 1991-1-4" : "ASCE 7-16";
        return conversion.Factor == 1
            ? $"{stated} ({Of(WindCase.Wanted(wind.Standard))}, {standard})"
            : $"{stated} as {Of(site.Site.Ground.Definition ?? WindCase.Wanted(wind.Standard))}, times {Figures.Number(conversion.Factor, 3)} is {Figures.Number(wind.SpeedMPerS, 1)} m/s "
                + $"as {Of(WindCase.Wanted(wind.Standard))} for {standard} ({conversion.Source})";
    }

    /// <summary>Door, bolts and base plate, or the depth in the ground; a sentence, or nothing.</summary>
    public static string Ground(SiteDesign site)
    {
        var (structure, set) = (site.Structure, site.Parts.Foundation);
        var sway = structure.DynamicFactor > 0 ? $"Sways in {Figures.Number(structure.PeriodS, 2)} s, so every force times {Figures.Number(structure.DynamicFactor, 2)}. " : "";
        var door = sway + (structure.DoorStressMPa is { } doorMPa ? $"At the door {Figures.Number(doorMPa, 0)} MPa before factors. " : "");
        if (structure.EmbedmentM is { } depthM)
            return door + $"Depth needed in the ground {Figures.Number(depthM, 2)} m. ";
        if (structure.Bolts is not { } bolts) return door;
        return door + $"Anchor bolts {Figures.Number(set.AnchorBoltCount, 0)} M{Figures.Short(set.AnchorBoltMm)} on a square of {Figures.Number(bolts.SpacingMm, 0)} mm, worst bolt "
            + $"{Figures.Number(bolts.TensionN / 1000, 1)} kN with factors, {Figures.Percent(bolts.UseFraction)} of what it bears; base plate without ribs at least "
            + $"{Figures.Number(Math.Ceiling(bolts.PlateMm), 0)} mm thick. ";
    }

    /// <summary>Numbers of the connection diagram with their reasons.</summary>
    public static TableBlock Order(Kit kit) => new(
        kit.Parts.Integrated is not null ? $"Order of work on an integrated unit of kit {kit.Id}" : $"Order of connection of kit {kit.Id}, by the numbers of the drawing; part in the reverse order",
        [new("", Side: Side.End, FixedPt: 14), new(kit.Parts.Integrated is null ? "Connect" : "Work", Share: 1), new("Why in this order", Share: 1.2)],
        [.. PoleWork.Order(kit.Parts).Select(s => Row.Of(Figures.Number(s.Number, 0), s.What, s.Reason))])
    {
        Compact = true,
        Tight = true,
        KeepTogether = true,
    };

    private static string Of(WindDefinition definition) => definition switch
    {
        WindDefinition.TenMinuteMean50 => "mean of 10 minutes in 50 years",
        WindDefinition.HourlyMean50 => "mean of an hour in 50 years",
        WindDefinition.Gust50 => "3-second gust in 50 years",
        WindDefinition.Gust700 => "3-second gust in 700 years",
        _ => throw new ArgumentOutOfRangeException(nameof(definition), definition, null),
    };
}

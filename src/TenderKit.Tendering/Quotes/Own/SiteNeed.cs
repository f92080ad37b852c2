using System.Collections.Immutable;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Quotes.Own;

/// <summary>One way the light calculation lights a site: so many poles of that height with so much flux each.</summary>
public sealed record LightNeed(double HeightM, int Poles, double FluxLm);

/// <summary>What one site asks of any offer, whatever parts it is made of.</summary>
/// <param name="Poles">Poles of our own design.</param>
/// <param name="LeastHeightM">Least mounting height the tender allows, m.</param>
/// <param name="FullHoursH">Equivalent full hours of the longest month's night, h.</param>
/// <param name="OwnUseWh">Use beside the lamp in that night, Wh.</param>
/// <param name="ArrayWpPerWh">Array the hand method asks for, Wp for each Wh of that night.</param>
/// <param name="Light">Every way it can be lit, fewest poles first.</param>
public sealed record SiteNeed(string Id, string Lot, int Poles, double LeastHeightM, double FullHoursH, double OwnUseWh, double ArrayWpPerWh, ImmutableArray<LightNeed> Light)
{
    private const double HeightBandM = 0.3;

    /// <summary>What sites of a design ask; the ways to light them are those of the catalogue's light distributions.</summary>
    public static ImmutableArray<SiteNeed> Of(TenderDesign design, DesignInputs inputs) => [.. design.Sites.AsParallel().AsOrdered().Select(s => Of(s, inputs))];

    private static SiteNeed Of(SiteDesign site, DesignInputs inputs)
    {
        var hours = site.Climate.Lamp.LongestMonthFullHours;
        var light = LightStage.Options(site.Site, site.Climate, inputs, new Rejections())
            .Select(o => new LightNeed(o.Shape.HeightM, o.Poles, o.Luminaire.FluxLm * o.Light.LevelFraction))
            .Append(new LightNeed(site.Parts.Pole.HeightM, site.Poles, site.Parts.Luminaire.FluxLm * site.Light.LevelFraction))
            .Distinct().OrderBy(n => n.Poles).ThenBy(n => n.FluxLm).ThenBy(n => n.HeightM);
        return new SiteNeed(
            site.Site.Id, site.Site.Lot, site.Poles, site.Site.MountingHeightsM[0], hours, Math.Max(0, site.Energy.NightlyWh - (site.Energy.System.LampInputW * hours)),
            site.Energy.Hand.ArrayWp / site.Energy.NightlyWh, [.. light]);
    }

    /// <summary>The fewest poles that light it with lamps of this flux, and the flux they then need; share below 1 where no number of them does.</summary>
    public (int Poles, double FluxLm, double ReachedFraction) With(double fluxLm, double? heightM, double toleranceFraction)
    {
        var ways = Light.Where(n => heightM is not { } h || Math.Abs(n.HeightM - h) <= HeightBandM).ToList();
        if (ways.Count == 0) ways = [.. Light];
        if (ways.Find(n => n.FluxLm <= fluxLm * (1 + toleranceFraction)) is { } way) return (way.Poles, Math.Min(way.FluxLm, fluxLm), 1);
        var nearest = ways.MinBy(n => n.FluxLm)!;
        return (nearest.Poles, fluxLm, fluxLm / nearest.FluxLm);
    }
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Regions;

/// <summary>
/// Designs a tender that names no sites yet: one kit that serves every place of its region, billed once, the documents made for the place
/// that governs. The places are ranked by sun over lamp hours in their darkest month; the dullest, the coldest, the hottest and the mildest
/// are designed in full, and the kit is then tried at every other.
/// </summary>
public static class RegionDesigner
{
    private const int MostDull = 8;

    /// <inheritdoc cref="TenderDesigner.Run" path="/param"/>
    public static TenderDesign Run(DesignInputs inputs, ImmutableArray<Diagnostic> noticed, Action<string>? doing = null)
    {
        var ask = inputs.Tender.Region ?? throw new ArgumentException("the tender states no region", nameof(inputs));
        var skies = inputs.Sites.AsParallel().AsOrdered().Select(s => SkyOf(s, inputs)).ToImmutableArray();
        var chosen = Extremes(skies);
        var free = TenderDesigner.Run(With(inputs, chosen, null), []);
        var common = TenderDesigner.Run(With(inputs, chosen, 1), noticed, doing: doing);
        if (common.Kits.IsEmpty) return common with { Diagnostics = [.. common.Diagnostics.DistinctBy(d => (d.Code, d.Message))] };
        var kit = common.Kits[0];
        var sites = common.Sites.Where(s => s.KitId == kit.Id).ToImmutableArray();
        var governing = KitCurves.HardestSite(sites, kit);
        ImmutableArray<Site> rest = [.. inputs.Sites.Except(chosen)];
        ImmutableArray<string> unserved = [.. chosen.Where(c => sites.All(s => s.Site.Id != c.Id)).Select(c => c.Name), .. rest.AsParallel().AsOrdered().Where(s => !Serves(kit.Parts, s, inputs)).Select(s => s.Name)];
        var places = sites.Select(s => PlaceOf(s, free, kit, skies.First(k => k.Site.Id == s.Site.Id), inputs)).ToImmutableArray();
        var region = new RegionDesign(
            ask, inputs.Sites.Length, places, Governs(sites), governing.Site.Id, places.OrderBy(p => p.OwnCost).ThenByDescending(p => p.SunOverLamp).First().SiteId, unserved);
        return Billed(common, region, governing, kit);
    }

    private static DesignInputs With(DesignInputs inputs, ImmutableArray<Site> sites, int? kits) =>
        inputs with { Sites = sites, Explain = false, Tender = inputs.Tender with { KitsAtMost = kits } };

    /// <summary>The common kit in the quantity asked for, at the governing place.</summary>
    private static TenderDesign Billed(TenderDesign common, RegionDesign region, SiteDesign governing, Kit kit)
    {
        var poles = region.Ask.Poles ?? governing.Poles;
        var lengthM = region.Ask.LengthM ?? poles * governing.Light.SpacingM / SiteLighting.SidesOf(governing.Site);
        var site = governing with
        {
            Site = governing.Site with { Name = $"{region.Ask.Name}: designed for {governing.Site.Name}", LengthM = lengthM },
            Poles = poles,
        };
        return common with
        {
            Sites = [site],
            Kits = [kit with { SiteIds = [site.Site.Id], Poles = poles }],
            Unmet = [],
            Region = region,
            Curves = [.. common.Curves.Where(c => c.KitId == kit.Id)],
            SideBySide = [.. common.SideBySide.Where(p => p.KitId == kit.Id)],
            KitCounts = [],
            Diagnostics = [.. common.Diagnostics.Where(d => d.Code is not ("TK640" or "TK641") && (d.Severity == Severity.Error || d.Place.Site is null || d.Place.Site == site.Site.Id)), .. Findings(region)],
        };
    }

    private static IEnumerable<Diagnostic> Findings(RegionDesign region)
    {
        var (dull, mild) = (region.Governing, region.Mild);
        yield return Diagnostic.Note("TK350", FormattableString.Invariant($"of {region.Sampled} places in {region.Ask.Name} {dull.Name} leaves the least margin of energy, in month {dull.DarkestMonth}; the kit serves {region.Sampled - region.Unserved.Length} of them, and the mildest place, {mild.Name}, alone would need {mild.ArrayWp:0} Wp and {mild.BatteryWh:0} Wh"));
        if (ClimateGrades.IsEstimate(dull.Grade))
            yield return Diagnostic.Warning("TK351", FormattableString.Invariant($"the sun at {dull.Name}, which governs, is an estimate taken at {dull.CautiousFactor:0.00}; between the places sampled a valley, a coast or a cloud belt may be duller still: fix the sites or fetch data for {dull.LatitudeDegrees:0.00}, {dull.LongitudeDegrees:0.00} before the kit is final"));
        if (!region.Unserved.IsEmpty)
            yield return Diagnostic.Error("TK352", $"no one kit found serves every place of {region.Ask.Name}; left out: {string.Join(", ", region.Unserved.Take(8))}. Add stronger parts to the catalogue, or ask for a kit of its own there");
    }

    /// <summary>For each requirement the place with the least margin; empty where all places are alike.</summary>
    private static ImmutableArray<RegionGovern> Governs(ImmutableArray<SiteDesign> sites) =>
    [
        .. sites.SelectMany(s => s.Checks.Select(c => (Check: c, s.Site.Name))).GroupBy(p => p.Check.Id, StringComparer.Ordinal).Select(g =>
        {
            double Margin(Check c) => Math.Round(c.MarginFraction ?? double.PositiveInfinity, 6);
            var least = g.Min(p => Margin(p.Check));
            var alike = g.All(p => Margin(p.Check) == least);
            return new RegionGovern(g.First().Check.Item, g.First().Check.Property, alike ? [] : [.. g.Where(p => Margin(p.Check) == least).Select(p => p.Name)], double.IsFinite(least) ? least : null);
        }),
    ];

    private static RegionPlaceDesign PlaceOf(SiteDesign here, TenderDesign free, Kit kit, Sky sky, DesignInputs inputs)
    {
        var own = free.Sites.First(s => s.Site.Id == here.Site.Id);
        return new RegionPlaceDesign(
            here.Site.Id, here.Site.Name, here.Site.LatitudeDegrees, here.Site.LongitudeDegrees, here.Climate.Monthly.Grade, here.Climate.CautiousFactor, sky.Month + 1, sky.SunOverLamp,
            own.Parts.ArrayWp, own.Parts.BatteryRatedWh, CostOf(own.Parts, own.Site, inputs), CostOf(kit.Parts, here.Site, inputs), here.Energy.Simulated.DarkNightsUpperBound, here.Energy.AutonomyNights);
    }

    /// <summary>Direct cost of one pole of a make-up at a place.</summary>
    private static decimal CostOf(PoleParts parts, Site site, DesignInputs inputs) =>
        KitTrial.Run(site, WeatherOf(site, inputs), parts, inputs) is { } found ? found.FirstCost / found.Proven.Candidate.Light.Poles : 0;

    private static bool Serves(PoleParts parts, Site site, DesignInputs inputs) => KitTrial.Run(site, WeatherOf(site, inputs), parts, inputs) is not null;

    private static SiteWeather WeatherOf(Site site, DesignInputs inputs) => inputs.Shared.WeatherOf(site, ClimateStage.ClimateOf(SharedWork.AtPlace(site), inputs), inputs);

    /// <summary>The dullest places, with the coldest, the hottest and the mildest.</summary>
    private static ImmutableArray<Site> Extremes(ImmutableArray<Sky> skies)
    {
        var byDullness = skies.OrderBy(s => s.SunOverLamp).ThenBy(s => s.Site.Row).ToList();
        var rows = byDullness.Take(MostDull).Append(skies.MinBy(s => s.Monthly.RecordLowC)).Append(skies.MaxBy(s => s.Monthly.RecordHighC)).Append(byDullness[^1]).Select(s => s!.Site.Row).ToHashSet();
        return [.. skies.Select(s => s.Site).Where(s => rows.Contains(s.Row))];
    }

    private static Sky SkyOf(Site site, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var monthly = ClimateStage.ClimateOf(SharedWork.AtPlace(site), inputs);
        var lamp = ScheduleHours.For(site.Schedule, NightCalendar.ForLatitude(site.LatitudeDegrees, rules["night.switching_elevation"]));
        var plane = TiltedPlane.BestForWorstMonth(monthly, lamp.MonthlyFullHours, rules["energy.least_tilt"], rules["climate.albedo"]);
        var sun = TiltedPlane.MonthlyKWhPerM2(monthly, plane, rules["climate.albedo"]);
        var factor = ClimateStage.CautiousFactor(monthly.Grade, rules);
        var month = Enumerable.Range(0, 12).MinBy(m => sun[m] / Math.Max(0.1, lamp.MonthlyFullHours[m]));
        return new Sky(site, monthly, month, sun[month] * factor / Math.Max(0.1, lamp.MonthlyFullHours[month]));
    }

    private sealed record Sky(Site Site, MonthlyClimate Monthly, int Month, double SunOverLamp);
}

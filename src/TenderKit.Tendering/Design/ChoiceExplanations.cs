using System.Collections.Immutable;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Explains the choice of each kit: the next cheapest design and the price of each demand, by the same search under the same checks.</summary>
public static class ChoiceExplanations
{
    /// <summary>Energy balances allowed to each search.</summary>
    private const int MostSimulations = 60;

    private const double LessLight = 0.8;

    /// <summary>One explanation a kit, in the order of the kits.</summary>
    public static ImmutableArray<ChoiceExplanation> Of(ImmutableArray<SiteDesign> sites, ImmutableArray<Kit> kits, DesignInputs inputs)
    {
        var hardest = kits.Select(kit => (Kit: kit, Site: KitCurves.HardestSite(sites, kit))).ToImmutableArray();
        var asked = hardest.AsParallel().AsOrdered().Select(h => (h.Kit, h.Site, Variant: new Variant(null, h.Site.Site, inputs), Found: Search(h.Site, new Variant(null, h.Site.Site, inputs), h.Kit.Parts.Key))).ToArray();
        var tasks = asked.SelectMany(a => Variants(a.Site.Site, inputs).Select(v => (a.Kit, a.Site, Variant: v, Asked: a.Found))).ToArray();
        var found = asked.Select(a => (a.Kit, a.Variant, a.Found))
            .Concat(tasks.AsParallel().AsOrdered().Select(t => (t.Kit, t.Variant, Found: IsSame(t.Variant, t.Asked, inputs) ? t.Asked : Search(t.Site, t.Variant, t.Kit.Parts.Key)))).ToArray();
        return [.. hardest.Select(h => Explained(h.Kit, h.Site, [.. found.Where(f => f.Kit == h.Kit).Select(f => (f.Variant, f.Found))], inputs)).OfType<ChoiceExplanation>()];
    }

    /// <summary>A demand changed, or none for the tender as it stands.</summary>
    private sealed record Variant(string? Demand, Site Site, DesignInputs Inputs);

    /// <param name="DarkNights">Upper bound of the dark nights of the cheapest.</param>
    /// <param name="RefusedBefore">Whether the energy balance refused anything before the cheapest was found.</param>
    private sealed record Found(decimal? Cheapest, double DarkNights, bool RefusedBefore, (decimal Cost, PoleParts Parts)? RunnerUp);

    /// <summary>
    /// Whether another target of dark nights cannot change the cheapest: a harder one that it meets, for nothing else becomes possible; a milder one where the
    /// balance refused nothing before it.
    /// </summary>
    private static bool IsSame(Variant variant, Found asked, DesignInputs inputs)
    {
        var (target, before) = (variant.Inputs.Tender.Reliability, inputs.Tender.Reliability);
        if (asked.Cheapest is null || variant.Inputs == inputs || target.AutonomyNights != before.AutonomyNights) return false;
        return target.DarkNightsPerYear < before.DarkNightsPerYear ? asked.DarkNights <= target.DarkNightsPerYear : !asked.RefusedBefore;
    }

    private static IEnumerable<Variant> Variants(Site site, DesignInputs inputs)
    {
        var asked = inputs.Tender.Reliability;
        DesignInputs With(ReliabilityTarget target) => inputs with { Tender = inputs.Tender with { Reliability = target } };
        Variant Dark(double nights) => new(FormattableString.Invariant($"dark nights a year {nights:0.##} in place of {asked.DarkNightsPerYear:0.##}"), site, With(asked with { DarkNightsPerYear = nights }));
        yield return Dark(asked.DarkNightsPerYear / 2);
        yield return Dark(Math.Min(365, asked.DarkNightsPerYear * 2));
        if (asked.AutonomyNights > 1.5)
            yield return new Variant(FormattableString.Invariant($"autonomy {asked.AutonomyNights - 1:0.##} nights in place of {asked.AutonomyNights:0.##}"), site, With(asked with { AutonomyNights = asked.AutonomyNights - 1 }));
        if (Lower(site.Target) is { } lower)
            yield return new Variant($"light {Words(lower)} in place of {Words(site.Target)}", site with { Target = lower }, inputs);
    }

    private static string Words(LightTarget target) => target.AverageLx > 0 && TenderClasses.Find(target.Name) is null ? FormattableString.Invariant($"{target.AverageLx:0.##} lx") : target.Name;

    /// <summary>The next class down, or a fifth less of every illuminance; null below the last class.</summary>
    public static LightTarget? Lower(LightTarget target)
    {
        if (TenderClasses.Find(target.Name) is null)
            return target with { AverageLx = target.AverageLx * LessLight, MinimumLx = target.MinimumLx * LessLight, AverageCeilingLx = target.AverageCeilingLx * LessLight };
        var digits = target.Name.Length - target.Name.TakeWhile(c => !char.IsAsciiDigit(c)).Count();
        return digits > 0 && int.TryParse(target.Name[^digits..], System.Globalization.CultureInfo.InvariantCulture, out var step)
            ? TenderClasses.Find(target.Name[..^digits] + (step + 1).ToString(System.Globalization.CultureInfo.InvariantCulture))
            : null;
    }

    private static Found Search(SiteDesign design, Variant variant, string kitKey)
    {
        var weather = variant.Inputs.Shared.WeatherOf(design.Site, design.Climate.Monthly, variant.Inputs);
        var lights = LightStage.Options(variant.Site, weather.Climate, variant.Inputs, new Rejections());
        var search = new LeastCostSearch(variant.Site, weather, variant.Inputs);
        ValuedCandidate? cheapest = null;
        var refused = false;
        foreach (var valued in search.InOrder(lights, MostSimulations))
        {
            if (cheapest is null) (cheapest, refused) = (valued, search.HasRefusedEnergy);
            if (variant.Demand is not null) break;
            var parts = SiteDesigner.PartsOf(valued.Proven.Candidate);
            if (parts.Key != kitKey && valued != cheapest && parts.Key != SiteDesigner.PartsOf(cheapest.Proven.Candidate).Key) return Of((valued.Value, parts));
        }

        return Of(null);

        Found Of((decimal, PoleParts)? runnerUp) => new(cheapest?.Value, cheapest?.Proven.Energy.Simulated.DarkNightsUpperBound ?? 0, refused, runnerUp);
    }

    private static ChoiceExplanation? Explained(Kit kit, SiteDesign site, ImmutableArray<(Variant Variant, Found Found)> found, DesignInputs inputs)
    {
        var weather = inputs.Shared.WeatherOf(site.Site, site.Climate.Monthly, inputs);
        var asked = found.First(f => f.Variant.Demand is null).Found;
        if (asked.Cheapest is not { } cheapest || KitTrial.Run(site.Site, weather, kit.Parts, inputs) is not { } chosen) return null;
        return new ChoiceExplanation(
            kit.Id, site.Site.Id, chosen.Value, cheapest, asked.RunnerUp?.Cost, asked.RunnerUp is { } other ? Differences(kit.Parts, other.Parts) : [],
            [.. found.Where(f => f.Variant.Demand is not null).Select(f => new DemandPrice(f.Variant.Demand!, f.Found.Cheapest, f.Found.Cheapest - cheapest))]);
    }

    /// <summary>Each kind of part in which two make-ups differ, the other's in place of the kit's.</summary>
    public static ImmutableArray<string> Differences(PoleParts kit, PoleParts other)
    {
        var (ours, theirs) = (ByRole(kit), ByRole(other));
        return [.. ours.Keys.Union(theirs.Keys, StringComparer.Ordinal).Where(role => Of(ours, role) != Of(theirs, role)).Select(role => $"{role}: {Of(theirs, role)} in place of {Of(ours, role)}")];
    }

    private static string Of(Dictionary<string, string> parts, string role) => parts.TryGetValue(role, out var words) ? words : "none";

    private static Dictionary<string, string> ByRole(PoleParts parts) => parts.Pieces
        .Select(p => (p.Role, Words: FormattableString.Invariant($"{p.Part.Code} x {p.Count}")))
        .Concat(parts.Circuits.Select(c => (Role: "Cable, " + c.Name, Words: c.Cable.Code + (c.Fuse is { } fuse ? " with " + fuse.Code : ""))))
        .Append(("Other protection", string.Join(", ", parts.OtherProtection.Select(p => p.Code))))
        .ToDictionary(p => p.Item1, p => p.Item2, StringComparer.Ordinal);
}

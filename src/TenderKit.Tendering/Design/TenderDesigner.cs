using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Specification;

namespace TenderKit.Tendering.Design;

/// <summary>Designs every site and groups equal make-ups into kits.</summary>
public static class TenderDesigner
{
    /// <summary>The whole tender; sites that nothing fits are named in <see cref="TenderDesign.Unmet"/> and the others still stand.</summary>
    /// <param name="inputs">Everything read.</param>
    /// <param name="noticed">What was noticed while reading.</param>
    /// <param name="done">Called after each site with its index in the list; may be called from several threads.</param>
    /// <param name="doing">Told what long work comes next.</param>
    public static TenderDesign Run(DesignInputs inputs, ImmutableArray<Diagnostic> noticed, Action<int>? done = null, Action<string>? doing = null)
    {
        inputs = inputs with { Tender = inputs.Tender with { Reliability = inputs.Clauses.Harder(inputs.Tender.Reliability) } };
        var problems = new List<Diagnostic>();
        var meeting = ClauseFilter.Run(CurrentParts(inputs, out var leftOut), inputs.Clauses, problems);
        var offered = inputs with { Catalog = Dominance.Undominated(meeting, new Costs(inputs.Tender)) };
        var outcomes = SiteDesigns.Of(inputs.Sites, offered, done);

        var designed = outcomes.Where(o => o.Value is not null).Select(o => o.Value!).ToImmutableArray();
        doing?.Invoke("Choosing the kits ...");
        var standard = Standardiser.Run(designed, inputs.Tender.KitsAtMost ?? int.MaxValue, offered);
        var (sites, kits) = KitGrouping.Group(standard.Value!.Sites);
        if (inputs.Explain) doing?.Invoke("Working out what each demand costs ...");
        return new TenderDesign(
            inputs.Tender,
            inputs.Catalog,
            inputs.CatalogDigest,
            inputs.Rules.Rules,
            inputs.Digests,
            sites,
            kits,
            [.. outcomes.Select((o, i) => (o, site: inputs.Sites[i])).Where(p => p.o.Value is null).Select(p => UnmetOf(p.site, p.o))],
            [.. noticed, .. leftOut, .. problems, .. RuleWarnings(inputs.Rules), .. standard.Diagnostics,
            .. kits.SelectMany(k => FitChecks.NotStated(k.Parts)).Where(d => d.Message.Length > 0).Distinct(),
            .. outcomes.Where(o => o.Value is null).SelectMany(o => o.Diagnostics), .. sites.SelectMany(s => s.Diagnostics)])
        { Light = inputs.Light, Form = inputs.Form, Clauses = inputs.Clauses, Curves = KitCurves.Of(sites, kits, offered), SideBySide = Kits.SideBySide.Of(sites, kits, offered), KitCounts = standard.Value.Counts, Choices = inputs.Explain ? ChoiceExplanations.Of(sites, kits, offered) : [] };
    }

    private static UnmetSite UnmetOf(Site site, Outcome<SiteDesign> outcome) =>
        new(site.Id, site.Name, outcome.Diagnostics.Last(d => d.Severity == Severity.Error).Message) { Site = site };

    private static IEnumerable<Diagnostic> RuleWarnings(RuleSet rules) =>
        rules.Rules.Where(r => !r.InRange).Select(r => Diagnostic.Warning(
            "TK120",
            FormattableString.Invariant($"design rule {r.Id} is {r.Value} {r.Unit}, outside its range of {r.Low} to {r.High}; the documents say so")));

    /// <summary>Parts that can be offered: priced in a known currency, at a price still valid on the issue date.</summary>
    private static PartsCatalog CurrentParts(DesignInputs inputs, out ImmutableArray<Diagnostic> leftOut)
    {
        var notes = ImmutableArray.CreateBuilder<Diagnostic>();
        var costs = new Costs(inputs.Tender);
        var issue = inputs.Tender.Head.IssueDate;
        bool Stands(Part part)
        {
            if (!costs.CanPrice(part))
                notes.Add(Diagnostic.Warning("TK631", $"{part.Code} is priced in {part.Currency}, for which the tender gives no exchange rate; it is left out"));
            else if (part.PriceValidUntil is { } until && until < issue)
                notes.Add(Diagnostic.Note("TK632", FormattableString.Invariant($"the price of {part.Code} was valid until {until:yyyy-MM-dd}, before the issue date {issue:yyyy-MM-dd}; it is left out")));
            else if (inputs.Tender.Head.DeliveryDays is > 0 and var days && part.LeadTimeDays > days)
                notes.Add(Diagnostic.Note("TK633", FormattableString.Invariant($"{part.Code} takes {part.LeadTimeDays} days to come, the tender allows {days} days to complete; it is left out")));
            else
                return true;
            return false;
        }

        ImmutableArray<T> Of<T>(ImmutableArray<T> parts)
            where T : Part => [.. parts.Where(Stands)];
        var c = inputs.Catalog;
        var current = new PartsCatalog(
            Of(c.Luminaires), Of(c.Modules), Of(c.Batteries), Of(c.Controllers), Of(c.Poles), Of(c.Foundations), Of(c.Cables), Of(c.Protection), Of(c.Enclosures), Of(c.Brackets), Of(c.Services))
        {
            Fixings = Of(c.Fixings),
            IntegratedUnits = Of(c.IntegratedUnits),
        };
        leftOut = notes.ToImmutable();
        return current;
    }
}

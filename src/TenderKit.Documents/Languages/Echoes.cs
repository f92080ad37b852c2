using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Settings;

namespace TenderKit.Documents.Languages;

/// <summary>Texts of the user's, which documents print as they stand.</summary>
internal static class Echoes
{
    private static readonly ConditionalWeakTable<TenderDesign, Wording> _ofDesigns = [];

    /// <summary>The wording of the documents of a design, one for all of them.</summary>
    public static Wording WordingOf(TenderDesign design) => _ofDesigns.GetValue(design, d => Wording.In(d.Tender.Head.Language, Of(d)));

    /// <summary>The wording of the documents about an offer.</summary>
    public static Wording WordingOf(TenderHead head, CheckedOffer offer) => Wording.In(head.Language, [.. Of(head), .. Of(offer)]);

    public static IEnumerable<string> Of(TenderHead head) => [head.Reference, head.Title, head.Employer, head.Bidder];

    public static IEnumerable<string> Of(TenderDesign design) =>
    [
        .. Of(design.Tender.Head),
        .. design.Sites.SelectMany(OfSite),
        .. design.Unmet.SelectMany(u => new[] { u.SiteId, u.Name }),
        .. design.Kits.SelectMany(k => UsedParts.Of(k.Parts)).DistinctBy(p => p.Code)
            .SelectMany(p => (string[])[p.Code, p.Description, p.DataSheetFile, p.Certificates, .. p.Certificates.Split(';', StringSplitOptions.TrimEntries)]),
        .. design.Inputs.Select(i => i.File),
        .. design.Catalog.Services.Select(s => s.Description),
        design.Tender.CatalogPath,
        .. design.Tender.Village is { } village ? new[] { village.Fund } : [],
        .. design.Tender.Prices.ProvisionalSums.Select(s => s.Text),
        .. design.Tender.Submission.Forms.SelectMany(f => new[] { f.Form, f.Clause, f.SignedBy, f.File }),
        .. design.Tender.Submission.Deviations.SelectMany(d => new[] { d.Clause, d.Text, d.Reason }),
        .. design.Clauses.All.SelectMany(c => (string[])[c.Number, c.Text, .. c.Words]),
        .. design.Clauses.Statements.SelectMany(s => new[] { s.Number, s.Item, s.Text }),
    ];

    /// <summary>Notes stand in their own file for each language.</summary>
    public static IEnumerable<string> Of(ImmutableArray<Note> notes) =>
        notes.SelectMany(n => (string[])[n.Topic, n.Standard, n.Why, n.Action, n.Role, .. n.Role.Split(';', StringSplitOptions.TrimEntries)])
            .Where(t => t.Length > 0)
            .SelectMany(t => new[] { t, char.ToUpperInvariant(t[0]) + t[1..] });

    public static IEnumerable<string> Of(CheckedOffer offer) =>
        [offer.Offer.File, offer.Offer.Bidder, .. offer.Lots, .. offer.Lines.Select(l => l.Line.Text)];

    private static IEnumerable<string> OfSite(SiteDesign site) =>
        [site.Site.Id, site.Site.Name, site.Site.District, site.Site.Lot, site.Site.Remark, site.Site.Schedule.Name, site.Climate.Monthly.Source];
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Changes;

/// <summary>One thing an addendum or a new price file changes.</summary>
/// <param name="Part">Tender, site, kit, quantity, compliance or price.</param>
/// <param name="What">Site, kit, part code or key.</param>
/// <param name="Old">Before; empty when it was not there.</param>
/// <param name="New">After; empty when it is gone.</param>
/// <param name="Difference">New less old where both are numbers, as text; else empty.</param>
public sealed record Change(string Part, string What, string Old, string New, string Difference);

/// <summary>What changes between two designs of a tender, with their bills.</summary>
public static class TenderChanges
{
    /// <summary>Every change; empty when both are the same.</summary>
    public static ImmutableArray<Change> Between(TenderDesign old, BillOfQuantities? oldBill, TenderDesign next, BillOfQuantities? nextBill) =>
    [
        .. Of("tender", Head(old), Head(next)),
        .. Of("site", SitesOf(old), SitesOf(next)),
        .. Of("kit", KitsOf(old), KitsOf(next)),
        .. Of("quantity", Quantities(oldBill), Quantities(nextBill)),
        .. Of("compliance", Compliance(old), Compliance(next)),
        .. Of("price", Prices(oldBill), Prices(nextBill)),
    ];

    private static IEnumerable<Change> Of(string part, SortedDictionary<string, string> old, SortedDictionary<string, string> next)
    {
        foreach (var key in old.Keys.Union(next.Keys).Order(StringComparer.Ordinal))
        {
            var (before, after) = (old.GetValueOrDefault(key, ""), next.GetValueOrDefault(key, ""));
            if (before != after) yield return new Change(part, key, before, after, Difference(before, after));
        }
    }

    private static string Difference(string before, string after) =>
        decimal.TryParse(before, NumberStyles.Number, CultureInfo.InvariantCulture, out var a) && decimal.TryParse(after, NumberStyles.Number, CultureInfo.InvariantCulture, out var b)
            ? (b - a).ToString("+#,##0.##;-#,##0.##;0", CultureInfo.InvariantCulture)
            : "";

    private static SortedDictionary<string, string> Head(TenderDesign design)
    {
        var head = design.Tender.Head;
        return Sorted(
            ("validity, days", Text(head.ValidityDays)), ("delivery, days", Text(head.DeliveryDays)), ("currency", head.Currency), ("issue date", head.IssueDate.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            ("dark nights a year", Text(design.Tender.Reliability.DarkNightsPerYear)), ("nights without sun", Text(design.Tender.Reliability.AutonomyNights)));
    }

    private static SortedDictionary<string, string> SitesOf(TenderDesign design) => Sorted(
    [
        .. design.Sites.SelectMany(s => new[]
        {
            (s.Site.Id + " kit", s.KitId), (s.Site.Id + " poles", Text(s.Poles)), (s.Site.Id + " class", s.Site.Target.Name), (s.Site.Id + " length, m", Text(s.Site.LengthM)),
            (s.Site.Id + " width, m", Text(s.Site.WidthM)), (s.Site.Id + " schedule", s.Site.Schedule.Name), (s.Site.Id + " lot", s.Site.Lot),
        }),
        .. design.Unmet.Select(u => (u.SiteId + " kit", "no design")),
    ]);

    private static SortedDictionary<string, string> KitsOf(TenderDesign design) => Sorted(
    [
        .. design.Kits.SelectMany(k => k.Parts.Pieces.Select(p => ($"{k.Id} {p.Role.ToLowerInvariant()}", p.Count == 1 ? p.Part.Code : $"{Text(p.Count)} x {p.Part.Code}")).Append((k.Id + " poles", Text(k.Poles)))),
    ]);

    private static SortedDictionary<string, string> Quantities(BillOfQuantities? bill)
    {
        if (bill is null) return [];
        var values = LedgerValues.Evaluate(bill.Ledger);
        return Sorted([.. bill.Parts.SelectMany(p => p.Lines).Where(l => l.PartCode.Length > 0).GroupBy(l => $"{l.PartCode}, {l.Unit}").Select(g => (g.Key, Text((double)g.Sum(l => values[l.Quantity]))))]);
    }

    private static SortedDictionary<string, string> Compliance(TenderDesign design) => Sorted(
    [
        .. design.Sites.SelectMany(s => s.Checks.Where(c => c.Id is "energy.dark_nights" or "battery.autonomy" or "light.average" or "light.minimum").Select(c => ($"{s.Site.Id} {c.Property}", $"{c.OfferedText} ({c.RequiredText})"))),
        .. design.Unmet.Select(u => (u.SiteId, "not met: " + u.Reason)),
    ]);

    private static SortedDictionary<string, string> Prices(BillOfQuantities? bill)
    {
        if (bill is null) return [];
        var values = LedgerValues.Evaluate(bill.Ledger);
        return Sorted(
        [
            .. bill.BuildUps.Select(b => ($"rate of {b.PartCode}", Money(values[b.Rate]))), .. bill.Lots.Select(l => ("total of lot " + l.Lot, Money(values[l.Total]))),
            ("total before tax", Money(values[bill.PartsTotal] + values[bill.Contingency])), ("grand total", Money(values[bill.GrandTotal])),
        ]);
    }

    private static SortedDictionary<string, string> Sorted(params ReadOnlySpan<(string Key, string Value)> rows)
    {
        var sorted = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (key, value) in rows) sorted[key] = value;
        return sorted;
    }

    private static string Text(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Money(decimal value) => value.ToString("#,##0.00", CultureInfo.InvariantCulture);
}

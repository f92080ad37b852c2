using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Bill;

/// <summary>What one pole of a kit takes of one part.</summary>
internal sealed record Need(Part Part, decimal PerPole);

/// <summary>Takes quantities off the design: poles by site, lot and kit, and the make-up of each kit.</summary>
internal static class TakeOff
{
    /// <summary>Sites grouped by lot and kit, so that each group of poles is one unbroken range of cells.</summary>
    public static ImmutableArray<ScheduleLine> Schedule(TenderDesign design, LedgerBuilder ledger)
    {
        var order = KitOrder(design);
        return
        [
            .. design.Sites
                .OrderBy(s => s.Site.Lot, StringComparer.Ordinal)
                .ThenBy(s => order[s.KitId])
                .Select((s, i) => new ScheduleLine(s.Site.Id, s.Site.Name, s.Site.Lot, s.KitId, ledger.Add(Name("site", i + 1, "poles"), s.Poles))),
        ];
    }

    public static ImmutableArray<KitPoles> PolesByKit(ImmutableArray<ScheduleLine> schedule, LedgerBuilder ledger) =>
    [
        .. schedule.GroupBy(s => (s.Lot, s.KitId)).Select(g => new KitPoles(
            g.Key.Lot, g.Key.KitId, ledger.Add(Name("kit", g.Key.Lot, g.Key.KitId, "poles"), Cells.SumOf([.. g.Select(s => s.Poles)])))),
    ];

    /// <summary>Goods first, works after, each in the order of the bill; equal parts of one kit in one row.</summary>
    public static ImmutableArray<Need> MakeUp(TenderDesign design, Kit kit, ServicePick services)
    {
        var parts = kit.Parts;
        var cableM = parts.Circuits.Sum(c => c.LengthM);
        Need[] goods =
        [
            .. parts.Pieces.Select(p => new Need(p.Part, p.Count)),
            .. parts.Circuits.Select(c => new Need(c.Cable, Exact(c.LengthM))),
            .. parts.Circuits.Where(c => c.Fuse is not null).Select(c => new Need(c.Fuse!, 1)),
            .. parts.OtherProtection.Select(p => new Need(p, 1)),
        ];
        return [.. Merged(goods.Where(n => n.PerPole > 0)), .. Works(design, kit, services, cableM)];
    }

    private static IEnumerable<Need> Works(TenderDesign design, Kit kit, ServicePick services, double cableM)
    {
        var blocks = design.Sites.Where(s => s.KitId == kit.Id).Select(s => s.Structure.Foundation).ToArray();
        (ServiceUse Use, double PerPole)[] works =
        [
            (ServiceUse.FixingsPerPole, 1),
            (ServiceUse.Excavate, blocks.Max(b => b.ExcavationM3)),
            (ServiceUse.Concrete, blocks.Max(b => b.ConcreteM3)),
            (ServiceUse.Reinforcement, kit.Parts.Foundation.ReinforcementKg),
            (ServiceUse.Backfill, blocks.Max(b => b.BackfillM3)),
            (ServiceUse.ErectPole, 1), (ServiceUse.FitKit, 1), (ServiceUse.LayCable, cableM), (ServiceUse.Commission, 1),
        ];
        return works.Where(w => w.PerPole > 0).Select(w => (Rate: services.For(w.Use), w.PerPole)).Where(w => w.Rate is not null)
            .Select(w => new Need(w.Rate!, Exact(w.PerPole)));
    }

    public static Dictionary<string, int> KitOrder(TenderDesign design) => design.Kits.Select((kit, i) => (kit.Id, i)).ToDictionary(k => k.Id, k => k.i, StringComparer.Ordinal);

    public static string Name(params IEnumerable<object> parts) => string.Join(".", parts.Select(p => Convert.ToString(p, System.Globalization.CultureInfo.InvariantCulture)));

    private static IEnumerable<Need> Merged(IEnumerable<Need> needs) =>
        needs.GroupBy(n => n.Part.Code, StringComparer.Ordinal).Select(g => new Need(g.First().Part, g.Sum(n => n.PerPole)));

    private static decimal Exact(double value) => decimal.Round((decimal)value, 3);
}

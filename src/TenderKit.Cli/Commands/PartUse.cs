using System.Collections.Immutable;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Cli.Commands;

/// <summary>Where a design uses a part.</summary>
/// <param name="Kits">Kits it is in: pieces of one pole, or metres for a cable, and poles of the kit.</param>
/// <param name="Items">Items of the bill that buy it, spares among them.</param>
internal sealed record PartUse(ImmutableArray<(string KitId, double PerPole, int Poles)> Kits, ImmutableArray<(string Item, string Lot, decimal Quantity, string Unit)> Items)
{
    public static PartUse Of(string code, TenderDesign design)
    {
        var kits = design.Kits.Select(k => (k.Id, PerPole(code, k.Parts), k.Poles)).Where(k => k.Item2 > 0);
        return new([.. kits], [.. Billed(code, design)]);
    }

    private static double PerPole(string code, PoleParts parts) =>
        parts.Pieces.Where(p => p.Part.Code == code).Sum(p => p.Count)
        + parts.Circuits.Where(c => c.Cable.Code == code).Sum(c => c.LengthM)
        + parts.Circuits.Count(c => c.Fuse?.Code == code)
        + parts.OtherProtection.Count(p => p.Code == code);

    private static IEnumerable<(string, string, decimal, string)> Billed(string code, TenderDesign design)
    {
        if (BillBuilder.Build(design).Value is not { } bill) return [];
        var values = LedgerValues.Evaluate(bill.Ledger);
        return bill.Parts.SelectMany(p => p.Lines).Where(l => l.PartCode == code).Select(l => (l.Code, l.Lot, values[l.Quantity], l.Unit));
    }
}

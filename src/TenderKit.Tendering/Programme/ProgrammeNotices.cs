using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;

namespace TenderKit.Tendering.Programme;

/// <summary>Lots that would not be finished in time, with what would mend it.</summary>
internal static class ProgrammeNotices
{
    private const int MostGangs = 99;

    public static IEnumerable<Diagnostic> Of(BillOfQuantities bill)
    {
        if (bill.Programme is not { } plan) yield break;
        var values = LedgerValues.Evaluate(bill.Ledger);
        foreach (var lot in plan.Lots.Where(l => values[l.LateDays] > 0)) yield return Late(lot, plan, values);
    }

    private static Diagnostic Late(LotPlanCells lot, WorksProgramme plan, IReadOnlyDictionary<CellId, decimal> values)
    {
        var slow = plan.Goods.Where(g => g.Lot == lot.Lot && values[g.LateDays] > 0).OrderByDescending(g => values[g.LateDays]).FirstOrDefault();
        string[] mends =
        [
            .. lot.CompletionIsDate ? [FormattableString.Invariant($"order {values[lot.LateDays]:0} days earlier")] : Array.Empty<string>(),
            .. values[lot.GangsNeeded] is var gangs && gangs <= MostGangs && gangs > values[lot.Gangs] ? [FormattableString.Invariant($"work with {gangs:0} gangs in place of {values[lot.Gangs]:0}")] : Array.Empty<string>(),
            .. slow is not null ? [FormattableString.Invariant($"take another part for {slow.PartCode}, in store {values[slow.LateDays]:0} days sooner")] : Array.Empty<string>(),
        ];
        var where = lot.Lot.Length == 0 ? "the works" : "lot " + lot.Lot;
        return Diagnostic.Warning(
            "TK719",
            FormattableString.Invariant($"{where}: complete on {SerialDate.Day(values[lot.Finish]):yyyy-MM-dd}, wanted on {SerialDate.Day(values[lot.Completion]):yyyy-MM-dd}, late by {values[lot.LateDays]:0} days; ")
            + (mends.Length == 0 ? "ask for more time" : string.Join(", or ", mends)));
    }
}

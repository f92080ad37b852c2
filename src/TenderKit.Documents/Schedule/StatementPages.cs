using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>Clauses that no property decides: the bidder answers them in words.</summary>
internal static class StatementPages
{
    private const double RoomPt = 40;

    public static IEnumerable<Block> Of(TenderDesign design)
    {
        if (design.Clauses.Statements.IsEmpty) yield break;
        yield return new Heading(1, "Clauses answered by the bidder's statement");
        yield return new TableBlock(
            "To be answered in words before the bid is handed in",
            [new("Clause", FixedPt: 44), new("Text", Share: 1), new("Statement", Share: 1.2)],
            [.. design.Clauses.Statements.Select(s => Row.Of(s.Number, (s.Item.Length == 0 ? "" : char.ToUpperInvariant(s.Item[0]) + s.Item[1..] + ": ") + s.Text, "") with { LeastHeightPt = RoomPt })]);
    }
}

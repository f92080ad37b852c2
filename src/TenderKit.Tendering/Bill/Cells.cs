using System.Collections.Immutable;

namespace TenderKit.Tendering.Bill;

/// <summary>Short spellings of expressions.</summary>
public static class Cells
{
    public static Expression Ref(CellId cell) => new Reference(cell);

    public static Sum SumOf(params ReadOnlySpan<CellId> cells) => new Sum([.. cells.ToArray().Select(Ref)]);

    public static Expression Times(CellId left, CellId right) => new Product([new Reference(left), new Reference(right)]);

    /// <summary>The same ledger with some cells replaced by other expressions.</summary>
    public static Ledger Replace(this Ledger ledger, IReadOnlyDictionary<CellId, Expression> replacements) =>
        new([.. ledger.Cells.Select(c => replacements.TryGetValue(c.Key, out var other) ? new KeyValuePair<CellId, Expression>(c.Key, other) : c)]);

    /// <summary>Cells an expression names, in its own order.</summary>
    public static IEnumerable<CellId> Named(Expression expression) => expression switch
    {
        Reference e => [e.Cell],
        Sum e => e.Terms.SelectMany(Named),
        Difference e => Named(e.Left).Concat(Named(e.Right)),
        Product e => e.Factors.SelectMany(Named),
        Quotient e => Named(e.Dividend).Concat(Named(e.Divisor)),
        Rounded e => Named(e.Inner),
        RoundedUp e => Named(e.Inner),
        Greatest e => e.Terms.SelectMany(Named),
        Least e => e.Terms.SelectMany(Named),
        AtLeast e => [.. Named(e.Left), .. Named(e.Right), .. Named(e.Then), .. Named(e.Otherwise)],
        _ => [],
    };

    /// <summary>Every cell that the given cells depend on, themselves included.</summary>
    public static ImmutableHashSet<CellId> Behind(this Ledger ledger, params IEnumerable<CellId> cells)
    {
        var all = ledger.Cells.ToDictionary(c => c.Key, c => c.Value);
        var found = ImmutableHashSet.CreateBuilder<CellId>();
        var open = new Stack<CellId>(cells);
        while (open.TryPop(out var cell))
        {
            if (!found.Add(cell)) continue;
            foreach (var next in Named(all[cell])) open.Push(next);
        }

        return found.ToImmutable();
    }
}

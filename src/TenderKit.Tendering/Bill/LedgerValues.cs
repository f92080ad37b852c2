namespace TenderKit.Tendering.Bill;

/// <summary>Evaluates a ledger in decimal.</summary>
public static class LedgerValues
{
    /// <summary>The value of every cell.</summary>
    /// <exception cref="ArgumentException">A name stands twice, a reference names no cell, or a cell depends on itself.</exception>
    public static IReadOnlyDictionary<CellId, decimal> Evaluate(Ledger ledger) => new Run(ledger).All();

    /// <summary>Half away from zero, as a spreadsheet rounds.</summary>
    public static decimal Round(decimal value, int decimals) => decimal.Round(value, decimals, MidpointRounding.AwayFromZero);

    private sealed class Run
    {
        private readonly Dictionary<CellId, Expression> _cells = [];
        private readonly Dictionary<CellId, decimal> _values = [];
        private readonly HashSet<CellId> _open = [];

        public Run(Ledger ledger)
        {
            foreach (var (id, expression) in ledger.Cells)
            {
                if (!_cells.TryAdd(id, expression)) throw new ArgumentException($"cell {id} is defined twice", nameof(ledger));
            }
        }

        public Dictionary<CellId, decimal> All()
        {
            foreach (var id in _cells.Keys) Cell(id);
            return _values;
        }

        private decimal Cell(CellId id)
        {
            if (_values.TryGetValue(id, out var known)) return known;
            if (!_cells.TryGetValue(id, out var expression)) throw new ArgumentException($"no cell is called {id}");
            if (!_open.Add(id)) throw new ArgumentException($"cell {id} depends on itself");
            var value = Value(expression);
            _open.Remove(id);
            return _values[id] = value;
        }

        private decimal Value(Expression expression) => expression switch
        {
            Literal e => e.Value,
            Reference e => Cell(e.Cell),
            Sum e => e.Terms.Sum(Value),
            Difference e => Value(e.Left) - Value(e.Right),
            Product e => e.Factors.Aggregate(1m, (product, factor) => product * Value(factor)),
            Quotient e => Value(e.Dividend) / Value(e.Divisor),
            Rounded e => Round(Value(e.Inner), e.Decimals),
            RoundedUp e => decimal.Ceiling(Value(e.Inner)),
            Greatest e => e.Terms.Max(Value),
            Least e => e.Terms.Min(Value),
            AtLeast e => Value(e.Left) >= Value(e.Right) ? Value(e.Then) : Value(e.Otherwise),
            _ => throw new ArgumentException($"{expression.GetType().Name} is no expression of the bill"),
        };
    }
}

namespace TenderKit.Tendering.Bill;

/// <summary>Collects cells in the order they are defined.</summary>
public sealed class LedgerBuilder
{
    private readonly List<KeyValuePair<CellId, Expression>> _cells = [];

    public LedgerBuilder(Ledger? start = null)
    {
        if (start is not null) _cells.AddRange(start.Cells);
    }

    public CellId Add(string name, Expression expression)
    {
        var id = new CellId(name);
        _cells.Add(new(id, expression));
        return id;
    }

    public CellId Add(string name, decimal value) => Add(name, new Literal(value));

    public Ledger Build() => new([.. _cells]);
}

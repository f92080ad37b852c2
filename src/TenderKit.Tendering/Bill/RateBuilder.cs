using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Bill;

/// <summary>
/// Builds a rate up in steps: supply (price x exchange), freight, duty, direct cost, overhead, finance, profit, rate.
/// Services are bought where they are done, so they carry no freight and no duty.
/// </summary>
internal sealed class RateBuilder(TenderHead head, PriceBasis prices, PriceInputs inputs, LedgerBuilder ledger, List<Diagnostic> diagnostics)
{
    private readonly Dictionary<string, RateBuildUp?> _done = [];
    private readonly List<RateBuildUp> _all = [];
    private readonly List<Part> _used = [];

    public IReadOnlyList<RateBuildUp> All => _all;

    /// <summary>Parts asked for, priced or not.</summary>
    public IReadOnlyList<Part> Used => _used;

    /// <summary>The build-up of a part, or null when its price cannot be brought into the tender's currency.</summary>
    public RateBuildUp? For(Part part)
    {
        if (_done.TryGetValue(part.Code, out var known)) return known;
        _used.Add(part);
        diagnostics.AddRange(BillNotices.OfPart(part, head));
        var exchange = inputs.Exchange(part.Currency);
        if (exchange is null) diagnostics.Add(BillNotices.NoExchange(part, head.Currency));
        var made = exchange is { } cell ? Make(part, cell) : null;
        if (made is not null) _all.Add(made);
        return _done[part.Code] = made;
    }

    private RateBuildUp Make(Part part, CellId exchange)
    {
        CellId Add(string step, Expression expression) => ledger.Add($"rate.{part.Code}.{step}", expression);
        var imported = part is not ServiceRate;
        var price = Add("price", imported ? Cells.Ref(OrderBuilder.PriceOf(part)) : new Literal(part.UnitPrice));
        var supply = Add("supply", imported ? new Product([Cells.Ref(price), Cells.Ref(exchange), Cells.Ref(OrderBuilder.PerBilledOf(part))]) : Cells.Times(price, exchange));
        var freight = Add("freight", imported ? Cells.Times(supply, inputs.Freight) : new Literal(0));
        var duty = Add("duty", imported ? new Product([Cells.SumOf(supply, freight), Cells.Ref(inputs.Duty)]) : new Literal(0));
        var cost = Add("cost", Cells.SumOf(supply, freight, duty));
        var overhead = Add("overhead", Cells.Times(cost, inputs.Overhead));
        var finance = Add("finance", new Product([Cells.SumOf(cost, overhead), Cells.Ref(inputs.Finance)]));
        var profit = Add("profit", new Product([Cells.SumOf(cost, overhead), Cells.Ref(inputs.Profit)]));
        var rate = Add("rate", new Rounded(Cells.SumOf(cost, overhead, finance, profit), prices.RateDecimals));
        return new RateBuildUp(part.Code, PartWords.Describe(part), PartWords.Unit(part), supply, freight, duty, cost, overhead, finance, profit, rate)
        {
            Price = price, Currency = part.Currency, Exchange = exchange, PerBilled = imported ? OrderBuilder.PerBilledOf(part) : null,
        };
    }
}

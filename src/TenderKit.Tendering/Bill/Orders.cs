using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Bill;

/// <summary>A price that holds from a quantity on, in cells.</summary>
public sealed record OrderStep(CellId FromQuantity, CellId Price);

/// <summary>What is ordered of one part for all lots, in units of sale.</summary>
/// <param name="Needed">What the poles take.</param>
/// <param name="Wastage">What the bill adds to it: cutting waste and whole units.</param>
/// <param name="Spares">Spares.</param>
/// <param name="Billed">All of these: what the bill sells.</param>
/// <param name="Pack">Units in a pack: a drum, a pallet.</param>
/// <param name="Least">Least order.</param>
/// <param name="Packs">Packs ordered.</param>
/// <param name="Ordered">Units ordered.</param>
/// <param name="LeftOver">Ordered and not sold.</param>
/// <param name="PerBilled">Units paid for each unit sold: 1 where the excess is in no rate.</param>
/// <param name="ListPrice">Price of single units.</param>
/// <param name="Steps">Prices of larger quantities, by rising quantity; empty where they are not used.</param>
public sealed record OrderLine(
    string PartCode, string Description, string Unit, string Currency, CellId Needed, CellId Wastage, CellId Spares, CellId Billed, CellId Pack, CellId Least, CellId Packs, CellId Ordered,
    CellId LeftOver, CellId PerBilled, CellId ListPrice, ImmutableArray<OrderStep> Steps, CellId Price, CellId Exchange);

/// <summary>Works out orders from the quantities of the bill: never below the least order, in whole packs, at the price of what is ordered.</summary>
internal sealed class OrderBuilder(Buying buying, LedgerBuilder ledger)
{
    private const int SparesPart = 5;

    /// <summary>Below this nothing is needed: the poles of a part were set to zero.</summary>
    private static readonly Literal Nothing = new(0.000001m);

    /// <summary>Cell of the price at which a part is bought; defined by <see cref="Of"/>.</summary>
    public static CellId PriceOf(Part part) => new(Name(part, "price"));

    /// <summary>Cell of the units bought for each unit billed; defined by <see cref="Of"/>.</summary>
    public static CellId PerBilledOf(Part part) => new(Name(part, "per-billed"));

    /// <param name="needed">What the poles take.</param>
    /// <param name="lines">Lines of the whole bill for this part: supply and spares.</param>
    public OrderLine Of(Part part, Expression needed, IReadOnlyCollection<(int Part, BillLine Line)> lines, CellId exchange)
    {
        CellId Add(string step, Expression expression) => ledger.Add(Name(part, step), expression);
        Sum Quantities(bool spares) => Cells.SumOf([.. lines.Where(l => l.Part == SparesPart == spares).Select(l => l.Line.Quantity)]);
        var need = Add("needed", needed);
        var spare = Add("spares", Quantities(spares: true));
        var waste = Add("wastage", new Difference(Quantities(spares: false), Cells.Ref(need)));
        var billed = Add("billed", Cells.SumOf(need, waste, spare));
        var pack = Add("pack", new Literal(part.OrderMultiple));
        var least = Add("least", new Literal(part.MinimumOrder));
        var whole = new RoundedUp(new Rounded(new Quotient(new Greatest([Cells.Ref(billed), Cells.Ref(least)]), Cells.Ref(pack)), 6));
        var packs = Add("packs", new AtLeast(Cells.Ref(billed), Nothing, whole, new Literal(0)));
        var ordered = Add("ordered", Cells.Times(packs, pack));
        var left = Add("left-over", new Difference(Cells.Ref(ordered), Cells.Ref(billed)));
        var perBilled = ledger.Add(
            PerBilledOf(part).Name, buying.ExcessInRates ? new AtLeast(Cells.Ref(billed), Nothing, new Quotient(Cells.Ref(ordered), Cells.Ref(billed)), new Literal(1)) : new Sum([new Literal(1)]));
        var list = Add("list-price", new Literal(part.UnitPrice));
        ImmutableArray<OrderStep> steps = buying.PriceBreaks
            ? [.. part.PriceBreaks.Select((b, i) => new OrderStep(Add(FormattableString.Invariant($"step.{i + 1}.from"), new Literal(b.FromQuantity)), Add(FormattableString.Invariant($"step.{i + 1}.price"), new Literal(b.UnitPrice))))]
            : [];
        var price = ledger.Add(PriceOf(part).Name, steps.Aggregate(Cells.Ref(list), (lower, step) => new AtLeast(Cells.Ref(ordered), Cells.Ref(step.FromQuantity), Cells.Ref(step.Price), lower)));
        return new OrderLine(
            part.Code, PartWords.Describe(part), PartWords.Unit(part), part.Currency, need, waste, spare, billed, pack, least, packs, ordered, left, perBilled, list, steps, price, exchange);
    }

    /// <summary>What the bidder should know where parts were chosen at other prices than they are bought at.</summary>
    public static IEnumerable<string> Remarks(ImmutableArray<OrderLine> orders, Ledger ledger, string currency, bool excessInRates)
    {
        var values = LedgerValues.Evaluate(ledger);
        decimal Of(Func<OrderLine, decimal> amount) => orders.Sum(o => amount(o) * values[o.Exchange]);
        var saved = Of(o => values[o.Billed] * (values[o.ListPrice] - values[o.Price]));
        var left = Of(o => values[o.LeftOver] * values[o.Price]);
        if (saved != 0)
            yield return FormattableString.Invariant($"the parts were chosen at the catalogue's prices of single units and are bought at the prices of the quantities ordered for all lots together: supply of {saved:#,##0.00} {currency} less; build the rates anew if only some lots are awarded");
        if (left != 0 && excessInRates)
            yield return FormattableString.Invariant($"least orders and whole packs leave {left:#,##0.00} {currency} of parts over, which the rates pay for; see the sheet Orders");
        if (left != 0 && !excessInRates)
            yield return FormattableString.Invariant($"least orders and whole packs leave {left:#,##0.00} {currency} of parts over, which no rate pays for; see the sheet Orders");
    }

    private static string Name(Part part, string step) => $"order.{part.Code}.{step}";
}

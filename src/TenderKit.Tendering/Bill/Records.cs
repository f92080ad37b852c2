using System.Collections.Immutable;

namespace TenderKit.Tendering.Bill;

/// <summary>Every cell of the bill by name, in the order it was defined.</summary>
public sealed record Ledger(ImmutableArray<KeyValuePair<CellId, Expression>> Cells);

/// <summary>One line of the priced bill.</summary>
/// <param name="Code">Item code within the bill, e.g. 2.03.</param>
/// <param name="PartCode">Catalogue code, or empty.</param>
/// <param name="Lot">Lot, or empty when the tender has one only.</param>
/// <param name="Quantity">Cell of the quantity.</param>
/// <param name="Rate">Cell of the rate.</param>
/// <param name="Amount">Cell of the amount, ROUND(quantity x rate, 2).</param>
/// <param name="Service">Related service rather than goods.</param>
public sealed record BillLine(
    string Code, string PartCode, string Description, string Unit, string Lot, CellId Quantity, CellId Rate, CellId Amount, bool Service);

/// <summary>One numbered part of the bill, closed by a collection.</summary>
public sealed record BillPart(int Number, string Title, ImmutableArray<BillLine> Lines, CellId Collection);

/// <summary>One step of the rate build-up of one part or service: cells for each stage.</summary>
/// <param name="PartCode">Catalogue code.</param>
/// <param name="Supply">Supply price in the tender's currency.</param>
/// <param name="Freight">Freight and insurance.</param>
/// <param name="Duty">Duty.</param>
/// <param name="Cost">Direct cost.</param>
/// <param name="Overhead">Overhead.</param>
/// <param name="Finance">Finance, bonds and insurances.</param>
/// <param name="Profit">Profit.</param>
/// <param name="Rate">Rate as billed.</param>
public sealed record RateBuildUp(
    string PartCode, string Description, string Unit, CellId Supply, CellId Freight, CellId Duty, CellId Cost, CellId Overhead, CellId Finance, CellId Profit, CellId Rate)
{
    /// <summary>Units bought for each unit billed; null for work.</summary>
    public CellId? PerBilled { get; init; }

    /// <summary>Price as the catalogue states it for the quantity ordered.</summary>
    public required CellId Price { get; init; }

    /// <summary>Currency of <see cref="Price"/>.</summary>
    public required string Currency { get; init; }

    /// <summary>Tender currency for one unit of <see cref="Currency"/>.</summary>
    public required CellId Exchange { get; init; }
}

/// <summary>Row of the site schedule that drives the quantities.</summary>
public sealed record ScheduleLine(string SiteId, string Name, string Lot, string KitId, CellId Poles);

/// <summary>A lot and the cell of its total, tax included.</summary>
public sealed record LotTotal(string Lot, CellId Total);

/// <summary>Poles of one kit in one lot.</summary>
public sealed record KitPoles(string Lot, string KitId, CellId Poles);

/// <summary>What one pole of a kit takes of one part or service.</summary>
public sealed record KitItem(string KitId, string PartCode, string Description, string Unit, CellId PerPole);

/// <summary>Closing of one lot.</summary>
/// <param name="Collections">One cell for each part of the bill, in its order.</param>
/// <param name="PartsTotal">Sum of the parts before contingency.</param>
/// <param name="WithContingency">Sum with contingency.</param>
public sealed record LotSummary(
    string Lot, ImmutableArray<CellId> Collections, CellId PartsTotal, CellId Contingency, CellId WithContingency, CellId Tax, CellId Total);

/// <summary>The whole bill as cells.</summary>
/// <param name="Ledger">All cells; rates are formulas on the build-up.</param>
/// <param name="Inputs">Named input cells (exchange, fractions): name as printed and cell.</param>
public sealed record BillOfQuantities(
    string Currency,
    Ledger Ledger,
    ImmutableArray<KeyValuePair<string, CellId>> Inputs,
    ImmutableArray<ScheduleLine> Schedule,
    ImmutableArray<RateBuildUp> BuildUps,
    ImmutableArray<BillPart> Parts,
    CellId PartsTotal,
    CellId Contingency,
    CellId Tax,
    CellId GrandTotal,
    ImmutableArray<LotTotal> Lots)
{
    /// <summary>Quantity take-off: poles by lot and kit.</summary>
    public ImmutableArray<KitPoles> KitPoles { get; init; } = [];

    /// <summary>Quantity take-off: make-up of one pole of each kit.</summary>
    public ImmutableArray<KitItem> MakeUp { get; init; } = [];

    /// <summary>Closing of each lot, in the order of <see cref="Lots"/>.</summary>
    public ImmutableArray<LotSummary> LotSummaries { get; init; } = [];

    /// <summary>What is ordered of each part.</summary>
    public ImmutableArray<OrderLine> Orders { get; init; } = [];

    /// <summary>Delivery and works over time.</summary>
    public Programme.WorksProgramme? Programme { get; init; }

    /// <summary>What the bidder should know about the price as it was made, for his own eyes only.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];

    /// <summary>The input cell of a name such as <c>in.tax</c>.</summary>
    public CellId Input(string name) => Inputs.First(i => i.Value.Name == name).Value;

    /// <summary>Lines of one part that belong to a lot.</summary>
    public IEnumerable<BillLine> LinesOf(BillPart part, string lot) => part.Lines.Where(line => Lots.Length == 1 || line.Lot == lot);
}

using System.Collections.Immutable;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Quotes.Checks;

namespace TenderKit.Tendering.Quotes.Compare;

/// <summary>One step of the evaluation of an offer.</summary>
/// <param name="Amount">In the tender's currency, save for the steps before the exchange; null where it cannot be told.</param>
public sealed record EvaluationStep(string Step, decimal? Amount, string How);

/// <summary>An offer on the common basis, all its lots together.</summary>
/// <param name="Responsive">Whether nothing speaks against it by the rules; the committee decides.</param>
/// <param name="Evaluated">Price of all its lots on the common basis; null where it cannot be told.</param>
/// <param name="OverYears">Price and replacements over the years asked, discounted.</param>
/// <param name="PerMegalumenHour">Price over the years for a million delivered lumen-hours.</param>
/// <param name="Rank">1 for the lowest evaluated price among the responsive offers of the same lots; null for the others.</param>
public sealed record EvaluatedOffer(
    CheckedOffer Checked, bool Responsive, ImmutableArray<EvaluationStep> Steps, decimal? Evaluated, decimal? OverYears, decimal? PerMegalumenHour, decimal? Score, int? Rank, ImmutableArray<QuoteFinding> Screens)
{
    /// <summary>Its evaluation lot by lot.</summary>
    public ImmutableArray<LotEvaluation> Lots { get; init; } = [];

    /// <summary>Its parts run at every site.</summary>
    public ImmutableArray<SiteRun> Runs { get; init; } = [];

    public string File => Checked.Offer.File;
}

/// <summary>Cells of the evaluation of one lot of an offer, in the ledger of the comparison.</summary>
/// <param name="Items">Items after the correction rules, currency of the offer.</param>
/// <param name="Transport">Transport, currency of the offer.</param>
/// <param name="Discount">Unconditional discounts, negative, currency of the offer.</param>
/// <param name="Net">Items, transport and discounts; tax left out.</param>
/// <param name="Rate">Tender currency for one unit of the offer's currency.</param>
/// <param name="Converted">Net in the tender's currency.</param>
/// <param name="Added">Added for items missing.</param>
/// <param name="Preference">Margin of preference.</param>
/// <param name="Evaluated">What the ranking goes by.</param>
/// <param name="Replaced">Price of what is replaced over the years, in the tender's currency.</param>
/// <param name="Factor">Sum of the discount factors of its replacements.</param>
/// <param name="OverYears">Evaluated and replacements.</param>
/// <param name="MegalumenHours">Light delivered over the years, million lumen-hours.</param>
/// <param name="PerMegalumenHour">Price over the years for each of them; null where no light was read.</param>
public sealed record LotCells(
    CellId Items, CellId Transport, CellId Discount, CellId Net, CellId Rate, CellId Converted, CellId Added, CellId Share, CellId Preference, CellId Evaluated, CellId Replaced, CellId Factor, CellId OverYears, CellId MegalumenHours, CellId? PerMegalumenHour);

/// <summary>One lot of an offer.</summary>
/// <param name="IsShared">Whether the offer does not say its lots row by row, so that common rows were shared by poles.</param>
public sealed record LotEvaluation(string Lot, LotCells Cells, bool IsShared);

/// <summary>Rank of one offer for one lot.</summary>
public sealed record LotRank(string File, decimal? Evaluated, decimal? OverYears, decimal? Score, int? Rank);

/// <summary>Ranking of the offers for one lot.</summary>
public sealed record LotRanking(string Lot, ImmutableArray<LotRank> Offers);

/// <summary>Award of one lot in the least combination.</summary>
public sealed record Award(string Lot, string File, decimal Evaluated);

/// <summary>The awards that cost least together, conditional discounts counted.</summary>
/// <param name="Discount">Conditional discounts earned, negative or 0.</param>
public sealed record Combination(ImmutableArray<Award> Awards, decimal Sum, decimal Discount, decimal Total);

/// <summary>Several offers on one basis. Its ledger holds every step as an expression; the workbook prints it as formulas.</summary>
public sealed record ComparedOffers(
    Ledger Ledger, IReadOnlyDictionary<CellId, decimal> Values, ImmutableArray<EvaluatedOffer> Offers, ImmutableArray<LotRanking> Lots, Combination? Best, string Currency, string? ExchangeDate);

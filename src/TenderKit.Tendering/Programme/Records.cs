using System.Collections.Immutable;
using TenderKit.Tendering.Bill;

namespace TenderKit.Tendering.Programme;

/// <summary>What kind of number an input of the programme is.</summary>
public enum ProgrammeUnit
{
    Date,
    Days,
    Number,
}

/// <summary>An input cell of the programme, or a date that follows from one.</summary>
public sealed record ProgrammeInput(string Words, ProgrammeUnit Unit, CellId Cell);

/// <summary>One kind of goods for one lot.</summary>
/// <param name="LeadDays">Lead time of the catalogue, days; one cell for all lots.</param>
/// <param name="InStore">Day it is in the site store.</param>
/// <param name="Latest">Last day in store that still allows completion in time with the gangs there are.</param>
/// <param name="LateDays">Days by which it comes after that.</param>
public sealed record GoodsPlan(string Lot, string PartCode, CellId LeadDays, CellId InStore, CellId Latest, CellId LateDays);

/// <summary>Work on one site: first and last days of foundations and of erection.</summary>
public sealed record SitePlan(string SiteId, string Name, string Lot, CellId Poles, CellId FoundationFrom, CellId FoundationTo, CellId ErectFrom, CellId ErectTo, CellId LateDays);

/// <summary>A lot as a whole.</summary>
/// <param name="FoundationGoods">Day the goods for foundations are in store.</param>
/// <param name="OtherGoods">Day all other goods are in store.</param>
/// <param name="Completion">Day completion is wanted.</param>
/// <param name="Finish">Day the last pole is commissioned.</param>
/// <param name="LateDays">Days by which it is late; ordering earlier by as many mends it where the completion is a date.</param>
/// <param name="GangsNeeded">Least number of gangs that could finish in time with the goods coming when they do.</param>
/// <param name="CompletionIsDate">Completion is a stated date and does not move with the order.</param>
public sealed record LotPlanCells(
    string Lot, CellId Gangs, CellId FoundationGoods, CellId OtherGoods, CellId Completion, CellId Finish, CellId LateDays, CellId GangsNeeded, bool CompletionIsDate);

/// <summary>Delivery and completion in cells: every date is a formula on the inputs.</summary>
public sealed record WorksProgramme(
    ImmutableArray<ProgrammeInput> Inputs, CellId OrderDate, ImmutableArray<GoodsPlan> Goods, ImmutableArray<SitePlan> Sites, ImmutableArray<LotPlanCells> Lots);

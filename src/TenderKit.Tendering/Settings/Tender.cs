using System.Collections.Immutable;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.Settings;

/// <summary>Who asks, who bids, when, in which money.</summary>
public sealed record TenderHead(
    string Reference,
    string Title,
    string Employer,
    string Bidder,
    DateOnly IssueDate,
    int ValidityDays,
    string Currency,
    int DeliveryDays,
    ImmutableArray<ExchangeRate> Exchange)
{
    /// <summary>ISO 639-1 code of the language of the documents, one of <see cref="TenderLanguages.All"/>.</summary>
    public string Language { get; init; } = TenderLanguages.English;
}

/// <summary>One unit of <paramref name="Currency"/> costs <paramref name="Rate"/> of the tender's currency.</summary>
public sealed record ExchangeRate(string Currency, decimal Rate);

/// <summary>Reliability asked for.</summary>
public sealed record ReliabilityTarget(double DarkNightsPerYear, double AutonomyNights);

/// <summary>How prices are built; fractions are of the amounts named.</summary>
/// <param name="FreightFraction">Freight and insurance to site, of supply price.</param>
/// <param name="DutyFraction">Duty, of supply price and freight.</param>
/// <param name="OverheadFraction">Site and head-office overhead, of direct cost.</param>
/// <param name="ProfitFraction">Profit, of direct cost and overhead.</param>
/// <param name="FinanceFraction">Finance, bonds and insurances, of direct cost and overhead.</param>
/// <param name="ContingencyFraction">Contingency, of the sum of the parts before it.</param>
/// <param name="TaxFraction">Tax, of the sum with contingency.</param>
/// <param name="SpareFractions">Spares by family name, fraction of the quantity supplied, rounded up, at least one.</param>
/// <param name="CableWasteFraction">Extra cable, fraction.</param>
/// <param name="MaintenanceYears">Years of maintenance in the bill.</param>
/// <param name="RateDecimals">Decimals of a rate.</param>
public sealed record PriceBasis(
    decimal FreightFraction,
    decimal DutyFraction,
    decimal OverheadFraction,
    decimal ProfitFraction,
    decimal FinanceFraction,
    decimal ContingencyFraction,
    decimal TaxFraction,
    ImmutableSortedDictionary<string, decimal> SpareFractions,
    decimal CableWasteFraction,
    int MaintenanceYears,
    int RateDecimals)
{
    /// <summary>Sums the employer tells every bidder to include.</summary>
    public ImmutableArray<ProvisionalSum> ProvisionalSums { get; init; } = [];

    /// <summary>How goods are bought.</summary>
    public Buying Buying { get; init; } = new(true, true);

    /// <summary>Daywork the employer asks to have priced in each lot.</summary>
    public Daywork Daywork { get; init; } = new(0, 0, 0);
}

/// <summary>How goods are bought: one order of each part for all lots, in whole packs and never below the least order.</summary>
/// <param name="PriceBreaks">The catalogue's price of the quantity ordered is taken, else that of single units.</param>
/// <param name="ExcessInRates">What must be ordered beyond the bill is spread over the rate of its part, else it is the bidder's stock and in no rate.</param>
public sealed record Buying(bool PriceBreaks, bool ExcessInRates);

/// <summary>A sum stated by the employer for work not yet known.</summary>
/// <param name="Lot">Lot it stands in; empty for the first.</param>
public sealed record ProvisionalSum(string Text, decimal Amount, string Lot);

/// <summary>Work measured as it comes, priced at daywork rates, in each lot.</summary>
public sealed record Daywork(decimal LabourDays, decimal SkilledDays, decimal PlantH);

/// <summary>One row of the design rules.</summary>
/// <param name="Id">Dotted lower-case id.</param>
/// <param name="Value">Value in use, after the tender's override.</param>
/// <param name="Low">Least value of the allowed range.</param>
/// <param name="High">Greatest value of the allowed range.</param>
/// <param name="Unit">Unit as printed.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Where">Where it is used.</param>
/// <param name="Overridden">Whether the tender changed it.</param>
public sealed record DesignRule(string Id, double Value, double Low, double High, string Unit, string Source, string Where, bool Overridden)
{
    public bool InRange => Value >= Low && Value <= High;
}

/// <summary>A file that was read: its name and the SHA-256 of its bytes, lower-case hex.</summary>
public sealed record InputDigest(string File, string Sha256);

/// <summary>A tender file, understood.</summary>
/// <param name="ClimateFile">Climate that holds where a site row is silent: a file, a name under <c>climate</c>, or "estimate"; null for the estimate.</param>
/// <param name="KitsAtMost">Most different kits over the tender, or null for as many as are cheapest.</param>
public sealed record Tender(
    TenderHead Head,
    string Folder,
    string SitesFile,
    string CatalogPath,
    string RulesFile,
    string? ClimateFile,
    ImmutableSortedDictionary<string, LightingSchedule> Schedules,
    ReliabilityTarget Reliability,
    PriceBasis Prices,
    int? KitsAtMost = null)
{
    /// <summary>The climates the tender names; <see cref="ClimateFile"/> is the one that holds where a site row is silent.</summary>
    public TenderClimates Climates { get; init; } = new(ClimateFile, TenderClimates.None.Named);

    /// <summary>File of horizons, or null.</summary>
    public string? HorizonsFile { get; init; }

    /// <summary>The employer's own price form, or null.</summary>
    public Forms.PriceFormSettings? PriceForm { get; init; }

    /// <summary>Forms, bid security and deviations.</summary>
    public Submission Submission { get; init; } = Submission.None;

    /// <summary>What offers are held against beside the kits.</summary>
    public Quotes.QuoteSettings Quotes { get; init; } = TenderKit.Tendering.Quotes.QuoteSettings.Usual;

    /// <summary>File of the employer's clauses, or null.</summary>
    public string? SpecificationFile { get; init; }

    /// <summary>What is asked for in place of sites, or null.</summary>
    public Regions.RegionAsk? Region { get; init; }

    /// <summary>Parts the tender names in place of a duty.</summary>
    public ImmutableArray<PartsStated.StatedParts> PartsStated { get; init; } = [];

    /// <summary>Totals the tender states, or null.</summary>
    public Sites.StatedTotals? Stated { get; init; }

    /// <summary>What delivery and works are planned with.</summary>
    public Programme.ProgrammeSettings Programme { get; init; } = TenderKit.Tendering.Programme.ProgrammeSettings.Usual;

    /// <summary>The village that keeps the lights, or null.</summary>
    public Upkeep.VillageFund? Village { get; init; }

    /// <summary>What the designs are chosen by.</summary>
    public ChoiceBasis Choice { get; init; } = ChoiceBasis.FirstCost;
}

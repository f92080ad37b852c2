using System.Collections.Immutable;

namespace TenderKit.Tendering.Quotes;

/// <summary>What one kit must do through the night at its hardest site, from our own design.</summary>
/// <param name="LevelFraction">Level our lamp burns at, fraction.</param>
/// <param name="NightlyWh">Lamp and own use over the longest month's night, Wh.</param>
/// <param name="FullHoursH">Equivalent full hours of the longest month's night, h.</param>
/// <param name="NeededArrayWp">Array the hand method asks for in the design month, Wp.</param>
/// <param name="FreshFraction">Share of rated battery energy that may be drawn when new, by chemistry.</param>
public sealed record KitDuty(double LevelFraction, double NightlyWh, double FullHoursH, double NeededArrayWp, ImmutableSortedDictionary<string, double> FreshFraction);

/// <summary>What is asked of one kind of light point.</summary>
/// <param name="Poles">Poles by lot.</param>
/// <param name="PolesBySite">Poles by site.</param>
/// <param name="BankV">System voltage class, 12 or 24 V.</param>
/// <param name="Estimate">Own rate of what one pole takes, by family, in the tender's currency.</param>
public sealed record AskedKit(
    string Id,
    ImmutableSortedDictionary<string, int> Poles,
    ImmutableSortedDictionary<string, int> PolesBySite,
    double FluxLm,
    double InputPowerW,
    int IpCode,
    double ModuleWp,
    double BankV,
    double BatteryAh,
    double BatteryWh,
    double ChargeA,
    double HeightM,
    KitDuty Duty,
    ImmutableSortedDictionary<string, decimal> Estimate)
{
    /// <summary>Poles our light calculation needs with the offered lamp at the sites it is set at; 0 where the tender states the kit.</summary>
    public int PolesNeeded { get; init; }

    /// <summary>Flux each offered lamp must give, by site, lm; empty where the tender states the kit.</summary>
    public ImmutableSortedDictionary<string, double> FluxBySite { get; init; } = ImmutableSortedDictionary<string, double>.Empty;

    /// <summary>Share of the light asked for that the offered lamps reach, by site; empty where the tender states the kit.</summary>
    public ImmutableSortedDictionary<string, double> LightBySite { get; init; } = ImmutableSortedDictionary<string, double>.Empty;

    public int PolesOf(string? lot) => lot is null ? Poles.Values.Sum() : Poles.GetValueOrDefault(lot);
}

/// <summary>Ceilings of what can be true, from the design rules.</summary>
public sealed record Ceilings(double LuminaireLmPerW, double ModuleWPerM2, double LithiumWhPerKg, double LeadWhPerKg, double WiringAmbientC, double FuseFactor, double BatteryDropFraction);

/// <summary>All that offers are held against.</summary>
/// <param name="Exchange">Tender currency for one unit of each other currency.</param>
/// <param name="LifeYears">Expected battery life from our own energy balance, years, by chemistry group: lithium, lead.</param>
public sealed record Asked(
    ImmutableArray<AskedKit> Kits,
    int ValidityDays,
    int DeliveryDays,
    double AutonomyNights,
    string Currency,
    ImmutableSortedDictionary<string, decimal> Exchange,
    ImmutableSortedDictionary<string, double> LifeYears,
    Ceilings Ceilings,
    QuoteSettings Settings)
{
    /// <summary>Whether the tender states the kits; else our own design is the measure, by performance.</summary>
    public bool IsStated { get; init; } = true;

    /// <summary>Whether <see cref="Kits"/> are the light points of the offer itself, set at the sites they serve.</summary>
    public bool IsShaped { get; init; }

    /// <summary>What each site asks, where the tender states no kits.</summary>
    public ImmutableArray<Own.SiteNeed> Sites { get; init; } = [];

    /// <summary>Share of rated battery energy that may be drawn when new, by chemistry.</summary>
    public ImmutableSortedDictionary<string, double> Fresh { get; init; } = ImmutableSortedDictionary<string, double>.Empty;

    /// <summary>Least ingress protection of a luminaire, IP code.</summary>
    public int LeastIp { get; init; }

    /// <summary>Estimates from the catalogue, or null for none.</summary>
    public EstimateBook? Book { get; init; }

    public double FreshOf(string chemistry) => Fresh.GetValueOrDefault(chemistry, 0.9);

    public ImmutableSortedSet<string> Lots => [.. Kits.SelectMany(k => k.Poles.Keys)];

    /// <summary>Our estimate of the goods for all poles of some lots, in the tender's currency.</summary>
    public decimal EstimateOf(IReadOnlyCollection<string> lots) => Kits.Sum(k => lots.Sum(k.PolesOf) * k.Estimate.Where(e => e.Key is not ("battery lithium" or "battery lead") && !e.Key.EndsWith(EstimateBook.High, StringComparison.Ordinal)).Sum(e => e.Value) + (k.Estimate.ContainsKey("battery") ? 0 : lots.Sum(k.PolesOf) * k.Estimate.GetValueOrDefault("battery lithium", k.Estimate.GetValueOrDefault("battery lead"))));

    public decimal? RateOf(string? currency) => currency is null || currency == Currency ? 1 : Exchange.TryGetValue(currency, out var rate) ? rate : null;
}

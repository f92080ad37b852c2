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

    public ImmutableSortedSet<string> Lots => [.. Kits.SelectMany(k => k.Poles.Keys)];

    /// <summary>Our estimate of the goods for all poles of some lots, in the tender's currency.</summary>
    public decimal EstimateOf(IReadOnlyCollection<string> lots) => Kits.Sum(k => lots.Sum(k.PolesOf) * k.Estimate.Values.Sum());

    public decimal? RateOf(string? currency) => currency is null || currency == Currency ? 1 : Exchange.TryGetValue(currency, out var rate) ? rate : null;
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>One finding about an offer.</summary>
/// <param name="Where">Row of the offer; row 0 where something is missing from the whole.</param>
/// <param name="Message">What, offered with unit, asked or believable with unit.</param>
/// <param name="Source">Rule, standard or tender clause behind it.</param>
/// <param name="Question">A question to the bidder, ready to send, or null where none is needed.</param>
public sealed record QuoteFinding(string Code, Severity Severity, Place Where, string Message, string Source, string? Question = null)
{
    /// <summary>Whether the statement itself cannot be true, whatever is asked.</summary>
    public bool Untrue { get; init; }

    /// <summary>Kits it speaks of; empty where it speaks of none.</summary>
    public ImmutableArray<string> KitIds { get; init; } = [];

    /// <summary>Whether it compares with a part or a quantity of our own design, which the tender does not ask for.</summary>
    public bool OwnPart { get; init; }
}

/// <summary>A line with what it answers and what was found about it.</summary>
/// <param name="KitIds">Kits it answers; empty when it answers none.</param>
/// <param name="AskedQuantity">Quantity asked of it, or null where none is.</param>
/// <param name="CorrectedAmount">Amount after the correction rules, in the offer's currency.</param>
public sealed record JudgedLine(OfferLine Line, ImmutableArray<string> KitIds, decimal? AskedQuantity, decimal? CorrectedAmount, string Verdict, ImmutableArray<QuoteFinding> Findings);

/// <summary>Price of an offer, step by step, in its own currency.</summary>
/// <param name="Stated">Total as written, or null.</param>
/// <param name="Corrected">Total after the correction rules.</param>
public sealed record OfferPrice(decimal? Stated, decimal Items, decimal Transport, decimal Discount, decimal Tax, decimal Corrected)
{
    /// <summary>Change by correction over the stated total, fraction; null without a stated total.</summary>
    public decimal? ChangeFraction => Stated is > 0 ? (Corrected / Stated) - 1 : null;
}

/// <summary>An offer, checked.</summary>
/// <param name="Lots">Lots it offers.</param>
/// <param name="Overall">Verdict in words; the committee decides.</param>
public sealed record CheckedOffer(
    Offer Offer, ImmutableArray<string> Lots, ImmutableArray<JudgedLine> Lines, ImmutableArray<QuoteFinding> Findings, OfferPrice Price, string Overall, ImmutableArray<OfferedKit> Kits)
{
    public IEnumerable<string> Questions => Findings.Select(f => f.Question).OfType<string>().Distinct();
}

/// <summary>The parts an offer would put on one pole of a kit, and the rows they come from.</summary>
public sealed record OfferedKit(AskedKit Asked, OfferLine? Luminaire, OfferLine? Module, OfferLine? Battery, OfferLine? Controller, OfferLine? Pole)
{
    public double? FluxLm => Luminaire?.Value("flux_lm");

    public double? InputPowerW => Luminaire?.Value("input_power_w");

    public double? ArrayWp => Module?.Value("rated_wp");

    public double? BatteryWh => Battery is null ? null : Battery.Value("rated_wh") ?? (Battery.Value("rated_ah") is { } ah && (Battery.Value("nominal_voltage_v") ?? Asked.BankV) is var v ? ah * v : null);

    public string Chemistry => Battery?.Find("chemistry")?.Text ?? "AgmLeadAcid";

    /// <summary>Lamp and own use over the longest night, at the level that gives the flux our own lamp gives, Wh.</summary>
    public double? NightlyWh
    {
        get
        {
            if (InputPowerW is not { } watt) return null;
            var level = FluxLm is { } flux and > 0 ? Math.Min(1, Asked.Duty.LevelFraction * Asked.FluxLm / flux) : Asked.Duty.LevelFraction;
            var own = Asked.Duty.NightlyWh - (Asked.InputPowerW * Asked.Duty.LevelFraction * Asked.Duty.FullHoursH);
            return (watt * level * Asked.Duty.FullHoursH) + Math.Max(0, own);
        }
    }
}

/// <summary>Numbers as findings print them.</summary>
internal static class Say
{
    public static string Number(double value) => value.ToString("#,##0.##", CultureInfo.InvariantCulture);

    public static string Money(decimal value) => value.ToString("#,##0.00", CultureInfo.InvariantCulture);

    public static string Short(string text) => text.Length <= 70 ? text : text[..67] + "...";
}

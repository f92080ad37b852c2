using TenderKit.Catalog.Families;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>Direct supply cost of parts in the tender's currency, for choosing; the bill builds its rates from the same prices.</summary>
public sealed class Costs(Tender tender)
{
    /// <summary>Whether a part's price can be turned into the tender's currency.</summary>
    public bool CanPrice(Part part) => part.Currency == tender.Head.Currency || tender.Head.Exchange.Any(e => e.Currency == part.Currency);

    /// <summary>Unit price in the tender's currency.</summary>
    /// <exception cref="InvalidOperationException">No exchange rate: ask <see cref="CanPrice"/> first.</exception>
    public decimal Of(Part part)
    {
        if (part.Currency == tender.Head.Currency) return part.UnitPrice;
        var exchange = tender.Head.Exchange.FirstOrDefault(e => e.Currency == part.Currency)
            ?? throw new InvalidOperationException($"no exchange rate for {part.Currency}");
        return part.UnitPrice * exchange.Rate;
    }
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>What a row of an offer is.</summary>
public enum LineKind
{
    Text,
    Item,
    Subtotal,
    Total,
    Tax,
    Discount,
    Transport,
}

/// <summary>One rating read out of free text.</summary>
/// <param name="Name">Name with its unit, as a part of the catalogue has it: <c>rated_wp</c>, <c>flux_lm</c>.</param>
/// <param name="Value">The number; 0 for a word.</param>
/// <param name="Text">The value as text: the number, or a word such as <c>LithiumIronPhosphate</c>.</param>
/// <param name="Words">The words of the offer it was read from.</param>
/// <param name="Confidence">0 to 1: 1 where number and unit stand together, less where the meaning was inferred.</param>
public sealed record Rating(string Name, double Value, string Text, string Words, double Confidence)
{
    /// <summary>Who corrected it, or null where it stands as read.</summary>
    public string? CorrectedBy { get; init; }

    public static Rating Of(string name, double value, string words, double confidence = 1) =>
        new(name, value, value.ToString("0.######", CultureInfo.InvariantCulture), words, confidence);

    public static Rating Word(string name, string text, string words, double confidence = 1) => new(name, 0, text, words, confidence);
}

/// <summary>One row of an offer as understood.</summary>
/// <param name="Place">File, sheet and row.</param>
/// <param name="Family">luminaire, module, battery, controller, pole, bracket, enclosure, foundation, cable, protection, integrated, kit, service, other; empty for rows that are no items.</param>
/// <param name="Text">Description: every text cell of the row that describes, joined.</param>
/// <param name="Remark">Text of the remaining cells.</param>
/// <param name="Lot">Lot, or empty when the row does not say.</param>
/// <param name="Site">Site, or empty.</param>
/// <param name="Spare">Whether it is a spare, so no second item.</param>
/// <param name="Quantity">Null when none is stated or readable.</param>
/// <param name="Rate">Price of one, null when none is stated.</param>
/// <param name="Amount">Price of the line, null when none is stated.</param>
public sealed record OfferLine(
    Place Place,
    LineKind Kind,
    ItemKind Item,
    string Family,
    string Text,
    string Remark,
    string Lot,
    string Site,
    bool Spare,
    ImmutableArray<Rating> Ratings,
    decimal? Quantity,
    string Unit,
    decimal? Rate,
    decimal? Amount)
{
    /// <summary>Certificates named in the row's own cell; null when the offer has no such column.</summary>
    public string? Certificates { get; init; }

    /// <summary>Whether the amount cell holds a text such as "included" instead of a number.</summary>
    public bool Included { get; init; }

    public Rating? Find(string name) => Ratings.FirstOrDefault(r => r.Name == name);

    public double? Value(string name) => Find(name)?.Value;

    public bool Is(params ReadOnlySpan<string> families)
    {
        foreach (var family in families)
        {
            if (Family == family) return true;
        }

        return false;
    }
}

/// <summary>A warranty stated outside the item rows.</summary>
/// <param name="Family">Family, or <c>battery lithium</c>, <c>battery lead</c>; <c>all</c> when none is named.</param>
public sealed record StatedWarranty(string Family, double Years, string Words, Place Place);

/// <summary>A sentence that reserves, excludes or changes something.</summary>
public sealed record Reservation(string Words, string Trigger, Place Place);

/// <summary>A total in words beside its row.</summary>
public sealed record WordedTotal(decimal Amount, string Words, Place Place);

/// <summary>A number of days with the words it was read from.</summary>
public sealed record StatedDays(int Days, string Words, Place Place);

/// <summary>A discount that hangs on something, such as on both lots being awarded.</summary>
public sealed record ConditionalDiscount(decimal Fraction, string Words, Place Place);

/// <summary>Conditions of an offer.</summary>
/// <param name="Currency">ISO 4217 code, or null when none is stated.</param>
/// <param name="Incoterm">Three letters, or null.</param>
/// <param name="Certificates">Standards named anywhere in the offer, in one spelling.</param>
/// <param name="LotsNamed">Lots the offer names outside its rows.</param>
public sealed record OfferTerms(
    string? Currency,
    string? Incoterm,
    StatedDays? Validity,
    StatedDays? Delivery,
    ImmutableArray<StatedWarranty> Warranties,
    ImmutableSortedSet<string> Certificates,
    ImmutableArray<Reservation> Reservations,
    ImmutableArray<WordedTotal> WordedTotals,
    ImmutableArray<ConditionalDiscount> Discounts,
    ImmutableSortedSet<string> LotsNamed);

/// <summary>An offer as read.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Sha256">Digest of its bytes.</param>
/// <param name="Lines">Every row with text, in the order of the file.</param>
/// <param name="Diagnostics">What was noticed on the way.</param>
public sealed record Offer(string File, string Sha256, string Bidder, ImmutableArray<OfferLine> Lines, OfferTerms Terms, ImmutableArray<Diagnostic> Diagnostics)
{
    public IEnumerable<OfferLine> Items => Lines.Where(l => l.Kind == LineKind.Item);
}

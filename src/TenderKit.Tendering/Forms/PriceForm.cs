using System.Collections.Immutable;

namespace TenderKit.Tendering.Forms;

/// <summary>Where a sheet of the employer's form holds what; columns count from 1.</summary>
/// <param name="Lot">Lot the sheet is for; empty for the whole tender.</param>
public sealed record PriceFormSheet(
    string Sheet, int? ItemColumn, int DescriptionColumn, int? UnitColumn, int QuantityColumn, int RateColumn, int FirstRow, int? LastRow, string Lot);

/// <summary>The employer's own price form and how it is filled.</summary>
/// <param name="File">Name of the .xlsx file as the tender names it.</param>
/// <param name="LinesFile">List that says which of our items answer a line, or null to find them by their words.</param>
/// <param name="SpreadRest">Whether our items without a line of their own are spread over the rates written, in proportion to their amounts.</param>
/// <param name="SpreadContingency">Whether the contingency is spread with them where the form has no line for it.</param>
public sealed record PriceFormSettings(string File, ImmutableArray<PriceFormSheet> Sheets, string? LinesFile, bool SpreadRest, bool SpreadContingency);

/// <summary>One line of the form that asks for a rate.</summary>
/// <param name="Row">1-based row of the sheet.</param>
/// <param name="Quantity">The employer's quantity; it is never changed.</param>
public sealed record FormLine(string Sheet, int Row, string Item, string Description, string Unit, decimal Quantity, string Lot);

/// <summary>The form as read.</summary>
/// <param name="Given">Our items for a line as the user's list says: (sheet, row) to codes of our bill.</param>
public sealed record PriceForm(
    PriceFormSettings Settings, ImmutableArray<byte> Bytes, ImmutableArray<FormLine> Lines, ImmutableDictionary<(string Sheet, int Row), ImmutableArray<string>> Given);

/// <summary>What is written in one line of the form.</summary>
/// <param name="BillCodes">Our items in its rate.</param>
/// <param name="OurQuantity">Our quantity of the same thing; null where it cannot be compared.</param>
/// <param name="Rate">Rate written; null when the line is left empty.</param>
/// <param name="Remark">What the bidder must know about the line.</param>
public sealed record FormAnswer(FormLine Line, ImmutableArray<string> BillCodes, decimal? OurQuantity, decimal? Rate, string Remark)
{
    /// <summary>Quantity x rate, rounded as the form's own formula would.</summary>
    public decimal Amount => Rate is { } rate ? Math.Round(Line.Quantity * rate, 2, MidpointRounding.AwayFromZero) : 0;

    /// <summary>Whether the employer's quantity is not ours.</summary>
    public bool QuantityDiffers => OurQuantity is { } ours && ours != Line.Quantity;
}

/// <summary>One of our items that no line of the form asks for.</summary>
public sealed record UnplacedItem(string BillCode, string Description, decimal Amount, bool Spread);

/// <summary>The form, priced.</summary>
/// <param name="SpreadFactor">Factor on every rate for what has no line of its own; 1 when nothing is spread.</param>
/// <param name="FormTotal">Sum of quantity x rate over the lines, tax left out.</param>
/// <param name="OurTotal">Our total before tax at our own quantities.</param>
public sealed record PricedForm(ImmutableArray<FormAnswer> Answers, ImmutableArray<UnplacedItem> Unplaced, decimal SpreadFactor, decimal FormTotal, decimal OurTotal);

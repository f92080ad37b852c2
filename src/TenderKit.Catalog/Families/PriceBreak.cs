using System.Globalization;

namespace TenderKit.Catalog.Families;

/// <summary>A unit price that holds from a quantity on.</summary>
/// <param name="FromQuantity">Least quantity, units of sale, above 0.</param>
/// <param name="UnitPrice">Price of one unit of sale, in the currency of the part.</param>
public sealed record PriceBreak(decimal FromQuantity, decimal UnitPrice)
{
    /// <summary>As written in a cell: <c>50:43.20</c>.</summary>
    public override string ToString() => $"{Plain(FromQuantity)}:{Plain(UnitPrice)}";

    private static string Plain(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);
}

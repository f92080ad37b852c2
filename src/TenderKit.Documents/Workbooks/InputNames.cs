using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks;

/// <summary>Names of the inputs that hold for the whole workbook and of its totals, such as <c>Contingency</c>, <c>Order_date</c> and <c>Grand_total</c>.</summary>
internal static class InputNames
{
    public static IEnumerable<DefinedName> Of(IReadOnlyDictionary<CellId, Address> homes)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (cell, home) in homes.OrderBy(h => h.Key.Name, StringComparer.Ordinal))
        {
            if (NameOf(cell.Name) is { } name && taken.Add(name)) yield return new DefinedName(home.Fixed("")) { Name = name };
        }
    }

    private static string? NameOf(string cell) => cell switch
    {
        "total.grand" => "Grand_total",
        "total.parts" => "Sum_of_parts",
        "total.tax" => "Tax_amount",
        "total.contingency" => "Contingency_amount",
        _ when cell.StartsWith("in.", StringComparison.Ordinal) => Plain(cell[3..]),
        _ when cell.StartsWith("plan.", StringComparison.Ordinal) && (cell.Split('.').Length == 2 || cell.EndsWith(".gangs", StringComparison.Ordinal)) => Plain(cell[5..]),
        _ => null,
    };

    /// <summary>Letters, digits and underscores; a word is put before a name that could be read as a cell.</summary>
    private static string Plain(string text)
    {
        var plain = new string([.. text.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '_')]);
        return char.ToUpperInvariant(plain[0]) + plain[1..] + (char.IsAsciiDigit(plain[^1]) && !plain.Contains('_', StringComparison.Ordinal) ? "_" : "");
    }
}

using TenderKit.Tendering.Design;
using TenderKit.Tendering.Kits;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Cost of the tender against the number of kits, with bars.</summary>
internal static class KitCountSheet
{
    private const int LongestBar = 30;

    public static void Write(Book book, TenderDesign design)
    {
        if (design.KitCounts.IsEmpty) return;
        var sheet = book.Add("Kits and cost");
        sheet.Columns(8, 18, 16, 30, 34);
        var row = TitleBlock.Write(
            sheet, book, "Kits and cost",
            "Direct cost of all sites in " + design.Tender.Head.Currency + (design.Tender.Choice.ByPresentValue ? " at " + design.Tender.Choice.InWords : "")
            + ", before freight, duty and shares, if no more than so many kits of those found were allowed. The bars show what comes on top of the cheapest line.");
        sheet.Header(row++, ">Kits", ">Cost", ">Over the cheapest", "What is known", "");
        var (least, most) = (design.KitCounts.Min(k => k.Cost) ?? 0, design.KitCounts.Max(k => k.Cost) ?? 0);
        foreach (var count in design.KitCounts)
        {
            sheet.Figure(row, 1, count.Kits, Look.Whole);
            if (count.Cost is { } cost)
            {
                sheet.Figure(row, 2, (double)decimal.Round(cost, 2), Look.Number("#,##0"));
                sheet.Figure(row, 3, least > 0 ? (double)decimal.Round((cost - least) / least, 4) : 0, Look.Number("+0.0%;-0.0%;0.0%"));
                sheet.Words(row, 4, WordsOf(count.Proof), Look.Row);
                sheet.Words(row, 5, new string('█', most > least ? (int)Math.Round((cost - least) / (most - least) * LongestBar) : 0), Look.Text);
            }
            else
            {
                sheet.Words(row, 2, "none", Look.Row);
                sheet.Fill(row, 3, 3, Look.Row);
                sheet.Words(row, 4, "so few do not serve every site", Look.Row);
            }

            row++;
        }
    }

    public static string WordsOf(KitCountProof proof) => proof switch
    {
        KitCountProof.Least => "the least there is",
        KitCountProof.AtLeast => "a bound: this or more",
        _ => "the best found by exchanging",
    };
}

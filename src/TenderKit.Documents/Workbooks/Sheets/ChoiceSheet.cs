using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Why each kit was chosen: the next cheapest design at its hardest site, and what each demand costs there.</summary>
internal sealed class ChoiceSheet(Sheet sheet)
{
    private const int LastColumn = 4;

    private int _row;

    public static void Write(Book book, TenderDesign design)
    {
        if (design.Choices.IsEmpty) return;
        var sheet = book.Add("Choice");
        sheet.Columns(58, 20, 20, 16);
        var remark = "Chosen by " + design.Tender.Choice.InWords + ": the least among all designs that pass every check. Direct cost of the whole site in " + design.Tender.Head.Currency
            + ", before freight, duty and shares, at the site that leaves the kit the least margin of energy. A demand is priced by designing that site again with that demand alone changed.";
        var choices = new ChoiceSheet(sheet) { _row = TitleBlock.Write(sheet, book, "Choice of the kits", remark) };
        foreach (var choice in design.Choices) choices.Kit(choice);
    }

    private void Kit(ChoiceExplanation choice)
    {
        sheet.Words(_row, 1, $"Kit {choice.KitId}, site {choice.SiteId}", Look.Band);
        sheet.Fill(_row++, 2, LastColumn, Look.Band);
        sheet.Header(_row++, "Design", ">Cost", ">Over the cheapest", ">Share");
        Line("This kit", choice.ChosenCost, choice.ChosenCost - choice.CheapestCost, choice.CheapestCost);
        Line("Cheapest for this site alone", choice.CheapestCost, 0, choice.CheapestCost);
        Line("Runner-up: next cheapest that differs in some part", choice.RunnerUpCost, choice.RunnerUpCost - choice.CheapestCost, choice.CheapestCost);
        foreach (var difference in choice.RunnerUpDiffers) sheet.Paragraph(_row++, 1, LastColumn, "   " + difference, Look.Row);
        foreach (var demand in choice.Demands) Line("If " + demand.Demand, demand.Cost, demand.Difference, choice.CheapestCost);
        _row++;
    }

    private void Line(string words, decimal? cost, decimal? over, decimal cheapest)
    {
        sheet.Words(_row, 1, words, Look.Row);
        if (cost is { } known && over is { } difference)
        {
            sheet.Figure(_row, 2, Money(known), Look.Number("#,##0"));
            sheet.Figure(_row, 3, Money(difference), Look.Number("+#,##0;-#,##0;0"));
            sheet.Figure(_row, 4, cheapest > 0 ? (double)decimal.Round(difference / cheapest, 4) : 0, Look.Number("+0.0%;-0.0%;0.0%"));
        }
        else
        {
            sheet.Words(_row, 2, "none found", Look.Row);
            sheet.Fill(_row, 3, LastColumn, Look.Row);
        }

        _row++;
    }

    private static double Money(decimal cost) => (double)decimal.Round(cost, 2);
}

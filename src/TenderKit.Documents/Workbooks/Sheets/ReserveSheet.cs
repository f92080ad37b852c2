using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Upkeep;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Batteries of one kit over the years, as the sheet of costs has them.</summary>
internal sealed record KitYears(string KitId, string Battery, CellId Poles, CellId PerPole, CellId Life, CellId ChangeAll, CellId[] Spent);

/// <summary>What must be put aside each year so that batteries can be changed when they are worn: which, when, how much, who pays.</summary>
internal sealed class ReserveSheet(Sheet sheet, IReadOnlyList<KitYears> kits, CellId[] years)
{
    private const int FirstYear = 7;

    private int _row;

    private int LastColumn => FirstYear + years.Length - 1;

    public static void Write(Book book, BillOfQuantities bill, VillageFund? village, IReadOnlyList<KitYears> kits, CellId[] years)
    {
        var sheet = book.Add("Reserve for batteries", landscape: true);
        sheet.Columns([7, 40, 8, 11, 10, 14, .. years.Select(_ => 10.0)]);
        var remark = "In " + bill.Currency + " of today at the rates of this bill, work included, before contingency and tax; without interest or inflation, so look at it again every year. A battery is bought at the start of its year with what was put aside in the years before. "
            + "The yearly sum is the least that is never short in these years. Maintenance is not in it.";
        var reserve = new ReserveSheet(sheet, kits, years) { _row = TitleBlock.Write(sheet, book, "Reserve for batteries", remark) };
        reserve.All(bill, village);
    }

    private void All(BillOfQuantities bill, VillageFund? village)
    {
        sheet.Header(_row, ["Kit", "Battery", ">Poles", ">Batteries a pole", ">Life, years", ">To change all"]);
        for (var y = 0; y < years.Length; y++) sheet.Show(_row, FirstYear + y, years[y], Look.HeadRight with { Format = "\"year \"0" });
        sheet.Repeat(_row, _row, 2);
        _row++;
        foreach (var kit in kits) Kit(kit);
        var spent = Row("Together", y => Cells.SumOf([.. kits.Select(k => k.Spent[y])]), Look.TotalText);
        var summed = Row("Together since the start", y => Cells.SumOf(spent.AsSpan(..(y + 1))), Look.Row);
        var at = _row + 1;
        var yearly = sheet.Formula(at, 6, new RoundedUp(new Rounded(new Greatest([.. summed.Skip(1).Select((s, i) => (Expression)new Quotient(Cells.Ref(s), new Literal(i + 1)))]), 6)), Look.TotalMoney);
        CellId? before = null;
        Row("In the reserve at the end of the year", y => before is { } last ? new Difference(Cells.SumOf(last, yearly), Cells.Ref(spent[y])) : new Difference(Cells.Ref(yearly), Cells.Ref(spent[y])), Look.Row, cell => before = cell);
        _row++;
        sheet.Paragraph(at, 1, 5, "To put aside each year, all together", Look.TotalText);
        Shares(bill, village, yearly);
    }

    private void Kit(KitYears kit)
    {
        sheet.Words(_row, 1, kit.KitId, Look.Row);
        sheet.Words(_row, 2, kit.Battery, Look.Row);
        sheet.Show(_row, 3, kit.Poles, Look.Whole);
        sheet.Show(_row, 4, kit.PerPole, Look.Whole);
        sheet.Show(_row, 5, kit.Life, Look.Number("0.0"));
        sheet.Show(_row, 6, kit.ChangeAll, Look.Money);
        for (var y = 0; y < years.Length; y++) sheet.Show(_row, FirstYear + y, kit.Spent[y], Look.Number("#,##0;-#,##0;-"));
        _row++;
    }

    private CellId[] Row(string words, Func<int, Expression> of, Look look, Action<CellId>? made = null)
    {
        sheet.Words(_row, 2, words, look);
        var cells = new CellId[years.Length];
        for (var y = 0; y < years.Length; y++)
        {
            cells[y] = sheet.Formula(_row, FirstYear + y, of(y), look with { Format = "#,##0;-#,##0;-", Side = Side.Right, Wrap = false });
            made?.Invoke(cells[y]);
        }

        sheet.Fill(_row++, 1, LastColumn, look);
        return cells;
    }

    private void Shares(BillOfQuantities bill, VillageFund? village, CellId yearly)
    {
        var poles = Cells.SumOf([.. bill.KitPoles.Select(k => k.Poles)]);
        if (village is not { Households: > 0 })
        {
            Result("For each pole each year; state village, households to see it for a household", row => sheet.Formula(row, 6, new Quotient(Cells.Ref(yearly), poles), Look.Money));
            return;
        }

        var share = Result(village.Fund.Length > 0 ? "Share paid by " + village.Fund : "Share paid by a fund: none stated", row => sheet.Formula(row, 6, new Literal(village.FundShareFraction), Look.Percent));
        var households = Result("Households", row => sheet.Formula(row, 6, new Literal(village.Households), Look.Whole));
        sheet.Leasts[(_row - 1, 6)] = 1;
        var fund = Result("Paid by the fund each year", row => sheet.Formula(row, 6, Cells.Times(yearly, share), Look.Money));
        var people = Result("Paid by the households together each year", row => sheet.Formula(row, 6, new Difference(Cells.Ref(yearly), Cells.Ref(fund)), Look.Money));
        var each = Result("Paid by one household each year", row => sheet.Formula(row, 6, new Quotient(Cells.Ref(people), Cells.Ref(households)), Look.TotalMoney));
        Result("Paid by one household each month", row => sheet.Formula(row, 6, new Quotient(Cells.Ref(each), new Literal(12)), Look.Money));
        Result("For each pole each year", row => sheet.Formula(row, 6, new Quotient(Cells.Ref(yearly), poles), Look.Money));
    }

    private CellId Result(string words, Func<int, CellId> value)
    {
        sheet.Paragraph(_row, 1, 5, words, Look.Row);
        return value(_row++);
    }
}

using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Programme;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Programme of the works: goods and sites with their dates and bars drawn in cells, lots, and the inputs that move them all.</summary>
internal sealed class ProgrammeSheet(Book book, Sheet sheet, BillOfQuantities bill, WorksProgramme plan, int bars)
{
    private const int FirstBar = 9;
    private const int LateColumn = 8;
    private const int ValueColumn = 4;
    private const int DaysAWeek = 7;
    private const int MostBars = 60;
    private const string GoodsFormat = "[=0]\"\";\"O\"";
    private const string WorkFormat = "[=0]\"\";[=1]\"F\";\"E\"";

    private readonly CellId[] _heads = new CellId[bars];
    private int _row;
    private int _header;
    private CellId _step;

    private int LastColumn => FirstBar + bars - 1;

    /// <param name="mends">Also what would bring a late lot back into time.</param>
    public static void Write(Book book, BillOfQuantities bill, bool mends)
    {
        if (bill.Programme is not { } plan) return;
        var days = plan.Lots.Max(l => Math.Max(book.ValueOf(l.Finish), book.ValueOf(l.Completion))) - book.ValueOf(plan.OrderDate) + 1;
        var step = Math.Max(1, (int)Math.Ceiling(days / DaysAWeek / MostBars)) * DaysAWeek;
        var bars = Math.Max(10, (int)Math.Ceiling(days / step) + 3);
        var sheet = book.Add("Programme", landscape: true);
        sheet.Columns([8, 38, 8, 12, 12, 12, 12, 13, .. Enumerable.Repeat(2.9, bars)]);
        var row = TitleBlock.Write(
            sheet, book, "Programme of the works",
            "O goods on order and on their way, F foundations, E erection, fitting and commissioning; bars after the completion wanted are hatched. Every date follows from the inputs below the chart: change them and the bars move.");
        new ProgrammeSheet(book, sheet, bill, plan, bars) { _row = row }.All(step, mends);
    }

    private void All(int step, bool mends)
    {
        _step = book.Own("sheet.Programme.step", new Literal(step));
        Header();
        foreach (var lot in plan.Lots) Lot(lot);
        _row++;
        Lots(mends);
        _row++;
        Inputs();
    }

    private void Header()
    {
        _header = _row;
        sheet.Header(_row, "Site", "Name", ">Poles", ">Foundations from", ">to", ">Erection from", ">to", ">Days late");
        for (var i = 0; i < bars; i++)
        {
            var look = Look.Head with { Format = "d mmm yy", Turned = true, Wrap = false, SizePt = 8, Side = Side.Centre };
            _heads[i] = sheet.Formula(_row, FirstBar + i, i == 0 ? Cells.Ref(plan.OrderDate) : Cells.SumOf(_heads[i - 1], _step), look);
        }

        sheet.Height(_row, 50);
        sheet.Repeat(_row, _row, 2);
        _row++;
    }

    private void Lot(LotPlanCells lot)
    {
        sheet.Words(_row, 1, plan.Lots.Length > 1 ? TitleBlock.LotLabel(lot.Lot) : "Works", Look.Band with { Wrap = false });
        sheet.Fill(_row++, 2, LastColumn, Look.Band);
        var first = _row;
        Goods("Goods for foundations", lot.FoundationGoods);
        Goods("All other goods", lot.OtherGoods);
        foreach (var site in plan.Sites.Where(s => s.Lot == lot.Lot)) Site(site);
        (int Least, BarShade Shade, CellId? After)[] shades = [(1, BarShade.Late, lot.Completion), (2, BarShade.Dark, null), (1, BarShade.Light, null)];
        foreach (var (least, shade, after) in shades) sheet.Bars.Add(new BarArea(first, _row - 1, FirstBar, LastColumn, _header, least, shade, after));
    }

    private void Goods(string words, CellId inStore)
    {
        sheet.Words(_row, 2, words, Look.Row);
        sheet.Show(_row, 4, plan.OrderDate, Look.Date);
        sheet.Home(_row, 5, inStore, Look.Date);
        for (var i = 0; i < bars; i++) sheet.Formula(_row, FirstBar + i, Bar(i, plan.OrderDate, Cells.Ref(inStore)), BarLook(GoodsFormat));
        sheet.Fill(_row++, 1, LateColumn, Look.Row);
    }

    private void Site(SitePlan site)
    {
        sheet.Words(_row, 1, site.SiteId, Look.Row with { Wrap = false });
        sheet.Words(_row, 2, site.Name, Look.Row);
        sheet.Show(_row, 3, site.Poles, Look.Whole);
        CellId[] dates = [site.FoundationFrom, site.FoundationTo, site.ErectFrom, site.ErectTo];
        for (var i = 0; i < dates.Length; i++) sheet.Home(_row, 4 + i, dates[i], Look.Date);
        sheet.Home(_row, LateColumn, site.LateDays, Look.Number(DeliverySheet.LateFormat));
        for (var i = 0; i < bars; i++)
        {
            var erection = new Product([new Literal(2), Bar(i, site.ErectFrom, After(site.ErectTo))]);
            sheet.Formula(_row, FirstBar + i, new Sum([Bar(i, site.FoundationFrom, After(site.FoundationTo)), erection]), BarLook(WorkFormat));
        }

        _row++;
    }

    private static Sum After(CellId day) => new([Cells.Ref(day), new Literal(1)]);

    /// <summary>1 where the days from one to before the other touch the days of a column, else 0.</summary>
    private Least Bar(int column, CellId from, Expression until)
    {
        var end = new Least([until, Cells.SumOf(_heads[column], _step)]);
        var begin = new Greatest([Cells.Ref(from), Cells.Ref(_heads[column])]);
        return new Least([new Literal(1), new RoundedUp(new Rounded(new Greatest([new Literal(0), new Difference(end, begin)]), 6))]);
    }

    private static Look BarLook(string format) => new(format, SizePt: 8, Lines: Lines.Thin, Side: Side.Centre);

    private void Lots(bool mends)
    {
        sheet.Words(_row, 1, "Lots", Look.Band with { Wrap = false });
        sheet.Fill(_row++, 2, LateColumn, Look.Band);
        foreach (var lot in plan.Lots)
        {
            sheet.Paragraph(_row, 2, 5, bill.Lots.Length > 1 ? TitleBlock.LotLabel(lot.Lot) + ": complete, wanted, days late" : "Complete, wanted, days late", Look.Row);
            sheet.Home(_row, 6, lot.Finish, Look.Date);
            sheet.Show(_row, 7, lot.Completion, Look.Date);
            sheet.Home(_row, LateColumn, lot.LateDays, Look.Number(DeliverySheet.LateFormat));
            sheet.Fill(_row++, 1, LateColumn, Look.Row);
            if (mends) Mends(lot);
        }

        foreach (var latest in plan.Goods.Select(g => (g.Lot, g.Latest)).Distinct())
        {
            var words = plan.Goods.First(g => g.Latest == latest.Latest) is var goods && IsFooting(goods) ? "Goods for foundations, last day in store" : "All other goods, last day in store";
            Valued(plan.Lots.Length > 1 ? TitleBlock.LotLabel(latest.Lot) + ": " + words : words, row => sheet.Home(row, LateColumn, latest.Latest, Look.Date));
        }
    }

    private static bool IsFooting(GoodsPlan goods) => goods.Latest.Name.EndsWith("latest-foundation-goods", StringComparison.Ordinal);

    private void Mends(LotPlanCells lot)
    {
        if (lot.CompletionIsDate) Valued("Mend: order earlier, by so many days", row => sheet.Show(row, LateColumn, lot.LateDays, Look.Number("0;;\"not needed\"")));
        Valued("Mend: gangs in all, at least", row => sheet.Home(row, LateColumn, lot.GangsNeeded, Look.Number("[>99]\"no number\";0")));
        Valued("Mend: other parts", row => sheet.Words(row, LateColumn, "see Delivery", Look.Row with { Side = Side.Right }));
    }

    private void Valued(string words, Action<int> value)
    {
        sheet.Paragraph(_row, 2, LateColumn - 1, words, Look.Row);
        value(_row);
        sheet.Fill(_row++, 1, LateColumn, Look.Row);
    }

    private void Inputs()
    {
        sheet.BreaksBefore.Add(_row);
        sheet.Words(_row, 1, "Inputs", Look.Band with { Wrap = false });
        sheet.Fill(_row++, 2, LateColumn, Look.Band);
        foreach (var input in plan.Inputs) Input(input.Words, input.Cell, LookOf(input.Unit), input.Unit != ProgrammeUnit.Date && Divides(input.Cell));
        Input("Days in a column of the chart", _step, Look.Whole, true);
        TitleBlock.Legend(sheet, ++_row, 1, LateColumn, "marks a cell that may be changed. Rates of gangs and days of moving are assumptions of the bidder.");
    }

    private static bool Divides(CellId cell) => cell.Name is "plan.foundations" or "plan.poles" or "plan.working-days" || cell.Name.EndsWith(".gangs", StringComparison.Ordinal);

    private static Look LookOf(ProgrammeUnit unit) => unit switch
    {
        ProgrammeUnit.Date => Look.Date,
        ProgrammeUnit.Days => Look.Whole,
        _ => Look.Number("0.0"),
    };

    private void Input(string words, CellId cell, Look look, bool divides)
    {
        sheet.Words(_row, 1, "", Look.Row);
        sheet.Paragraph(_row, 2, ValueColumn - 1, words, Look.Row);
        sheet.Home(_row, ValueColumn, cell, look);
        if (divides) sheet.Leasts[(_row, ValueColumn)] = 0.01m;
        _row++;
    }
}

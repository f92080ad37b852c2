using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>
/// Cost over the years in formulas: first cost, batteries changed at the end of their expected life, maintenance after the contract, present value.
/// A battery that lasts L years is changed at the start of every year y with ceil(y / L) above ceil((y - 1) / L).
/// </summary>
internal sealed class YearsSheet(Sheet sheet, TenderDesign design, BillOfQuantities bill)
{
    private const int LastYear = 15;
    private const int FirstYearColumn = 7;
    private const int LastColumn = FirstYearColumn + LastYear - 1;

    /// <summary>Stands as an input cell to be changed; common practice, no source.</summary>
    private const decimal AssumedDiscountRate = 0.08m;

    private static readonly int[] Horizons = [10, LastYear];

    private readonly Dictionary<string, Part> _parts = design.Catalog.All.GroupBy(p => p.Code).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
    private readonly CellId[] _years = new CellId[LastYear];
    private int _row;

    /// <summary>The years and, kit by kit, what its batteries cost in each.</summary>
    public static (CellId[] Years, IReadOnlyList<KitYears> Kits) Write(Book book, TenderDesign design, BillOfQuantities bill)
    {
        var sheet = book.Add("Cost over the years", landscape: true);
        sheet.Columns([7, 36, 8, 10, 10, 14, .. Enumerable.Repeat(9.5, LastYear)]);
        var remark = "In " + bill.Currency + " at the rates of this bill, before contingency and tax, without inflation. Money is spent at the start of a year. "
            + "Only batteries are changed; lamps, controllers and modules are taken to last. No value is left at the end."
            + (design.Kits.Any(k => k.Parts.Integrated is not null) ? " No battery is sold by itself for an integrated unit, so the whole unit is changed when its battery is worn; ask its maker for a pack." : "");
        var start = TitleBlock.Write(sheet, book, "Cost over the years", remark);
        var years = new YearsSheet(sheet, design, bill) { _row = start };
        return (years._years, years.All());
    }

    private List<KitYears> All()
    {
        var discount = Labelled("Discount rate a year, above inflation: assumed, enter the employer's", row => sheet.Formula(row, 6, new Literal(AssumedDiscountRate), Look.Percent));
        var first = Labelled("First cost: sum of parts 1 to 7", row => Linked(row, bill.PartsTotal, Look.Money));
        var included = Labelled("Years of maintenance in the first cost", row => Linked(row, bill.Input("in.years"), Look.Whole));
        var work = Labelled("Work to change the batteries of one pole: as fitting a whole kit, on the high side", row => Linked(row, RateOf(ServiceUse.FitKit), Look.Money));
        var maintain = Labelled("Maintenance of one pole for one year", row => Linked(row, RateOf(ServiceUse.MaintainYear), Look.Money));
        var poles = Labelled("Poles", row => sheet.Formula(row, 6, Cells.SumOf([.. bill.KitPoles.Select(k => k.Poles)]), Look.Whole));
        _row++;
        Header();
        var kits = Kits(work);
        var batteries = Yearly("Batteries", y => Cells.SumOf([.. kits.Select(k => k.Spent[y])]), "#,##0", Look.TotalText);
        var upkeep = Yearly("Maintenance after the contract", y => Upkeep(poles, maintain, included, y), "#,##0", Look.Row);
        var factors = Factors(discount);
        _row++;
        foreach (var years in Horizons) Horizon(years, first, batteries[..years], upkeep[..years], factors[..years], poles);
        return kits;
    }

    private CellId RateOf(ServiceUse use) => bill.BuildUps.First(b => _parts[b.PartCode] is ServiceRate rate && rate.Use == use).Rate;

    private CellId Labelled(string label, Func<int, CellId> cell)
    {
        sheet.Paragraph(_row, 1, 5, label, Look.Row);
        return cell(_row++);
    }

    private CellId Linked(int row, CellId cell, Look look)
    {
        sheet.Show(row, 6, cell, look);
        return cell;
    }

    private void Header()
    {
        sheet.Header(_row, "Kit", "Battery, with its life on the site that asks most of it", ">Poles", ">Batteries a pole", ">Life, years", ">To change all");
        for (var y = 0; y < LastYear; y++) _years[y] = sheet.Fixed(_row, FirstYearColumn + y, y + 1, Look.HeadRight with { Format = "\"year \"0" });
        _row++;
    }

    private List<KitYears> Kits(CellId work)
    {
        var rows = new List<KitYears>();
        foreach (var kit in design.Kits.Where(k => bill.KitPoles.Any(p => p.KitId == k.Id))) rows.Add(Kit(kit, work));
        return rows;
    }

    private KitYears Kit(Kit kit, CellId work)
    {
        var battery = kit.Parts.Battery;
        sheet.Words(_row, 1, kit.Id, Look.Row);
        var words = kit.Parts.Integrated is { } unit ? unit.Code + ": whole unit, " + PartWords.Short(unit) : battery.Code + ": " + PartWords.Short(battery);
        sheet.Words(_row, 2, words, Look.Row);
        var poles = sheet.Formula(_row, 3, Cells.SumOf([.. bill.KitPoles.Where(k => k.KitId == kit.Id).Select(k => k.Poles)]), Look.Whole);
        var perPole = bill.MakeUp.First(m => m.KitId == kit.Id && m.PartCode == battery.Code).PerPole;
        sheet.Show(_row, 4, perPole, Look.Whole);
        var life = sheet.Formula(_row, 5, new Literal(LifeYears(kit)), Look.Number("0.0"));
        var rate = bill.BuildUps.First(b => b.PartCode == battery.Code).Rate;
        var onePole = new Sum([Cells.Times(perPole, rate), Cells.Ref(work)]);
        var all = sheet.Formula(_row, 6, new Product([Cells.Ref(poles), onePole]), Look.Money);
        CellId[] spent = [.. _years.Select((_, y) => sheet.Formula(_row, FirstYearColumn + y, new Product([Cells.Ref(all), Changes(life, y)]), Look.Number("#,##0;-#,##0;-")))];
        _row++;
        return new KitYears(kit.Id, words, poles, perPole, life, all, spent);
    }

    private decimal LifeYears(Kit kit) =>
        decimal.Round((decimal)Math.Clamp(design.Sites.Where(s => s.KitId == kit.Id).Min(s => s.Energy.BatteryLifeYears), 0.1, 99), 1);

    private Difference Changes(CellId life, int y) => new(Sets(life, y), y == 0 ? new Literal(1) : Sets(life, y - 1));

    /// <summary>Sets of batteries used up to the end of a year, the first set included.</summary>
    private RoundedUp Sets(CellId life, int y) => new(new Rounded(new Quotient(Cells.Ref(_years[y]), Cells.Ref(life)), 6));

    /// <summary>Nothing in a year the contract pays for.</summary>
    private Product Upkeep(CellId poles, CellId maintain, CellId included, int y)
    {
        var beyond = new Difference(Cells.Ref(_years[y]), Cells.Ref(included));
        return new Product([Cells.Ref(poles), Cells.Ref(maintain), new Least([new Literal(1), new Greatest([new Literal(0), beyond])])]);
    }

    private CellId[] Factors(CellId discount)
    {
        CellId? before = null;
        var growth = new Sum([new Literal(1), Cells.Ref(discount)]);
        return Yearly("Discount factor", _ => before is { } cell ? new Quotient(Cells.Ref(cell), growth) : new Literal(1), "0.0000", Look.Row, cell => before = cell);
    }

    private CellId[] Yearly(string label, Func<int, Expression> of, string format, Look words, Action<CellId>? made = null)
    {
        sheet.Words(_row, 2, label, words);
        var cells = new CellId[LastYear];
        for (var y = 0; y < LastYear; y++)
        {
            var look = words with { Format = format, Side = Side.Right, Wrap = false };
            var expression = of(y);
            cells[y] = expression is Literal fixedValue ? sheet.Fixed(_row, FirstYearColumn + y, fixedValue.Value, look) : sheet.Formula(_row, FirstYearColumn + y, expression, look);
            made?.Invoke(cells[y]);
        }

        sheet.Fill(_row++, 1, LastColumn, words);
        return cells;
    }

    private void Horizon(int years, CellId first, CellId[] batteries, CellId[] upkeep, CellId[] factors, CellId poles)
    {
        sheet.Words(_row, 1, FormattableString.Invariant($"Over {years} years"), Look.Band);
        sheet.Fill(_row++, 2, 6, Look.Band);
        var changed = Result("Batteries", Cells.SumOf(batteries));
        var kept = Result("Maintenance after the contract", Cells.SumOf(upkeep));
        Result("First cost and all that follows", Cells.SumOf(first, changed, kept));
        var later = batteries.Select((b, y) => (Expression)new Product([Cells.SumOf(b, upkeep[y]), Cells.Ref(factors[y])]));
        var present = Result("Present value", new Sum([Cells.Ref(first), .. later]), strong: true);
        Result("Present value of one pole", new Quotient(Cells.Ref(present), Cells.Ref(poles)));
        _row++;
    }

    private CellId Result(string label, Expression expression, bool strong = false)
    {
        sheet.Paragraph(_row, 1, 5, label, strong ? Look.TotalText : Look.Row);
        return sheet.Formula(_row++, 6, expression, strong ? Look.TotalMoney : Look.Money);
    }
}

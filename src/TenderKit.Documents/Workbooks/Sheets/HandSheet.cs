using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>The hand method of each kit in formulas, on the site of the kit that asks most, so that a reviewer can follow every step.</summary>
internal sealed class HandSheet(Sheet sheet)
{
    private static readonly string[] Months = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

    private int _row;
    private CellId _store;

    public static void Write(Book book, TenderDesign design)
    {
        var sheet = book.Add("Hand calculation");
        sheet.Columns(52, 14, 14, 18, 14);
        var start = TitleBlock.Write(sheet, book, "Hand calculation by kit", "Nights of autonomy and worst-month peak sun hours (structure of IEEE 1013 and IEEE 1562, from memory), beside the simulation, never instead of it. Where a kit has less than the hand figure (ratio below 1), it stands on the simulation, which follows the actual current and temperature of the battery, hour by hour.");
        var hand = new HandSheet(sheet) { _row = start };
        foreach (var kit in design.Kits)
        {
            var hardest = design.Sites.Where(s => s.KitId == kit.Id).OrderByDescending(s => s.Energy.Hand.ArrayWp).ThenBy(s => s.Site.Row).FirstOrDefault();
            if (hardest is not null) hand.Kit(kit, hardest);
        }
    }

    private void Kit(Kit kit, SiteDesign site)
    {
        if (_row > 10) sheet.BreaksBefore.Add(_row);
        sheet.Words(_row, 1, $"Kit {kit.Id}, site {site.Site.Id} {site.Site.Name}", Look.Band);
        sheet.Fill(_row++, 2, 5, Look.Band);
        var (sun, demand) = MonthTable(site);
        var discharge = Battery(site);
        Array(site, sun, demand, discharge);
        _row++;
    }

    private (CellId Sun, CellId Demand) MonthTable(SiteDesign site)
    {
        var inputs = site.Energy.HandInputs;
        sheet.Header(_row++, "Month", ">Peak sun, h", ">Demand, Wh", ">Sun h per kWh");
        var (sun, demand, ratio) = (new CellId[12], new CellId[12], new List<CellId>());
        for (var m = 0; m < 12; m++, _row++)
        {
            sheet.Words(_row, 1, Months[m], Look.Row);
            sun[m] = Literal(2, inputs.MonthlyPlaneKWhPerM2[m], "0.00");
            demand[m] = Literal(3, inputs.MonthlyDemandWh[m], "#,##0.0");
            if (inputs.MonthlyDemandWh[m] > 0) ratio.Add(sheet.Formula(_row, 4, PerKWh(sun[m], demand[m]), Look.Number("0.000")));
        }

        sheet.Words(_row, 1, "Least of all months, which is the design month", Look.Row);
        sheet.Formula(_row, 4, new Least([.. ratio.Select(Cells.Ref)]), Look.Number("0.000"));
        sheet.Fill(_row++, 2, 3, Look.Row);
        var month = site.Energy.Hand.DesignMonth - 1;
        return (Step($"Peak sun hours, {Months[month]}", Cells.Ref(sun[month]), "h", "0.00"), Step($"Demand of a day, {Months[month]}", Cells.Ref(demand[month]), "Wh", "#,##0.0"));
    }

    private static Product PerKWh(CellId sun, CellId demand) => new([new Quotient(Cells.Ref(sun), Cells.Ref(demand)), new Literal(1000)]);

    private CellId Battery(SiteDesign site)
    {
        var inputs = site.Energy.HandInputs;
        var nightly = Input("Energy of the longest month's night", inputs.NightlyWh, "Wh", "#,##0.0");
        var nights = Input("Nights of autonomy", inputs.AutonomyNights, "nights", "0.0");
        _store = Step("Energy to store = night x nights", Cells.Times(nightly, nights), "Wh", "#,##0.0");
        CellId[] fractions =
        [
            Input("Usable depth of discharge", inputs.UsableDepthFraction, "", "0.000"), Input("Capacity left at end of life", inputs.EndOfLifeFraction, "", "0.000"),
            Input("Capacity factor at the coldest month", inputs.TemperatureFactor, "", "0.000"), Input("Discharge efficiency", inputs.DischargeEfficiency, "", "0.000"),
        ];
        var needed = Step("Battery needed = store / product of the four", new Quotient(Cells.Ref(_store), new Product([.. fractions.Select(Cells.Ref)])), "Wh", "#,##0", strong: true);
        Compared("Battery of the kit", site.Parts.BatteryRatedWh, "Wh", needed);
        return fractions[3];
    }

    private void Array(SiteDesign site, CellId sun, CellId demand, CellId discharge)
    {
        var inputs = site.Energy.HandInputs;
        var derating = Input("Array derating: soiling, mismatch, ageing, wiring", inputs.ArrayDeratingFactor, "", "0.000");
        var charge = Input("Charge efficiency", inputs.ChargeEfficiency, "", "0.000");
        var ratio = Input("Array-to-load ratio", inputs.ArrayToLoadRatio, "", "0.00");
        var recovery = Input("Days to recover the store", inputs.RecoveryDays, "d", "0.0");
        var perWp = Step("Energy to the lamp of one Wp and day", new Product([Cells.Ref(sun), Cells.Ref(derating), Cells.Ref(charge), Cells.Ref(discharge)]), "Wh", "0.000");
        var byRatio = Step("Array by ratio = ratio x demand / energy of one Wp", new Quotient(Cells.Times(ratio, demand), Cells.Ref(perWp)), "Wp", "#,##0.0");
        var refill = new Sum([Cells.Ref(demand), new Quotient(Cells.Ref(_store), Cells.Ref(recovery))]);
        var byRecovery = Step("Array by recovery = (demand + store / days) / energy of one Wp", new Quotient(refill, Cells.Ref(perWp)), "Wp", "#,##0.0");
        var needed = Step("Array needed, the greater", new Greatest([Cells.Ref(byRatio), Cells.Ref(byRecovery)]), "Wp", "#,##0", strong: true);
        Compared("Array of the kit", site.Parts.ArrayWp, "Wp", needed);
        Plain("By simulation: dark nights a year, upper 90 % bound", site.Energy.Simulated.DarkNightsUpperBound, "", "0.00");
        Plain("By simulation: autonomy at end of life", site.Energy.AutonomyNights, "nights", "0.0");
    }

    private CellId Input(string label, double value, string unit, string format)
    {
        Label(label, unit, Look.Row);
        var cell = Literal(2, value, format);
        _row++;
        return cell;
    }

    private CellId Step(string label, Expression expression, string unit, string format, bool strong = false)
    {
        Label(label, unit, strong ? Look.TotalText : Look.Row);
        return sheet.Formula(_row++, 2, expression, (strong ? Look.TotalMoney : Look.Money) with { Format = format });
    }

    private void Plain(string label, double value, string unit, string format)
    {
        Label(label, unit, Look.Row);
        sheet.Figure(_row++, 2, value, Look.Number(format));
    }

    /// <summary>What the kit has, and its ratio to what the hand method asks.</summary>
    private void Compared(string label, double value, string unit, CellId needed)
    {
        Label(label + ", rated", unit, Look.Row);
        var rated = sheet.Fixed(_row++, 2, (decimal)value, Look.Number("#,##0"));
        Step(label + " over what is needed", new Quotient(Cells.Ref(rated), Cells.Ref(needed)), "", "0.00");
    }

    private void Label(string label, string unit, Look look)
    {
        sheet.Words(_row, 1, label, look);
        sheet.Words(_row, 3, unit, look with { Bold = false });
    }

    private CellId Literal(int column, double value, string format) => sheet.Formula(_row, column, new Literal((decimal)value), Look.Number(format));
}

using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Programme;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Design;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Programme;

public class WorksProgrammeTests
{
    private static readonly ProgrammeSettings Plan = ProgrammeSettings.Usual with { OrderDate = new DateOnly(2027, 7, 1), ShippingDays = 20, FoundationsPerGangDay = 3, PolesPerGangDay = 2, MovingDays = 0.5m };

    /// <summary>Microsoft-style serial days: ECMA-376 part 1, 18.17.4.1 (from memory): 1 January 1900 is 1; 1 March 1900 is 61; 1 January 2000 is 36526.</summary>
    [Theory]
    [InlineData(1900, 3, 1, 61)]
    [InlineData(2000, 1, 1, 36526)]
    public void Days_are_counted_as_spreadsheets_count_them(int year, int month, int day, int serial)
    {
        Assert.Equal(serial, SerialDate.Of(new DateOnly(year, month, day)));
        Assert.Equal(new DateOnly(year, month, day), SerialDate.Day(serial + 0.9m));
    }

    /// <summary>Against a plan kept day by day: gangs do at most their rate in a working day, a site waits for the one before, for goods and for its concrete.</summary>
    [Theory]
    [InlineData(1, 7)]
    [InlineData(2, 7)]
    [InlineData(3, 6)]
    [InlineData(1, 5)]
    public void Dates_are_those_of_a_plain_loop_over_the_sites(int gangs, int workingDays)
    {
        var design = With(Plan with { Gangs = gangs, WorkingDaysAWeek = workingDays });
        var bill = BillBuilder.Build(design).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var parts = design.Catalog.All.ToDictionary(p => p.Code, StringComparer.Ordinal);
        foreach (var lot in bill.Programme!.Lots)
        {
            var goods = bill.Parts.SelectMany(p => p.Lines).Where(l => l.Lot == lot.Lot && l.PartCode.Length > 0).Select(l => parts[l.PartCode]).Where(p => p is not ServiceRate).ToArray();
            var order = new DateTime(2027, 7, 1);
            var footing = order.AddDays(Math.Max(14, goods.OfType<FoundationSet>().Max(p => p.LeadTimeDays) + 20));
            var erection = order.AddDays(goods.Where(p => p is not FoundationSet).Max(p => p.LeadTimeDays) + 20);
            foreach (var site in bill.Programme.Sites.Where(s => s.Lot == lot.Lot))
            {
                var poles = design.Sites.Single(s => s.Site.Id == site.SiteId).Poles;
                footing = footing.AddDays(((poles / 3.0) + 0.5) * 7 / (gangs * workingDays));
                Assert.Equal(LastDay(footing), SerialDate.Day(values[site.FoundationTo]));
                var cured = LastDay(footing).AddDays(1 + 7).ToDateTime(TimeOnly.MinValue);
                erection = (cured > erection ? cured : erection).AddDays(((poles / 2.0) + 0.5) * 7 / (gangs * workingDays));
                Assert.Equal(LastDay(erection), SerialDate.Day(values[site.ErectTo]));
            }

            Assert.Equal(LastDay(erection), SerialDate.Day(values[lot.Finish]));
        }
    }

    [Fact]
    public void A_late_lot_is_named_with_how_late_and_each_mend_it_states_is_enough()
    {
        var late = With(Plan with { CompletionDate = new DateOnly(2027, 9, 24) });
        var built = BillBuilder.Build(late);
        var warning = Assert.Single(built.Diagnostics, d => d.Code == "TK719" && d.Message.StartsWith("lot A", StringComparison.Ordinal));
        var values = LedgerValues.Evaluate(built.Value!.Ledger);
        var lot = built.Value.Programme!.Lots[0];
        var days = (int)values[lot.LateDays];

        Assert.Contains(FormattableString.Invariant($"late by {days} days; order {days} days earlier"), warning.Message);
        Assert.Equal(0, LateDays(With(Plan with { CompletionDate = new DateOnly(2027, 9, 24), OrderDate = new DateOnly(2027, 7, 1).AddDays(-days) })));
        var gangs = (int)values[lot.GangsNeeded];
        Assert.InRange(gangs, 2, 99);
        Assert.Equal(0, LateDays(With(Plan with { CompletionDate = new DateOnly(2027, 9, 24), Gangs = gangs })));
        Assert.True(LateDays(With(Plan with { CompletionDate = new DateOnly(2027, 9, 24), Gangs = gangs - 1 })) > 0);
        Assert.Contains(FormattableString.Invariant($"work with {gangs} gangs in place of 1"), warning.Message);
    }

    [Fact]
    public void Goods_that_hold_up_a_lot_are_named_with_the_days_they_are_too_late()
    {
        var wanted = new DateOnly(2027, 9, 12);
        var built = BillBuilder.Build(With(Plan with { CompletionDate = wanted, Gangs = 2 }));
        var values = LedgerValues.Evaluate(built.Value!.Ledger);
        var slow = built.Value.Programme!.Goods.Where(g => g.Lot == "A").MaxBy(g => values[g.LateDays])!;

        Assert.Contains("take another part for " + slow.PartCode, Assert.Single(built.Diagnostics, d => d.Code == "TK719" && d.Message.StartsWith("lot A", StringComparison.Ordinal)).Message);
        Assert.True(values[slow.LateDays] > 0);
        var quicker = With(Plan with { CompletionDate = wanted, Gangs = 2 });
        var limit = (int)(values[slow.LeadDays] - values[slow.LateDays]);
        quicker = quicker with { Catalog = quicker.Catalog with { Batteries = [.. quicker.Catalog.Batteries.Select(b => b with { LeadTimeDays = Math.Min(b.LeadTimeDays, limit) })], Modules = [.. quicker.Catalog.Modules.Select(b => b with { LeadTimeDays = Math.Min(b.LeadTimeDays, limit) })], Luminaires = [.. quicker.Catalog.Luminaires.Select(b => b with { LeadTimeDays = Math.Min(b.LeadTimeDays, limit) })], Controllers = [.. quicker.Catalog.Controllers.Select(b => b with { LeadTimeDays = Math.Min(b.LeadTimeDays, limit) })] } };
        Assert.Equal(0, LateDays(quicker));
    }

    [Theory]
    [InlineData("programme: { gangs: 2, order_date: 2027-07-01, completion_date: 2027-12-01 }", null)]
    [InlineData("programme: { gang: 2 }", "TK111")]
    [InlineData("programme: { gangs: 0 }", "TK116")]
    [InlineData("programme: { poles_per_gang_day: 0 }", "TK116")]
    [InlineData("programme: { moving_days_per_site: -1 }", "TK116")]
    [InlineData("programme: { order_date: 1 July }", "TK114")]
    [InlineData("programme: { order_date: 2027-12-01, completion_date: 2027-07-01 }", "TK116")]
    [InlineData("programme: { lots: [ { lot: B, gangs: 2, completion_date: 2027-11-15, team: 3 } ] }", "TK111")]
    [InlineData("village: { household: 640 }", "TK111")]
    [InlineData("village: { households: 640, fund_share: 40 % }", "TK113")]
    public void Reads_the_keys_and_names_what_is_wrong(string lines, string? code)
    {
        var problems = new List<Diagnostic>();
        var text = File.ReadAllText(Path.Combine(StarterTender.Inputs.Tender.Folder, "tender.yaml"));
        text = string.Join('\n', text.Split('\n').TakeWhile(l => !l.StartsWith("programme:", StringComparison.Ordinal)).Append(lines));
        Assert.NotNull(TenderFile.Read(text + "\n", "tender.yaml", "", problems));
        Assert.Equal(code is null ? [] : [code], problems.Select(p => p.Code));
    }

    [Fact]
    public void A_silent_tender_is_planned_from_the_last_day_the_bid_holds()
    {
        var design = With(ProgrammeSettings.Usual);
        var bill = BillBuilder.Build(design).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var head = design.Tender.Head;

        Assert.Equal(head.IssueDate.AddDays(head.ValidityDays), SerialDate.Day(values[bill.Programme!.OrderDate]));
        Assert.All(bill.Programme.Lots, l => Assert.Equal(head.IssueDate.AddDays(head.ValidityDays + head.DeliveryDays), SerialDate.Day(values[l.Completion])));
    }

    private static DateOnly LastDay(DateTime after) => DateOnly.FromDateTime(after.AddSeconds(-1));

    private static decimal LateDays(TenderDesign design)
    {
        var bill = BillBuilder.Build(design).Value!;
        return LedgerValues.Evaluate(bill.Ledger)[bill.Programme!.Lots[0].LateDays];
    }

    private static TenderDesign With(ProgrammeSettings plan)
    {
        var design = HandMadeDesign.Small();
        return design with { Tender = design.Tender with { Programme = plan } };
    }
}

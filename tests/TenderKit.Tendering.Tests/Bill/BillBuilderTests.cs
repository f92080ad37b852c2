using System.Collections.Immutable;
using CsCheck;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Bill;

/// <summary>Expected figures were worked out by hand and by a separate script from the sample's prices and make-up, not by this code.</summary>
public class BillBuilderTests
{
    private static readonly TenderDesign Design = HandMadeDesign.Small();
    private static readonly BillOfQuantities Bill = BillBuilder.Build(Design).Value!;
    private static readonly IReadOnlyDictionary<CellId, decimal> Values = LedgerValues.Evaluate(Bill.Ledger);

    [Fact]
    public void Builds_a_rate_up_step_by_step()
    {
        // 62 USD x 129.5; freight 12 %; duty 10 % of both; overhead 11 %; finance 2.5 % and profit 8 % of cost with overhead.
        var rate = Bill.BuildUps.Single(b => b.PartCode == "LUM-15");

        Assert.Equal(8029m, Values[rate.Supply]);
        Assert.Equal(963.48m, Values[rate.Freight]);
        Assert.Equal(899.248m, Values[rate.Duty]);
        Assert.Equal(9891.728m, Values[rate.Cost]);
        Assert.Equal(1088.09008m, Values[rate.Overhead]);
        Assert.Equal(274.495452m, Values[rate.Finance]);
        Assert.Equal(878.3854464m, Values[rate.Profit]);
        Assert.Equal(12132.70m, Values[rate.Rate]);
    }

    [Fact]
    public void Services_carry_no_freight_and_no_duty()
    {
        // 1,450 x 1.11 x 1.105 = 1,778.4975
        var rate = Bill.BuildUps.Single(b => b.PartCode == "SRV-EXC");

        Assert.Equal(0m, Values[rate.Freight]);
        Assert.Equal(0m, Values[rate.Duty]);
        Assert.Equal(1778.50m, Values[rate.Rate]);
    }

    [Theory]
    [InlineData("A", 2, "LUM-15", 8, 12132.70, 97061.60)]
    [InlineData("A", 2, "PRO-SPD", 14, 3698.52, 51779.28)]
    [InlineData("A", 2, "CAB-2X1.5", 113, 178.31, 20149.03)]
    [InlineData("B", 2, "CAB-2X1.5", 38, 178.31, 6775.78)]
    [InlineData("A", 3, "SRV-EXC", 25.63, 1778.50, 45582.96)]
    [InlineData("A", 5, "BAT-L060", 1, 31578.56, 31578.56)]
    [InlineData("A", 7, "SRV-MNT", 28, 2637.08, 73838.24)]
    public void A_line_is_quantity_times_rate_rounded_to_the_cent(string lot, int part, string code, double quantity, double rate, double amount)
    {
        var line = Bill.Parts[part - 1].Lines.Single(l => l.Lot == lot && l.PartCode == code);

        Assert.Equal((decimal)quantity, Values[line.Quantity]);
        Assert.Equal((decimal)rate, Values[line.Rate]);
        Assert.Equal((decimal)amount, Values[line.Amount]);
    }

    [Fact]
    public void Collections_contingency_and_tax_lead_to_the_total()
    {
        decimal[] partsOfLotA = [237901.61m, 1919889.09m, 393539.82m, 205395.41m, 156069.89m, 186435.60m, 73838.24m, 158653.48m];
        var lotA = Bill.LotSummaries[0];

        Assert.Equal(partsOfLotA, lotA.Collections.Select(c => Values[c]));
        Assert.Equal(3173069.66m, Values[lotA.PartsTotal]);
        Assert.Equal(158653.48m, Values[lotA.Contingency]);
        Assert.Equal(533075.70m, Values[lotA.Tax]);
        Assert.Equal(3864798.84m, Values[Bill.Lots[0].Total]);
        Assert.Equal(1570129.47m, Values[Bill.Lots[1].Total]);
        Assert.Equal(5434928.31m, Values[Bill.GrandTotal]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(60)]
    public void Everything_adds_up_whatever_the_number_of_sites(int siteCount)
    {
        var bill = BillBuilder.Build(HandMadeDesign.Many(siteCount)).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);

        Assert.Equal(values[bill.GrandTotal], bill.Lots.Sum(l => values[l.Total]));
        Assert.Equal(values[bill.PartsTotal], bill.Parts.Take(7).Sum(p => values[p.Collection]));
        Assert.Equal(values[bill.Contingency], values[bill.Parts[7].Collection]);
        Assert.Equal(values[bill.GrandTotal], values[bill.PartsTotal] + values[bill.Contingency] + values[bill.Tax]);
        Assert.All(bill.Parts, p => Assert.Equal(values[p.Collection], p.Lines.Sum(l => values[l.Amount])));
        Assert.All(bill.Parts.SelectMany(p => p.Lines), l => Assert.Equal(LedgerValues.Round(values[l.Quantity] * values[l.Rate], 2), values[l.Amount]));
    }

    [Fact]
    public void Item_codes_are_unique_and_name_the_lot_where_there_are_several()
    {
        var codes = Bill.Parts.SelectMany(p => p.Lines).Select(l => l.Code).ToArray();

        Assert.Equal(codes.Length, codes.Distinct().Count());
        Assert.Contains("A.2.03", codes);
        Assert.Contains("2.03", OneLot().Parts[1].Lines.Select(l => l.Code));
        Assert.All(OneLot().Parts.SelectMany(p => p.Lines), l => Assert.Equal("", l.Lot));
    }

    [Fact]
    public void One_more_pole_costs_more_and_moves_only_what_hangs_on_poles()
    {
        var site = Bill.Schedule.First(s => s.Lot == "B").Poles;
        var more = LedgerValues.Evaluate(Bill.Ledger.Replace(new Dictionary<CellId, Expression> { [site] = new Literal(6) }));

        Assert.True(more[Bill.GrandTotal] > Values[Bill.GrandTotal]);
        Assert.Equal(Values[Bill.Lots[0].Total], more[Bill.Lots[0].Total]);
        Assert.Equal(Values[Bill.Parts[5].Collection], more[Bill.Parts[5].Collection]);
        Assert.Equal(6m, more[Bill.Parts[1].Lines.Single(l => l.Lot == "B" && l.PartCode == "LUM-15").Quantity]);
    }

    [Fact]
    public void The_bill_grows_with_every_fraction_of_the_price_basis() =>
        Gen.Select(Gen.Int[0, 30], Gen.Int[1, 20]).Sample(
            (percent, step) =>
            {
                var low = Total(HandMadeDesign.Prices with { ProfitFraction = percent / 100m });
                var high = Total(HandMadeDesign.Prices with { ProfitFraction = (percent + step) / 100m });
                return high > low;
            },
            iter: 50);

    [Fact]
    public void Civil_works_are_provisional_where_the_soil_was_not_stated()
    {
        string Words(string lot) => Bill.Parts[2].Lines.First(l => l.Lot == lot).Description;

        Assert.EndsWith("(provisional quantity: soil not stated on S-03)", Words("B"), StringComparison.Ordinal);
        Assert.DoesNotContain("provisional", Words("A"), StringComparison.Ordinal);
    }

    [Fact]
    public void Quantities_on_soil_not_stated_are_items_apart_and_add_up_to_the_same()
    {
        // Lot A: 8 poles of K1 on S-01 and 6 of K2 on S-02; the soil of S-02 is taken away.
        var sites = Design.Sites.SetItem(1, Design.Sites[1] with { Site = Design.Sites[1].Site with { SoilStated = false } });
        var bill = BillBuilder.Build(Design with { Sites = sites }).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var excavation = bill.Parts[2].Lines.Where(l => l.Lot == "A" && l.PartCode == "SRV-EXC").ToArray();
        decimal PerPole(string kit) => values[bill.MakeUp.Single(m => m.KitId == kit && m.PartCode == "SRV-EXC").PerPole];

        Assert.Equal(2, excavation.Length);
        Assert.EndsWith("(provisional quantity: soil not stated on S-02)", excavation[1].Description, StringComparison.Ordinal);
        Assert.Equal(LedgerValues.Round(8 * PerPole("K1"), 2), values[excavation[0].Quantity]);
        Assert.Equal(LedgerValues.Round(6 * PerPole("K2"), 2), values[excavation[1].Quantity]);
        Assert.Equal(25.63m, excavation.Sum(l => values[l.Quantity]), 2);
        Assert.Equal(values[excavation[0].Rate], values[excavation[1].Rate]);
    }

    [Fact]
    public void A_spare_takes_the_rate_of_its_item()
    {
        var item = Bill.Parts[1].Lines.Single(l => l.Lot == "A" && l.PartCode == "BAT-L060");
        var spare = Bill.Parts[4].Lines.Single(l => l.Lot == "A" && l.PartCode == "BAT-L060");
        var changed = LedgerValues.Evaluate(Bill.Ledger.Replace(new Dictionary<CellId, Expression> { [item.Rate] = new Literal(30000m) }));

        Assert.StartsWith($"Spare for item {item.Code}: ", spare.Description, StringComparison.Ordinal);
        Assert.Equal(30000m, changed[spare.Amount]);
    }

    [Fact]
    public void Spares_that_come_to_less_than_half_a_unit_are_said_with_their_amount()
    {
        // Lot B has 5 poles of K1: 3 % of 5 luminaires is 0.15 and one is billed; 10 % of 5 fuses is 0.5, which is not less than half.
        var notes = Bill.Remarks;
        string[] codes = ["MOD-110", "LUM-15", "BAT-L060", "CON-T10"];
        var amount = Bill.Parts[4].Lines.Where(l => l.Lot == "B" && codes.Contains(l.PartCode)).Sum(l => Values[l.Amount]);

        Assert.Equal(2, notes.Length);
        Assert.StartsWith("lot A: ", notes[0], StringComparison.Ordinal);
        Assert.StartsWith("lot B: one spare each of 4 parts", notes[1], StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"{amount:#,##0.00} KES"), notes[1], StringComparison.Ordinal);
        Assert.EndsWith(string.Join(", ", codes), notes[1], StringComparison.Ordinal);
    }

    [Fact]
    public void No_spares_no_maintenance_no_lines()
    {
        var bill = BillBuilder.Build(With(HandMadeDesign.Prices with { MaintenanceYears = 0, SpareFractions = ImmutableSortedDictionary<string, decimal>.Empty })).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);

        Assert.Empty(bill.Parts[4].Lines);
        Assert.Equal(0m, values[bill.Parts[4].Collection]);
        Assert.Equal(0m, values[bill.Parts[6].Collection]);
    }

    [Fact]
    public void A_missing_exchange_rate_names_the_part_and_the_currency()
    {
        var tender = Design.Tender with { Head = Design.Tender.Head with { Exchange = [new ExchangeRate("USD", 129.5m)] } };
        var outcome = BillBuilder.Build(Design with { Tender = tender });

        Assert.Null(outcome.Value);
        var missing = outcome.Diagnostics.Where(d => d.Code == "TK701").ToArray();
        Assert.Equal(2, missing.Length);
        Assert.Contains("BAT-L060 is priced in EUR", missing[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_service_is_an_error_and_a_doubled_one_a_warning()
    {
        var without = Design.Catalog with { Services = [.. Design.Catalog.Services.Where(s => s.Use != ServiceUse.Concrete)] };
        var twice = Design.Catalog with { Services = [.. Design.Catalog.Services, Design.Catalog.Services[0] with { Code = "SRV-OTHER", UnitPrice = 1 }] };

        Assert.Contains(BillBuilder.Build(Design with { Catalog = without }).Diagnostics, d => d.Code == "TK702" && d.Severity == Severity.Error);
        Assert.Contains(BillBuilder.Build(Design with { Catalog = twice }).Diagnostics, d => d.Code == "TK703" && d.Severity == Severity.Warning);
    }

    [Fact]
    public void A_service_in_a_unit_the_bill_does_not_measure_is_an_error()
    {
        var wrong = Design.Catalog with { Services = [.. Design.Catalog.Services.Select(s => s.Use == ServiceUse.Excavate ? s with { Unit = "No." } : s)] };

        Assert.Contains(BillBuilder.Build(Design with { Catalog = wrong }).Diagnostics, d => d.Code == "TK709" && d.Severity == Severity.Error);
    }

    [Fact]
    public void Site_set_up_follows_its_unit_once_a_lot_or_for_every_site()
    {
        var perSite = Design.Catalog with { Services = [.. Design.Catalog.Services.Select(s => s.Use == ServiceUse.SetUpSite ? s with { Unit = "No." } : s)] };
        var bill = BillBuilder.Build(Design with { Catalog = perSite }).Value!;

        Assert.Equal(1m, Values[Bill.Parts[0].Lines[0].Quantity]);
        Assert.Equal(2m, LedgerValues.Evaluate(bill.Ledger)[bill.Parts[0].Lines[0].Quantity]);
    }

    [Fact]
    public void Prices_and_lead_times_out_of_date_are_said()
    {
        Assert.Contains(Codes(Issued(2027, 7, 1)), c => c == "TK704");
        Assert.Contains(Codes(Issued(2027, 5, 1)), c => c == "TK705");
        Assert.Contains(Codes(Design.Tender.Head with { DeliveryDays = 30 }), c => c == "TK708");
        Assert.Contains(BillBuilder.Build(With(HandMadeDesign.Prices with { SpareFractions = HandMadeDesign.Prices.SpareFractions.Add("wheel", 0.1m) })).Diagnostics, d => d.Code == "TK707");
        Assert.Equal("TK700", BillBuilder.Build(Design with { Sites = [] }).Diagnostics.Single().Code);
    }

    [Fact]
    public void A_price_of_nothing_is_said()
    {
        var free = Design.Catalog with { Services = [.. Design.Catalog.Services.Select(s => s.Use == ServiceUse.Train ? s with { UnitPrice = 0 } : s)] };

        Assert.Contains(BillBuilder.Build(Design with { Catalog = free }).Diagnostics, d => d.Code == "TK706");
    }

    [Fact]
    public void The_sample_bill_raises_only_the_note_it_should() =>
        Assert.All(BillBuilder.Build(Design).Diagnostics, d => Assert.Equal("TK705", d.Code));

    private static BillOfQuantities OneLot() =>
        BillBuilder.Build(Design with { Sites = [.. Design.Sites.Select(s => s with { Site = s.Site with { Lot = "" } })] }).Value!;

    private static TenderDesign With(PriceBasis prices) => Design with { Tender = Design.Tender with { Prices = prices } };

    private static decimal Total(PriceBasis prices)
    {
        var bill = BillBuilder.Build(With(prices)).Value!;
        return LedgerValues.Evaluate(bill.Ledger)[bill.GrandTotal];
    }

    private static TenderHead Issued(int year, int month, int day) => Design.Tender.Head with { IssueDate = new DateOnly(year, month, day) };

    private static IEnumerable<string> Codes(TenderHead head) => BillBuilder.Build(Design with { Tender = Design.Tender with { Head = head } }).Diagnostics.Select(d => d.Code);
}

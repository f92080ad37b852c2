using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Bill;

public class StatedSumsTests
{
    [Fact]
    public void Provisional_sums_and_daywork_stand_in_the_last_part_before_the_contingency()
    {
        var bill = BillBuilder.Build(With([new ProvisionalSum("Moving lines", 1000, "B"), new ProvisionalSum("Tests", 250, "")], new Daywork(10, 0, 0))).Value!;
        var values = LedgerValues.Evaluate(bill.Ledger);
        var plain = BillBuilder.Build(HandMadeDesign.Small()).Value!;
        var last = bill.Parts[^1];

        Assert.Equal("Provisional sums, daywork and contingency", last.Title);
        Assert.Equal(["A.8.01", "A.8.02", "A.8.03", "B.8.01", "B.8.02", "B.8.03"], last.Lines.Select(l => l.Code));
        Assert.Equal(250, values[last.Lines[0].Amount]);
        Assert.Equal(1000, values[last.Lines[3].Amount]);
        Assert.Equal(10, values[last.Lines[1].Quantity]);
        Assert.Equal(LedgerValues.Evaluate(plain.Ledger)[plain.Contingency], values[bill.Contingency]);
        Assert.Equal(values[last.Collection], last.Lines.Sum(l => values[l.Amount]));
        Assert.Equal(values[bill.GrandTotal], bill.LotSummaries.Sum(l => values[l.WithContingency] + values[l.Tax]));
        Assert.Equal(values[bill.PartsTotal] + values[last.Collection] + values[bill.Tax], values[bill.GrandTotal]);
    }

    [Fact]
    public void Without_them_the_part_holds_the_contingency_alone() =>
        Assert.Equal("Contingency", BillBuilder.Build(HandMadeDesign.Small()).Value!.Parts[^1].Title);

    private static TenderKit.Tendering.Design.TenderDesign With(ProvisionalSum[] sums, Daywork daywork)
    {
        var design = HandMadeDesign.Small();
        var labour = design.Catalog.Services[0] with { Code = "DAY", Description = "Worker for a day", Unit = "day", Use = ServiceUse.DayworkLabour };
        return design with
        {
            Catalog = design.Catalog with { Services = design.Catalog.Services.Add(labour) },
            Tender = design.Tender with { Prices = design.Tender.Prices with { ProvisionalSums = [.. sums], Daywork = daywork } },
        };
    }
}

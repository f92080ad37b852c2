using System.Data;
using System.Globalization;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Workbooks;

/// <summary>A thousand sites over twelve kits and four lots.</summary>
public class ManySitesTests
{
    private static readonly TenderDesign Design = HandMadeDesign.Many(1000);
    private static readonly BillOfQuantities Bill = BillBuilder.Build(Design).Value!;

    [Fact]
    public void Opens_with_every_site_and_the_total_of_the_ledger()
    {
        var sheets = Office.Read(PriceWorkbook.Make(Design, Bill));

        Assert.Equal(1000, sheets.Tables["Sites"]!.Rows.Cast<DataRow>().Count(r => r[1] is string id && id.StartsWith("S-", StringComparison.Ordinal)));
        Assert.Equal(Total(), Shown(sheets));
    }

    [SkippableTheory]
    [InlineData(true)]
    [InlineData(false)]
    public void Recalculates_to_the_same_total(bool price)
    {
        Office.SkipIfAbsent();

        Assert.Equal(Total(), Shown(Office.Recalculated(price ? PriceWorkbook.Make(Design, Bill) : CalculationWorkbook.Make(Design, Bill))));
    }

    private static decimal Total() => LedgerValues.Evaluate(Bill.Ledger)[Bill.GrandTotal];

    private static decimal Shown(DataSet sheets) =>
        (decimal)Convert.ToDouble(sheets.Tables["Summary"]!.Rows.Cast<DataRow>().Last(r => Equals(r[1], "Total, tax included, KES")).ItemArray.Last(c => c is double), CultureInfo.InvariantCulture);
}

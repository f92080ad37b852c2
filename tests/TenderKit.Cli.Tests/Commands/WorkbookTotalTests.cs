using System.Data;
using System.Globalization;
using TenderKit.Documents.Tests.Workbooks;
using Xunit;

namespace TenderKit.Cli.Tests.Commands;

/// <summary>The workbooks of a whole bid, calculated anew by an independent spreadsheet program, against the machine-readable bid.</summary>
public class WorkbookTotalTests
{
    [SkippableFact]
    public void Both_priced_workbooks_recalculate_to_the_total_of_the_machine_readable_bid()
    {
        Office.SkipIfAbsent();
        using var folder = new TenderFolder().WithSites("S01", "S03", "S05", "S06", "S09", "S14");
        var run = folder.Bid();
        Assert.True(run.Code == ExitCodes.Good, run.Errors);
        var bid = TenderFolder.BidJson(folder.Out);
        var grand = bid["grandTotal"]!.GetValue<decimal>();
        var lots = bid["lots"]!.AsArray().ToDictionary(l => l!["lot"]!.GetValue<string>(), l => l!["total"]!.GetValue<decimal>());
        Assert.Equal(["A", "B"], lots.Keys.Order(StringComparer.Ordinal));

        foreach (var name in new[] { "financial/price-workbook.xlsx", "internal/calculation-workbook.xlsx" })
        {
            var sheets = Office.Recalculated(File.ReadAllBytes(Path.Combine(folder.Out, name)));
            Assert.Equal([lots["A"], lots["B"], grand], Totals(sheets, "Summary"));
            foreach (var (lot, total) in lots) Assert.Equal([total], Totals(sheets, "Bill " + lot));
            if (sheets.Tables.Contains("Price schedule")) Assert.Equal([grand], Totals(sheets, "Price schedule"));
        }
    }

    /// <summary>Numbers of the last row that closes a sheet, to the cent.</summary>
    private static decimal[] Totals(DataSet sheets, string sheet)
    {
        var row = sheets.Tables[sheet]!.Rows.Cast<DataRow>().Last(r => r.ItemArray.Contains("Total, tax included, USD"));
        return [.. row.ItemArray.OfType<double>().Select(v => Cents(v, sheet))];
    }

    /// <summary>The amount as it stands: a figure that is not on the cent is not rounded into place.</summary>
    private static decimal Cents(double value, string sheet)
    {
        var amount = decimal.Round((decimal)value, 7);
        Assert.True(amount == decimal.Round(amount, 2), string.Create(CultureInfo.InvariantCulture, $"{sheet}: {amount}"));
        return amount;
    }
}

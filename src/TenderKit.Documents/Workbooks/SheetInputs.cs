using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>What may be typed into the input cells of a sheet: dates, shares, numbers, each within its limits.</summary>
internal static class SheetInputs
{
    /// <summary>1 January 2000: an earlier date is a slip.</summary>
    private const decimal FirstDate = 36526;

    /// <summary>Freight and duty may pass the price itself.</summary>
    private const decimal MostShare = 3;

    /// <summary>None without inputs.</summary>
    public static DataValidations? Of(Sheet sheet)
    {
        var rules = sheet.Cells.Where(c => c.Value.Look.IsInput && c.Value.Content is Content.Home)
            .GroupBy(c => (c.Value.Look.Format, Least: sheet.Leasts.GetValueOrDefault(c.Key)))
            .OrderBy(g => g.Key.Format, StringComparer.Ordinal).ThenBy(g => g.Key.Least)
            .Select(g => Rule(g.Key.Format, g.Key.Least, Ranges([.. g.Select(c => c.Key)]))).ToArray();
        return rules.Length == 0 ? null : new DataValidations(rules) { Count = (uint)rules.Length };
    }

    private static DataValidation Rule(string format, decimal least, string[] ranges)
    {
        var (type, low, error) = format switch
        {
            Look.DateFormat => (DataValidationValues.Date, FirstDate, "Enter a date from the year 2000 on."),
            Look.PercentFormat => (DataValidationValues.Decimal, least, "Enter a share from 0 % to 300 %."),
            _ when least > 0 => (DataValidationValues.Decimal, least, string.Create(CultureInfo.InvariantCulture, $"Enter a number of {least} or more.")),
            _ => (DataValidationValues.Decimal, 0m, "Enter a number of zero or more."),
        };
        var rule = new DataValidation(new Formula1(Text(low)))
        {
            Type = type,
            Operator = format == Look.PercentFormat ? DataValidationOperatorValues.Between : DataValidationOperatorValues.GreaterThanOrEqual,
            AllowBlank = false,
            ShowErrorMessage = true,
            ErrorTitle = "Not within limits",
            Error = error,
            SequenceOfReferences = new ListValue<StringValue>(ranges.Select(r => new StringValue(r))),
        };
        if (format == Look.PercentFormat) rule.Append(new Formula2(Text(MostShare)));
        return rule;
    }

    private static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>Column by column, neighbours drawn together.</summary>
    private static string[] Ranges((int Row, int Column)[] cells) =>
        [.. cells.GroupBy(c => c.Column).OrderBy(g => g.Key).SelectMany(g => Runs([.. g.Select(c => c.Row).Order()]).Select(r => Range(r.First, r.Last, g.Key)))];

    private static string Range(int first, int last, int column)
    {
        var start = new Address("", first, column).Local;
        return first == last ? start : start + ":" + new Address("", last, column).Local;
    }

    private static IEnumerable<(int First, int Last)> Runs(int[] rows)
    {
        for (var i = 0; i < rows.Length;)
        {
            var j = i;
            while (j + 1 < rows.Length && rows[j + 1] == rows[j] + 1) j++;
            yield return (rows[i], rows[j]);
            i = j + 1;
        }
    }
}

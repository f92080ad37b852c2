using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Which years of a file are whole enough.</summary>
internal static class YearChoice
{
    /// <summary>The years kept. A year with a month that lacks too many days is left out and the month named; none left is an error.</summary>
    /// <param name="years">Year and days missing in each of its months.</param>
    public static List<int> Of(IEnumerable<(int Year, int[] MissingDays)> years, bool calendar, ClimateLimits limits, ClimateText text)
    {
        var kept = new List<int>();
        var told = new List<string>();
        foreach (var (year, missing) in years)
        {
            var lacking = Enumerable.Range(1, 12).Where(m => missing[m - 1] > limits.MissingDaysAllowed).ToList();
            if (lacking.Count == 0) kept.Add(year);
            else told.AddRange(lacking.Select(m => Named(m, year, missing[m - 1], calendar)));
        }

        if (told.Count > 0) Tell(told, kept.Count, limits, text);
        else if (kept.Count == 0) text.Found.Add(Diagnostic.Error("TK145", "the file holds no data; get it again from its source", new Place(text.File)));
        return kept;
    }

    /// <summary>First year and length of the longest run of years that follow one another.</summary>
    public static (int First, int Count) LongestRun(List<int> years)
    {
        var best = (First: years[0], Count: 1);
        for (var (i, start) = (1, 0); i < years.Count; i++)
        {
            if (years[i] != years[i - 1] + 1) start = i;
            if (i - start + 1 > best.Count) best = (years[start], i - start + 1);
        }

        return best;
    }

    private static void Tell(List<string> months, int keptCount, ClimateLimits limits, ClimateText text)
    {
        const int Shown = 12;
        var list = string.Join(", ", months.Take(Shown)) + (months.Count > Shown ? FormattableString.Invariant($" and {months.Count - Shown} months more") : "");
        var lack = FormattableString.Invariant($"values are missing for more than {limits.MissingDaysAllowed} days of the month: {list}");
        text.Found.Add(keptCount > 0
            ? Diagnostic.Warning("TK144", string.Create(
                CultureInfo.InvariantCulture,
                $"{lack}; those years are left out and {keptCount} kept. Get the whole years from January to December"), new Place(text.File))
            : Diagnostic.Error("TK145", lack + "; no whole year is left. Get at least one year from January to December", new Place(text.File)));
    }

    private static string Named(int month, int year, int missingCount, bool calendar)
    {
        var name = CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);
        return FormattableString.Invariant($"{name}{(calendar ? " " + year.ToString(CultureInfo.InvariantCulture) : "")} ({missingCount} of {MonthDays.Count(month)})");
    }
}

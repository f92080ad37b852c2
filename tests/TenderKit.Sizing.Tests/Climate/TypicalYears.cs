using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Tests.Climate;

/// <summary>One typical year of tests/Published/typical-year-dull-spells.csv.</summary>
/// <param name="Lowest">Lowest mean of 3, 5, 7 and 10 days in a row over the worst month's mean, fraction.</param>
internal sealed record TypicalYear(string Name, double LatitudeDegrees, ImmutableArray<double> IrradiationKWhPerM2, ImmutableArray<double> Lowest);

/// <summary>
/// Typical years beside sequences of the same monthly means. Compared is one year with one year: the lowest mean of n days in a row of a year over the mean
/// of that year's own worst month; averaged over the years of a sequence, then over places. A typical year's months are its own input, so the spread
/// between years is 0 here: with it the sequences hold years worse than the typical one, which is what it is for.
/// </summary>
internal static class TypicalYears
{
    public const int YearsEach = 12;

    public static readonly ImmutableArray<int> Spells = [3, 5, 7, 10];

    private static readonly Lazy<IReadOnlyList<(TypicalYear Typical, double[][] Simulated)>> Compared = new(() =>
        [.. All().Select((typical, i) => (typical, Simulated(typical, new SequenceSettings(YearsEach, 100 + i, 0.29, 0))))]);

    /// <summary>Every typical year with, for each spell, what each year of its sequence shows.</summary>
    public static IReadOnlyList<(TypicalYear Typical, double[][] Simulated)> Pairs => Compared.Value;

    public static IReadOnlyList<TypicalYear> All() => [.. PublishedTable.Rows("typical-year-dull-spells.csv").Select(Read)];

    /// <summary>For each spell the ratio of each simulated year.</summary>
    public static double[][] Simulated(TypicalYear typical, SequenceSettings settings)
    {
        var years = SyntheticYears.Generate(Climates.Of(typical.LatitudeDegrees, typical.IrradiationKWhPerM2), settings, 1);
        var daily = Enumerable.Range(0, settings.YearCount * 365).Select(d => years.GlobalWhPerM2.AsSpan(d * 24, 24).ToArray().Sum()).ToArray();
        return [.. Spells.Select(n => Enumerable.Range(0, settings.YearCount).Select(y => Ratio(daily.AsSpan(y * 365, 365), n)).ToArray())];
    }

    private static double Ratio(ReadOnlySpan<double> year, int days)
    {
        var worst = double.MaxValue;
        for (var m = 1; m <= 12; m++) worst = Math.Min(worst, Mean(year.Slice(MonthDays.FirstDayIndex(m), MonthDays.Count(m))));
        var lowest = double.MaxValue;
        for (var d = 0; d + days <= year.Length; d++) lowest = Math.Min(lowest, Mean(year.Slice(d, days)));
        return lowest / worst;
    }

    private static double Mean(ReadOnlySpan<double> days)
    {
        var sum = 0.0;
        foreach (var day in days) sum += day;
        return sum / days.Length;
    }

    private static TypicalYear Read(string[] row)
    {
        ImmutableArray<double> months = [.. row[4..16].Select(PublishedTable.Number)];
        return new TypicalYear(row[0], PublishedTable.Number(row[2]), months, [.. row[16..20].Select(v => PublishedTable.Number(v) / months.Min())]);
    }
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>Months of several years, or a climatology, of the NASA POWER service.</summary>
/// <param name="factor">To kWh/m2 a day.</param>
internal sealed class PowerMonths(ClimateText text, PowerFile file, double factor)
{
    /// <summary>The climate, or null with errors.</summary>
    public ClimateReading? Read()
    {
        var values = file.ValuesOf(PowerFile.Global)!;
        var empty = Enumerable.Range(1, 12).Where(m => !Held(values, m).Any()).Select(MonthNames.Name).ToList();
        if (empty.Count > 0)
        {
            var lack = "irradiation holds no value for " + string.Join(", ", empty) + "; all twelve months are needed. Get whole years";
            text.Found.Add(Diagnostic.Error("TK145", lack, new Place(text.File)));
            return null;
        }

        Tell(values);
        var irradiation = MonthMeans(values).Select(v => v * factor);
        var months = new TwelveMonths([.. irradiation], MonthMeans(file.ValuesOf(PowerFile.MeanC) ?? []), [], [], null, null, YearCount(values));
        return months.Read(text, file) is { } monthly ? new ClimateReading(monthly with { YearSpreadFraction = Spread(values) }) : null;
    }

    private void Tell(Dictionary<PowerStamp, double> values)
    {
        var place = new Place(text.File);
        if (file.Quantities.ContainsKey(PowerFile.MaxC) || file.Quantities.ContainsKey(PowerFile.MinC)) text.Found.Add(PowerClimatology.ExtremesNotUsed(place));
        var lost = values.Where(v => double.IsNaN(v.Value)).Select(v => v.Key).OrderBy(k => k.Year).ThenBy(k => k.Month)
            .Select(k => FormattableString.Invariant($"{MonthNames.Name(k.Month)} {k.Year}")).ToList();
        if (lost.Count == 0) return;
        text.Found.Add(Diagnostic.Warning("TK144", "irradiation is missing for " + string.Join(", ", lost) + "; the months of the other years are averaged", place));
    }

    /// <summary>Years of the climatology's period, or years that hold a value.</summary>
    private int? YearCount(Dictionary<PowerStamp, double> values) => file.Step == PowerStep.Climatology
        ? StatedKind.YearsOf(file.Period)
        : values.Where(v => !double.IsNaN(v.Value)).Select(v => v.Key.Year).Distinct().Count();

    /// <summary>Spread between the years that hold all twelve months.</summary>
    private static double? Spread(Dictionary<PowerStamp, double> values) => YearSpread.Of(
        [.. values.Where(v => !double.IsNaN(v.Value)).GroupBy(v => v.Key.Year).Where(y => y.Count() == 12)
            .OrderBy(y => y.Key).Select(y => y.OrderBy(v => v.Key.Month).Select(v => v.Value).ToArray())]);

    private static IEnumerable<double> Held(Dictionary<PowerStamp, double> values, int month) =>
        values.Where(v => v.Key.Month == month && !double.IsNaN(v.Value)).OrderBy(v => v.Key.Year).Select(v => v.Value);

    /// <summary>Twelve means over the years, or none where a month holds no value.</summary>
    private static ImmutableArray<double> MonthMeans(Dictionary<PowerStamp, double> values)
    {
        ImmutableArray<double> means = [.. Enumerable.Range(1, 12).Select(m => Held(values, m).DefaultIfEmpty(double.NaN).Average())];
        return means.All(double.IsFinite) ? means : [];
    }
}

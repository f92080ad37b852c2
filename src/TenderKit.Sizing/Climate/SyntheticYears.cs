namespace TenderKit.Sizing.Climate;

/// <summary>Years of hours whose long-run calendar-month means are the given climate.</summary>
public static class SyntheticYears
{
    /// <param name="cautiousFactor">Factor on irradiation for the climate's grade, fraction, 0.5 to 1.</param>
    public static HourlyYears Generate(MonthlyClimate climate, SequenceSettings settings, double cautiousFactor) => throw new NotImplementedException();
}

namespace TenderKit.Sizing.Climate;

/// <summary>What belongs to each grade of a climate: its design rule and its words, the same in every document and command.</summary>
public static class ClimateGrades
{
    /// <summary>Fewest years of a record that may be called long-term. Common practice, no source; a climatological normal has thirty (World Meteorological Organization, from memory).</summary>
    public const int LongTermYears = 10;

    /// <summary>Fewest years of a satellite series whose monthly means are taken as means and not as single years. Common practice, no source.</summary>
    public const int SeveralYears = 3;

    /// <summary>Every grade, best first.</summary>
    public static IReadOnlyList<ClimateGrade> All { get; } = Enum.GetValues<ClimateGrade>();

    /// <summary>Id of the design rule that holds the grade's cautious factor.</summary>
    public static string RuleId(ClimateGrade grade) => "climate.factor." + Of(grade).Key;

    /// <summary>The grade in a few words, as printed.</summary>
    public static string Words(ClimateGrade grade) => Of(grade).Words;

    /// <summary>Whether the climate comes from the built-in table.</summary>
    public static bool IsEstimate(ClimateGrade grade) => grade is ClimateGrade.EstimateNear or ClimateGrade.EstimateFar;

    /// <summary>The grade of the monthly means of a series, by its kind and its years.</summary>
    /// <param name="statedMeasured">Whether the file says its years were measured at the ground.</param>
    public static ClimateGrade OfSeries(SeriesKind kind, int yearCount, bool statedMeasured) => kind switch
    {
        SeriesKind.TypicalYear => ClimateGrade.TypicalYear,
        SeriesKind.SatelliteYears when yearCount >= SeveralYears => ClimateGrade.SatelliteSeries,
        SeriesKind.MeasuredYears when statedMeasured && yearCount >= LongTermYears => ClimateGrade.MeasuredRecord,
        _ => ClimateGrade.MeansWithSource,
    };

    private static (string Key, string Words) Of(ClimateGrade grade) => grade switch
    {
        ClimateGrade.MeasuredRecord => ("measured_record", "measured record"),
        ClimateGrade.SatelliteSeries => ("satellite_series", "satellite series"),
        ClimateGrade.TypicalYear => ("typical_year", "typical year"),
        ClimateGrade.MeansWithSource => ("means_with_source", "means with source"),
        ClimateGrade.Unsourced => ("unsourced", "no source"),
        ClimateGrade.EstimateNear => ("estimate_near", "estimate within 300 km"),
        ClimateGrade.EstimateFar => ("estimate_far", "estimate beyond 300 km"),
        _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, null),
    };
}

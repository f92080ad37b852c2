using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>What monthly means say about themselves: the kind of data behind them and the years they cover.</summary>
/// <param name="Kind">Measured, satellite or typical year; null where not stated.</param>
/// <param name="YearCount">Years covered; null where not stated.</param>
internal sealed partial record StatedKind(SeriesKind? Kind, int? YearCount)
{
    public const string Cure = "write measured record, satellite or typical year";

    /// <summary>The kind in a user's words, or null.</summary>
    public static SeriesKind? KindOf(string text)
    {
        var plain = MonthNames.Plain(text).Replace('_', ' ');
        if (Typical().IsMatch(plain)) return SeriesKind.TypicalYear;
        if (Satellite().IsMatch(plain)) return SeriesKind.SatelliteYears;
        return Measured().IsMatch(plain) ? SeriesKind.MeasuredYears : null;
    }

    /// <summary>Years covered: a count, or a first and a last calendar year; null where unreadable.</summary>
    public static int? YearsOf(string text)
    {
        var numbers = Number().Matches(text).Select(m => int.Parse(m.Value, CultureInfo.InvariantCulture)).ToList();
        return numbers switch
        {
            [>= 1 and <= 200 and var count] => count,
            [>= 1800 and <= 2200] => 1,
            [>= 1800 and <= 2200 and var first, >= 1800 and <= 2200 and var last] when last >= first => last - first + 1,
            _ => null,
        };
    }

    /// <summary>The grade this gives, with a note where it is lower than the kind stated.</summary>
    /// <param name="hasSource">Whether a source is named.</param>
    public ClimateGrade Grade(bool hasSource, Place place, List<Diagnostic> found)
    {
        if (!hasSource) return ClimateGrade.Unsourced;
        if (Kind is not { } kind) return ClimateGrade.MeansWithSource;
        var grade = ClimateGrades.OfSeries(kind, YearCount ?? (kind == SeriesKind.SatelliteYears ? ClimateGrades.SeveralYears : 0), kind == SeriesKind.MeasuredYears);
        if (grade == ClimateGrade.MeansWithSource) found.Add(Lowered(kind, YearCount, place));
        return grade;
    }

    /// <summary>The note on a series that is too short, or does not say how long it is, for the grade of its kind.</summary>
    public static Diagnostic Lowered(SeriesKind kind, int? yearCount, Place place)
    {
        var measured = kind == SeriesKind.MeasuredYears;
        var least = measured ? ClimateGrades.LongTermYears : ClimateGrades.SeveralYears;
        var years = yearCount is { } count ? FormattableString.Invariant($"{count} {(count == 1 ? "year" : "years")}") : "years that are not stated";
        return Diagnostic.Note(
            "TK130",
            FormattableString.Invariant(
                $"the means are of {years}, {(measured ? "a measured record" : "a satellite series")} needs at least {least}: graded as '{ClimateGrades.Words(ClimateGrade.MeansWithSource)}'. ")
            + (measured ? "Get the longer record, or state its years with a line '# years: 2005-2019'" : "Get the longer series"),
            place);
    }

    [GeneratedRegex(@"typical|\btmy|type d'annee|tipico")]
    private static partial Regex Typical();

    [GeneratedRegex(@"satellit|satelite|reanaly|model")]
    private static partial Regex Satellite();

    [GeneratedRegex(@"measur|mesur|medid|ground|pyranomet|station")]
    private static partial Regex Measured();

    [GeneratedRegex(@"\d+")]
    private static partial Regex Number();
}

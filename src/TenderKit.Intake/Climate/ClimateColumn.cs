using System.Text.RegularExpressions;

namespace TenderKit.Intake.Climate;

/// <summary>A quantity of the 12-month file.</summary>
internal enum ClimateQuantity
{
    Irradiation,
    MeanC,
    DailyMaxC,
    DailyMinC,
}

/// <summary>Unit of the irradiation column.</summary>
internal enum IrradiationUnit
{
    Missing,
    KWhADay,
    WhADay,
    MjADay,
    KWhAMonth,
    MjAMonth,
}

/// <summary>What a heading means.</summary>
internal sealed partial record ClimateColumn(ClimateQuantity Quantity, IrradiationUnit Unit)
{
    private const double MjPerKWh = 3.6;

    /// <summary>Reads a heading such as <c>irradiation_kwh_m2_day</c>, <c>GHI (MJ/m2/day)</c> or <c>t_max_c</c>; null where it is neither.</summary>
    public static ClimateColumn? Of(string heading)
    {
        var plain = MonthNames.Plain(heading).Replace('\u00B2', '2');
        if (Irradiation().IsMatch(plain)) return new(ClimateQuantity.Irradiation, UnitOf(plain));
        if (!Temperature().IsMatch(plain)) return null;
        if (Greatest().IsMatch(plain)) return new(ClimateQuantity.DailyMaxC, IrradiationUnit.Missing);
        if (Least().IsMatch(plain)) return new(ClimateQuantity.DailyMinC, IrradiationUnit.Missing);
        return Mean().IsMatch(plain) ? new(ClimateQuantity.MeanC, IrradiationUnit.Missing) : null;
    }

    /// <summary>A value of this column in kWh/m2 a day or degC.</summary>
    public double InBase(double value, int daysOfMonth) => Unit switch
    {
        IrradiationUnit.WhADay => value / 1000,
        IrradiationUnit.MjADay => value / MjPerKWh,
        IrradiationUnit.KWhAMonth => value / daysOfMonth,
        IrradiationUnit.MjAMonth => value / MjPerKWh / daysOfMonth,
        _ => value,
    };

    private static IrradiationUnit UnitOf(string plain)
    {
        var month = PerMonth().IsMatch(plain);
        var day = PerDay().IsMatch(plain);
        if (!month && !day) return IrradiationUnit.Missing;
        if (KilowattHour().IsMatch(plain)) return month ? IrradiationUnit.KWhAMonth : IrradiationUnit.KWhADay;
        if (Megajoule().IsMatch(plain)) return month ? IrradiationUnit.MjAMonth : IrradiationUnit.MjADay;
        return WattHour().IsMatch(plain) && !month ? IrradiationUnit.WhADay : IrradiationUnit.Missing;
    }

    [GeneratedRegex(@"irradia|radiation|\bghi|insolation|global_?horizontal|rayonnement|radiacion|radiacao")]
    private static partial Regex Irradiation();

    [GeneratedRegex(@"^t(?:[\s_-]|max|min|mean|avg|moy|med)|temp")]
    private static partial Regex Temperature();

    [GeneratedRegex(@"max")]
    private static partial Regex Greatest();

    [GeneratedRegex(@"min")]
    private static partial Regex Least();

    [GeneratedRegex(@"mean|av(?:era)?g|moy|med")]
    private static partial Regex Mean();

    [GeneratedRegex(@"kw[\s-]?h")]
    private static partial Regex KilowattHour();

    [GeneratedRegex(@"(?<![a-z])w[\s-]?h")]
    private static partial Regex WattHour();

    [GeneratedRegex(@"(?<![a-z])mj")]
    private static partial Regex Megajoule();

    // a day, per day, /day, _day, /d, jour, dia
    [GeneratedRegex(@"day|jour|dia(?![a-z])|[\s/_.]d(?![a-z])")]
    private static partial Regex PerDay();

    [GeneratedRegex(@"month|mois|mes(?![a-z])")]
    private static partial Regex PerMonth();
}

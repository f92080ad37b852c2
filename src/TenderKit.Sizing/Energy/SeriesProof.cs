using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>The energy balance on the user's own hourly years, shown beside that on synthetic years.</summary>
/// <param name="Result">What the balance found.</param>
/// <param name="Kind">What the hours are; a typical year leaves out extreme months by construction, so its dark nights are too few.</param>
/// <param name="Years">Whole years of hours.</param>
/// <param name="Source">Where they come from, as printed.</param>
public sealed record SeriesProof(EnergyResult Result, SeriesKind Kind, int Years, string Source)
{
    /// <summary>Fewest years whose dark nights stand on their own: below it the range of their mean is wide, whatever was seen. Common practice, no source.</summary>
    public const int FewYears = 10;

    /// <summary>What to bear in mind when reading it, one sentence.</summary>
    public string Caution => Kind == SeriesKind.TypicalYear
        ? "a typical year leaves out extreme months by construction: its dark nights are fewer than those to come"
        : Years < FewYears
            ? FormattableString.Invariant($"{Years} {(Years == 1 ? "year is" : "years are")} too few to show the dullest spells: the range of the mean says how little they prove")
            : FormattableString.Invariant($"{Years} years as they were; the range of the mean says what they prove");

    /// <summary>Runs the balance on a series; each clock hour is turned into solar time and split by hour into beam and sky.</summary>
    /// <param name="irradiationFactor">Cautious factor on the irradiation, as on the monthly means, 0.3 to 1.</param>
    /// <param name="albedo">Ground reflectance, fraction.</param>
    /// <param name="shadedFraction">Share of beam and sky lost to shading, fraction.</param>
    public static SeriesProof Of(
        HourlySeries series, double irradiationFactor, PlaneOrientation plane, double albedo, double shadedFraction, LampHours lamp, PowerSystem system)
    {
        Require.InRange(irradiationFactor, 0.3, 1, nameof(irradiationFactor));
        var hours = series.ToYears();
        var lowered = irradiationFactor == 1 ? hours : hours with { GlobalWhPerM2 = [.. hours.GlobalWhPerM2.Select(wh => wh * irradiationFactor)] };
        return Of(series, TiltedPlane.Hourly(lowered, plane, albedo, shadedFraction, DiffuseSplit.Hourly), lamp, system);
    }

    /// <summary>Runs the balance on hours of the series already on the module plane.</summary>
    public static SeriesProof Of(HourlySeries series, PlaneYears years, LampHours lamp, PowerSystem system) =>
        new(EnergyBalance.Run(years, lamp, system), series.Kind, years.Weather.YearCount, series.Source);
}

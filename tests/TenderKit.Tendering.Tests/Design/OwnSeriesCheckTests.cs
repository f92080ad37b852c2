using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>Real years are judged when there are ten of them; what is judged may refuse a design.</summary>
public sealed class OwnSeriesCheckTests
{
    private static readonly EnergyDesign Energy = HandMadeDesign.Small().Sites[0].Energy;

    [Theory]
    [InlineData(SeriesKind.SatelliteYears, 10, 1.0, true)]
    [InlineData(SeriesKind.MeasuredYears, 12, 1.1, false)]
    public void Ten_real_years_are_judged_by_their_mean(SeriesKind kind, int years, double darkNights, bool complies)
    {
        var check = OwnSeriesCheck.Of(With(kind, years, darkNights), new ReliabilityTarget(1, 3))!;
        Assert.Equal(("energy.dark_nights_own_series", darkNights, 1.0, complies), (check.Id, check.Offered, check.Required, check.Complies));
    }

    [Theory]
    [InlineData(SeriesKind.TypicalYear, 1, "a typical year): 9.00 dark nights a year", "shown, not judged: a typical year leaves out extreme months by construction")]
    [InlineData(SeriesKind.SatelliteYears, 9, "9 years): 9.00 dark nights a year", "shown, not judged: 9 years are too few")]
    public void Fewer_years_and_typical_years_are_shown_only(SeriesKind kind, int years, string what, string why)
    {
        var energy = With(kind, years, 9);
        Assert.Null(OwnSeriesCheck.Of(energy, new ReliabilityTarget(1, 3)));
        Assert.Contains(what, OwnSeriesCheck.Words(energy.OnOwnSeries!), StringComparison.Ordinal);
        Assert.Contains(why, OwnSeriesCheck.Words(energy.OnOwnSeries!), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_hours_there_is_nothing_to_judge() => Assert.Null(OwnSeriesCheck.Of(Energy, new ReliabilityTarget(1, 3)));

    private static EnergyDesign With(SeriesKind kind, int years, double darkNights) =>
        Energy with { OnOwnSeries = new SeriesProof(Energy.Simulated with { YearCount = years, DarkNightsPerYear = darkNights }, kind, years, "made") };
}

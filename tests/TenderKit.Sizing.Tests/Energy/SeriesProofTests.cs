using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Sizing.Tests.Energy;

public sealed class SeriesProofTests
{
    private static readonly PowerSystem System = new(Systems.Array(120), Systems.Lithium(700), Systems.Tracking, 20);
    private static readonly LampHours Lamp = Systems.AllNight(-13.5);
    private static readonly PlaneOrientation Plane = new(15, 0);

    [Theory]
    [InlineData(SeriesKind.TypicalYear, 1, "leaves out extreme months")]
    [InlineData(SeriesKind.MeasuredYears, 1, "1 year is too few")]
    [InlineData(SeriesKind.SatelliteYears, 4, "4 years are too few")]
    [InlineData(SeriesKind.SatelliteYears, 12, "12 years as they were")]
    public void Any_number_of_years_runs_and_says_what_it_proves(SeriesKind kind, int years, string caution)
    {
        var proof = SeriesProof.Of(Series(kind, years), 1, Plane, 0.2, 0, Lamp, System);
        Assert.Equal((years, years, kind, "a station"), (proof.Years, proof.Result.YearCount, proof.Kind, proof.Source));
        Assert.Contains(caution, proof.Caution, StringComparison.Ordinal);
        Assert.InRange(proof.Result.DarkNightsPerYear, proof.Result.DarkNightRange.LowPerYear, proof.Result.DarkNightRange.HighPerYear);
        Assert.Equal(years, proof.Result.DarkNightsByYear.Length);
    }

    // a series whose clock is the sun's (longitude 0, offset 0, but for the equation of time) gives what its hours give when run directly
    [Fact]
    public void The_hours_are_run_as_they_are()
    {
        var series = Series(SeriesKind.MeasuredYears, 2);
        var proof = SeriesProof.Of(series, 1, Plane, 0.2, 0.1, Lamp, System);
        var years = TiltedPlane.Hourly(series.ToYears(), Plane, 0.2, 0.1, DiffuseSplit.Hourly);
        Assert.Equal(EnergyBalance.Run(years, Lamp, System).Ledger, proof.Result.Ledger);
        Assert.Equal(proof.Result.Ledger, SeriesProof.Of(series, years, Lamp, System).Result.Ledger);
    }

    [Fact]
    public void The_cautious_factor_lowers_them()
    {
        var series = Series(SeriesKind.MeasuredYears, 2);
        var (all, less) = (SeriesProof.Of(series, 1, Plane, 0.2, 0, Lamp, System), SeriesProof.Of(series, 0.8, Plane, 0.2, 0, Lamp, System));
        Assert.InRange(less.Result.MonthlySupplyWhPerDay.Sum() / all.Result.MonthlySupplyWhPerDay.Sum(), 0.77, 0.83);
        Assert.True(less.Result.Ledger.UnservedWh > all.Result.Ledger.UnservedWh);
    }

    private static HourlySeries Series(SeriesKind kind, int years)
    {
        var hours = Systems.Weather(-13.5, 0.5, years).Weather;
        return new HourlySeries(kind, kind == SeriesKind.TypicalYear ? [] : [.. Enumerable.Range(2001, years)], -13.5, 0, 0, hours.GlobalWhPerM2, hours.AirC, "a station");
    }
}

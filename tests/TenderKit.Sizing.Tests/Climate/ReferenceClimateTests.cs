using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class ReferenceClimateTests
{
    private static readonly Place Here = new(Site: "S1");

    [Fact]
    public void A_place_on_a_station_gets_nearly_its_values()
    {
        var estimate = ReferenceClimate.Estimate(-14, 34, [Station("A", -14, 34, 0.5), Station("B", -18, 34, 0.7), Station("C", -10, 34, 0.3)]);
        for (var m = 1; m <= 12; m++) Assert.Equal(0.5, SunGeometry.MonthlyClearness(-14, m, estimate.IrradiationKWhPerM2[m - 1]), 0.005);
        Assert.Equal(ClimateGrade.EstimateNear, estimate.Grade);
        Assert.Equal(0, estimate.NearestStationKm!.Value, 1e-6);
    }

    // weights 1 / (d + 20 km)^2, worked by hand: distances 111.195 and 222.390 km
    [Fact]
    public void Weights_are_those_of_the_rule()
    {
        var estimate = ReferenceClimate.Estimate(0, 20, [Station("A", 1, 20, 0.4), Station("B", -2, 20, 0.6)]);
        double wa = 1 / (131.195 * 131.195), wb = 1 / (242.390 * 242.390);
        Assert.Equal((0.4 * wa + 0.6 * wb) / (wa + wb), SunGeometry.MonthlyClearness(0, 4, estimate.IrradiationKWhPerM2[3]), 2e-4);
    }

    [Fact]
    public void Far_stations_lower_the_grade_and_are_reported()
    {
        var estimate = ReferenceClimate.Estimate(-14, 34, [Station("A", -5, 34, 0.5)]);
        Assert.Equal(ClimateGrade.EstimateFar, estimate.Grade);
        Assert.Equal(1000.8, estimate.NearestStationKm!.Value, 0.5);
        Assert.Equal(["TK306", "TK308"], Codes(estimate));
    }

    [Fact]
    public void Only_the_four_nearest_count()
    {
        var four = Enumerable.Range(0, 4).Select(i => Station("N" + i, -14 + 0.1 * i, 34, 0.5)).ToList();
        Assert.Equal(
            ReferenceClimate.Estimate(-14, 34, four).IrradiationKWhPerM2.AsEnumerable(),
            ReferenceClimate.Estimate(-14, 34, [.. four, Station("far", -20, 34, 0.8)]).IrradiationKWhPerM2);
    }

    [Fact]
    public void Temperatures_of_the_other_hemisphere_are_turned_by_half_a_year()
    {
        var north = Station("A", 10, 34, 0.5) with { MeanC = [.. Enumerable.Range(0, 12).Select(m => (double)m)] };
        Assert.Equal(new double[] { 6, 7, 8, 9, 10, 11, 0, 1, 2, 3, 4, 5 }, ReferenceClimate.Estimate(-10, 34, [north]).MeanC.ToArray());
    }

    [Fact]
    public void A_good_climate_raises_nothing() => Assert.Empty(Codes(Climates.Constant(40, 0.5)));

    [Fact]
    public void Clearness_beyond_its_bounds_is_an_error_by_month()
    {
        var good = Climates.Constant(-14, 0.5).IrradiationKWhPerM2;
        Assert.Equal(["TK301"], Codes(Climates.Of(-14, good.SetItem(3, 0.8))));
        Assert.Equal(["TK301"], Codes(Climates.Of(-14, good.SetItem(3, 9.5))));
    }

    [Fact]
    public void Megajoules_are_recognised_and_named()
    {
        var climate = Climates.Of(-14, [.. Climates.Constant(-14, 0.5).IrradiationKWhPerM2.Select(h => h * 3.6)]);
        var found = Assert.Single(ReferenceClimate.Examine(climate, Here));
        Assert.Equal("TK302", found.Code);
        Assert.Contains("MJ/m2", found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_wrong_hemisphere_is_recognised()
    {
        var north = Climates.Constant(35, 0.5);
        Assert.Contains("TK303", Codes(north with { LatitudeDegrees = -35 }));
        Assert.DoesNotContain("TK303", Codes(north with { LatitudeDegrees = -10 }));
    }

    [Fact]
    public void Temperatures_out_of_order_are_errors_and_mild_records_warnings()
    {
        var good = Climates.Constant(10, 0.5);
        Assert.Equal(["TK304"], Codes(good with { MeanC = good.MeanC.SetItem(0, 27) }));
        Assert.Equal(["TK305"], Codes(good with { RecordLowC = 16 }));
    }

    // one degree of a meridian on a sphere of 6371 km: 111.195 km
    [Fact]
    public void Distances()
    {
        Assert.Equal(111.195, GreatCircle.DistanceKm(0, 0, 1, 0), 0.001);
        Assert.Equal(111.195, GreatCircle.DistanceKm(0, 179.5, 0, -179.5), 0.001);
        Assert.Equal(Math.PI * 6371, GreatCircle.DistanceKm(90, 0, -90, 0), 0.001);
    }

    private static string[] Codes(MonthlyClimate climate) => [.. ReferenceClimate.Examine(climate, Here).Select(d => d.Code)];

    private static ReferenceStation Station(string name, double latitude, double longitude, double clearness) => new(
        name, "XXX", latitude, longitude, Climates.Constant(latitude, clearness).IrradiationKWhPerM2,
        [.. Enumerable.Repeat(20.0, 12)], [.. Enumerable.Repeat(26.0, 12)], [.. Enumerable.Repeat(15.0, 12)], 8, 38, "invented");
}

using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class DiffuseFractionTests
{
    // Values of Erbs' hourly polynomial, recomputed apart from the product
    [Theory]
    [InlineData(0.10, 0.9910)]
    [InlineData(0.22, 0.9802)]
    [InlineData(0.40, 0.8400)]
    [InlineData(0.50, 0.6591)]
    [InlineData(0.60, 0.4395)]
    [InlineData(0.70, 0.2440)]
    [InlineData(0.80, 0.1653)]
    [InlineData(0.90, 0.1650)]
    public void Hourly(double clearness, double expected) => Assert.Equal(expected, DiffuseFraction.Hourly(clearness), 0.0005);

    // pvlib-python tests of Erbs: global 50 at zenith 85, 1000 at zenith 10, 1 January, 1366.1 W/m2; read
    [Theory]
    [InlineData(0.405723511, 50, 41.5703604)]
    [InlineData(0.718132729, 1000, 217.860117)]
    public void Hourly_of_pvlib(double clearness, double global, double diffuse) => Assert.Equal(diffuse, global * DiffuseFraction.Hourly(clearness), 1e-5);

    // Values of Erbs' monthly polynomials, recomputed apart from the product
    [Theory]
    [InlineData(0.3, 80, 0.6423)]
    [InlineData(0.5, 80, 0.3911)]
    [InlineData(0.7, 80, 0.2186)]
    [InlineData(0.3, 100, 0.6637)]
    [InlineData(0.5, 100, 0.4291)]
    [InlineData(0.7, 100, 0.2502)]
    public void Monthly(double clearness, double sunsetDegrees, double expected) =>
        Assert.Equal(expected, DiffuseFraction.Monthly(clearness, Angle.ToRad(sunsetDegrees)), 0.0005);

    // D&B example 2.11.1: 38.6 N, 3 September, 23.0 MJ/m2: H0 33.3, KT 0.69, Hd/H 0.253; statement read, answer recomputed (Cooper's declination)
    [Fact]
    public void Daily()
    {
        var declination = Angle.ToRad(23.45 * Angle.SinDegrees(360.0 * (284 + 246) / 365));
        var h0 = 3.6 * SunGeometry.DailyExtraterrestrialKWhPerM2(38.6, declination, 1367 * SunGeometry.DistanceFactor(246));
        Assert.Equal(33.3, h0, 0.1);
        Assert.Equal(0.69, 23.0 / h0, 0.005);
        Assert.Equal(0.253, DiffuseFraction.Daily(23.0 / h0, SunGeometry.SunsetHourAngleRad(38.6, declination)), 0.005);
    }

    // TMY3 Greensboro NC: measured monthly diffuse fractions; read. Erbs within 0.08
    [Theory]
    [InlineData(1, 0.487, 0.467)]
    [InlineData(4, 0.541, 0.388)]
    [InlineData(7, 0.539, 0.447)]
    [InlineData(10, 0.518, 0.421)]
    [InlineData(12, 0.496, 0.416)]
    public void Monthly_against_measurement(int month, double clearness, double measured)
    {
        var sunset = SunGeometry.SunsetHourAngleRad(36.1, SunGeometry.DeclinationRad(SunGeometry.MeanDayOfMonth(month)));
        Assert.Equal(measured, DiffuseFraction.Monthly(clearness, sunset), 0.08);
    }
}

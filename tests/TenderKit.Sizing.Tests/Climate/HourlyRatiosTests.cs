using CsCheck;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Sizing.Tests.Climate;

public sealed class HourlyRatiosTests
{
    // D&B example 2.13.1: 38 S, January (day 17), 8 to 9 h; read; Cooper's declination -20.92
    [Fact]
    public void January_at_38_south() =>
        Assert.Equal(0.076, HourlyRatios.Global(Angle.ToRad(-52.5), SunGeometry.SunsetHourAngleRad(-38, Angle.ToRad(-20.92))), 0.0005);

    // D&B example 2.13.2: 43 N, 23 August, 31.4 MJ/m2, 13 to 14 h; read
    [Fact]
    public void August_at_43_north()
    {
        var ratio = HourlyRatios.Global(Angle.ToRad(22.5), SunGeometry.SunsetHourAngleRad(43, SunGeometry.DeclinationRad(235)));
        Assert.Equal(0.118, ratio, 0.001);
        Assert.Equal(3.7, 31.4 * ratio, 0.03);
    }

    [Fact]
    public void Diffuse_ratio_integrates_to_one_and_global_nearly() =>
        Gen.Double[1.25, 2.0].Sample(ws =>
        {
            var (rt, rd) = (0.0, 0.0);
            const int Steps = 20000;
            for (var i = 0; i < Steps; i++)
            {
                var w = -ws + 2 * ws * (i + 0.5) / Steps;
                rt += HourlyRatios.Global(w, ws);
                rd += HourlyRatios.Diffuse(w, ws);
            }

            var hours = 2 * ws / Steps * 12 / Math.PI;
            return Math.Abs(rd * hours - 1) < 1e-6 && rt * hours is > 0.985 and < 1.01;
        });

    [Fact]
    public void Shares_add_up_to_one_and_mirror_about_noon() =>
        Gen.Double[0.05, Math.PI].Sample(ws =>
        {
            foreach (var shares in new[] { HourlyRatios.GlobalShares(ws), HourlyRatios.DiffuseShares(ws) })
            {
                if (Math.Abs(shares.Sum() - 1) > 1e-12 || shares.Any(s => s < 0)) return false;
                if (Enumerable.Range(0, 12).Any(h => Math.Abs(shares[h] - shares[23 - h]) > 1e-12)) return false;
            }

            return true;
        });

    [Fact]
    public void No_sun_no_shares() => Assert.All(HourlyRatios.GlobalShares(0), s => Assert.Equal(0, s));
}

using CsCheck;
using TenderKit.Tendering.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>Bays along a line with bends, by hand.</summary>
public sealed class LineBaysTests
{
    [Fact]
    public void Without_bends_the_bays_are_even() => Assert.Equal(
        [15.0, 45, 75], LineBays.Of(90, [], 31).PlacesM.Select(p => Math.Round(p, 9)));

    [Fact]
    public void A_pole_stands_at_the_bend()
    {
        // 150 m on either side, bays of at most 28 m: 5.5 of 27.27 m, the half bay free at the end
        var bays = LineBays.Of(300, [150], 28);
        Assert.Equal(11, bays.PlacesM.Length);
        Assert.Equal(150, bays.PlacesM[5]);
        Assert.Equal(150 / 5.5, bays.GreatestM, 1e-9);
        Assert.Equal(150 / 5.5 / 2, bays.PlacesM[0], 1e-9);
    }

    [Fact]
    public void Between_two_bends_the_bays_are_even_and_near_bends_share_a_pole()
    {
        // 70 m between the bends at 20 and 90 m: three bays of 23.3 m; the end of 20 m is one bay and a half of 13.3 m, that of 10 m needs no pole; the bend at 95 m has its pole at 90 m
        Assert.Equal([20.0, 43.3, 66.7, 90], LineBays.Of(100, [20, 90, 95], 30).PlacesM.Select(p => Math.Round(p, 1)).Skip(1));
        Assert.Equal([6.7, 20.0], LineBays.Of(100, [20, 90, 95], 30).PlacesM.Take(2).Select(p => Math.Round(p, 1)));
    }

    [Fact]
    public void No_bay_passes_the_one_allowed_and_every_bend_has_a_pole_near() => Gen.Select(
        Gen.Double[20, 2000], Gen.Double[0.01, 0.99].Array[0, 6], Gen.Double[5, 60]).Sample((length, bends, step) =>
    {
        var at = bends.Order().Select(b => b * length).ToArray();
        var bays = LineBays.Of(length, [.. at], step);
        var gaps = bays.PlacesM.Zip(bays.PlacesM.Skip(1), (a, b) => b - a).ToArray();
        return bays.GreatestM <= step + 1e-6 && Array.TrueForAll(gaps, g => g > 0 && g <= step + 1e-6)
            && bays.PlacesM[0] > 0 && bays.PlacesM[^1] < length && at.All(b => bays.PlacesM.Any(p => Math.Abs(p - b) <= LineBays.OnePoleM))
            && LineBays.Of(length, [.. at], bays.GreatestM).PlacesM.Length == bays.PlacesM.Length;
    });
}

using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Sizing.Tests.Wiring;

public class ProtectionTests
{
    // IEC 62548: 1.5 to 2.4 Isc, never above the module's maximum.
    [Theory]
    [InlineData(8, 15, 12, 15)]
    [InlineData(5, 15, 7.5, 12)]
    [InlineData(12, 15, 18, 15)]
    public void String_fuse_window(double isc, double maximum, double low, double high)
    {
        var window = Protection.StringFuseA(isc, maximum);
        Assert.Equal(low, window.LowA, 1e-12);
        Assert.Equal(high, window.HighA, 1e-12);
    }

    [Fact]
    public void A_window_turned_over_holds_no_fuse() =>
        Assert.Null(Protection.SmallestRatingA(Protection.FuseRatingsA, Protection.StringFuseA(12, 15)));

    // IEC 62548 (from memory): needed when (strings - 1) Isc exceeds the module's greatest series fuse.
    [Theory]
    [InlineData(1, 8, 15, false)]
    [InlineData(2, 8, 15, false)]
    [InlineData(3, 8, 15, true)]
    public void String_fuses_are_needed_where_parallel_strings_can_feed_a_fault(int strings, double isc, double maximum, bool needed) =>
        Assert.Equal(needed, Protection.StringFusesNeeded(strings, isc, maximum));

    // NFPA 70 690.8 worked example, read: Isc 8.33 A, 13.0156 A, 15 A device.
    [Fact]
    public void Nfpa70_circuit_current()
    {
        var least = Protection.Nfpa70CircuitA(8.33);
        Assert.Equal(13.0156, least, 0.001);
        Assert.Equal(15, Protection.SmallestRatingA(Protection.Nfpa70RatingsA, (least, 60)));
    }

    // IEC 60269-6 annex BB, as read: at least 1.4 Isc, so below the window of IEC 62548.
    [Fact]
    public void Iec60269_least_fuse_is_below_the_string_window()
    {
        Assert.Equal(14, Protection.Iec60269LeastFuseA(10), 1e-12);
        Assert.True(Protection.Iec60269LeastFuseA(10) < Protection.StringFuseA(10, 30).LowA);
    }

    // IEC 60269 ratings (from memory), NFPA 70 list (read).
    [Fact]
    public void Ratings()
    {
        Assert.Equal([2, 4, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200], Protection.FuseRatingsA.ToArray());
        Assert.Equal([10, 15, 20, 25, 30, 35, 40, 45, 50, 60], Protection.Nfpa70RatingsA.ToArray());
    }

    [Fact]
    public void Battery_fuse_lies_between_working_current_and_cable()
    {
        var window = Protection.BatteryFuseA(8, 1.25, 23);
        Assert.Equal((10, 23), window);
        Assert.Equal(10, Protection.SmallestRatingA(Protection.FuseRatingsA, window));
        Assert.Null(Protection.SmallestRatingA(Protection.FuseRatingsA, Protection.BatteryFuseA(20, 1.25, 23)));
    }

    [Fact]
    public void Impossible_inputs_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Protection.StringFuseA(0, 15));
        Assert.Throws<ArgumentOutOfRangeException>(() => Protection.StringFusesNeeded(0, 8, 15));
        Assert.Throws<ArgumentOutOfRangeException>(() => Protection.BatteryFuseA(8, 0.9, 23));
    }
}

using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class PassiveSafetyTests
{
    // Speed classes of EN 12767: 50, 70, 100 km/h (from memory).
    [Theory]
    [InlineData(30, 50)]
    [InlineData(70, 70)]
    [InlineData(80, 100)]
    [InlineData(130, 100)]
    public void Class_for_a_speed(double traffic, double expected) => Assert.Equal(expected, PassiveSafety.ClassFor(traffic));

    [Theory]
    [InlineData("100-NE-B-S-SE-MD-0", 100)]
    [InlineData("70,HE,3", 70)]
    [InlineData("", 0)]
    [InlineData("0", 0)]
    [InlineData("NE", 0)]
    [InlineData("90-NE", 0)]
    public void Speed_of_a_designation(string designation, double expected) => Assert.Equal(expected, PassiveSafety.SpeedOf(designation));
}

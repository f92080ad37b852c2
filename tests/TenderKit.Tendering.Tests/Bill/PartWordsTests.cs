using System.Globalization;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Bill;

public class PartWordsTests
{
    [Fact]
    public void Adds_the_key_ratings_to_a_description_that_lacks_them() =>
        Assert.Equal(
            "Photovoltaic module, monocrystalline silicon, framed, 36 cells; 110 Wp, Vmp 18.7 V, Imp 5.88 A, Voc 22.6 V, 1030 x 680 mm",
            PartWords.Describe(HandMadeParts.Modules[1]));

    [Theory]
    [InlineData("Module 110 Wp, 1030 x 680 mm", "Module 110 Wp, 1030 x 680 mm; Vmp 18.7 V, Imp 5.88 A, Voc 22.6 V")]
    [InlineData("Module of the 2110 Wp series", "Module of the 2110 Wp series; 110 Wp, Vmp 18.7 V, Imp 5.88 A, Voc 22.6 V, 1030 x 680 mm")]
    public void Says_nothing_twice(string description, string expected) =>
        Assert.Equal(expected, PartWords.Describe(HandMadeParts.Modules[1] with { Description = description }));

    [Fact]
    public void A_battery_is_called_one() =>
        Assert.StartsWith("Battery: Gel lead-acid, sealed", PartWords.Describe(HandMadeParts.Batteries[0] with { Description = "Gel lead-acid, sealed" }), StringComparison.Ordinal);

    [Theory]
    [InlineData("{0} galvanised bolts M{1} x {2} mm, for a block {3} x {4} x {5} m")]
    [InlineData("{0} bolts M{1} x {2} mm, for a block {3} x {4} x {5} m")]
    public void An_anchor_set_that_states_its_bolts_is_not_told_them_again(string words)
    {
        var set = HandMadeParts.Foundations[0];
        var description = string.Format(
            CultureInfo.InvariantCulture, words, set.AnchorBoltCount, set.AnchorBoltMm, set.AnchorBoltLengthMm, set.LengthM, set.WidthM, set.DepthM);

        Assert.Equal(description, PartWords.Describe(set with { Description = description }));
    }

    [Fact]
    public void Every_family_has_a_name_a_unit_and_words() =>
        Assert.All(HandMadeParts.Catalog.All, part =>
        {
            Assert.NotEmpty(PartWords.Family(part).One);
            Assert.NotEmpty(PartWords.Unit(part));
            Assert.Contains(part.Description, PartWords.Describe(part), StringComparison.Ordinal);
        });
}

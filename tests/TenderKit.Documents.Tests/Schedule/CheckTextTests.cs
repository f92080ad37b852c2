using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Documents.Tests.Schedule;

public class CheckTextTests
{
    [Theory]
    [InlineData("lx", 2, Comparison.AtLeast, 5, 5.614, "≥ 5.00 lx", "5.61 lx", "+12 %")]
    [InlineData("degC", 0, Comparison.AtMost, 13, -15, "≤ 13 °C", "−15 °C", "+28 K")]
    [InlineData("IP", 0, Comparison.AtLeast, 65, 66, "≥ IP65", "IP66", "–")]
    [InlineData("m2", 2, Comparison.AtLeast, 0.27, 0.2, "≥ 0.27 m²", "0.20 m²", "−26 %")]
    [InlineData("degrees", 0, Comparison.AtLeast, 14, 45, "≥ 14°", "45°", "+31°")]
    public void A_check_is_printed_short_with_its_unit(string unit, int decimals, Comparison comparison, double required, double offered, string requiredText, string offeredText, string margin)
    {
        var check = new Check("x.y", "Item", "property", comparison, required, offered, unit, "basis", decimals);

        Assert.Equal((requiredText, offeredText, margin), (CheckText.Required(check), CheckText.Offered(check), CheckText.Margin(check)));
    }

    [Fact]
    public void A_yes_or_no_is_printed_as_such_and_is_no_measured_margin()
    {
        var check = Check.YesNo("controller.dimming", "Controller", "dimming levels", true, true, "schedule");

        Assert.Equal(("yes", "yes", "–"), (CheckText.Required(check), CheckText.Offered(check), CheckText.Margin(check)));
        Assert.False(CheckText.IsMeasured(check));
        Assert.True(CheckText.IsMeasured(check with { Unit = "A", IsYesNo = false }));
        Assert.False(CheckText.IsMeasured(check with { Unit = "degC", IsYesNo = false }));
    }

    [Theory]
    [InlineData("degC", 45, 44.6, "0 K")]
    [InlineData("degC", 45, 40, "−5 K")]
    [InlineData("degrees", 14, 10, "−4°")]
    public void A_margin_without_a_true_zero_is_a_difference(string unit, double required, double offered, string margin) =>
        Assert.Equal(margin, CheckText.Margin(new Check("x.y", "Item", "property", Comparison.AtLeast, required, offered, unit, "basis", 0)));

    [Theory]
    [InlineData("EN 13201-2:2015, table 3, from memory", "EN 13201-2:2015, from memory")]
    [InlineData("design rule luminaire.ip; IEC 60529", "IEC 60529")]
    [InlineData("common practice, no source", "")]
    [InlineData("IEEE 1562, 1.1 to 1.2; NFPA 70 690.8", "IEEE 1562|NFPA 70")]
    public void Standards_are_found_in_a_source(string text, string expected) => Assert.Equal(expected, string.Join('|', Standards.Named(text)));
}

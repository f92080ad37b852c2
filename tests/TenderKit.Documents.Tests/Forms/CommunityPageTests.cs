using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Forms;

[Collection("world")]
public class CommunityPageTests
{
    [Fact]
    public void The_text_is_as_approved() => Approved.Same("community", TextView.Of(CommunityPage.Document(HandMadeDesign.Small())));

    [Theory]
    [InlineData(3)]
    [InlineData(14)]
    [InlineData(500)]
    public void It_is_one_page_without_money(int sites)
    {
        var document = CommunityPage.Document(HandMadeDesign.Many(sites));
        Assert.Single(PdfPrinter.Lay(document.Blocks).Sheets);
        Assert.Empty(MoneyWords.In(TextView.Of(document)));
    }

    // a full moon about 0.25 lx, from memory: 5 lx is 20 of them
    [Theory]
    [InlineData(5, 20)]
    [InlineData(1, 4)]
    [InlineData(0.1, 1)]
    public void Brightness_is_told_in_full_moons(double lx, double moons) => Assert.Equal(moons, CommunityPage.MoonTimes(lx));

    [Fact]
    public void Hours_are_told_as_people_say_them()
    {
        Assert.Equal("Full light for 4 hours from dusk, full light for the last 2 hours before dawn, light lowered to 30 of 100 parts the rest of the night.", CommunityPage.Plain(HandMadeDesign.Schedule));
        Assert.Equal("Full light all night.", CommunityPage.Plain(LightingSchedule.DuskToDawn));
        Assert.Equal("Full light for 5 hours from dusk, no light the rest of the night.", CommunityPage.Plain(new LightingSchedule("e", [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 5, 1)], 0)));
    }
}

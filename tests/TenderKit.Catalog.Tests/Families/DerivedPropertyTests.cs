using TenderKit.Catalog.Families;
using Xunit;

namespace TenderKit.Catalog.Tests.Families;

public sealed class DerivedPropertyTests
{
    // ISO 898-1, table of mechanical properties, nominal values (from memory)
    [Theory]
    [InlineData("4.6", 400, 240)]
    [InlineData("5.6", 500, 300)]
    [InlineData("8.8", 800, 640)]
    [InlineData("10.9", 1000, 900)]
    [InlineData("12.9", 1200, 1080)]
    public void BoltClassGivesTensileAndYield(string grade, double tensileMPa, double yieldMPa)
    {
        Assert.Equal(tensileMPa, BoltClass.TensileMPa(grade));
        Assert.Equal(yieldMPa, BoltClass.YieldMPa(grade));
    }

    [Theory]
    [InlineData("")]
    [InlineData("A4-70")]
    [InlineData("8")]
    public void OtherTextsAreNoBoltClass(string grade) => Assert.Null(BoltClass.TensileMPa(grade));

    // ISO 9223 rates of zinc: C3 up to 2.1, C4 up to 4.2, C5 up to 8.4 um in the first year (from memory); lives recomputed
    [Theory]
    [InlineData(84, CorrosionCategory.C3, 40)]
    [InlineData(84, CorrosionCategory.C4, 20)]
    [InlineData(84, CorrosionCategory.C5, 10)]
    public void ZincLastsAsLongAsItsThicknessOverTheRate(double zincUm, CorrosionCategory category, double years) =>
        Assert.Equal(years, ZincLife.Years(zincUm, category), 1e-9);

    [Theory]
    [InlineData(75, 20, CorrosionCategory.C3)]
    [InlineData(85, 20, CorrosionCategory.C4)]
    [InlineData(200, 20, CorrosionCategory.C5)]
    [InlineData(600, 20, CorrosionCategory.CX)]
    public void HarshestCategoryIsTheLastItOutlives(double zincUm, double years, CorrosionCategory category) =>
        Assert.Equal(category, ZincLife.HarshestFor(zincUm, years));

    [Fact]
    public void NoZincLastsNowhere() => Assert.Null(ZincLife.HarshestFor(0, 1));
}

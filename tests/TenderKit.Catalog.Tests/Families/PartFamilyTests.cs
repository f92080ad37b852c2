using TenderKit.Catalog.Families;
using Xunit;

namespace TenderKit.Catalog.Tests.Families;

public sealed class PartFamilyTests
{
    [Fact]
    public void ColumnsAreThePropertiesInSnakeCase()
    {
        var battery = PartFamily.All.First(f => f.PartType == typeof(Battery));
        Assert.Equal(["code", "description", "unit_price", "currency", "price_valid_until", "lead_time_days"], battery.Columns.Take(6).Select(c => c.Name));
        Assert.Contains("calendar_years_at_25_c", battery.Columns.Select(c => c.Name));
        Assert.DoesNotContain("rated_wh", battery.Columns.Select(c => c.Name));
        Assert.False(battery.Columns.First(c => c.Name == "weight_kg").IsRequired);
        Assert.True(battery.Columns.First(c => c.Name == "rated_ah").IsRequired);
    }

    [Fact]
    public void EveryNumberHasARange()
    {
        var without = from family in PartFamily.All
                      from column in family.Columns
                      where column.IsNumeric && PartRange.For(family.PartType, column.PropertyName) is null
                      select family.Name + "." + column.Name;
        Assert.Empty(without);
    }

    [Fact]
    public void EveryRangeBelongsToAProperty() =>
        Assert.All(PartRange.All, r => Assert.NotNull(r.Part.GetProperty(r.Property)));

    [Fact]
    public void EveryPartRecordIsAFamily() =>
        Assert.Equal(
            typeof(Part).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Part))).Select(t => t.Name).Order(StringComparer.Ordinal),
            PartFamily.All.Select(f => f.PartType.Name).Order(StringComparer.Ordinal));
}

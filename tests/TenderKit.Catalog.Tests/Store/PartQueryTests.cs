using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Catalog.Store;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Catalog.Tests.Store;

public sealed class PartQueryTests
{
    private static readonly Lazy<CatalogStore> Store = new(() =>
    {
        using var folder = new LargeCatalog(900);
        return CatalogImporter.FromFolder(folder.Folder).Value!;
    });

    [Fact]
    public void ModulesByPowerUseTheirIndex() =>
        UsesIndex(PartQuery.For<Module>().Between(m => m.RatedWp, 90, 120), "modules_by_rated_wp", m => m.RatedWp is >= 90 and <= 120);

    [Fact]
    public void BatteriesByVoltageAndEnergyUseTheirIndex()
    {
        var query = PartQuery.For<Battery>().Is(b => b.NominalVoltageV, 12.8).AtLeast(b => b.RatedWh, 1000);
        UsesIndex(query, "batteries_by_nominal_voltage_v", b => b.NominalVoltageV == 12.8 && b.RatedWh >= 1000);
        Assert.Contains("rated_wh>?", Store.Value.Plan(query)[0], StringComparison.Ordinal);
    }

    [Fact]
    public void PolesByHeightUseTheirIndexAndOtherTermsStillHold() =>
        UsesIndex(PartQuery.For<Pole>().Between(p => p.HeightM, 5.95, 7.05).AtMost(p => p.WallMm, 3), "poles_by_height_m", p => p.HeightM is > 5.9 and < 7.1 && p.WallMm <= 3);

    [Fact]
    public void AQuestionWithoutTermsIsTheWholeFamily() => Assert.Equal(300, Store.Value.Find(PartQuery.For<Pole>()).Length);

    [Fact]
    public void ListsAndTextsCanBeAskedFor()
    {
        Assert.Equal(300, Store.Value.Find(PartQuery.For<Battery>().Is(b => b.Chemistry, BatteryChemistry.LithiumIronPhosphate)).Length);
        Assert.Equal("B-000007", Assert.Single(Store.Value.Find(PartQuery.For<Battery>().Is(b => b.Code, "B-000007"))).Code);
        Assert.Empty(Store.Value.Find(PartQuery.For<Luminaire>().AtLeast(l => l.SpigotMinMm, 1)));
    }

    [Fact]
    public void ACodeIsFoundInAnyFamilyWithItsPrices()
    {
        var pole = Assert.IsType<Pole>(Store.Value.Find("P-000011"));
        Assert.Equal(2, pole.PriceBreaks.Length);
        Assert.Null(Store.Value.Find("P-999999"));
    }

    [Fact]
    public void WhatIsNoColumnIsRefused() => Assert.Throws<ArgumentException>(() => PartQuery.For<Pole>().AtLeast(p => p.HeightM + 1, 2));

    private static void UsesIndex<T>(PartQuery<T> query, string index, Func<T, bool> wanted)
        where T : Part
    {
        var plan = Store.Value.Plan(query);
        Assert.Contains(index, plan[0], StringComparison.Ordinal);
        Assert.DoesNotContain(plan, step => step.StartsWith("SCAN", StringComparison.Ordinal));
        var found = Store.Value.Find(query);
        Assert.NotEmpty(found);
        Assert.Equal(Store.Value.Load().All.OfType<T>().Where(wanted).Select(p => p.Code), found.Select(p => p.Code));
    }
}

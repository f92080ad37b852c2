using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Intake.Tests.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Catalog.Tests.Import;

public sealed class CatalogImporterTests
{
    [Fact]
    public void EveryFamilyIsRead()
    {
        using var folder = new SmallCatalog();
        var outcome = CatalogImporter.FromFolder(folder.Folder);
        Assert.Empty(outcome.Diagnostics);
        using var store = outcome.Value!;
        var parts = store.Load();
        Assert.Equal(["L-20", "L-30"], parts.Luminaires.Select(l => l.Code));
        Assert.Equal("Road luminaire, 30 W", parts.Luminaires[1].Description);
        Assert.Equal(82.5m, parts.Luminaires[1].UnitPrice);
        Assert.Equal((30, 0), (parts.Luminaires[1].LeadTimeDays, parts.Luminaires[0].LeadTimeDays));
        Assert.Equal(0.1, parts.Luminaires[0].LeastLevelFraction);
        Assert.Equal(-0.0037, parts.Modules[0].PowerCoefficientPerK);
        Assert.Equal(BatteryChemistry.LithiumIronPhosphate, parts.Batteries[0].Chemistry);
        Assert.Equal(12, parts.Batteries[0].CalendarYearsAt25C);
        Assert.Equal<double>([12, 24], parts.Controllers[0].SystemVoltagesV);
        Assert.Equal<BatteryChemistry>([BatteryChemistry.GelLeadAcid, BatteryChemistry.LithiumIronPhosphate], parts.Controllers[0].Chemistries);
        Assert.True(parts.Controllers[0].Dimming);
        Assert.False(parts.Controllers[0].AdjustableDisconnect);
        Assert.Equal(235, parts.Poles[0].YieldMPa);
        Assert.Equal(4, parts.Foundations[0].AnchorBoltCount);
        Assert.Equal((ConductorClass.Flexible5, CableInsulation.CrossLinked90), (parts.Cables[0].ConductorClass, parts.Cables[0].Insulation));
        Assert.Equal(ProtectionKind.Fuse, parts.Protection[0].Kind);
        Assert.Equal(new DateOnly(2027, 6, 30), parts.Services[0].PriceValidUntil);
        Assert.Null(parts.Services[1].PriceValidUntil);
        Assert.Equal(13, parts.All.Count());
        Assert.Equal("road"u8.ToArray(), store.Photometry()["road.ies"]);
    }

    [Theory]
    [InlineData("TK602", "poles", "wall_mm", "wall_thickness_mm", "wall_mm")]
    [InlineData("TK603", "poles", ",zinc_um", "", "zinc_um")]
    [InlineData("TK604", "poles", "P-6,Pole 6 m,180", "P-6,Pole 6 m,", "unit_price")]
    [InlineData("TK604", "poles", "235", "strong", "yield_mpa")]
    [InlineData("TK604", "batteries", "lithium_iron_phosphate", "magic", "LithiumIronPhosphate")]
    [InlineData("TK604", "services", "2027-06-30", "30/06/2027", "2026-03-31")]
    [InlineData("TK604", "controllers", "yes", "perhaps", "yes nor no")]
    [InlineData("TK604", "poles", "180,USD", "\"1,180\",USD", "thousands comma")]
    [InlineData("TK604", "poles", "180,USD", "USD 180,USD", "currency")]
    [InlineData("TK604", "poles", "180,USD", "180,dollar", "three letters")]
    [InlineData("TK605", "poles", ",180,", ",-180,", "unit_price")]
    [InlineData("TK605", "controllers", "0.96", "96", "efficiency")]
    [InlineData("TK605", "modules", "-0.0037", "-0.37", "power_coefficient_per_k")]
    [InlineData("TK605", "controllers", "12;24", "12;240", "system_voltages_v")]
    [InlineData("TK606", "modules", "18.2,6.6", "28.2,4.3", "open_circuit_v")]
    [InlineData("TK606", "modules", "7.2,", "6.2,", "short_circuit_a")]
    [InlineData("TK606", "luminaires", "10,32,0.1", "34,32,0.1", "min_voltage_v")]
    [InlineData("TK607", "brackets", "K-1", "p-6", "p-6")]
    [InlineData("TK608", "luminaires", "road.ies", "rode.ies", "rode.ies")]
    [InlineData("TK608", "luminaires", "road.ies", "../photometry/road.ies", "road.ies")]
    [InlineData("TK611", "poles", "base_diameter_mm,top_diameter_mm", "base_diameter_mm,base_diameter_mm", "stands twice")]
    public void WhatIsWrongIsNamedAndNothingIsImported(string code, string family, string old, string replacement, string named)
    {
        using var folder = new SmallCatalog().With(family, old, replacement);
        var outcome = CatalogImporter.FromFolder(folder.Folder);
        Assert.Null(outcome.Value);
        var error = Assert.Single(outcome.Diagnostics, d => d.Severity == Severity.Error && d.Code == code);
        Assert.Contains(named, error.ToString(), StringComparison.Ordinal);
        Assert.Equal(family + ".csv", error.Place.File);
        Assert.NotNull(error.Place.Row);
    }

    [Fact]
    public void EveryBadCellOfEveryFileIsListed()
    {
        using var folder = new SmallCatalog().With("poles", "235", "x").With("poles", "140", "y").With("cables", ",2,4,", ",two,4,");
        var errors = CatalogImporter.FromFolder(folder.Folder).Diagnostics.Where(d => d.Code == "TK604").ToList();
        Assert.Equal(["base_diameter_mm", "yield_mpa", "cores"], errors.Select(e => e.Place.Column));
    }

    [Fact]
    public void DoubtfulValuesAreOnlyWarnings()
    {
        using var folder = new SmallCatalog().With("modules", "M-120,Module 120 Wp,58,USD,120", "M-120,Module 120 Wp,58,USD,200").With("luminaires", "30,4500", "30,6500");
        var outcome = CatalogImporter.FromFolder(folder.Folder);
        Assert.NotNull(outcome.Value);
        outcome.Value.Dispose();
        Assert.All(outcome.Diagnostics, d => Assert.Equal(("TK613", Severity.Warning), (d.Code, d.Severity)));
        Assert.Equal(3, outcome.Diagnostics.Length); // 216 lm/W, 120 W against 200 Wp, 271 W/m2
    }

    [Fact]
    public void MissingFamilyIsAWarning()
    {
        using var folder = new SmallCatalog();
        File.Delete(folder.FileOf("brackets"));
        var outcome = CatalogImporter.FromFolder(folder.Folder);
        outcome.Value!.Dispose();
        Assert.Equal("TK609", Assert.Single(outcome.Diagnostics).Code);
    }

    [Fact]
    public void FolderWithoutPartsIsAnError()
    {
        Assert.Equal("TK601", Assert.Single(CatalogImporter.FromFolder(Path.Combine(Path.GetTempPath(), "no-such-catalogue")).Diagnostics).Code);
        var empty = Directory.CreateTempSubdirectory();
        var outcome = CatalogImporter.FromFolder(empty.FullName);
        empty.Delete();
        Assert.Null(outcome.Value);
        Assert.Contains(outcome.Diagnostics, d => d.Code == "TK601");
    }

    [Fact]
    public void SemicolonsAndDecimalCommasReadTheSame()
    {
        using var folder = new SmallCatalog();
        var digest = DigestOf(folder);
        File.WriteAllText(
            folder.FileOf("cables"),
            "Code;Description;Unit price;Currency;Cores;Cross section mm2;Conductor class;Insulation;Outdoor\nW-4;Cable 2 x 4 mm2;2,10;USD;2;4,0;Flexible5;CrossLinked90;TRUE\n");
        Assert.Equal(digest, DigestOf(folder));
    }

    [Fact]
    public void WorkbookFamilyReadsLikeItsCsvAndLostZerosAreSaid()
    {
        using var folder = new SmallCatalog();
        var digest = DigestOf(folder.With("brackets", "currency", "currency,customs_code").With("brackets", "USD", "USD,7308.9"));
        File.Delete(folder.FileOf("brackets"));
        string[] texts = ["code", "description", "unit_price", "currency", "customs_code", "max_module_area_m2", "min_tilt_degrees", "max_tilt_degrees"];
        var head = string.Concat(texts.Select((t, i) => $"<c r=\"{(char)('A' + i)}2\" t=\"inlineStr\"><is><t>{t}</t></is></c>"));
        const string row = """<c r="A3" t="inlineStr"><is><t>K-1</t></is></c><c r="B3" t="inlineStr"><is><t>Bracket</t></is></c><c r="C3"><v>30</v></c><c r="D3" t="inlineStr"><is><t>USD</t></is></c><c r="E3"><v>7308.9</v></c><c r="F3"><v>1.5</v></c><c r="G3"><v>10</v></c><c r="H3"><v>45</v></c>""";
        File.WriteAllBytes(Path.ChangeExtension(folder.FileOf("brackets"), "xlsx"), TestWorkbook.Xlsx(("Brackets", $"<row r=\"2\">{head}</row><row r=\"3\">{row}</row>")));
        var outcome = CatalogImporter.FromFolder(folder.Folder);
        using var store = outcome.Value!;
        Assert.Equal(digest, store.Digest());
        var warning = Assert.Single(outcome.Diagnostics);
        Assert.Equal(("TK612", 3, "customs_code"), (warning.Code, warning.Place.Row, warning.Place.Column));
    }

    [Fact]
    public void AFailedImportLeavesTheFileAlone()
    {
        using var folder = new SmallCatalog();
        var path = Path.Combine(folder.Folder, "parts.db");
        CatalogImporter.FromFolderToFile(folder.Folder, path).Value!.Dispose();
        var before = File.ReadAllBytes(path);
        folder.With("poles", "235", "x");
        Assert.Null(CatalogImporter.FromFolderToFile(folder.Folder, path).Value);
        Assert.Equal(before, File.ReadAllBytes(path));
        Assert.False(File.Exists(path + ".new"));
    }

    private static string DigestOf(SmallCatalog folder)
    {
        using var store = CatalogImporter.FromFolder(folder.Folder).Value!;
        return store.Digest();
    }
}

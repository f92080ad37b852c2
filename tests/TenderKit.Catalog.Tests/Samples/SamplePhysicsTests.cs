using System.Globalization;
using TenderKit.Catalog.Families;
using TenderKit.Catalog.Import;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Catalog.Tests.Samples;

/// <summary>The sample catalogue is invented; its physics must still hold together, apart from the parts that are wrong on purpose.</summary>
public class SamplePhysicsTests
{
    /// <summary>
    /// Too many watts for its area; a battery too light for its energy whose management system takes hardly any charge; a controller
    /// whose inputs cannot carry its own rating.
    /// </summary>
    private static readonly string[] WrongOnPurpose = ["MOD-150X", "BAT-LFP-100X", "CTL-P10X"];

    private static IEnumerable<SampleRow> Sound(string family) => SampleTable.Read(family).Where(r => !WrongOnPurpose.Contains(r.Code));

    private static SampleRow Wrong(string family) => SampleTable.Read(family).Single(r => WrongOnPurpose.Contains(r.Code));

    // Commercial crystalline modules of this size, 180 to 215 W/m2 (common practice, no source); 240 W/m2 is the bound of plausibility.
    [Fact]
    public void Module_watts_per_area()
    {
        Assert.All(Sound("modules"), m => Assert.InRange(WattsPerM2(m), 180, 215));
        Assert.True(WattsPerM2(Wrong("modules")) > 240);
    }

    // Pm = Vmp Imp by definition; Voc / Vmp 1.15 to 1.25 and Isc / Imp 1.03 to 1.10 of crystalline cells (common practice, no source).
    [Fact]
    public void Module_ratings_agree_with_each_other()
    {
        Assert.All(SampleTable.Read("modules"), m =>
        {
            Assert.InRange(m.Number("maximum_power_v") * m.Number("maximum_power_a") / m.Number("rated_wp"), 0.995, 1.005);
            Assert.InRange(m.Number("open_circuit_v") / m.Number("maximum_power_v"), 1.15, 1.25);
            Assert.InRange(m.Number("short_circuit_a") / m.Number("maximum_power_a"), 1.03, 1.10);
            Assert.InRange(m.Number("max_series_fuse_a"), 1.5 * m.Number("short_circuit_a"), 30);
        });
    }

    // Framed glass and backsheet, 10 to 16 kg/m2, the small ones heavier for their frames (common practice, no source).
    [Fact]
    public void Module_weight_per_area() =>
        Assert.All(SampleTable.Read("modules"), m => Assert.InRange(m.Number("weight_kg") / AreaM2(m), 10, 16));

    // Lead-acid 30 to 38 Wh/kg, lithium iron phosphate 90 to 125 Wh/kg as packs (common practice, no source).
    [Fact]
    public void Battery_energy_per_weight()
    {
        Assert.All(Sound("batteries"), b =>
        {
            var lithium = b.Text("chemistry") == nameof(BatteryChemistry.LithiumIronPhosphate);
            Assert.InRange(WhPerKg(b), lithium ? 90 : 30, lithium ? 125 : 38);
        });
        Assert.True(WhPerKg(Wrong("batteries")) > 160);
    }

    // A battery takes at least a charge of C/10 (common practice, no source).
    [Fact]
    public void Battery_charge_current()
    {
        Assert.All(Sound("batteries"), b => Assert.InRange(b.Number("max_charge_a") / b.Number("rated_ah"), 0.10, 1.0));
        Assert.True(Wrong("batteries").Number("max_charge_a") / Wrong("batteries").Number("rated_ah") < 0.05);
    }

    // Peukert exponents: flooded 1.20 to 1.30, AGM 1.05 to 1.15, gel 1.10 to 1.20, lithium near 1.05 (read); tubular as flooded to gel (no source).
    [Fact]
    public void Peukert_exponent_by_chemistry() =>
        Assert.All(SampleTable.Read("batteries"), b =>
        {
            var (low, high) = Enum.Parse<BatteryChemistry>(b.Text("chemistry")) switch
            {
                BatteryChemistry.FloodedLeadAcid => (1.20, 1.30),
                BatteryChemistry.AgmLeadAcid => (1.05, 1.15),
                BatteryChemistry.GelLeadAcid => (1.10, 1.20),
                BatteryChemistry.TubularLeadAcid => (1.10, 1.30),
                _ => (1.02, 1.08),
            };
            Assert.InRange(b.Number("peukert_exponent"), low, high);
        });

    // Lithium iron phosphate is not charged below 0 degC (read).
    [Fact]
    public void Lithium_is_not_charged_below_freezing() =>
        Assert.All(
            SampleTable.Read("batteries").Where(b => b.Text("chemistry") == nameof(BatteryChemistry.LithiumIronPhosphate)),
            b => Assert.True(b.Number("least_charge_c") >= 0));

    // A controller's input must carry the current it is rated to charge with, and the cold voltage of one 36-cell module per 12 V
    // (22.6 V at -20 degC with -0.0029 per K: 25.5 V).
    [Fact]
    public void Controller_inputs_carry_its_rating()
    {
        Assert.All(Sound("controllers"), c => Assert.True(InputsFit(c), c.Code));
        Assert.False(InputsFit(Wrong("controllers")));
    }

    // A pulse-width controller has no converter, so 1; tracking 0.90 to 0.98 (common practice, no source).
    [Fact]
    public void Controller_efficiency_by_kind() =>
        Assert.All(SampleTable.Read("controllers"), c =>
        {
            if (c.Text("kind") == nameof(ControlKind.PulseWidth)) Assert.Equal(1, c.Number("efficiency"));
            else Assert.InRange(c.Number("efficiency"), 0.90, 0.98);
        });

    // Steel 7850 kg/m3: the shaft, a square base plate of 12 to 22 mm, an arm of 3 to 5 kg/m; up to 8 % of zinc and door on the shaft
    // and 4 kg of fittings (plate, arm and fittings: common practice, no source).
    [Fact]
    public void Pole_weight_is_that_of_its_steel() =>
        Assert.All(SampleTable.Read("poles"), p =>
        {
            var shaftKg = Tube.ShaftKg(Shaft(p));
            var plateKgPerMm = Math.Pow(p.Number("base_plate_mm") / 1000, 2) * 1e-3 * Tube.SteelKgPerM3;
            var armM = p.Number("arm_reach_m");
            Assert.InRange(
                p.Number("weight_kg"), shaftKg + 12 * plateKgPerMm + 3 * armM, 1.08 * shaftKg + 22 * plateKgPerMm + 5 * (armM + 0.3) + 4);
        });

    // ISO 1461 mean coating: 70 um on 3 to 6 mm (from memory).
    [Fact]
    public void Pole_zinc_meets_the_standard() => Assert.All(SampleTable.Read("poles"), p => Assert.True(p.Number("zinc_um") >= 70));

    // Copper 8.9 g/cm3 (two cores at the nominal section) and no more than four times that with plastic.
    [Fact]
    public void Cable_weight_is_above_that_of_its_copper() =>
        Assert.All(SampleTable.Read("cables"), c =>
        {
            var copperKg = c.Number("cores") * c.Number("cross_section_mm2") * 8.9e-3;
            Assert.InRange(c.Number("weight_kg"), 1.5 * copperKg, 4 * copperKg);
        });

    // Bolts of 7850 kg/m3; reinforcement 25 to 45 kg/m3 of a lightly loaded block (common practice, no source).
    [Fact]
    public void Foundation_steel_is_in_proportion() =>
        Assert.All(SampleTable.Read("foundation_sets"), s =>
        {
            var boltsKg = s.Number("anchor_bolt_count") * Math.PI / 4 * Math.Pow(s.Number("anchor_bolt_mm"), 2)
                * s.Number("anchor_bolt_length_mm") * 1e-9 * Tube.SteelKgPerM3;
            Assert.InRange(s.Number("weight_kg") / boltsKg, 1.1, 2.2);
            var volume = s.Number("length_m") * s.Number("width_m") * s.Number("depth_m");
            Assert.InRange(s.Number("reinforcement_kg") / volume, 25, 45);
            Assert.True(s.Number("anchor_bolt_length_mm") < 1000 * s.Number("depth_m"));
        });

    // Every battery goes into some enclosure, singly and, up to 100 Ah, as a pair.
    [Fact]
    public void Every_battery_has_an_enclosure() =>
        Assert.All(SampleTable.Read("batteries"), b =>
        {
            var count = b.Number("rated_ah") <= 100 ? 2 : 1;
            Assert.Contains(SampleTable.Read("enclosures"), e =>
                e.Number("usable_volume_l") >= count * b.Number("volume_m3") * 1000 && e.Number("max_content_kg") >= count * b.Number("weight_kg"));
        });

    // Every module goes onto some bracket.
    [Fact]
    public void Every_module_has_a_bracket() =>
        Assert.All(SampleTable.Read("modules"), m => Assert.Contains(SampleTable.Read("brackets"), b => b.Number("max_module_area_m2") >= AreaM2(m)));

    // The village-road pole: 6 m, 28 m/s, terrain II, 1.0 m2 of module taken square to the wind, luminaire and box. Flat plate 1.2,
    // rounded luminaire 0.5, box 1.2. Asked here: 1.5 against yield and overturning, head within 4 % of the height (EN 40-3-3 class 1,
    // from memory), presumptive bearing of the soft class.
    [Fact]
    public void The_stronger_six_metre_pole_and_a_block_carry_a_village_road_kit()
    {
        var pole = SampleTable.Read("poles").Single(p => p.Code == "POL-6B");
        var load = Wind.OnPole(Shaft(pole), VillageItems, 28, Terrain.II);
        Assert.True(load.GreatestStressMPa * 1.5 <= pole.Number("yield_mpa"), Words(load));
        Assert.True(load.HeadDeflectionM <= 0.04 * 6, Words(load));

        var passing = SampleTable.Read("foundation_sets").Where(s => Passes(s, load)).Select(s => s.Code);
        Assert.Contains("FND-6W", passing);
        Assert.DoesNotContain("FND-3", passing);
    }

    [Fact]
    public void Families_have_the_rows_promised_and_unique_codes()
    {
        (string Family, int Least)[] least =
            [("modules", 10), ("batteries", 14), ("controllers", 9), ("poles", 8), ("foundation_sets", 7), ("cables", 10), ("enclosures", 4), ("brackets", 4)];
        Assert.All(least, x => Assert.True(SampleTable.Read(x.Family).Count >= x.Least));
        var codes = SampleTable.Families.SelectMany(SampleTable.Read).Select(r => r.Code).ToList();
        Assert.Equal(codes.Count, codes.Distinct().Count());
    }

    [Fact]
    public void Every_service_use_has_a_rate() =>
        Assert.Empty(Enum.GetNames<ServiceUse>().Except(SampleTable.Read("services").Select(s => s.Text("use"))));

    [Fact]
    public void Prices_are_dollars_and_most_are_valid()
    {
        var rows = SampleTable.Families.SelectMany(SampleTable.Read).ToList();
        Assert.All(rows, r => Assert.True(r.Text("currency") == "USD" && r.Number("unit_price") > 0));
        var expired = rows.Where(r => Date(r) == new DateOnly(2026, 3, 31)).Select(r => r.Code).Order(StringComparer.Ordinal);
        Assert.Equal(["BAT-GEL-65", "CTL-P30", "MOD-90"], expired);
        Assert.All(rows, r => Assert.True(Date(r) >= new DateOnly(2026, 3, 31)));
    }

    // The real importer takes every row; what it doubts is the module with too many watts for its area.
    [Fact]
    public void The_importer_reads_every_row_and_doubts_the_implausible_module()
    {
        var outcome = CatalogImporter.FromFolder(SampleTable.Folder());
        var others = outcome.Diagnostics.Where(d => d.Place.File?.StartsWith("luminaires", StringComparison.Ordinal) != true).ToList();
        Assert.DoesNotContain(others, d => d.Severity == Severity.Error);
        Assert.Contains(others, d => d.Code == "TK613" && d.Message.Contains("MOD-150X", StringComparison.Ordinal));
        Assert.Single(others);
    }

    // Headings are the canonical names, in the order base part first, then the family's own.
    [Fact]
    public void Headings_are_the_canonical_names()
    {
        foreach (var family in SampleTable.Families)
        {
            var columns = SampleTable.Read(family)[0].Columns;
            var expected = PartFamily.All.Single(f => f.Name == family).Columns.Select(c => c.Name);
            Assert.Equal(expected.Order(StringComparer.Ordinal), columns.Order(StringComparer.Ordinal));
        }
    }

    private static readonly System.Collections.Immutable.ImmutableArray<WindItem> VillageItems =
    [
        new("module", 1.0, 1.2, 6.2),
        new("luminaire", 0.06, DragCoefficients.RoundedLuminaire, 6.0),
        new("box", 0.15, DragCoefficients.Box, 4.0),
    ];

    private static bool Passes(SampleRow s, PoleLoad load)
    {
        var block = new BlockFoundation(s.Number("length_m"), s.Number("width_m"), s.Number("depth_m"));
        var result = Foundation.Block(block, load.BaseShearN, load.BaseMomentNm, 1500, 24);
        return result.OverturningSafetyFactor >= 1.5 && result.GroundPressureKPa <= SoilClasses.Soft.BearingKPa;
    }

    private static string Words(PoleLoad load) => string.Create(
        CultureInfo.InvariantCulture,
        $"shear {load.BaseShearN:F0} N, moment {load.BaseMomentNm:F0} Nm, stress {load.GreatestStressMPa:F1} MPa, head {load.HeadDeflectionM:F3} m");

    private static double AreaM2(SampleRow m) => m.Number("length_m") * m.Number("width_m");

    private static double WattsPerM2(SampleRow m) => m.Number("rated_wp") / AreaM2(m);

    private static double WhPerKg(SampleRow b) => b.Number("nominal_voltage_v") * b.Number("rated_ah") / b.Number("weight_kg");

    private static bool InputsFit(SampleRow c) =>
        c.Number("max_array_short_circuit_a") >= c.Number("rated_charge_a") && c.Number("max_array_v") >= 25.5;

    private static PoleShaft Shaft(SampleRow p) => new(
        p.Number("height_m"), p.Number("base_diameter_mm"), p.Number("top_diameter_mm"), p.Number("wall_mm"), p.Number("yield_mpa"));

    private static DateOnly Date(SampleRow r) => DateOnly.ParseExact(r.Text("price_valid_until"), "yyyy-MM-dd", CultureInfo.InvariantCulture);
}

using CsCheck;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Structure;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Cli.Tests.Design;

/// <summary>Whatever the tender and the catalogue, the choice never lets an unsafe pole or circuit through.</summary>
public class SafeChoiceTests
{
    private static readonly Lazy<(DesignInputs Inputs, Site Site, SiteWeather Weather, LightOption Light, PowerOption Power)> World = new(MakeWorld);

    [Fact]
    public void No_fuse_above_its_cable_and_no_pole_above_its_strength() =>
        Gen.Select(Gen.Double[10, 60], Gen.Int[0, 4], Gen.Double[0.4, 2.5], Gen.Double[0.3, 4], Gen.Int[0, int.MaxValue], Gen.Bool, Gen.Int[0, 3])
            .Sample((windMPerS, terrain, wallFactor, loadFactor, seed, asce, soil) =>
            {
                var (inputs, site, weather, light, power) = World.Value;
                var random = new Random(seed);
                var catalog = Shaken(inputs.Catalog, wallFactor, random);
                var here = site with
                {
                    BasicWindMPerS = windMPerS,
                    Terrain = (Terrain)terrain,
                    Soil = soil == 0 ? SoilClasses.Dense : soil == 1 ? SoilClasses.Medium : SoilClasses.Soft,
                    Ground = new SiteGround(asce ? WindStandard.Asce7 : WindStandard.En1991, null, soil == 3 ? 90 : 0, (CorrosionCategory)(seed % 6), soil == 2),
                };
                var shaken = inputs with { Catalog = catalog };
                var costs = new Costs(inputs.Tender);
                var heavy = light with { Luminaire = light.Luminaire with { InputPowerW = light.Luminaire.InputPowerW * loadFactor, WindAreaM2 = light.Luminaire.WindAreaM2 * loadFactor } };
                var support = new SupportStage(here, weather.Climate, shaken, costs, new Rejections()).Find(heavy, power);
                var wiring = new WiringStage(shaken, costs, new Rejections()).Find(heavy, power);
                if (support is not null) AssertStands(support, here, shaken.Rules);
                if (wiring is not null) AssertCarries(wiring, shaken.Rules);
            }, iter: 300);

    // The choice is of use: with the catalogue as it is both are found
    [Fact]
    public void The_sample_catalogue_gives_both()
    {
        var (inputs, site, weather, light, power) = World.Value;
        var costs = new Costs(inputs.Tender);
        Assert.NotNull(new SupportStage(site, weather.Climate, inputs, costs, new Rejections()).Find(light, power));
        Assert.NotNull(new WiringStage(inputs, costs, new Rejections()).Find(light, power));
    }

    [Fact]
    public void Fast_traffic_asks_for_a_passively_safe_pole()
    {
        var (inputs, site, weather, light, power) = World.Value;
        var fast = site with { Ground = SiteGround.Usual with { TrafficKmPerH = 80 } };
        var costs = new Costs(inputs.Tender);
        var rejections = new Rejections();
        Assert.Null(new SupportStage(fast, weather.Climate, inputs, costs, rejections).Find(light, power));
        Assert.Contains("passive safety", rejections.NearestMiss, StringComparison.Ordinal);
        var safe = inputs with { Catalog = inputs.Catalog with { Poles = [.. inputs.Catalog.Poles.Select(p => p with { PassiveSafetyClass = "100-NE-C" })] } };
        Assert.NotNull(new SupportStage(fast, weather.Climate, safe, costs, new Rejections()).Find(light, power));
    }

    [Fact]
    public void A_pole_set_into_the_ground_goes_deep_enough()
    {
        var (inputs, site, weather, light, power) = World.Value;
        var set = inputs.Catalog.Foundations[0] with { Code = "HOLE", AnchorBoltCount = 0, LengthM = 0.6, WidthM = 0.6, DepthM = 1.9, ReinforcementKg = 0 };
        SupportOption? With(double buriedM, SiteGround ground) => new SupportStage(
            site with { Ground = ground }, weather.Climate,
            inputs with { Catalog = inputs.Catalog with { Poles = [.. inputs.Catalog.Poles.Select(p => p with { DirectBuriedLengthM = buriedM })], Foundations = [set] } },
            new Costs(inputs.Tender), new Rejections()).Find(light, power);
        Assert.Null(With(0.5, SiteGround.Usual));
        var found = With(1.9, SiteGround.Usual);
        Assert.NotNull(found);
        Assert.True(found.Structure.EmbedmentM <= 1.9);
        Assert.Null(found.Structure.Bolts);
        Assert.Equal(0.6 * 0.6 * 1.9, found.Structure.Foundation.ConcreteM3, 1e-9);
        if (With(1.9, SiteGround.Usual with { FloodProne = true }) is { } wet) Assert.True(wet.Structure.EmbedmentM > found.Structure.EmbedmentM);
    }

    private static void AssertStands(SupportOption support, Site site, RuleSet rules)
    {
        var (pole, structure) = (support.Pole, support.Structure);
        var factor = site.Ground.Standard == WindStandard.En1991 ? rules["structure.wind_factor"] : 1 / 0.6;
        var strength = pole.YieldMPa / rules["structure.steel_factor"];
        Assert.True(structure.Load.GreatestStressMPa * factor <= strength);
        if (structure.DoorStressMPa is { } door) Assert.True(door * factor <= strength);
        Assert.True(structure.Load.HeadDeflectionM <= rules["structure.deflection"] * pole.HeightM);
        Assert.True(structure.Foundation.GroundPressureKPa <= site.Soil.BearingKPa);
        Assert.True(structure.EmbedmentM is { } depth ? depth <= pole.DirectBuriedLengthM : structure.Foundation.OverturningSafetyFactor >= rules["structure.overturning"]);
        Assert.True(structure.Bolts is null || structure.Bolts.UseFraction <= 1);
        Assert.True(site.Ground.TrafficKmPerH < 70 || PassiveSafety.SpeedOf(pole.PassiveSafetyClass) >= site.Ground.TrafficKmPerH);
        Assert.True(structure.Foundation.ExcavationM3 >= structure.Foundation.ConcreteM3);
    }

    private static void AssertCarries(WiringOption wiring, RuleSet rules)
    {
        foreach (var circuit in wiring.Circuits)
        {
            var capacityA = Conductor.CapacityA(circuit.Cable.Insulation, circuit.Cable.CrossSectionMm2, rules["wiring.ambient"]);
            Assert.True(circuit.CurrentA <= capacityA);
            if (circuit.Fuse is { } fuse) Assert.InRange(fuse.RatedA, circuit.CurrentA * rules["wiring.fuse_factor"], capacityA);
            Assert.True(circuit.DropFraction <= 0.03 + 1e-12);
        }
    }

    /// <summary>A catalogue of other walls, doors, bolts, sections, insulations, fuses and prices; some parts gone.</summary>
    private static PartsCatalog Shaken(PartsCatalog catalog, double wallFactor, Random random)
    {
        decimal Price() => (decimal)random.Next(1, 500);
        bool Stays() => random.Next(4) > 0;
        double[] sections = [1.5, 2.5, 4, 6, 10, 16, 25];
        return catalog with
        {
            Poles =
            [
                .. catalog.Poles.Select(p => p with
                {
                    UnitPrice = Price(), WallMm = Math.Clamp(p.WallMm * wallFactor, 1, p.TopDiameterMm / 2), YieldMPa = random.Next(2) == 0 ? 235 : 355,
                    DoorWidthMm = random.Next(3) * 45, DoorBottomM = 0.5, PassiveSafetyClass = random.Next(3) == 0 ? "100-NE-B" : "",
                    DirectBuriedLengthM = random.Next(3) == 0 ? random.NextDouble() * 3 : 0, BasePlateMm = random.Next(200, 450), ZincUm = random.Next(40, 200),
                }),
            ],
            Foundations =
            [
                .. catalog.Foundations.Where(_ => Stays()).Select(f => f with
                {
                    UnitPrice = Price(), AnchorBoltCount = random.Next(3) == 0 ? 0 : 4, AnchorBoltMm = new[] { 12.0, 16, 17, 20, 30 }[random.Next(5)], DepthM = f.DepthM * (0.5 + random.NextDouble()),
                }),
            ],
            Cables = [.. catalog.Cables.Select(c => c with { UnitPrice = Price(), CrossSectionMm2 = sections[random.Next(7)], Insulation = (CableInsulation)random.Next(2) })],
            Protection = [.. catalog.Protection.Where(_ => Stays()).Select(p => p with { UnitPrice = Price(), BreakingA = p.Kind == ProtectionKind.Fuse ? random.Next(100, 20_000) : null })],
        };
    }

    private static IEnumerable<PowerOption> Powers(Battery battery, int inSeries, LightOption light, Site site, SiteClimate climate, DesignInputs inputs)
    {
        var unused = new Rejections();
        var controllers = BankStage.Controllers(SystemVoltage.BankV(battery, inSeries), light, site, climate, inputs, unused);
        return
            from bank in BankStage.Options(battery, inSeries, controllers, light, site, climate, inputs, unused)
            from module in ArrayStage.Modules(bank, climate, inputs)
            from power in ArrayStage.Options(bank, module.Module, module.InSeries, climate, inputs, unused)
            select power;
    }

    private static (DesignInputs, Site, SiteWeather, LightOption, PowerOption) MakeWorld()
    {
        using var folder = new TenderFolder().WithSites("S10").Change("tender.yaml", "kits:", "rules_changed: { climate.years: 1 }\n\nkits:");
        var inputs = TenderLoader.Load(folder.Tender).Inputs!;
        var site = inputs.Sites[0];
        var weather = ClimateStage.Run(site, ClimateStage.ClimateOf(site, inputs), inputs);
        var unused = new Rejections();
        foreach (var light in LightStage.Options(site, weather.Climate, inputs, unused))
            foreach (var (battery, inSeries, _) in BankStage.Batteries(light, weather.Climate, inputs, unused))
                foreach (var power in Powers(battery, inSeries, light, site, weather.Climate, inputs))
                    if (new SupportStage(site, weather.Climate, inputs, new Costs(inputs.Tender), unused).Find(light, power) is not null)
                        return (inputs, site, weather, light, power);
        throw new InvalidOperationException("the sample catalogue carries nothing");
    }
}

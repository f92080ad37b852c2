using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>Sizes of the sample catalogue, which is of our own invention, changed one at a time.</summary>
public sealed class FitChecksTests
{
    private static readonly DesignInputsParts _parts = new();

    private static BankOption Bank(Battery battery, int inSeries = 1, int strings = 1) => new(battery, inSeries, strings, _parts.Controller, null!, 10, 100, 300);

    /// <summary>Ids of the checks that fail; counted as numbers they must be as many.</summary>
    private static string[] Failing(Action<CheckList> checks)
    {
        var numbers = new CheckList(false);
        checks(numbers);
        string[] failing = [.. CheckList.Record(checks).Where(c => !c.Complies).Select(c => c.Id)];
        Assert.Equal(failing.Length, numbers.FailedCount);
        return failing;
    }

    [Theory]
    [InlineData(60, null)]
    [InlineData(76, "luminaire.most_diameter")]
    [InlineData(42, "luminaire.least_diameter")]
    public void A_head_on_the_pole_top_must_fit_it(double topMm, string? failing) =>
        Assert.Equal(failing is null ? [] : new[] { failing }, Failing(list => FitChecks.HeadOnPole(list, _parts.Luminaire with { SpigotMinMm = 48, SpigotMaxMm = 60 }, _parts.Pole with { ArmReachM = 0, TopDiameterMm = topMm })));

    [Fact]
    public void On_an_arm_the_diameter_is_not_known_and_is_named_instead_of_checked()
    {
        var kit = Samples.HandMadeDesign.Small().Kits[0].Parts;
        Assert.Empty(Failing(list => FitChecks.HeadOnPole(list, _parts.Luminaire, _parts.Pole with { ArmReachM = 1, TopDiameterMm = 200 })));
        Assert.Contains(FitChecks.NotStated(kit with { Pole = kit.Pole with { ArmReachM = 1 } }), d => d.Code == "TK650" && d.Message.Contains("arm's end", StringComparison.Ordinal));
    }

    [Fact]
    public void Bracket_and_box_must_clamp_the_pole_where_they_sit()
    {
        var pole = _parts.Pole with { TopDiameterMm = 60, BaseDiameterMm = 120, HeightM = 6 };
        Assert.Equal(["bracket.most_diameter"], Failing(list => FitChecks.BracketOnPole(list, _parts.Bracket with { PoleMinMm = 40, PoleMaxMm = 55 }, pole)));
        // half way up, at the 3 m of wiring.box_height, a straight taper from 120 to 60 mm is 90 mm (derived)
        var box = CheckList.Record(list => FitChecks.BoxOnPole(list, _parts.Box with { PoleMinMm = 100, PoleMaxMm = 200 }, pole, StarterTender.Inputs.Rules));
        Assert.Equal(["enclosure.least_diameter"], box.Where(c => !c.Complies).Select(c => c.Id));
        Assert.Equal(90, box[0].Required, 6);
    }

    [Fact]
    public void A_battery_goes_upright_into_its_box_and_lead_acid_needs_vents()
    {
        var battery = _parts.Battery with { WidthMm = 200, DepthMm = 300, HeightMm = 220, Chemistry = BatteryChemistry.GelLeadAcid, RatedAh = 100, NominalVoltageV = 12 };
        var box = _parts.Box with { InnerWidthMm = 310, InnerDepthMm = 210, InnerHeightMm = 230, Vented = true, IpCode = 55 };
        string[] In(Enclosure e) => Failing(list => FitChecks.BatteryInBox(list, Bank(battery), e, StarterTender.Inputs.Rules));
        Assert.Empty(In(box));
        Assert.Equal(["enclosure.inner_height"], In(box with { InnerHeightMm = 210 }));
        Assert.Equal(["enclosure.inner_length"], In(box with { InnerWidthMm = 290 }));
        Assert.Equal(["enclosure.inner_depth"], In(box with { InnerDepthMm = 190 }));
        Assert.Equal(["enclosure.vented"], In(box with { Vented = false }));
        Assert.Equal(["enclosure.ip"], In(box with { IpCode = 43 }));
        Assert.Empty(In(box with { InnerHeightMm = null, InnerWidthMm = null, Vented = null }));
        // IEC 62485-2 (from memory): 6 cells, 8 mA/Ah, 100 Ah: 0.240 m3/h, 6.72 cm2
        Assert.Equal(6.72, FitChecks.FreeAreaCm2(Bank(battery)), 6);
    }

    [Theory]
    [InlineData(14.2, 12.8, 1, null)]
    [InlineData(14.2, 12.8, 2, null)]
    [InlineData(28.4, 25.6, 1, null)]
    [InlineData(15.5, 12.8, 1, "controller.greatest_absorption")]
    [InlineData(13.2, 12.8, 1, "controller.least_absorption")]
    public void The_controller_must_reach_the_absorption_voltage_asked_for(double askedV, double nominalV, int inSeries, string? failing)
    {
        var bank = Bank(_parts.Battery with { AbsorptionV = askedV, NominalVoltageV = nominalV }, inSeries) with { Controller = _parts.Controller with { LeastAbsorptionV = 13.8, GreatestAbsorptionV = 15 } };
        Assert.Equal(failing is null ? [] : new[] { failing }, Failing(list => FitChecks.Absorption(list, bank)));
    }

    private sealed class DesignInputsParts
    {
        private readonly PartsCatalog _all = StarterTender.Inputs.Catalog;

        public Luminaire Luminaire => _all.Luminaires[0];

        public Pole Pole => _all.Poles[0];

        public Bracket Bracket => _all.Brackets[0];

        public Enclosure Box => _all.Enclosures[0];

        public Battery Battery => _all.Batteries[0];

        public Controller Controller => _all.Controllers[0];
    }
}

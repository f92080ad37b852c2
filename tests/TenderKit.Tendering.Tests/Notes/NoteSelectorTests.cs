using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Notes;

public class NoteSelectorTests
{
    private static readonly NoteLibrary Library = NoteLibrary.Load();

    [Fact]
    public void The_small_design_calls_up_what_it_holds()
    {
        var ids = Ids(HandMadeDesign.Small());
        Assert.Contains("battery.lithium.safety", ids);
        Assert.Contains("battery.lithium.transport", ids);
        Assert.Contains("works.height", ids);
        Assert.Contains("works.traffic", ids);
        Assert.Contains("works.public", ids);
        Assert.Contains("structure.screening", ids);
        Assert.Contains("structure.soil", ids);
        Assert.Contains("basis.climate_estimate", ids);
        Assert.Contains("basis.unmet", ids);
        Assert.Contains("life.maintenance", ids);
        Assert.DoesNotContain("life.no_maintenance", ids);
        Assert.DoesNotContain("battery.lead.gas", ids);
        Assert.DoesNotContain("battery.lithium.cold", ids);
        Assert.DoesNotContain("light.presence", ids);
        Assert.InRange(ids.Count, 25, 40);
    }

    [Fact]
    public void A_note_says_what_called_it_up_and_defers_to_the_local_code()
    {
        var notes = NoteSelector.Select(HandMadeDesign.Small(), Library);
        Assert.Equal("soil not stated (site S-03)", notes.Single(n => n.Id == "structure.soil").TriggeredBy);
        Assert.Equal("19 solar lighting poles", notes.Single(n => n.Id == "structure.screening").TriggeredBy);
        Assert.Equal("road with traffic (site S-01); metal pole (kits K1, K2)", notes.Single(n => n.Id == "structure.passive_safety").TriggeredBy);
        Assert.All(notes, n => Assert.EndsWith("(" + Library.Deferral + ")", n.Standard, StringComparison.Ordinal));
        Assert.Contains("licensed structural engineer", notes.Single(n => n.Id == "structure.screening").Role, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Notes_keep_the_order_of_the_library()
    {
        var ids = Ids(HandMadeDesign.Small());
        Assert.Equal(Library.Rules.Select(r => r.Id).Where(ids.Contains), ids);
    }

    [Fact]
    public void Many_sites_are_named_in_short()
    {
        var words = NoteFacts.From(HandMadeDesign.Many(60)).Words(NoteFact.RoadTraffic);
        Assert.Equal("road with traffic (sites S-0001, S-0004, S-0007, S-0010, S-0013, S-0016 and 14 more)", words);
    }

    [Fact]
    public void Flooded_lead_acid_brings_gas_and_acid_with_the_opening_it_needs()
    {
        var design = WithBattery(b => b with { Chemistry = BatteryChemistry.FloodedLeadAcid, NominalVoltageV = 12, RatedAh = 100 });
        var notes = NoteSelector.Select(design, Library);

        // IEC 62485-2: 6 cells x 20 mA/Ah x 100 Ah x 0.05 = 0.6 m3/h, 28 x 0.6 = 16.8 cm2 (gas current from memory).
        Assert.Contains("16.8 cm2", notes.Single(n => n.Id == "battery.lead.gas").TriggeredBy, StringComparison.Ordinal);
        Assert.Contains(notes, n => n.Id == "battery.lead.acid");
        Assert.DoesNotContain(notes, n => n.Id.StartsWith("battery.lithium", StringComparison.Ordinal));
    }

    [Fact]
    public void Sealed_lead_acid_brings_gas_but_no_acid()
    {
        // IEC 62485-2, recomputed: 6 cells, 100 Ah, 8 mA/Ah: 6.72 cm2.
        var design = WithBattery(b => b with { Chemistry = BatteryChemistry.GelLeadAcid, NominalVoltageV = 12, RatedAh = 100 });
        var notes = NoteSelector.Select(design, Library);
        Assert.Contains("6.7 cm2", notes.Single(n => n.Id == "battery.lead.gas").TriggeredBy, StringComparison.Ordinal);
        Assert.DoesNotContain(notes, n => n.Id == "battery.lead.acid");
    }

    [Theory]
    [InlineData(NoteFact.ColdCharging)]
    [InlineData(NoteFact.HotBattery)]
    [InlineData(NoteFact.StrongWind)]
    [InlineData(NoteFact.UnsourcedClimate)]
    [InlineData(NoteFact.PresenceDetection)]
    [InlineData(NoteFact.ArrayAboveSixtyVolts)]
    [InlineData(NoteFact.FrostOnLeadAcid)]
    [InlineData(NoteFact.ParallelStrings)]
    [InlineData(NoteFact.SeveralBatteries)]
    [InlineData(NoteFact.ColdWhiteLight)]
    [InlineData(NoteFact.DeepExcavation)]
    [InlineData(NoteFact.TallPole)]
    [InlineData(NoteFact.NoMaintenance)]
    public void A_fact_holds_only_where_its_cause_does(NoteFact fact)
    {
        Assert.False(NoteFacts.From(Mild()).Has(fact));
        Assert.True(NoteFacts.From(With(fact)).Has(fact));
    }

    [Fact]
    public void A_tender_without_a_design_calls_up_the_unmet_sites_only()
    {
        var empty = HandMadeDesign.Small() with { Sites = [], Kits = [] };
        Assert.Equal(["basis.unmet"], Ids(empty));
    }

    private static List<string> Ids(TenderDesign design) => [.. NoteSelector.Select(design, Library).Select(n => n.Id)];

    /// <summary>The small design with one kit: 6 m pole, 1.0 m foundation, warm light.</summary>
    private static TenderDesign Mild() => Everywhere(
        p => p with
        {
            Pole = p.Pole with { HeightM = 6 },
            Foundation = p.Foundation with { DepthM = 1 },
            Luminaire = p.Luminaire with { ColourTemperatureK = 3000 },
            ModulesInSeries = p.ModuleCount,
        },
        s => s);

    private static TenderDesign With(NoteFact fact) => fact switch
    {
        NoteFact.ColdCharging => Everywhere(p => p, s => Climate(s, m => m with { RecordLowC = -1 })),
        NoteFact.HotBattery => Everywhere(p => p, s => Climate(s, m => m with { DailyMaxC = [.. Enumerable.Repeat(37.5, 12)] })),
        NoteFact.UnsourcedClimate => Everywhere(p => p, s => Climate(s, m => m with { Grade = ClimateGrade.Unsourced })),
        NoteFact.StrongWind => Everywhere(p => p, s => s with { Site = s.Site with { BasicWindMPerS = 30 } }),
        NoteFact.PresenceDetection => Everywhere(p => p, s => s with { Site = s.Site with { Schedule = Detecting(s.Site) } }),
        NoteFact.ArrayAboveSixtyVolts => Everywhere(p => p with { ModuleCount = 3, ModulesInSeries = 3 }, s => s),
        NoteFact.FrostOnLeadAcid => Everywhere(
            p => p with { Battery = p.Battery with { Chemistry = BatteryChemistry.AgmLeadAcid } }, s => Climate(s, m => m with { RecordLowC = -10 })),
        NoteFact.ParallelStrings => Everywhere(p => p with { ModuleCount = 2, ModulesInSeries = 1 }, s => s),
        NoteFact.SeveralBatteries => Everywhere(p => p with { BatteryStrings = 2 }, s => s),
        NoteFact.ColdWhiteLight => Everywhere(p => p with { Luminaire = p.Luminaire with { ColourTemperatureK = 4000 } }, s => s),
        NoteFact.DeepExcavation => Everywhere(p => p with { Foundation = p.Foundation with { DepthM = 1.2 } }, s => s),
        NoteFact.TallPole => Everywhere(p => p with { Pole = p.Pole with { HeightM = 8 } }, s => s),
        _ => WithoutMaintenance(),
    };

    private static TenderDesign WithoutMaintenance()
    {
        var small = HandMadeDesign.Small();
        return small with { Tender = small.Tender with { Prices = small.Tender.Prices with { MaintenanceYears = 0 } } };
    }

    private static TenderDesign WithBattery(Func<Battery, Battery> change) => Everywhere(p => p with { Battery = change(p.Battery) }, s => s);

    private static TenderDesign Everywhere(Func<PoleParts, PoleParts> parts, Func<SiteDesign, SiteDesign> site)
    {
        var small = HandMadeDesign.Small();
        return small with
        {
            Kits = [.. small.Kits.Select(k => k with { Parts = parts(k.Parts) })],
            Sites = [.. small.Sites.Select(s => site(s with { Parts = parts(s.Parts) }))],
        };
    }

    private static SiteDesign Climate(SiteDesign site, Func<MonthlyClimate, MonthlyClimate> change) =>
        site with { Climate = site.Climate with { Monthly = change(site.Climate.Monthly) } };

    private static LightingSchedule Detecting(Site site) =>
        site.Schedule with { Parts = [.. site.Schedule.Parts.Select(p => p with { PresenceFraction = 0.3 })] };

    [Fact]
    public void The_order_of_connection_is_asked_of_separate_parts_only_and_a_sealed_unit_is_not_to_be_opened()
    {
        var small = HandMadeDesign.Small();
        var notes = NoteSelector.Select(small, Library);
        Assert.Equal("separate module, battery and controller (kits K1, K2)", notes.Single(n => n.Id == "electrical.order").TriggeredBy);
        Assert.DoesNotContain(notes, n => n.Id == "electrical.sealed");

        var mixed = NoteSelector.Select(Sealed(small, 1), Library);
        Assert.Equal("separate module, battery and controller (kit K1)", mixed.Single(n => n.Id == "electrical.order").TriggeredBy);
        Assert.Equal("integrated unit closed by its maker (kit K2)", mixed.Single(n => n.Id == "electrical.sealed").TriggeredBy);

        var all = NoteSelector.Select(Sealed(small, 2), Library).Select(n => n.Id).ToList();
        Assert.DoesNotContain("electrical.order", all);
        Assert.DoesNotContain("electrical.dc_rating", all);
        Assert.DoesNotContain("electrical.shock.low", all);
    }

    /// <summary>The last kits of a design as integrated units.</summary>
    private static TenderDesign Sealed(TenderDesign design, int count)
    {
        PoleParts Unit(PoleParts p) => p with { Integrated = Tests.Design.StarterTender.Unit, Bracket = null, Enclosure = null, Circuits = [] };
        var kits = design.Kits.Select((k, i) => i >= design.Kits.Length - count ? k with { Parts = Unit(k.Parts) } : k).ToImmutableArray();
        return design with { Kits = kits, Sites = [.. design.Sites.Select(s => s with { Parts = kits.First(k => k.Id == s.KitId).Parts })] };
    }
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Kits;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>One circuit of a pole: the cable chosen and what it does.</summary>
/// <param name="Name">As printed, e.g. "module to controller".</param>
/// <param name="LengthM">One-way length, m.</param>
/// <param name="CurrentA">Greatest working current, A.</param>
/// <param name="DropFraction">Voltage drop over system voltage, fraction.</param>
/// <param name="CapacityA">Current-carrying capacity at the design ambient, A.</param>
/// <param name="Fuse">Fuse in the circuit, or null.</param>
public sealed record Circuit(string Name, Cable Cable, double LengthM, double CurrentA, double DropFraction, double CapacityA, ProtectionDevice? Fuse);

/// <summary>Every part of one pole, with counts: the make-up of a kit. Two poles with equal <see cref="Key"/> are the same kit.</summary>
/// <param name="Bracket">Null only where the module is part of an integrated unit.</param>
/// <param name="Enclosure">Null only where battery and controller are part of an integrated unit.</param>
public sealed record PoleParts(
    Luminaire Luminaire,
    Module Module,
    int ModuleCount,
    int ModulesInSeries,
    Battery Battery,
    int BatteriesInSeries,
    int BatteryStrings,
    Controller Controller,
    Pole Pole,
    Bracket? Bracket,
    Enclosure? Enclosure,
    FoundationSet Foundation,
    ImmutableArray<Circuit> Circuits,
    ImmutableArray<ProtectionDevice> OtherProtection)
{
    /// <summary>The unit that lamp, module, battery and controller are inside of, or null for separate parts; with it, bracket and enclosure are null and those four are seen through it.</summary>
    public IntegratedUnit? Integrated { get; init; }

    /// <summary>Charge controllers side by side, each with its share of the modules.</summary>
    public int ControllerCount { get; init; } = 1;

    /// <summary>Everything bought by the piece but cables, fuses and other protection, with its role and count: the integrated unit in place of the four parts inside it.</summary>
    public IEnumerable<(string Role, Part Part, int Count)> Pieces
    {
        get
        {
            if (Integrated is { } unit)
            {
                yield return ("Integrated unit", unit, 1);
            }
            else
            {
                yield return ("Luminaire", Luminaire, 1);
                yield return ("Photovoltaic module", Module, ModuleCount);
                yield return ("Battery", Battery, BatteryCount);
                yield return ("Charge controller", Controller, ControllerCount);
            }

            yield return ("Pole", Pole, 1);
            if (Bracket is { } bracket) yield return ("Module bracket", bracket, 1);
            if (Enclosure is { } enclosure) yield return ("Enclosure", enclosure, 1);
            yield return ("Foundation", Foundation, 1);
        }
    }

    public int BatteryCount => BatteriesInSeries * BatteryStrings;

    public double SystemVoltageV => Battery.NominalVoltageV * BatteriesInSeries;

    public double ArrayWp => Module.RatedWp * ModuleCount;

    public double BatteryRatedWh => Battery.RatedWh * BatteryCount;

    public string Key => string.Join(
        "|",
        new[]
        {
            Luminaire.Code, Module.Code, ModuleCount.ToString(System.Globalization.CultureInfo.InvariantCulture), Battery.Code,
            BatteryCount.ToString(System.Globalization.CultureInfo.InvariantCulture), Controller.Code, ControllerCount.ToString(System.Globalization.CultureInfo.InvariantCulture), Pole.Code, Bracket?.Code ?? "", Enclosure?.Code ?? "", Foundation.Code,
        }.Concat(Circuits.Select(c => c.Cable.Code + "+" + (c.Fuse?.Code ?? ""))).Concat(OtherProtection.Select(p => p.Code)));
}

/// <summary>Climate and night of a site, as used.</summary>
/// <param name="CautiousFactor">Factor on irradiation for the grade, fraction.</param>
/// <param name="PlaneKWhPerM2">Mean daily irradiation on the module plane by month, shading and caution included, kWh/m2.</param>
/// <param name="DarkHours">Mean hours of darkness by month, h.</param>
public sealed record SiteClimate(
    MonthlyClimate Monthly, double CautiousFactor, PlaneOrientation Plane, ImmutableArray<double> PlaneKWhPerM2, ImmutableArray<double> DarkHours, LampHours Lamp);

/// <summary>The energy side of one design: hand method beside the simulation.</summary>
/// <param name="LampInputW">Electrical input at the level used, W.</param>
/// <param name="NightlyWh">Lamp and own use over the longest month's night, Wh.</param>
/// <param name="UsableWh">Usable battery energy at end of life in the coldest month, Wh.</param>
/// <param name="AutonomyNights">Usable energy over nightly energy.</param>
/// <param name="BatteryLifeYears">Expected life, years.</param>
public sealed record EnergyDesign(
    double LampInputW, double NightlyWh, double UsableWh, double AutonomyNights, double BatteryLifeYears, HandInputs HandInputs, HandResult Hand, PowerSystem System, EnergyResult Simulated)
{
    /// <summary>The same balance on the user's own hours, where the climate holds hours; null otherwise.</summary>
    public SeriesProof? OnOwnSeries { get; init; }

    /// <summary>Headings of the module it was simulated at, the worst of which governs: 1 for a module that is turned to the sun.</summary>
    public int HeadingCount { get; init; } = 1;
}

/// <summary>Wind on the pole and the foundation.</summary>
/// <param name="Load">Characteristic loads.</param>
/// <param name="PeakPressureNPerM2">At the pole's head, as the standard prints it, N/m2.</param>
public sealed record StructureDesign(PoleLoad Load, BlockResult Foundation, double PeakPressureNPerM2)
{
    /// <summary>The wind worked with, and how the stated speed became it; null in designs made by hand.</summary>
    public WindCase? Wind { get; init; }

    public ConvertedWind? Conversion { get; init; }

    /// <summary>Period of the pole's sway, s.</summary>
    public double PeriodS { get; init; }

    /// <summary>Structural factor on every force: the design rule, or EN 40-3-1 at that period where it is more.</summary>
    public double DynamicFactor { get; init; }

    /// <summary>Stress of the open section at the door, MPa; null without a door or when its size is not known.</summary>
    public double? DoorStressMPa { get; init; }

    /// <summary>Anchor bolts of a flanged pole; null for a pole set into the ground.</summary>
    public BoltDesign? Bolts { get; init; }

    /// <summary>Depth that a pole set into the ground needs, m; null for a flanged pole.</summary>
    public double? EmbedmentM { get; init; }
}

/// <summary>Anchor bolts and base plate of a flanged pole at the strength level.</summary>
/// <param name="SpacingMm">Side of the square the bolts stand on, mm.</param>
/// <param name="TensionN">Design tension of the worst bolt, N.</param>
/// <param name="ShearN">Design shear of one bolt, N.</param>
/// <param name="UseFraction">Use of the worst bolt, fraction.</param>
/// <param name="BondLengthM">Length in concrete that holds it, m.</param>
/// <param name="PlateMm">Least thickness of an unstiffened base plate, mm.</param>
public sealed record BoltDesign(double SpacingMm, double TensionN, double ShearN, double UseFraction, double BondLengthM, double PlateMm);

/// <summary>The design of one site.</summary>
/// <param name="Poles">Poles on the site.</param>
/// <param name="KitId">Id of the kit every pole of this site is made of.</param>
/// <param name="Light">The layout and its light.</param>
/// <param name="MaintenanceFactor">Maintenance factor, fraction.</param>
/// <param name="Checks">Every check of this site's design, all complying.</param>
public sealed record SiteDesign(
    Site Site,
    SiteClimate Climate,
    int Poles,
    string KitId,
    PoleParts Parts,
    LightSolution Light,
    double MaintenanceFactor,
    EnergyDesign Energy,
    StructureDesign Structure,
    ImmutableArray<Check> Checks,
    ImmutableArray<Diagnostic> Diagnostics);

/// <summary>A kit: one make-up used on one site or several.</summary>
/// <param name="Id">K1, K2 ...</param>
/// <param name="Checks">For each check the hardest site: the row with the least margin.</param>
/// <param name="CheckSites">Site id behind each row of <paramref name="Checks"/>.</param>
public sealed record Kit(string Id, PoleParts Parts, ImmutableArray<string> SiteIds, int Poles, ImmutableArray<Check> Checks, ImmutableArray<string> CheckSites);

/// <summary>A site that could not be designed.</summary>
public sealed record UnmetSite(string SiteId, string Name, string Reason)
{
    /// <summary>The site as read, for those who survey it; null where it is not known.</summary>
    public Site? Site { get; init; }
}

/// <summary>The whole tender, designed.</summary>
public sealed record TenderDesign(
    Tender Tender,
    PartsCatalog Catalog,
    string CatalogDigest,
    ImmutableArray<DesignRule> Rules,
    ImmutableArray<InputDigest> Inputs,
    ImmutableArray<SiteDesign> Sites,
    ImmutableArray<Kit> Kits,
    ImmutableArray<UnmetSite> Unmet,
    ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>Light distributions by photometric file.</summary>
    public ImmutableSortedDictionary<string, LightDistribution> Light { get; init; } = ImmutableSortedDictionary<string, LightDistribution>.Empty;

    /// <summary>Curve of equal reliability of each kit.</summary>
    public ImmutableArray<KitCurve> Curves { get; init; } = [];

    /// <summary>Cost against the number of kits; empty where it was not asked for.</summary>
    public ImmutableArray<KitCount> KitCounts { get; init; } = [];

    /// <summary>Why each kit was chosen; empty where it was not asked for.</summary>
    public ImmutableArray<ChoiceExplanation> Choices { get; init; } = [];

    /// <summary>Each kit beside the cheapest of the other form, where the catalogue has both integrated units and separate parts.</summary>
    public ImmutableArray<FormPair> SideBySide { get; init; } = [];

    /// <summary>The employer's clauses.</summary>
    public Specification.Clauses Clauses { get; init; } = Specification.Clauses.None;

    /// <summary>The region a tender without sites is designed for, or null.</summary>
    public Regions.RegionDesign? Region { get; init; }

    /// <summary>Parts the tender names in place of a duty, studied, with the questions they raise; or null.</summary>
    public PartsStated.StatedPartsResult? PartsStated { get; init; }

    /// <summary>The employer's own price form, or null.</summary>
    public Forms.PriceForm? Form { get; init; }

    public double Rule(string id) => Rules.First(r => r.Id == id).Value;

    public int PoleCount => Sites.Sum(s => s.Poles);
}

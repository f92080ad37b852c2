using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Notes;

/// <summary>The facts that hold for a design, each in words with the sites or kits it holds for.</summary>
public sealed class NoteFacts
{
    private const int NamesPrinted = 6;

    // Bounds of when a caution is printed; no figure of the design depends on them. Common practice, no source, where nothing else is said.
    private const double HotBatteryC = 45;
    private const double FrostC = -10;
    private const double ReplacementYears = 10;
    private const double ExtraLowV = 60; // IEC 60364-4-41, no cover needed below it in dry places (from memory)
    private const double TwoMetresM = 2;
    private const double TwoPersonLiftKg = 50;
    private const double DeepM = 1.2;
    private const double TallM = 8;
    private const double StrongWindMPerS = 30;
    private const int WarmWhiteK = 3000;

    private readonly ImmutableSortedDictionary<NoteFact, string> _words;

    private NoteFacts(ImmutableSortedDictionary<NoteFact, string> words) => _words = words;

    /// <summary>Facts that hold, in the order of <see cref="NoteFact"/>.</summary>
    public IEnumerable<NoteFact> All => _words.Keys;

    public bool Has(NoteFact fact) => _words.ContainsKey(fact);

    /// <summary>The fact in words, e.g. "lithium iron phosphate battery (kits K1, K2)".</summary>
    /// <exception cref="KeyNotFoundException">The fact does not hold.</exception>
    public string Words(NoteFact fact) => _words[fact];

    /// <summary>The facts of a design.</summary>
    public static NoteFacts From(TenderDesign design)
    {
        var found = ImmutableSortedDictionary.CreateBuilder<NoteFact, string>();
        foreach (var (fact, words) in OfKits(design).Concat(OfSites(design)).Concat(OfTender(design)))
            if (words is not null) found.Add(fact, words);
        return new(found.ToImmutable());
    }

    private static IEnumerable<(NoteFact Fact, string? Words)> OfKits(TenderDesign design)
    {
        var kits = design.Kits;
        yield return (NoteFact.SeparateParts, Kits(kits, "separate module, battery and controller", p => p.Integrated is null));
        yield return (NoteFact.IntegratedUnit, Kits(kits, "integrated unit closed by its maker", p => p.Integrated is not null));
        yield return (NoteFact.LithiumBattery, Kits(kits, "lithium iron phosphate battery", p => !IsLead(p)));
        yield return (NoteFact.LeadAcidBattery, Kits(kits, "lead-acid battery" + VentilationWords(kits), IsLead));
        yield return (NoteFact.FloodedBattery, Kits(kits, "flooded lead-acid battery",
            p => p.Battery.Chemistry == BatteryChemistry.FloodedLeadAcid));
        yield return (NoteFact.SeveralBatteries, Kits(kits, "several batteries on one pole", p => p.BatteryCount > 1));
        yield return (NoteFact.ParallelStrings, Kits(kits, "strings of modules in parallel", p => p.ModuleCount > p.ModulesInSeries));
        yield return (NoteFact.WorkAboveTwoMetres, Kits(kits, "pole " + Span(kits, p => p.Pole.HeightM, "m") + " high",
            p => p.Pole.HeightM >= TwoMetresM));
        yield return (NoteFact.HeavyLift, Kits(kits, "pole of up to " + Number(kits.Select(k => k.Parts.Pole.WeightKg)) + " kg",
            p => p.Pole.WeightKg >= TwoPersonLiftKg));
        yield return (NoteFact.Excavation, Kits(kits, "foundation dug " + Span(kits, p => p.Foundation.DepthM, "m") + " deep",
            p => p.Foundation.DepthM > 0));
        yield return (NoteFact.DeepExcavation, Kits(kits, "foundation dug 1.2 m deep or more", p => p.Foundation.DepthM >= DeepM));
        yield return (NoteFact.MetalPole, Kits(kits, "metal pole", p => p.Pole.YieldMPa > 0));
        yield return (NoteFact.TallPole, Kits(kits, "pole of 8 m or more", p => p.Pole.HeightM >= TallM));
        yield return (NoteFact.ColdWhiteLight, Kits(kits, "light above 3000 K", p => p.Luminaire.ColourTemperatureK > WarmWhiteK));
    }

    private static IEnumerable<(NoteFact Fact, string? Words)> OfSites(TenderDesign design)
    {
        var sites = design.Sites;
        yield return (NoteFact.HotBattery, Sites(sites, "battery at 45 degC or more in the hottest month",
            s => HottestBatteryC(s) >= HotBatteryC));
        yield return (NoteFact.ColdCharging, Sites(sites, "record low below the least charging temperature of the lithium battery",
            IsTooColdToCharge));
        yield return (NoteFact.FrostOnLeadAcid, Sites(sites, "lead-acid battery in frost of -10 degC or less",
            s => IsLead(s.Parts) && s.Climate.Monthly.RecordLowC <= FrostC));
        yield return (NoteFact.BatteryReplacement, Sites(sites, "battery life under ten years",
            s => s.Energy.BatteryLifeYears < ReplacementYears));
        yield return (NoteFact.ArrayUpToSixtyVolts, Sites(sites, "array of at most 60 V when cold", s => s.Parts.Integrated is null && ColdArrayV(s) <= ExtraLowV));
        yield return (NoteFact.ArrayAboveSixtyVolts, Sites(sites, "array above 60 V when cold", s => s.Parts.Integrated is null && ColdArrayV(s) > ExtraLowV));
        yield return (NoteFact.RoadTraffic, Sites(sites, "road with traffic", s => s.Site.Kind == SiteKind.Road));
        yield return (NoteFact.PublicOnFoot, Sites(sites, "path or yard in public use", s => s.Site.Kind != SiteKind.Road));
        yield return (NoteFact.StrongWind, Sites(sites, "basic wind speed of 30 m/s or more",
            s => s.Site.BasicWindMPerS >= StrongWindMPerS));
        yield return (NoteFact.UnknownSoil, Sites(sites, "soil not stated", s => !s.Site.SoilStated));
        yield return (NoteFact.EstimatedClimate, Sites(sites, "climate estimated from the built-in table" + Factor(sites, ClimateGrades.IsEstimate),
            s => ClimateGrades.IsEstimate(Grade(s))));
        yield return (NoteFact.UnsourcedClimate, Sites(sites, "climate supplied without a source" + Factor(sites, g => g == ClimateGrade.Unsourced),
            s => Grade(s) == ClimateGrade.Unsourced));
        yield return (NoteFact.ShadedSite, Sites(sites, "irradiation lost to obstacles", s => s.Site.ShadedFraction > 0 || s.Site.Horizon is { IsFlat: false }));
        yield return (NoteFact.DimmedLight, Sites(sites, "dimmed for part of the night", IsDimmed));
        yield return (NoteFact.PresenceDetection, Sites(sites, "level by presence detection",
            s => s.Site.Schedule.Programmes.Any(n => n.Parts.Any(p => p.PresenceFraction < 1))));
    }

    private static IEnumerable<(NoteFact Fact, string? Words)> OfTender(TenderDesign design)
    {
        var designed = !design.Sites.IsEmpty;
        var target = design.Tender.Reliability.DarkNightsPerYear;
        var years = design.Tender.Prices.MaintenanceYears;
        yield return (NoteFact.AnyPole, designed ? Invariant($"{design.PoleCount} solar lighting poles") : null);
        yield return (NoteFact.DarkNightsAccepted, designed && target > 0 ? Invariant($"{target:0.##} dark nights a year accepted") : null);
        yield return (NoteFact.MaintenanceIncluded, designed && years > 0 ? Invariant($"{years} years of maintenance in the bill") : null);
        yield return (NoteFact.NoMaintenance, designed && years == 0 ? "no maintenance in the bill" : null);
        yield return (NoteFact.UnmetSites, design.Unmet.IsEmpty ? null : "sites without a design (" + Names("site", [.. design.Unmet.Select(u => u.SiteId)]) + ")");
    }

    private static string? Kits(ImmutableArray<Kit> kits, string words, Func<PoleParts, bool> holds)
    {
        var names = kits.Where(k => holds(k.Parts)).Select(k => k.Id).ToList();
        return names.Count == 0 ? null : words + " (" + Names("kit", names) + ")";
    }

    private static string? Sites(ImmutableArray<SiteDesign> sites, string words, Func<SiteDesign, bool> holds)
    {
        var names = sites.Where(holds).Select(s => s.Site.Id).ToList();
        return names.Count == 0 ? null : words + " (" + Names("site", names) + ")";
    }

    private static string Names(string one, List<string> names)
    {
        var shown = string.Join(", ", names.Take(NamesPrinted));
        var more = names.Count > NamesPrinted ? Invariant($" and {names.Count - NamesPrinted} more") : "";
        return (names.Count == 1 ? one : one + "s") + " " + shown + more;
    }

    private static string VentilationWords(ImmutableArray<Kit> kits)
    {
        var area = kits.Where(k => IsLead(k.Parts)).Select(k => FreeAreaCm2(k.Parts)).DefaultIfEmpty().Max();
        return Invariant($" needing openings of {area:0.0} cm2 below and above");
    }

    private static double FreeAreaCm2(PoleParts parts)
    {
        var cells = (int)Math.Round(parts.Battery.NominalVoltageV / 2) * parts.BatteryCount;
        var gas = parts.Battery.Chemistry == BatteryChemistry.FloodedLeadAcid
            ? BatteryVentilation.VentedBoostMAPerAh
            : BatteryVentilation.ValveRegulatedBoostMAPerAh;
        return BatteryVentilation.FreeAreaCm2(BatteryVentilation.FlowM3PerH(cells, gas, parts.Battery.RatedAh));
    }

    private static bool IsLead(PoleParts parts) => parts.Battery.Chemistry != BatteryChemistry.LithiumIronPhosphate;

    private static bool IsDimmed(SiteDesign site) =>
        site.Site.Schedule.Levels.Any(l => l is > 0 and < 1);

    private static bool IsTooColdToCharge(SiteDesign site) => !IsLead(site.Parts) && site.Climate.Monthly.RecordLowC < site.Parts.Battery.LeastChargeC;

    private static double HottestBatteryC(SiteDesign site) => site.Climate.Monthly.DailyMaxC.Max() + site.Energy.System.Battery.EnclosureRiseK;

    private static double ColdArrayV(SiteDesign site) => ArrayVoltage.ColdOpenCircuitV(
        site.Parts.Module.OpenCircuitV, site.Parts.Module.VoltageCoefficientPerK, site.Parts.ModulesInSeries, Math.Clamp(site.Climate.Monthly.RecordLowC, -60, 25));

    /// <summary>At what fraction the irradiation of sites of some grades is taken.</summary>
    private static string Factor(ImmutableArray<SiteDesign> sites, Func<ClimateGrade, bool> holds)
    {
        var factors = sites.Where(s => holds(Grade(s))).Select(s => s.Climate.CautiousFactor).Distinct().Order().ToList();
        return factors.Count == 0 ? "" : ", irradiation taken at " + string.Join(" or ", factors.Select(f => Invariant($"{f:0.00}")));
    }

    private static ClimateGrade Grade(SiteDesign site) => site.Climate.Monthly.Grade;

    private static string Span(ImmutableArray<Kit> kits, Func<PoleParts, double> value, string unit)
    {
        if (kits.IsEmpty) return "";
        var (low, high) = (kits.Min(k => value(k.Parts)), kits.Max(k => value(k.Parts)));
        return low == high ? Invariant($"{low:0.##} {unit}") : Invariant($"{low:0.##} to {high:0.##} {unit}");
    }

    private static string Number(IEnumerable<double> values) => Invariant($"{values.DefaultIfEmpty().Max():0}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Structure;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Whether parts go together by their sizes and ratings, as checks with numbers. A size that a maker does not state refuses nothing; it is named by
/// <see cref="NotStated"/>. These checks only refuse, so a bound of the cost stays a bound.
/// </summary>
public static class FitChecks
{
    private const string Sizes = "sizes stated by the makers";

    /// <summary>A head without an arm sits on the pole top; on an arm it sits on the arm's end, whose diameter no catalogue column states.</summary>
    public static void HeadOnPole(CheckList list, Luminaire luminaire, Pole pole)
    {
        if (pole.ArmReachM <= 0)
            Range(list, "luminaire", "Luminaire", "spigot diameter it takes", luminaire.SpigotMinMm, luminaire.SpigotMaxMm, pole.TopDiameterMm, list.IsRecording ? $"top diameter of {pole.Code}" : "");
    }

    /// <summary>The bracket clamps at the pole top.</summary>
    public static void BracketOnPole(CheckList list, Bracket bracket, Pole pole) =>
        Range(list, "bracket", "Bracket", "pole diameter it clamps", bracket.PoleMinMm, bracket.PoleMaxMm, pole.TopDiameterMm, list.IsRecording ? $"top diameter of {pole.Code}" : "");

    /// <summary>The box hangs on the shaft at its height.</summary>
    public static void BoxOnPole(CheckList list, Enclosure box, Pole pole, RuleSet rules)
    {
        var heightM = Math.Min(rules["wiring.box_height"], pole.HeightM);
        Range(
            list, "enclosure", "Enclosure", "pole diameter it takes", box.PoleMinMm, box.PoleMaxMm, Tube.DiameterMm(PoleChecks.ShaftOf(pole), heightM),
            list.IsRecording ? FormattableString.Invariant($"diameter of {pole.Code} {heightM:0.0} m above ground") : "");
    }

    /// <summary>Battery into its box: sizes of the case upright, vents, and how tight the box is.</summary>
    public static void BatteryInBox(CheckList list, BankOption bank, Enclosure box, RuleSet rules)
    {
        var battery = bank.Battery;
        list.AtLeast("enclosure.ip", "Enclosure", "ingress protection", rules["enclosure.ip"], box.IpCode, "IP", "design rule enclosure.ip; IEC 60529", 0);
        if (battery.HeightMm is { } highMm && box.InnerHeightMm is { } roomMm)
            list.AtLeast("enclosure.inner_height", "Enclosure", "clear height inside", highMm, roomMm, "mm", $"battery {battery.Code} upright; {Sizes}", 0);
        if (battery is { WidthMm: { } wideMm, DepthMm: { } deepMm } && box is { InnerWidthMm: { } innerWideMm, InnerDepthMm: { } innerDeepMm })
        {
            list.AtLeast(
                "enclosure.inner_length", "Enclosure", "longer clear side inside", Math.Max(wideMm, deepMm), Math.Max(innerWideMm, innerDeepMm), "mm",
                $"longer side of battery {battery.Code}, turned as it fits; {Sizes}", 0);
            list.AtLeast(
                "enclosure.inner_depth", "Enclosure", "shorter clear side inside", Math.Min(wideMm, deepMm), Math.Min(innerWideMm, innerDeepMm), "mm",
                $"shorter side of battery {battery.Code}, turned as it fits; {Sizes}", 0);
        }

        if (battery.NeedsVenting && box.Vented is { } vented)
            list.YesNo(
                "enclosure.vented", "Enclosure", "openings that let hydrogen out", true, vented,
                $"lead-acid battery; IEC 62485-2 asks for {FreeAreaCm2(bank):0.0} cm2 free at the inlet and as much at the outlet");
    }

    /// <summary>Free area of each opening that a lead-acid bank needs, cm2; see <see cref="BatteryVentilation"/>.</summary>
    public static double FreeAreaCm2(BankOption bank)
    {
        var cells = (int)Math.Round(bank.Battery.NominalVoltageV / 2) * bank.InSeries * bank.Strings;
        var gas = bank.Battery.Chemistry == BatteryChemistry.FloodedLeadAcid ? BatteryVentilation.VentedBoostMAPerAh : BatteryVentilation.ValveRegulatedBoostMAPerAh;
        return BatteryVentilation.FreeAreaCm2(BatteryVentilation.FlowM3PerH(cells, gas, bank.Battery.RatedAh));
    }

    /// <summary>The absorption voltage the battery asks for within what the controller can be set to, both for 12 V.</summary>
    public static void Absorption(CheckList list, BankOption bank)
    {
        if (bank.Battery.AbsorptionV is not { } askedV || SystemVoltage.ClassOf(bank.BankV) is not { } voltageClass) return;
        var per12V = askedV * bank.InSeries * 12 / voltageClass;
        if (bank.Controller.LeastAbsorptionV is { } leastV)
            list.AtMost("controller.least_absorption", "Controller", "lowest absorption voltage for 12 V", per12V, leastV, "V", $"asked for by the maker of {bank.Battery.Code}", 1);
        if (bank.Controller.GreatestAbsorptionV is { } mostV)
            list.AtLeast("controller.greatest_absorption", "Controller", "highest absorption voltage for 12 V", per12V, mostV, "V", $"asked for by the maker of {bank.Battery.Code}", 1);
    }

    /// <summary>What the makers of a pole's parts do not state, so that it was not checked: one note a part.</summary>
    public static IEnumerable<Diagnostic> NotStated(PoleParts p)
    {
        if (p.Pole.ArmReachM > 0) yield return Note(p.Pole, ["diameter of the arm's end, for the spigot of the luminaire"]);
        else if (p.Luminaire is { SpigotMinMm: null } or { SpigotMaxMm: null }) yield return Note(p.Luminaire, ["spigot diameter"]);
        if (p.Bracket is { } bracket) yield return Note(bracket, [bracket.PoleMinMm is null || bracket.PoleMaxMm is null ? "pole diameter" : ""]);
        if (p.Enclosure is not { } box) yield break;
        yield return Note(
            box,
            [
                box.PoleMinMm is null || box.PoleMaxMm is null ? "pole diameter" : "", box.InnerWidthMm is null || box.InnerHeightMm is null || box.InnerDepthMm is null ? "clear sizes inside" : "",
                p.Battery.NeedsVenting ? box.Vented is null ? "vents" : "free area of the vents" : "",
            ]);
        yield return Note(p.Battery, [p.Battery.WidthMm is null || p.Battery.HeightMm is null || p.Battery.DepthMm is null ? "sizes of the case" : "", p.Battery.AbsorptionV is null ? "absorption voltage" : ""]);
        yield return Note(p.Controller, [p.Controller.LeastAbsorptionV is null || p.Controller.GreatestAbsorptionV is null ? "range of the absorption voltage" : ""]);
    }

    private static Diagnostic Note(Part part, ImmutableArray<string> missing)
    {
        ImmutableArray<string> named = [.. missing.Where(m => m.Length > 0)];
        return Diagnostic.Note("TK650", named.IsEmpty ? "" : $"{part.Code}: not stated and so not checked: {string.Join("; ", named)}; ask its maker");
    }

    private static void Range(CheckList list, string id, string item, string what, double? leastMm, double? mostMm, double diameterMm, string basis)
    {
        if (leastMm is { } least) list.AtMost(list.IsRecording ? id + ".least_diameter" : id, item, list.IsRecording ? "least " + what : what, diameterMm, least, "mm", $"{basis}; {Sizes}", 0);
        if (mostMm is { } most) list.AtLeast(list.IsRecording ? id + ".most_diameter" : id, item, list.IsRecording ? "greatest " + what : what, diameterMm, most, "mm", $"{basis}; {Sizes}", 0);
    }
}

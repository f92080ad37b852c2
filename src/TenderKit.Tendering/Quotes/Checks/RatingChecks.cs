using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>Ratings offered against ratings asked, and against what can be true.</summary>
internal static class RatingChecks
{
    private const string OwnDesign = "tender: the kit's rating, from the design";

    /// <summary>Required against offered for the kits a line answers.</summary>
    public static IEnumerable<QuoteFinding> Required(LineMatch match, Asked asked)
    {
        var line = match.Line;
        // brought along by a unit: nothing is asked of it
        if (match.Kits.IsEmpty) yield break;
        foreach (var need in NeedsOf(match, asked))
        {
            var worst = need.Kits.OrderByDescending(k => k.Value).First();
            if (line.Value(need.Name) is not { } offered)
            {
                if (need.Alternative is { } other && line.Value(other) is not null) continue;
                yield return new QuoteFinding(
                    "TK810", Severity.Warning, line.Place, $"{need.Words} is not stated; asked: {need.Sign} {Say.Number(worst.Value)} {need.Unit}", OwnDesign,
                    $"Line {line.Place.Row} ({Say.Short(line.Text)}): please state the {need.Words}; {need.Sign} {Say.Number(worst.Value)} {need.Unit} is asked.");
                continue;
            }

            var tolerance = need.Whole ? 0 : asked.Settings.ToleranceFraction;
            var bad = need.Kits.Where(k => need.AtMost ? offered > k.Value * (1 + tolerance) : offered < k.Value * (1 - tolerance)).ToList();
            if (bad.Count == 0) continue;
            var value = need.AtMost ? bad.Min(b => b.Value) : bad.Max(b => b.Value);
            yield return new QuoteFinding(
                "TK809", Severity.Error, line.Place,
                $"{need.Words} {Say.Number(offered)} {need.Unit} for {string.Join(", ", bad.Select(b => b.Kit))}; asked: {need.Sign} {Say.Number(value)} {need.Unit}", OwnDesign,
                $"Line {line.Place.Row} ({Say.Short(line.Text)}): {need.Words} {Say.Number(offered)} {need.Unit} is offered, {need.Sign} {Say.Number(value)} {need.Unit} is asked. Do you offer a part that meets it, at the same price?")
            { KitIds = [.. bad.Select(b => b.Kit)], OwnPart = !asked.IsStated && need.Name is not ("ip_code" or "height_m") };
        }
    }

    private sealed record Need(string Name, string Words, string Unit, bool AtMost, bool Whole, List<(string Kit, double Value)> Kits, string? Alternative = null)
    {
        public string Sign => AtMost ? "at most" : "at least";
    }

    private static IEnumerable<Need> NeedsOf(LineMatch match, Asked asked) =>
        // what a light point does as a whole is judged by its run; here only that the rating is stated, the housing and the height
        asked.IsShaped ? StatedNeeds(match, asked).Where(n => n.Name is "ip_code" or "height_m" or "flux_lm" || match.Line.Value(n.Name) is null) : StatedNeeds(match, asked);

    private static IEnumerable<Need> StatedNeeds(LineMatch match, Asked asked)
    {
        var line = match.Line;
        var kits = match.Kits;
        List<(string, double)> Of(Func<AskedKit, double> pick) => [.. kits.Select(k => (k.Id, pick(k)))];
        var lamp = match.Family is "luminaire" or "unit";
        if (lamp)
        {
            yield return new("flux_lm", "luminous flux", "lm", false, false, Of(k => k.FluxLm));
            yield return new("input_power_w", "input power", "W", true, false, Of(k => k.InputPowerW));
            yield return new("ip_code", "ingress protection IP", "", false, true, Of(k => k.IpCode));
        }

        if (match.Family is "module" or "unit") yield return new("rated_wp", "module power", "Wp", false, false, Of(k => k.ModuleWp));
        if (match.Family is "battery" or "unit") foreach (var need in BatteryNeeds(line, kits, asked)) yield return need;
        if (match.Family == "controller" && line.Value("rated_charge_a") is null) yield return new("rated_charge_a", "charge current", "A", false, false, Of(k => k.ChargeA));
        if (match.Family == "pole" || (match.Family == "unit" && line.Family == "kit")) yield return new("height_m", "height", "m", false, false, Of(k => k.HeightM));
    }

    /// <summary>Ampere-hours at the voltage asked, or as much energy; a battery without a voltage is a finding of its own.</summary>
    private static IEnumerable<Need> BatteryNeeds(OfferLine line, IEnumerable<AskedKit> kits, Asked asked)
    {
        var list = kits.ToList();
        if (line.Value("rated_wh") is not null) yield return new("rated_wh", "battery energy", "Wh", false, false, [.. list.Select(k => (k.Id, Math.Min(k.BatteryWh, k.BatteryAh * (k.BankV == 12 ? 12 : 24))))]);
        else yield return new("rated_ah", "battery capacity", "Ah", false, false, [.. list.Select(k => (k.Id, AhAt(line, k)))], "rated_wh");
        if (line.Value("nominal_voltage_v") is not { } volts) yield break;
        var others = list.Where(k => LineMatcher.VoltClass(volts) != k.BankV).ToList();
        if (others.Count > 0 && asked.Kits.Length > 0)
            yield return new("nominal_voltage_v", "battery voltage", "V", volts > others[0].BankV * 1.2, false, [.. others.Select(k => (k.Id, k.BankV))]);
    }

    private static double AhAt(OfferLine line, AskedKit kit) => line.Value("nominal_voltage_v") is { } v && LineMatcher.VoltClass(v) != kit.BankV ? kit.BatteryAh * kit.BankV / LineMatcher.VoltClass(v) : kit.BatteryAh;

    /// <summary>What a line states that cannot be true, or says nothing: an Ah without a volt.</summary>
    public static IEnumerable<QuoteFinding> Believable(OfferLine line, Asked asked)
    {
        var top = asked.Ceilings;
        if (line.Value("rated_wp") is { } wp && line.Value("length_m") is { } length && line.Value("width_m") is { } width && line.Family == "module")
        {
            var perM2 = wp / (length * width);
            if (perM2 > top.ModuleWPerM2)
                yield return Untrue("TK811", line, $"{Say.Number(wp)} Wp on {Say.Number(length * 1000)} x {Say.Number(width * 1000)} mm is {Say.Number(perM2)} W/m2; modules of today give at most {Say.Number(top.ModuleWPerM2)} W/m2, here {Say.Number(top.ModuleWPerM2 * length * width)} Wp", "design rule plausible.module", "the power and the size of the module, with its data sheet");
        }

        var efficacy = line.Value("flux_lm") is { } flux && line.Value("input_power_w") is { } watt and > 0 ? flux / watt : line.Value("efficacy_lm_per_w");
        if (efficacy > top.LuminaireLmPerW)
            yield return Untrue("TK812", line, $"{Say.Number(efficacy.Value)} lm/W; luminaires of today give at most {Say.Number(top.LuminaireLmPerW)} lm/W", "design rule plausible.luminaire", "the luminous flux and the input power of the luminaire, with its test report");
        foreach (var finding in Battery(line, asked)) yield return finding;
    }

    private static IEnumerable<QuoteFinding> Battery(OfferLine line, Asked asked)
    {
        if (line.Family is not ("battery" or "integrated" or "kit")) yield break;
        if (line.Value("rated_ah") is not null && line.Value("nominal_voltage_v") is null && line.Value("rated_wh") is null)
        {
            yield return new QuoteFinding(
                "TK814", Severity.Warning, line.Place, $"{Say.Number(line.Value("rated_ah")!.Value)} Ah without a voltage says nothing about the energy", "IEC 61427-1: capacity is stated with its voltage (from memory)",
                $"Line {line.Place.Row} ({Say.Short(line.Text)}): please state the voltage of the battery, or its energy in Wh.");
        }

        var wh = line.Value("rated_wh") ?? line.Value("rated_ah") * line.Value("nominal_voltage_v");
        if (wh is not { } energy) yield break;
        if (line.Value("rated_wh") is { } stated && line.Value("rated_ah") * line.Value("nominal_voltage_v") is { } product && Math.Abs((stated / product) - 1) > 0.1)
            yield return Untrue("TK813", line, $"{Say.Number(stated)} Wh is stated, but volts times ampere-hours give {Say.Number(product)} Wh", "energy is voltage times charge", "the energy, the voltage and the capacity of the battery");
        if (line.Family != "battery") yield break;
        var lithium = Chemistry.IsLithium(line.Find("chemistry")?.Text);
        var (perKg, perL) = lithium ? (asked.Ceilings.LithiumWhPerKg, asked.Settings.LithiumWhPerL) : (asked.Ceilings.LeadWhPerKg, asked.Settings.LeadWhPerL);
        var name = lithium ? "lithium packs" : "lead-acid batteries";
        if (line.Value("weight_kg") is { } kg and > 0 && energy / kg > perKg)
            yield return Untrue("TK813", line, $"{Say.Number(energy)} Wh in {Say.Number(kg)} kg is {Say.Number(energy / kg)} Wh/kg; {name} hold at most {Say.Number(perKg)} Wh/kg, so at least {Say.Number(energy / perKg)} kg", "design rules plausible.battery_lithium and plausible.battery_lead", "the energy and the weight of the battery, with its data sheet");
        var volume = line.Value("volume_l") ?? (line.Value("thickness_m") * line.Value("length_m") * line.Value("width_m") * 1000);
        if (volume is { } litres and > 0 && energy / litres > perL)
            yield return Untrue("TK813", line, $"{Say.Number(energy)} Wh in {Say.Number(litres)} l is {Say.Number(energy / litres)} Wh/l; {name} hold at most {Say.Number(perL)} Wh/l", "quotes.plausible_lithium_wh_per_l and plausible_lead_wh_per_l; common practice, no source", "the energy and the size of the battery, with its data sheet");
    }

    private static QuoteFinding Untrue(string code, OfferLine line, string message, string source, string what) =>
        new(code, Severity.Error, line.Place, message, source, $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. Please confirm {what}.") { Untrue = true };

    /// <summary>Fuses and cables of the lines that serve the same kits.</summary>
    public static IEnumerable<QuoteFinding> Wiring(LineMatch? match, OfferLine line, IReadOnlyList<LineMatch> all, IReadOnlyList<OfferLine> cables, Asked asked)
    {
        if (line.Family == "protection")
        {
            foreach (var finding in Fuse(match, line, all, cables, asked)) yield return finding;
        }
        else if (line.Family == "cable")
        {
            foreach (var finding in Cable(match, line, asked)) yield return finding;
        }
    }

    private static IEnumerable<QuoteFinding> Fuse(LineMatch? match, OfferLine line, IReadOnlyList<LineMatch> all, IReadOnlyList<OfferLine> cables, Asked asked)
    {
        QuoteFinding Wrong(string message, string source) => new("TK818", Severity.Error, line.Place, message, source, $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. Which fuse or cable do you offer instead?");
        var bank = match is { Kits.IsEmpty: false } ? match.Kits.Max(k => k.BankV) : asked.Kits.Max(k => k.BankV);
        if (line.Value("fuse_a") is null) yield break;
        if (line.Value("rated_v_ac") is { } ac && line.Value("rated_v_dc") is null)
            yield return Wrong($"the fuse is rated {Say.Number(ac)} V AC; a fuse on a battery needs a rating for direct current, at least {Say.Number(bank * 1.25)} V DC", "IEC 60269-6 (from memory): an arc of direct current does not go out by itself");
        if (line.Value("rated_v_dc") is { } dc && dc < bank * 1.2)
            yield return Wrong($"the fuse is rated {Say.Number(dc)} V DC, below the charging voltage of {Say.Number(bank * 1.2)} V", "design rule controller.charge_voltage");
        var largest = LargestFuse(line);
        var section = SectionFor(match, all, cables);
        if (section is { } mm2 && Capacity(mm2, asked) is { } carries && largest > carries)
            yield return Wrong($"a fuse of {Say.Number(largest)} A lets the cable of {Say.Number(mm2)} mm2 burn, which carries {Say.Number(carries)} A at {Say.Number(asked.Ceilings.WiringAmbientC)} degC", "IEC 60364-5-52 tables B.52.2 and B.52.14");
        if (match is { Family: "protection set", Kits.IsEmpty: false } && largest < match.Kits.Max(k => k.ChargeA))
            yield return Wrong($"the largest fuse of {Say.Number(largest)} A blows at the charging current of {Say.Number(match.Kits.Max(k => k.ChargeA))} A", "design rule wiring.fuse_factor");
    }

    private static double LargestFuse(OfferLine line) => Math.Max(line.Value("fuse_a") ?? 0, line.Value("lamp_fuse_a") ?? 0);

    /// <summary>Thickest section offered for the same kits, else the thickest offered at all.</summary>
    private static double? SectionFor(LineMatch? match, IReadOnlyList<LineMatch> all, IReadOnlyList<OfferLine> cables)
    {
        var sets = match is { Kits.IsEmpty: false } ? all.Where(m => m.Family == "cable set" && m.Kits.Any(match.Kits.Contains)).Select(m => m.Line) : [];
        var same = sets.SelectMany(Sections).DefaultIfEmpty(0).Max();
        if (same > 0) return same;
        var any = cables.SelectMany(Sections).DefaultIfEmpty(0).Max();
        return any > 0 ? any : null;
    }

    private static IEnumerable<double> Sections(OfferLine line) => new[] { line.Value("area_mm2"), line.Value("area_2_mm2") }.OfType<double>();

    /// <summary>A flexible cable without insulation named is taken as PVC inside the pole.</summary>
    private static double? Capacity(double mm2, Asked asked) =>
        Conductor.CrossSectionsMm2.Contains(mm2) && mm2 is >= 1.5 and <= 25 ? CableCapacity.AtAmbientA(CableRun.EnclosedB2, CableInsulation.Pvc70, mm2, asked.Ceilings.WiringAmbientC) : null;

    private static IEnumerable<QuoteFinding> Cable(LineMatch? match, OfferLine line, Asked asked)
    {
        var kits = match is { Kits.IsEmpty: false } ? match.Kits : asked.Kits;
        var sections = Sections(line).ToList();
        if (sections.Count == 0) yield break;
        var largest = sections.Max();
        if (largest < 1.5 && line.Value("area_mm2") is not null)
            yield return Wrong(line, $"{Say.Number(largest)} mm2 is below the least section of 1.5 mm2 for fixed copper wiring", "IEC 60364-5-52 table 52.2 (from memory)");
        if (line.Value("length_m") is not { } length || length is < 0.5 or > 100 || line.Unit.Trim().ToUpperInvariant() is "M" || !Conductor.CrossSectionsMm2.Contains(largest)) yield break;
        var current = match is { Kits.IsEmpty: false } ? kits.Max(k => k.ChargeA) : kits.Min(k => k.ChargeA);
        var bank = kits.Min(k => k.BankV);
        var ohm = Conductor.AtTemperatureOhmPerKm(Conductor.ResistanceOhmPerKm(ConductorClass.Flexible5, largest), 50);
        var drop = Conductor.DropV(length, current, ohm) / bank;
        if (drop > asked.Ceilings.BatteryDropFraction * 2)
            yield return Wrong(line, $"over {Say.Number(length)} m of {Say.Number(largest)} mm2 a charging current of {Say.Number(current)} A loses {Say.Number(drop * 100)} % of {Say.Number(bank)} V; at most {Say.Number(asked.Ceilings.BatteryDropFraction * 100)} % is designed for on the battery circuit", "design rule wiring.drop_battery; IEC 60228 resistance");
    }

    private static QuoteFinding Wrong(OfferLine line, string message, string source) =>
        new("TK818", Severity.Error, line.Place, message, source, $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. Which cable do you offer instead?");
}

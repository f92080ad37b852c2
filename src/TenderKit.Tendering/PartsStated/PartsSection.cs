using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.PartsStated;

/// <summary>Reads <c>parts_stated</c> of a tender file: sections with numbers, or a short text the numbers stand in.</summary>
internal static class PartsSection
{
    public static ImmutableArray<StatedParts> Read(YamlSection top, string key)
    {
        if (top.HoldsKeys(key) && top.Section(key) is { } one) return PartsOf(one, 1) is { } only ? [only] : [];
        return [.. top.Sections(key).Select((s, i) => PartsOf(s, i + 1)).OfType<StatedParts>()];
    }

    private static StatedParts? PartsOf(YamlSection section, int number)
    {
        var text = PartsText.Read(section.Text("text") ?? "");
        var duty = PartsText.Read(section.Text("duty") ?? "");
        var volts = Of(section, "battery_v", text.BatteryV, 6, 60);
        var hours = Of(section, "battery_ah", text.BatteryAh ?? (text.BatteryWh is { } wh && volts is > 0 and { } v ? wh / v : null), 1, 5000);
        var (module, lamp) = (Of(section, "module_wp", text.ModuleWp, 5, 5000), Of(section, "lamp_w", text.LampW, 1, 1000));
        var read = new StatedParts(
            section.Text("name") ?? FormattableString.Invariant($"set {number}"), section.Text("clause") ?? "", [.. section.Scalars("sites").Select(s => s.Text)],
            module ?? 0, volts ?? 0, hours ?? 0, ChemistryOf(section) ?? text.Chemistry, lamp ?? 0, Of(section, "lamp_lm", text.FluxLm, 50, 200_000),
            Of(section, "controller_a", text.ControllerA, 1, 500), ControlOf(section) ?? text.Control, text.Hours ?? duty.Hours, text.Nights ?? duty.Nights);
        section.ReportUnknownKeys();
        var missing = new[] { ("the module, such as 75 Wp", module), ("the volts of the battery, such as 12 V", volts), ("the ampere-hours of the battery, such as 75 Ah", hours), ("the lamp, such as 12 W", lamp) }.Where(m => m.Item2 is null).Select(m => m.Item1).ToList();
        if (missing.Count == 0) return read;
        section.AddError("TK113", $"'{section.Path}' does not state {string.Join("; ", missing)}", section.Line);
        return null;
    }

    private static double? Of(YamlSection section, string key, double? inText, double least, double greatest)
    {
        var value = section.Has(key) ? section.Number(key, QuantityKind.Number, least) : inText;
        if (value is null || (value >= least && value <= greatest)) return value;
        section.AddError("TK116", FormattableString.Invariant($"'{key}' of '{section.Path}' is {value}, outside {least} to {greatest}"), section.Line);
        return least;
    }

    private static BatteryChemistry? ChemistryOf(YamlSection section)
    {
        if (section.Scalar("battery") is not { } word) return null;
        if (PartsText.ChemistryOf(Spelling.Folded(word.Text)) is { } known) return known;
        section.AddError("TK117", $"battery '{word.Text}' is not known; write lifepo4, gel, agm, tubular or flooded", word.Line);
        return null;
    }

    private static ControlKind? ControlOf(YamlSection section)
    {
        if (section.Scalar("control") is not { } word) return null;
        if (PartsText.ControlOf(Spelling.Folded(word.Text)) is { } known) return known;
        section.AddError("TK117", $"control '{word.Text}' is not known; write mppt or pwm", word.Line);
        return null;
    }
}

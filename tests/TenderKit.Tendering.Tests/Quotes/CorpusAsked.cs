using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Tendering.Quotes;

namespace TenderKit.Tendering.Tests.Quotes;

/// <summary>What the corpus takes as asked: requirement.csv of its author; the duty of each kit and the estimate (duty.csv) from the bid of the starter tender.</summary>
internal static class CorpusAsked
{
    public static Asked Value { get; } = Make();

    private static Asked Make()
    {
        var rows = QuoteCorpus.Ledger("requirement.csv");
        var duty = File.ReadAllLines(Path.Combine(QuoteCorpus.Folder, "..", "duty.csv")).Skip(1).Select(l => l.Split(',')).Where(l => l.Length == 3).ToList();
        ImmutableSortedDictionary<string, double> Warranty() => rows.Where(r => r["property"].StartsWith("warranty_years", StringComparison.Ordinal))
            .ToImmutableSortedDictionary(FamilyOf, r => Number(r["value"]), StringComparer.Ordinal);
        var certificates = rows.Where(r => r["property"].StartsWith("certificates", StringComparison.Ordinal))
            .ToImmutableSortedDictionary(FamilyOf, r => r["value"].Split(" and ").ToImmutableArray(), StringComparer.Ordinal);
        return new Asked(
            [.. rows.Select(r => r["kit"]).Where(k => k != "all").Distinct().Select(k => Kit(k, rows, duty))],
            120, 150, 3, "USD",
            // README of the corpus: prices were made at 1 EUR = 1.08 USD, 1 USD = 610 XOF
            ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, [KeyValuePair.Create("EUR", 1.08m), KeyValuePair.Create("XOF", 1m / 610)]),
            ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, [KeyValuePair.Create("lithium", 6.6), KeyValuePair.Create("lead", 4.4)]),
            new Ceilings(200, 240, 160, 50, 50, 1.25, 0.01),
            QuoteSettings.Usual with { Certificates = certificates, WarrantyYears = Warranty() });
    }

    /// <summary>"warranty_years, lead-acid" of the batteries is the family "battery lead".</summary>
    private static string FamilyOf(Dictionary<string, string> row) =>
        row["family"] + (row["property"].EndsWith("lithium", StringComparison.Ordinal) ? " lithium" : row["property"].EndsWith("lead-acid", StringComparison.Ordinal) ? " lead" : "");

    private static AskedKit Kit(string id, IReadOnlyList<Dictionary<string, string>> rows, List<string[]> duty)
    {
        string Text(string family, string property) => rows.First(r => r["kit"] == id && r["family"] == family && r["property"] == property)["value"];
        double Duty(string name) => Number(duty.First(d => d[0] == id && d[1] == name)[2]);
        var volts = Text("battery", "nominal_voltage_v").StartsWith("12", StringComparison.Ordinal) ? 12 : 24;
        var ah = Number(Text("battery", "rated_ah"));
        var depths = new Dictionary<string, double> { ["LithiumIronPhosphate"] = 0.9, ["AgmLeadAcid"] = 0.6, ["GelLeadAcid"] = 0.7, ["TubularLeadAcid"] = 0.75, ["FloodedLeadAcid"] = 0.6 };
        return new AskedKit(
            id,
            ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, [KeyValuePair.Create("A", (int)Number(Text("kit", "lot A"))), KeyValuePair.Create("B", (int)Number(Text("kit", "lot B")))]),
            duty.Where(d => d[0] == id && d[1].StartsWith("site ", StringComparison.Ordinal)).ToImmutableSortedDictionary(d => d[1][5..], d => (int)Number(d[2]), StringComparer.Ordinal),
            Number(Text("luminaire", "flux_lm")), Number(Text("luminaire", "input_power_w")), (int)Number(Text("luminaire", "ip_code")), Number(Text("module", "rated_wp")), volts, ah,
            ah * (id == "K3" ? 12 : volts * 12.8 / 12), Number(Text("module", "rated_wp")) / (id == "K3" ? 12 : volts * 12.8 / 12), Number(Text("pole", "height_m")),
            new KitDuty(Duty("level_fraction"), Duty("nightly_wh"), Duty("full_hours_h"), Duty("needed_array_wp"), depths.ToImmutableSortedDictionary(StringComparer.Ordinal)),
            duty.Where(d => d[0] == id && d[1].StartsWith("estimate ", StringComparison.Ordinal)).ToImmutableSortedDictionary(d => d[1][9..], d => (decimal)Number(d[2]), StringComparer.Ordinal));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

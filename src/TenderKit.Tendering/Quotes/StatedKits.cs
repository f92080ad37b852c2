using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Quotes;

/// <summary>A kit as the tender itself asks for it.</summary>
/// <param name="Poles">Poles by lot.</param>
/// <param name="SiteIds">Sites it stands at.</param>
/// <param name="PolesBySite">Poles by site where stated.</param>
/// <param name="LevelFraction">Level the lamp burns at; 1 where no dimming is stated.</param>
public sealed record StatedKit(
    string Id, ImmutableSortedDictionary<string, int> Poles, ImmutableArray<string> SiteIds, ImmutableSortedDictionary<string, int> PolesBySite,
    double FluxLm, double InputPowerW, int IpCode, double ModuleWp, double BankV, double BatteryAh, double ChargeA, double HeightM, double LevelFraction)
{
    /// <summary>Nominal energy: 12.8 V lithium for 12 V is not assumed, so that the lower class counts.</summary>
    public double BatteryWh => BankV * BatteryAh;
}

/// <summary>All that the tender asks for, kit by kit.</summary>
public sealed record StatedAsk(ImmutableArray<StatedKit> Kits);

/// <summary>Reads <c>quotes.asked</c>: kit, family, property, comparison, value, unit. Rows of kit <c>all</c> are left to the tender file.</summary>
public static class StatedKits
{
    private static readonly ImmutableArray<string> Heads = ["kit", "family", "property", "value"];

    public static Outcome<StatedAsk> Read(string path)
    {
        var problems = new List<Diagnostic>();
        var read = TableReader.Read(path);
        problems.AddRange(read.Diagnostics);
        if (read.Value?.Tables.FirstOrDefault() is not { Rows.Length: > 1 } table) return new(null, [.. problems, Bad(path, null, "holds no rows")]);
        var heads = table.Rows[0].Select(c => c.Text.Trim().ToLowerInvariant()).ToList();
        if (Heads.FirstOrDefault(h => !heads.Contains(h)) is { } absent) return new(null, [.. problems, Bad(path, 1, $"has no column '{absent}'; needed: {string.Join(", ", Heads)}")]);
        string At(int row, string head) => heads.IndexOf(head) is var i && i < table.Rows[row].Length ? table.Rows[row][i].Text.Trim() : "";
        var rows = Enumerable.Range(1, table.Rows.Length - 1).Select(i => (Row: i + 1, Kit: At(i, "kit"), Key: At(i, "family") + " " + At(i, "property"), Value: At(i, "value"))).Where(r => r.Kit.Length > 0 && r.Kit != "all").ToList();
        var kits = rows.GroupBy(r => r.Kit, StringComparer.Ordinal).Select(g => Kit(path, g.Key, [.. g], problems)).OfType<StatedKit>().ToImmutableArray();
        return new(problems.Exists(p => p.Severity == Severity.Error) || kits.IsEmpty ? null : new StatedAsk(kits), [.. problems]);
    }

    private static StatedKit? Kit(string path, string id, List<(int Row, string Kit, string Key, string Value)> rows, List<Diagnostic> problems)
    {
        var before = problems.Count;
        double Number(string key, double? otherwise = null)
        {
            var row = rows.FirstOrDefault(r => r.Key == key);
            if (row.Kit is null && otherwise is { } value) return value;
            if (row.Kit is not null && double.TryParse(row.Value.Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number > 0) return number;
            problems.Add(Bad(path, row.Kit is null ? null : row.Row, $"kit {id} needs a number above 0 for '{key}', and has '{row.Value}'"));
            return 1;
        }

        ImmutableSortedDictionary<string, int> Counts(string start) => rows.Where(r => r.Key.StartsWith(start, StringComparison.Ordinal)).DistinctBy(r => r.Key)
            .ToImmutableSortedDictionary(r => r.Key[start.Length..], r => (int)Number(r.Key), StringComparer.Ordinal);
        var sites = rows.FirstOrDefault(r => r.Key == "kit sites").Value?.Split([' ', ';'], StringSplitOptions.RemoveEmptyEntries) ?? [];
        var lots = Counts("kit lot ");
        if (lots.IsEmpty) problems.Add(Bad(path, null, $"kit {id} states no poles; add a row 'kit,lot A'"));
        if (sites.Length == 0) problems.Add(Bad(path, null, $"kit {id} states no sites; add a row 'kit,sites'"));
        var volts = Number("battery nominal_voltage_v");
        var kit = new StatedKit(
            id, lots, [.. sites], Counts("kit site "), Number("luminaire flux_lm"), Number("luminaire input_power_w"), (int)Number("luminaire ip_code"), Number("module rated_wp"),
            volts < 18 ? 12 : volts < 36 ? 24 : 48, Number("battery rated_ah"), Number("controller rated_charge_a"), Number("pole height_m"), Math.Min(1, Number("kit level_fraction", 1)));
        return problems.Count == before ? kit : null;
    }

    private static Diagnostic Bad(string path, int? row, string what) => new("TK839", Severity.Error, $"quotes.asked: {Path.GetFileName(path)} {what}", new Place(Path.GetFileName(path), Row: row));
}

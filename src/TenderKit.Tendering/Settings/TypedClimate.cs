using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Yaml;

namespace TenderKit.Tendering.Settings;

/// <summary>
/// Twelve months typed in the tender file, brought into the layout of the 12-month climate file so that both are read, checked and completed alike.
/// Values are a list, a text of twelve values, or months by name. The unit stands in the key of the irradiation, or under <c>unit</c>.
/// </summary>
internal static class TypedClimate
{
    private static readonly string[] Irradiation =
    [
        "irradiation_kwh_per_m2_day", "irradiation_mj_per_m2_day", "irradiation_wh_per_m2_day", "irradiation_kwh_per_m2_month", "irradiation_mj_per_m2_month", "irradiation",
    ];

    private static readonly (string Key, string Heading)[] Air = [("mean_c", "t_mean_c"), ("max_c", "t_max_c"), ("min_c", "t_min_c")];

    private static readonly string[] Settings = ["source", "kind", "years", "record_low_c", "record_high_c", "latitude", "longitude"];

    private static readonly string[] Months = [.. Enumerable.Range(1, 12).Select(m => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(m))];

    public static NamedClimate Read(YamlSection section)
    {
        var unit = section.Text("unit");
        var columns = Irradiation.Select(k => (Key: k, Heading: k == "irradiation" && unit is not null ? "irradiation " + unit : k)).Concat(Air)
            .Where(c => section.Has(c.Key)).Select(c => (c.Heading, Cells: Twelve(section, c.Key))).ToList();
        if (!columns.Exists(c => c.Heading.StartsWith("irradiation", StringComparison.Ordinal)))
            section.AddError("TK113", $"'{section.Path}' holds no irradiation; add irradiation_kwh_per_m2_day with twelve values and its source", section.Line);
        return new NamedClimate(null, columns.Exists(c => c.Cells is null) ? null : TableOf(section, columns), section.Line);
    }

    private static Table TableOf(YamlSection section, List<(string Heading, ImmutableArray<string>? Cells)> columns)
    {
        var lines = Settings.Select(k => (Key: k, Scalar: section.Scalar(k))).Where(s => s.Scalar is not null).Select(s => new[] { $"# {s.Key}: {s.Scalar!.Text}" })
            .Append(["month", .. columns.Select(c => c.Heading)])
            .Concat(Enumerable.Range(0, 12).Select(m => columns.Select(c => c.Cells!.Value[m]).Prepend(Months[m]).ToArray()));
        return TableReader.Rectangle(section.File, null, [.. lines.Select(l => l.Select((t, c) => new Cell(t, section.Line, c + 1)).ToList())]);
    }

    /// <summary>Twelve texts, January first, empty where a month is left out by name; null with an error where their number is wrong.</summary>
    private static ImmutableArray<string>? Twelve(YamlSection section, string key)
    {
        if (section.HoldsKeys(key)) return ByName(section.Section(key)!);
        var scalars = section.Scalars(key);
        ImmutableArray<string> values = scalars.Count == 1 ? Split(scalars[0].Text) : [.. scalars.Select(s => s.Text)];
        if (values.Length == 12) return values;
        var line = scalars.Count > 0 ? scalars[0].Line : section.Line;
        var why = values.Length < 12
            ? $"counted from January there is none for {string.Join(", ", Months.Skip(values.Length))}. Write all twelve, or name them: {{ jan: 5.2, feb: 5.4, ... }}"
            : "write January to December without a mean of the year; inside [ ] a decimal comma begins the next value: write a point";
        section.AddError("TK133", FormattableString.Invariant($"'{section.Path}.{key}' holds {values.Length} {(values.Length == 1 ? "value" : "values")} where twelve are needed; {why}"), line);
        return null;
    }

    private static ImmutableArray<string>? ByName(YamlSection months)
    {
        var values = new string[12];
        foreach (var key in months.Keys.ToList())
        {
            var text = months.Text(key) ?? "";
            if (Intake.Climate.MonthNames.Of(key) is { } m) values[m - 1] = text;
            else months.AddError("TK111", $"'{key}' in '{months.Path}' is no month; write jan to dec", months.Scalar(key)?.Line ?? months.Line);
        }

        return [.. values.Select(v => v ?? "")];
    }

    /// <summary>Values of one text, apart by spaces or semicolons, or by commas where there is neither; a comma inside a value is a decimal comma.</summary>
    private static ImmutableArray<string> Split(string text)
    {
        var parts = text.Split([' ', ';', '\t', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(p => p.TrimEnd(',')).Where(p => p.Length > 0).ToImmutableArray();
        return parts.Length > 1 ? parts : [.. text.Split(',', StringSplitOptions.TrimEntries)];
    }
}

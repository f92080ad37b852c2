using System.Globalization;
using TenderKit.Intake.Words;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Settings;

/// <summary>Reads the design rules: a flat list of rows, then the tender's overrides.</summary>
public static class RulesFile
{
    /// <summary>The rules with the overrides of a tender in place.</summary>
    /// <param name="text">Text of the rules file.</param>
    /// <param name="file">File name for messages.</param>
    /// <param name="overrides">The tender's own <c>rules</c> section, or null.</param>
    /// <param name="problems">Collects what is wrong.</param>
    public static RuleSet Read(string text, string file, YamlSection? overrides, List<Diagnostic> problems)
    {
        var rows = new List<DesignRule>();
        if (YamlFile.Read(text, file, problems) is { } top)
        {
            foreach (var section in top.Sections("rules"))
            {
                var row = RowOf(section);
                if (rows.TrueForAll(r => r.Id != row.Id)) rows.Add(row);
                else section.AddError("TK118", $"the design rule '{row.Id}' stands twice; keep one of the two", section.Line);
            }

            top.ReportUnknownKeys();
        }

        foreach (var missing in RuleIds.All.Except(rows.Select(r => r.Id)))
            problems.Add(Diagnostic.Error("TK121", $"the rules file lacks the rule '{missing}'; take it over from the template", new Place(file)));
        var rules = new RuleSet([.. overrides is null ? rows : Overridden(rows, overrides)]);
        problems.AddRange(rules.Rules.Select(RuleLimits.Problem).OfType<Diagnostic>());
        return rules;
    }

    private static DesignRule RowOf(YamlSection row)
    {
        var rule = new DesignRule(
            row.RequiredText("id"), Value(row, "value"), Value(row, "low"), Value(row, "high"), row.Text("unit") ?? "", row.RequiredText("source"), row.RequiredText("where"), false);
        row.ReportUnknownKeys();
        return rule;
    }

    private static double Value(YamlSection row, string key)
    {
        var text = row.RequiredText(key);
        if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)) return value;
        row.AddError("TK114", $"'{key}' must be a plain number, not '{text}'", row.Line);
        return 0;
    }

    private static IEnumerable<DesignRule> Overridden(List<DesignRule> rows, YamlSection overrides)
    {
        foreach (var key in overrides.Keys.Where(k => rows.TrueForAll(r => r.Id != k)))
        {
            var nearest = Nearest.Of(key, rows.Select(r => r.Id));
            overrides.AddError("TK111", $"no design rule is called '{key}'" + (nearest is null ? "" : $"; did you mean '{nearest}'?"), overrides.Scalar(key)?.Line ?? overrides.Line);
        }

        foreach (var row in rows)
            yield return overrides.Has(row.Id) ? row with { Value = Value(overrides, row.Id), Overridden = true } : row;
    }
}

using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Words;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Specification;

/// <summary>
/// Reads the employer's clauses: a table with the columns clause, item, property, comparison, value, unit, text. A row without property is for the
/// bidder's own statement. A row with a fault is reported and left out; the others stand.
/// </summary>
public static class ClauseReader
{
    private static readonly string[] _columns = ["clause", "item", "property", "comparison", "value", "unit", "text"];
    private static readonly string[] _needed = ["clause", "item", "property", "comparison", "value"];

    private static readonly ImmutableArray<(string Word, ClauseComparison Comparison)> _comparisons =
    [
        ("at least", ClauseComparison.AtLeast), ("at most", ClauseComparison.AtMost), ("equals", ClauseComparison.EqualTo), ("one of", ClauseComparison.OneOf),
        ("contains", ClauseComparison.Contains), ("yes", ClauseComparison.Yes), (">=", ClauseComparison.AtLeast), ("<=", ClauseComparison.AtMost), ("=", ClauseComparison.EqualTo),
    ];

    /// <summary>The clauses; null when a column is missing.</summary>
    public static Outcome<Clauses> Read(TableFile file)
    {
        var table = file.Tables[0];
        var problems = new List<Diagnostic>();
        var head = table.Rows.FindIndex(r => r.Any(c => Plain(c.Text) == "clause"));
        var at = _columns.ToDictionary(c => c, c => head < 0 ? -1 : table.Rows[head].FindIndex(x => Plain(x.Text) == c), StringComparer.Ordinal);
        if (_needed.Where(c => at[c] < 0).ToArray() is { Length: > 0 } missing)
        {
            return Outcome.None<Clauses>(Diagnostic.Error(
                "TK644", $"the clauses lack the column {string.Join(", ", missing)}; give the columns {string.Join(", ", _columns)}", new Place(table.File, table.Sheet)));
        }

        var clauses = ImmutableArray.CreateBuilder<Clause>();
        var statements = ImmutableArray.CreateBuilder<StatementClause>();
        foreach (var row in table.Rows.Skip(head + 1).Where(r => r.Any(c => !c.IsEmpty)))
        {
            string Of(string column) => at[column] < 0 ? "" : row[at[column]].Text;
            var place = new Place(table.File, table.Sheet, row[0].Row);
            if (Of("property").Length == 0)
            {
                statements.Add(new StatementClause(Of("clause"), Of("item"), Of("text")));
                problems.Add(Diagnostic.Note("TK649", $"clause {Of("clause")} names no property; answer it in the bidder's statement: {Of("text")}", place));
            }
            else if (PropertyOf(Of("item"), Of("property"), place, problems) is { } property
                && ComparisonOf(Of("comparison"), property, place, problems) is { } comparison
                && Value(row[at["value"]], Of("unit"), property, comparison, place, problems) is var (value, words))
            {
                clauses.Add(new Clause(Of("clause"), property, comparison, value, words, Of("text")));
            }
        }

        return Outcome.Of(new Clauses(clauses.ToImmutable(), statements.ToImmutable()), problems);
    }

    private static ClauseProperty? PropertyOf(string item, string name, Place place, List<Diagnostic> problems)
    {
        var ofItem = ClauseProperties.All.Where(p => p.Item == Plain(item)).ToArray();
        if (ofItem.Length == 0)
            return Unknown("item", item, ClauseProperties.All.Select(p => p.Item).Distinct(), place, problems);
        return Array.Find(ofItem, p => p.Name == Plain(name)) ?? Unknown($"property of {item}", name, ofItem.Select(p => p.Name), place, problems);
    }

    private static ClauseProperty? Unknown(string what, string written, IEnumerable<string> known, Place place, List<Diagnostic> problems)
    {
        var nearest = Nearest.Of(written, known);
        problems.Add(Diagnostic.Error(
            "TK645", $"{what} '{written}' is not known" + (nearest is null ? "" : $"; did you mean '{nearest}'?") + $" Known: {string.Join(", ", known)}", place));
        return null;
    }

    private static ClauseComparison? ComparisonOf(string text, ClauseProperty property, Place place, List<Diagnostic> problems)
    {
        var found = _comparisons.Where(c => c.Word == Plain(text)).Select(c => (ClauseComparison?)c.Comparison).FirstOrDefault();
        var fits = property.FeatureOf is not null ? found == ClauseComparison.Yes
            : property.WordsOf is not null ? found is ClauseComparison.EqualTo or ClauseComparison.OneOf or ClauseComparison.Contains
            : found is ClauseComparison.AtLeast or ClauseComparison.AtMost or ClauseComparison.EqualTo;
        if (fits) return found;
        var known = property.FeatureOf is not null ? "yes" : property.WordsOf is not null ? "equals, one of, contains" : "at least, at most, equals";
        problems.Add(Diagnostic.Error("TK646", $"comparison '{text}' does not suit {property.Item} {property.Name}; use {known}", place));
        return null;
    }

    private static (double? Value, ImmutableArray<string> Words)? Value(
        Cell cell, string unit, ClauseProperty property, ClauseComparison comparison, Place place, List<Diagnostic> problems)
    {
        if (comparison == ClauseComparison.Yes) return (null, []);
        if (property.WordsOf is not null)
        {
            ImmutableArray<string> words = [.. cell.Text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
            if (words.Length > 0) return (null, words);
            problems.Add(Diagnostic.Error("TK647", "the value is empty; write the word asked for, several separated by ';'", place));
            return null;
        }

        var reading = property.Kind == QuantityKind.Number ? UserNumber.Read(WithoutUnit(cell.Text, property.Unit), QuantityKind.Number) : UserNumber.Read(cell, property.Kind, unit: unit.Length == 0 ? null : unit);
        if (property.Kind == QuantityKind.Number && unit.Length > 0 && WithoutUnit("0 " + unit, property.Unit) != "0")
            problems.Add(Diagnostic.Error("TK647", $"unit '{unit}' does not suit {property.Item} {property.Name}, which is in {property.Unit}", place));
        else if (reading.Value is { } value)
            return (value * property.Factor, []);
        else
            problems.Add(Diagnostic.Error("TK647", $"value '{cell.Text}' {reading.Problem}; {property.Item} {property.Name} is in {property.Unit}", place));
        return null;
    }

    /// <summary>A value without the unit or code it carries: "IP66", "5 years", "130 lm/W".</summary>
    private static string WithoutUnit(string text, string unit)
    {
        string[] spellings = unit switch
        {
            "years" => ["years", "year", "yr", "yrs", "a"],
            "nights" => ["nights", "night", "days", "day"],
            "um" => ["um", "µm", "μm", "micrometres", "microns"],
            "MPa" => ["MPa", "N/mm2", "N/mm²"],
            "W/m2" => ["W/m2", "W/m²"],
            _ => [unit],
        };
        var plain = text.Trim();
        foreach (var spelling in spellings.Where(s => s.Length > 0))
        {
            if (plain.StartsWith(spelling, StringComparison.OrdinalIgnoreCase)) return plain[spelling.Length..].Trim();
            if (plain.EndsWith(spelling, StringComparison.OrdinalIgnoreCase)) return plain[..^spelling.Length].Trim();
        }

        return plain;
    }

    private static string Plain(string text) => text.Trim().ToLowerInvariant();

    private static int FindIndex<T>(this ImmutableArray<T> items, Func<T, bool> test)
    {
        for (var i = 0; i < items.Length; i++)
        {
            if (test(items[i])) return i;
        }

        return -1;
    }
}

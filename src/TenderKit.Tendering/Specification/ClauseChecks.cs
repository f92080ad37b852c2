using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Specification;

/// <summary>Clauses as checks: the same check leaves a part out of the choice and prints the row of the compliance table.</summary>
public static class ClauseChecks
{
    /// <summary>The check of a clause on a part; null when the clause is about something else.</summary>
    public static Check? Of(Clause clause, Part part)
    {
        var property = clause.Property;
        var found = property.NumberOf?.Invoke(part) is { } number ? OfNumber(clause, number)
            : property.WordsOf?.Invoke(part) is { } words ? OfWords(clause, words)
            : property.FeatureOf?.Invoke(part) is { } feature ? Check.YesNo(IdOf(clause), ItemOf(clause), property.Name, true, feature, BasisOf(clause))
            : null;
        return found is null ? null : found with { Clause = clause.Number };
    }

    /// <summary>All clauses on a finished design: those of its parts and those of its results.</summary>
    public static IEnumerable<Check> Of(Clauses clauses, SiteDesign design)
    {
        Part[] parts = [.. design.Parts.Pieces.Select(p => p.Part), .. design.Parts.Circuits.Select(c => c.Cable).Distinct(), .. design.Parts.OtherProtection.Distinct()];
        foreach (var clause in clauses.All)
        {
            if (clause.Property.ResultOf is { } result) yield return OfNumber(clause, result(design)) with { Clause = clause.Number };
            else if (parts.Select(p => Of(clause, p)).OfType<Check>().OrderBy(c => c.Complies).FirstOrDefault() is { } check) yield return check;
        }
    }

    private static Check OfNumber(Clause clause, double offered)
    {
        var property = clause.Property;
        if (clause.Comparison != ClauseComparison.EqualTo)
        {
            var comparison = clause.Comparison == ClauseComparison.AtLeast ? Comparison.AtLeast : Comparison.AtMost;
            return new Check(IdOf(clause), ItemOf(clause), property.Name, comparison, clause.Value!.Value, offered, property.Unit, BasisOf(clause), property.Decimals);
        }

        string Text(double value) => (Math.Round(value, property.Decimals).ToString(System.Globalization.CultureInfo.InvariantCulture) + " " + property.Unit).Trim();
        return Check.InWords(IdOf(clause), ItemOf(clause), property.Name, Text(clause.Value!.Value), Text(offered), Math.Abs(offered - clause.Value.Value) <= 1e-9 * Math.Abs(offered), BasisOf(clause));
    }

    private static Check OfWords(Clause clause, ImmutableArray<string> offered)
    {
        bool Has(string word) => clause.Comparison == ClauseComparison.Contains
            ? offered.Any(o => o.Contains(word, StringComparison.OrdinalIgnoreCase))
            : offered.Any(o => o.Equals(word, StringComparison.OrdinalIgnoreCase));
        var complies = clause.Comparison == ClauseComparison.OneOf ? clause.Words.Any(Has) : clause.Words.All(Has);
        var shown = clause.Property.Name == "certificates" ? string.Join(", ", offered) : offered.ElementAtOrDefault(1) ?? offered.FirstOrDefault();
        return Check.InWords(
            IdOf(clause), ItemOf(clause), clause.Property.Name, string.Join(clause.Comparison == ClauseComparison.OneOf ? " or " : ", ", clause.Words),
            shown is null or "" ? "none" : shown, complies, BasisOf(clause));
    }

    private static string IdOf(Clause clause) => $"clause.{clause.Number}.{clause.Property.Item}.{clause.Property.Name.Replace(' ', '_')}";

    private static string ItemOf(Clause clause) => char.ToUpperInvariant(clause.Property.Item[0]) + clause.Property.Item[1..];

    private static string BasisOf(Clause clause) => "clause " + clause.Number + (clause.Text.Length == 0 ? "" : ": " + clause.Text);
}

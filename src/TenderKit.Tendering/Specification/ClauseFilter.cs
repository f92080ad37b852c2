using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Specification;

/// <summary>
/// Leaves out the parts that do not meet the employer's clauses. A clause that no part of its family meets is an error that names the nearest miss;
/// the choice goes on without it, and the compliance table says that it is not met.
/// </summary>
public static class ClauseFilter
{
    public static PartsCatalog Run(PartsCatalog all, Clauses clauses, List<Diagnostic> problems)
    {
        if (clauses.All.IsEmpty) return all;
        var filtered = new PartsCatalog(
            Of(all.Luminaires, clauses, problems), Of(all.Modules, clauses, problems), Of(all.Batteries, clauses, problems), Of(all.Controllers, clauses, problems),
            Of(all.Poles, clauses, problems), Of(all.Foundations, clauses, problems), Of(all.Cables, clauses, problems), Of(all.Protection, clauses, problems),
            Of(all.Enclosures, clauses, problems), Of(all.Brackets, clauses, problems), all.Services)
        {
            IntegratedUnits = Meeting(all.IntegratedUnits, clauses.All),
        };
        return filtered;
    }

    private static ImmutableArray<T> Of<T>(ImmutableArray<T> parts, Clauses clauses, List<Diagnostic> problems)
        where T : Part
    {
        if (parts.IsEmpty) return parts;
        ImmutableArray<Clause> own = [.. clauses.All.Where(c => parts.Any(c.Property.IsOf))];
        foreach (var clause in own.Where(c => Meeting(parts, [c]).IsEmpty).ToArray())
        {
            problems.Add(Refusal($"clause {clause.Number}: no {clause.Property.Item} of the catalogue meets it", parts, [clause]));
            own = own.Remove(clause);
        }

        if (Meeting(parts, own) is { IsEmpty: false } left) return left;
        problems.Add(Refusal($"clauses {string.Join(", ", own.Select(c => c.Number).Distinct())}: no {own[0].Property.Item} of the catalogue meets all of them", parts, own));
        var fewest = parts.Min(p => Missed(p, own));
        return [.. parts.Where(p => Missed(p, own) == fewest)];
    }

    private static ImmutableArray<T> Meeting<T>(ImmutableArray<T> parts, ImmutableArray<Clause> clauses)
        where T : Part => [.. parts.Where(p => Missed(p, clauses) == 0)];

    private static int Missed(Part part, ImmutableArray<Clause> clauses) => clauses.Count(c => ClauseChecks.Of(c, part) is { Complies: false });

    private static Diagnostic Refusal<T>(string what, ImmutableArray<T> parts, ImmutableArray<Clause> clauses)
        where T : Part
    {
        var rejections = new Rejections();
        foreach (var part in parts) rejections.Accept(() => part.Code, [.. clauses.Select(c => ClauseChecks.Of(c, part)).OfType<Check>()]);
        return Diagnostic.Error("TK648", $"{what}; {rejections.NearestMiss}; add such a part, or declare the deviation");
    }
}

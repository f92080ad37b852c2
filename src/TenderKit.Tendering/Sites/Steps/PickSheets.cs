using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>The sheets of a workbook that are the site list.</summary>
/// <param name="Read">Sheets to be read, in the order of the file; at least one.</param>
public sealed record PickedSheets(ImmutableArray<ColumnMapping> Read, ImmutableArray<Diagnostic> Diagnostics);

/// <summary>
/// Several sheets: all visible ones whose headings are those of a whole site list are read, since many lists keep a sheet per lot or
/// district; a sheet that only repeats the sites of another is not. Hidden sheets are read only when no other is a list.
/// </summary>
public static class PickSheets
{
    /// <param name="needed">Groups of meanings of which a list has at least one each.</param>
    public static PickedSheets Apply(ImmutableArray<ColumnMapping> sheets, IReadOnlyList<string[]> needed)
    {
        bool IsList(ColumnMapping m) => m.HeaderRow is not null && needed.All(names => names.Any(n => m.Of(n) is not null)) && m.DataRows.Any(r => r.Any(c => !c.IsEmpty));
        var lists = sheets.Where(m => !m.Table.IsHidden && IsList(m)).ToList();
        if (lists.Count == 0) lists = [.. sheets.Where(IsList)];
        if (lists.Count == 0) lists = [sheets.OrderBy(m => m.Table.IsHidden).ThenByDescending(m => m.Fit).First()];
        var found = new List<Diagnostic>();
        var read = WithoutRepeats(lists, found);
        if (sheets.Length > 1) found.Insert(0, Chosen(sheets, read));
        found.AddRange(read.Where(m => m.Table.IsHidden).Select(m => Hidden(m.Table)));
        return new([.. read], [.. found]);
    }

    private static List<ColumnMapping> WithoutRepeats(List<ColumnMapping> lists, List<Diagnostic> found)
    {
        var read = new List<ColumnMapping>();
        foreach (var list in lists.OrderByDescending(l => Keys(l).Count).ThenByDescending(l => l.Fit))
        {
            var keys = Keys(list);
            if (keys.Count > 0 && read.Find(r => keys.IsSubsetOf(Keys(r))) is { } other)
                found.Add(Diagnostic.Warning("TK192", $"repeats sites of sheet '{other.Table.Sheet}' and is not read; remove it, or give its sites numbers of their own",
                    new Place(list.Table.File, list.Table.Sheet)));
            else read.Add(list);
        }

        return [.. lists.Where(read.Contains)];
    }

    private static HashSet<string> Keys(ColumnMapping mapping) => mapping.Of(SiteColumns.Id) is not { } id
        ? []
        : [.. mapping.DataRows.Select(r => r[id.Column - 1].Text).Where(t => t.Length > 0 && !SiteWords.IsTotal(t))];

    private static Diagnostic Chosen(ImmutableArray<ColumnMapping> sheets, List<ColumnMapping> read)
    {
        var others = sheets.Except(read).Select(m => $"'{m.Table.Sheet}'").ToList();
        var names = string.Join(", ", read.Select(m => $"'{m.Table.Sheet}'"));
        var rest = others.Count == 0 ? "" : $"; not read: {string.Join(", ", others)}";
        return Diagnostic.Note("TK192", FormattableString.Invariant($"the workbook has {sheets.Length} sheets; {names} {(read.Count == 1 ? "was" : "were")} read as the site list{rest}"),
            new Place(sheets[0].Table.File));
    }

    private static Diagnostic Hidden(Intake.Tables.Table table) =>
        Diagnostic.Warning("TK124", "the sheet is hidden, yet the only site list, and was read; check that it is the right one", new Place(table.File, table.Sheet));
}

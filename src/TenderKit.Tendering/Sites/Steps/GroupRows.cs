using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>
/// A row that names the district or lot of the rows below it ("District: Kolwa", "LOT 2") is no site; where the list has no column for it, the
/// rows below get it in one.
/// </summary>
public static partial class GroupRows
{
    public static ColumnMapping Apply(ColumnMapping mapping)
    {
        var groups = mapping.DataRows.Select(row => (row[0].Row, Group: GroupOf(mapping, row))).Where(g => g.Group is not null).ToDictionary(g => g.Row, g => g.Group!.Value);
        if (groups.Count == 0) return mapping;
        var found = groups.Select(g => Diagnostic.Note("TK125", $"the row names the {g.Value.Meaning} of those below: '{g.Value.Value}'",
            new Place(mapping.Table.File, mapping.Table.Sheet, g.Key)));
        foreach (var meaning in groups.Values.Select(g => g.Meaning).Distinct().Where(m => mapping.Of(m) is null)) mapping = WithColumn(mapping, meaning);
        return mapping with { Table = mapping.Table with { Rows = [.. Filled(mapping, groups)] }, Diagnostics = mapping.Diagnostics.AddRange(found) };
    }

    private static IEnumerable<ImmutableArray<Cell>> Filled(ColumnMapping mapping, Dictionary<int, (string Meaning, string Value)> groups)
    {
        var current = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var row in mapping.Table.Rows)
        {
            if (row.Length > 0 && groups.TryGetValue(row[0].Row, out var group))
            {
                if (group.Meaning == SiteColumns.Lot) current.Remove(SiteColumns.District);
                current[group.Meaning] = group.Value;
            }
            else if (row.Length == 0 || row[0].Row < mapping.FirstDataRow || row.All(c => c.IsEmpty)) yield return row;
            else yield return current.Aggregate(row, (cells, g) => With(cells, mapping.Of(g.Key)!.Column - 1, g.Value));
        }
    }

    private static ImmutableArray<Cell> With(ImmutableArray<Cell> row, int index, string text) =>
        row[index].IsEmpty ? row.SetItem(index, row[index] with { Text = text }) : row;

    private static ColumnMapping WithColumn(ColumnMapping mapping, string meaning)
    {
        var column = mapping.Table.Rows.Max(r => r.Length) + 1;
        var rows = mapping.Table.Rows.Select(r => r.Length == 0 ? r : r.Add(new Cell(r[0].Row == mapping.HeaderRow ? meaning : "", r[0].Row, column)));
        var added = new MappedColumn(column, meaning, SiteColumns.All.First(m => m.Id == meaning), null, 1, "");
        return mapping with { Table = mapping.Table with { Rows = [.. rows] }, Columns = mapping.Columns.Add(added) };
    }

    private static (string Meaning, string Value)? GroupOf(ColumnMapping mapping, ImmutableArray<Cell> row)
    {
        var texts = row.Where(c => !c.IsEmpty).Select(c => (c.Text, c.Number)).Distinct().ToList();
        if (texts is not [{ Number: null } only]) return null;
        if (Named().Match(only.Text) is { Success: true } named)
            return (named.Groups["lot"].Success ? SiteColumns.Lot : SiteColumns.District, named.Groups["name"].Value.Trim());
        return mapping.Table.Merged.Any(m => m.FirstRow == row[0].Row && m.LastRow == m.FirstRow && m.LastColumn > m.FirstColumn) && !SiteWords.IsTotal(only.Text)
            ? (SiteColumns.District, only.Text)
            : null;
    }

    [GeneratedRegex(@"^\s*(?:(?<lot>lot|lote|package|tranche)|district|ward|commune|municipality|municipio|municipalit\u00E9|munic\u00EDpio|region|r\u00E9gion|province|provincia|prov\u00EDncia|county|zone|zona|sector|secteur|village|distrito|sub-?county|constituency|cercle|arrondissement|departement|d\u00E9partement|departamento)\b\s*(?:no\.?|n\u00B0|nr\.?|of|de|du|:|-|\u2013)*\s*(?<name>\S.{0,60}?)\s*:?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}

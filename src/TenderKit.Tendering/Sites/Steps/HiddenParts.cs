using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>
/// Hidden does not mean absent: hidden rows are read, and a hidden column is read where no visible one has its meaning; each is said, so that
/// nobody bids on what they have not seen.
/// </summary>
public static class HiddenParts
{
    public static ImmutableArray<Diagnostic> Of(ColumnMapping mapping)
    {
        var place = new Place(mapping.Table.File, mapping.Table.Sheet);
        var found = mapping.Columns.Where(c => c.IsHidden && c.Meaning is not null && c.Sample.Length > 0)
            .Select(c => Diagnostic.Warning("TK124", $"the column is hidden and was read as {c.Meaning!.Id}; show it and check it, or remove it", place with { Column = c.Heading }))
            .ToList();
        var rows = mapping.Table.HiddenRows.Where(r => r >= mapping.FirstDataRow && mapping.DataRows.Any(d => d[0].Row == r && d.Any(c => !c.IsEmpty))).ToList();
        if (rows.Count > 0)
            found.Add(Diagnostic.Warning("TK124",
                $"{(rows.Count == 1 ? "row " : "rows ")}{Ranges(rows)} {(rows.Count == 1 ? "is hidden and was" : "are hidden and were")} read; remove what is not to be lit", place));
        return [.. found];
    }

    /// <summary>5, 7 to 9.</summary>
    private static string Ranges(List<int> rows)
    {
        var texts = new List<string>();
        for (var i = 0; i < rows.Count; i++)
        {
            var first = i;
            while (i + 1 < rows.Count && rows[i + 1] == rows[i] + 1) i++;
            texts.Add(first == i ? FormattableString.Invariant($"{rows[i]}") : FormattableString.Invariant($"{rows[first]} to {rows[i]}"));
        }

        return string.Join(", ", texts);
    }
}

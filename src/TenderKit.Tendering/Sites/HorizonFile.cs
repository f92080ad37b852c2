using System.Collections.Immutable;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>Reads a table of skylines: one row a direction, with site, azimuth and elevation. A horizon in the site list goes before it.</summary>
public static class HorizonFile
{
    private const string Site = "site";
    private const string Azimuth = "azimuth";
    private const string Elevation = "elevation";

    private static readonly ImmutableArray<ColumnMeaning> Columns =
    [
        ColumnMeaning.Of(Site, null, "site|site id|id|no|site no|code|sitio|local"),
        ColumnMeaning.Of(Azimuth, null, "azimuth|azimuth deg|azimuth degrees|direction|bearing|azimut|acimut|azimute"),
        ColumnMeaning.Of(Elevation, null, "elevation|elevation deg|elevation degrees|height deg|angle|hauteur|elevacion|elevacao|altura"),
    ];

    /// <summary>The sites with their horizons; a site whose rows cannot be read is left out with an error.</summary>
    public static ImmutableArray<Site> Apply(Table table, ImmutableArray<Site> sites, List<Diagnostic> problems)
    {
        var map = ColumnMap.Find(table, Columns);
        var place = new Place(table.File, table.Sheet, map.HeaderRow);
        if (map.HeaderRow is null || Columns.Any(c => map.Of(c.Id) is null))
        {
            problems.Add(Diagnostic.Error("TK197", "the file of horizons has no headings site, azimuth and elevation; write them above the rows", place));
            return [];
        }

        var rows = map.DataRows.Where(r => r.Any(c => !c.IsEmpty)).GroupBy(r => Text(map, r, Site), StringComparer.OrdinalIgnoreCase).ToList();
        foreach (var unknown in rows.Where(g => !sites.Any(s => s.Id.Equals(g.Key, StringComparison.OrdinalIgnoreCase))))
            problems.Add(Diagnostic.Warning("TK198", $"the horizon of '{unknown.Key}' belongs to no site that could be read; correct the name or the site list", place with { Row = unknown.First()[0].Row }));
        return [.. sites.Select(s => With(s, rows.Find(g => g.Key.Equals(s.Id, StringComparison.OrdinalIgnoreCase)), map, problems)).OfType<Site>()];
    }

    private static Site? With(Site site, IEnumerable<ImmutableArray<Cell>>? rows, ColumnMapping map, List<Diagnostic> problems)
    {
        if (rows is null || site.Horizon is not null) return site;
        var points = new List<(double, double)>();
        foreach (var row in rows)
        {
            var (azimuth, elevation) = (UserNumber.Read(Text(map, row, Azimuth), QuantityKind.Number), UserNumber.Read(Text(map, row, Elevation), QuantityKind.Number));
            if (azimuth.Value is { } a && elevation.Value is { } e) points.Add((a, e));
            else return No(row[0].Row, $"azimuth '{Text(map, row, Azimuth)}' and elevation '{Text(map, row, Elevation)}' are to be numbers of degrees");
        }

        var (profile, problem) = HorizonText.Of(points);
        return profile is null ? No(rows.First()[0].Row, "its horizon " + problem) : site with { Horizon = profile };

        Site? No(int row, string what)
        {
            problems.Add(Diagnostic.Error("TK199", what + "; the site is left out until it is corrected", new Place(map.Table.File, map.Table.Sheet, row, Site: site.Id)));
            return null;
        }
    }

    private static string Text(ColumnMapping map, ImmutableArray<Cell> row, string meaning) => row[map.Of(meaning)!.Column - 1].Text;
}

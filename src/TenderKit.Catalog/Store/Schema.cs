using TenderKit.Catalog.Families;

namespace TenderKit.Catalog.Store;

/// <summary>Tables of the store: one strict table per family, one that keeps codes unique over all families, one for photometric files.</summary>
internal static class Schema
{
    /// <summary>Marks a database file as a catalogue of this program ("TKIT").</summary>
    public const int ApplicationId = 0x544B4954;

    public static string Create => string.Join('\n', Statements());

    public static string Insert(PartFamily family) =>
        $"INSERT INTO {family.Name} ({Names(family, c => c.Name)}) VALUES ({Names(family, c => "@" + c.Name)})";

    /// <summary>All rows as a person would write them in a csv file.</summary>
    public static string SelectForExport(PartFamily family) =>
        $"SELECT {Names(family, Exported)} FROM {family.Name} ORDER BY code";

    private static string Exported(PartColumn column) =>
        column.IsYesNo ? $"CASE {column.Name} WHEN 1 THEN 'yes' ELSE 'no' END AS {column.Name}" : column.Name;

    private static string Names(PartFamily family, Func<PartColumn, string> name) => string.Join(", ", family.Columns.Select(name));

    private static IEnumerable<string> Statements()
    {
        yield return $"PRAGMA application_id = {ApplicationId};";
        yield return "CREATE TABLE parts (code TEXT NOT NULL PRIMARY KEY, family TEXT NOT NULL) STRICT;";
        yield return "CREATE TABLE photometry (file TEXT NOT NULL PRIMARY KEY, bytes BLOB NOT NULL) STRICT;";
        foreach (var family in PartFamily.All)
            yield return $"CREATE TABLE {family.Name} (\n    {string.Join(",\n    ", family.Columns.Select(Column))}\n) STRICT;";
    }

    private static string Column(PartColumn column)
    {
        var definition = $"{column.Name} {column.SqlType}" + (column.IsNullable ? "" : " NOT NULL");
        if (column.IsYesNo) definition += $" CHECK ({column.Name} IN (0, 1))";
        if (column.Choices.Count > 0 && !column.IsList)
            definition += $" CHECK ({column.Name} IN ({string.Join(", ", column.Choices.Select(c => $"'{c}'"))}))";
        return column.PropertyName switch
        {
            nameof(Part.Code) => definition + " PRIMARY KEY REFERENCES parts (code)",
            nameof(Luminaire.PhotometricFile) => definition + " REFERENCES photometry (file)",
            _ => definition,
        };
    }
}

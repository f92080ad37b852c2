using System.Collections.Immutable;
using TenderKit.Catalog.Families;

namespace TenderKit.Catalog.Store;

/// <summary>
/// Tables of the store: one strict table per family, one that keeps codes unique over all families, one for the prices of larger
/// quantities, one for photometric files; and the indexes that matching asks for.
/// </summary>
internal static class Schema
{
    /// <summary>Marks a database file as a catalogue of this program ("TKIT").</summary>
    public const int ApplicationId = 0x544B4954;

    /// <summary>What a family is searched by, most telling column first.</summary>
    private static readonly ImmutableArray<(string Family, string Columns)> Indexes =
    [
        ("luminaires", "flux_lm"),
        ("modules", "rated_wp"),
        ("batteries", "nominal_voltage_v, rated_wh"),
        ("controllers", "rated_charge_a"),
        ("poles", "height_m"),
        ("foundation_sets", "anchor_bolt_mm"),
        ("cables", "cross_section_mm2"),
        ("protection", "kind, rated_a"),
        ("enclosures", "usable_volume_l"),
        ("brackets", "max_module_area_m2"),
        ("fixings", "kind"),
        ("integrated_units", "input_power_w"),
        ("services", "use"),
    ];

    /// <summary>Properties that are reckoned from others, as columns the store reckons.</summary>
    private static readonly ImmutableArray<(string Family, string Property, string Column, string Expression)> Reckoned =
    [
        ("batteries", nameof(Battery.RatedWh), "rated_wh", "nominal_voltage_v * rated_ah"),
        ("integrated_units", nameof(IntegratedUnit.RatedWh), "rated_wh", "nominal_voltage_v * rated_ah"),
    ];

    public static string Create => string.Join('\n', Statements());

    public static IEnumerable<PartColumn> Own(PartFamily family) => family.Columns.Where(c => !c.IsPrices);

    public static string Insert(PartFamily family) =>
        $"INSERT INTO {family.Name} ({Names(Own(family), c => c.Name)}) VALUES ({Names(Own(family), c => "@" + c.Name)})";

    /// <summary>All columns of a family, in its order.</summary>
    public static string Select(PartFamily family) => $"SELECT {Names(family.Columns, c => Stored(c, family))} FROM {family.Name}";

    /// <summary>All rows as a person would write them in a csv file.</summary>
    public static string SelectForExport(PartFamily family) =>
        $"SELECT {Names(family.Columns, c => Exported(c, family))} FROM {family.Name} ORDER BY code";

    /// <summary>Column of a property by the name of the property.</summary>
    public static string ColumnOf(PartFamily family, string property) =>
        family.Columns.FirstOrDefault(c => c.PropertyName == property && !c.IsPrices)?.Name
        ?? Reckoned.FirstOrDefault(r => r.Family == family.Name && r.Property == property).Column
        ?? throw new ArgumentException($"{property} is no column of {family.Name}", nameof(property));

    private static string Exported(PartColumn column, PartFamily family) => column.IsYesNo
        ? $"CASE {column.Name} WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END AS {column.Name}"
        : Stored(column, family);

    private static string Stored(PartColumn column, PartFamily family) => column.IsPrices
        ? "coalesce((SELECT group_concat(from_quantity || ':' || p.unit_price, ';' ORDER BY CAST(from_quantity AS REAL)) FROM prices p"
            + $" WHERE p.code = {family.Name}.code), '') AS {column.Name}"
        : column.Name;

    private static string Names(IEnumerable<PartColumn> columns, Func<PartColumn, string> name) => string.Join(", ", columns.Select(name));

    private static IEnumerable<string> Statements()
    {
        yield return $"PRAGMA application_id = {ApplicationId};";
        yield return "CREATE TABLE parts (code TEXT NOT NULL PRIMARY KEY, family TEXT NOT NULL) STRICT, WITHOUT ROWID;";
        yield return "CREATE TABLE photometry (file TEXT NOT NULL PRIMARY KEY, bytes BLOB NOT NULL) STRICT;";
        foreach (var family in PartFamily.All)
        {
            var reckoned = Reckoned.Where(r => r.Family == family.Name).Select(r => $"{r.Column} REAL AS ({r.Expression}) VIRTUAL");
            yield return $"CREATE TABLE {family.Name} (\n    {string.Join(",\n    ", Own(family).Select(Column).Concat(reckoned))}\n) STRICT;";
        }

        yield return """
            CREATE TABLE prices (
                code TEXT NOT NULL REFERENCES parts (code),
                from_quantity TEXT NOT NULL CHECK (CAST(from_quantity AS REAL) > 0),
                unit_price TEXT NOT NULL CHECK (CAST(unit_price AS REAL) >= 0),
                PRIMARY KEY (code, from_quantity)
            ) STRICT, WITHOUT ROWID;
            """;
        foreach (var (family, columns) in Indexes) yield return $"CREATE INDEX {family}_by_{columns.Split(',')[0]} ON {family} ({columns});";
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

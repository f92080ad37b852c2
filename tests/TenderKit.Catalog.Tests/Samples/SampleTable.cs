using System.Globalization;
using System.Runtime.CompilerServices;
using Sylvan.Data.Csv;

namespace TenderKit.Catalog.Tests.Samples;

/// <summary>One row of a sample csv by column name.</summary>
internal sealed class SampleRow(Dictionary<string, string> cells)
{
    public string Code => cells["code"];

    public string Text(string column) => cells[column];

    public double Number(string column) => double.Parse(cells[column], CultureInfo.InvariantCulture);

    public IEnumerable<string> Columns => cells.Keys;
}

/// <summary>Reads a csv of the sample catalogue as it stands in the repository.</summary>
internal static class SampleTable
{
    public static readonly string[] Families =
    [
        "luminaires", "modules", "batteries", "controllers", "poles", "foundation_sets", "cables", "protection", "enclosures", "brackets", "fixings",
        "integrated_units", "services",
    ];

    public static IReadOnlyList<SampleRow> Read(string family)
    {
        using var reader = CsvDataReader.Create(Path.Combine(Folder(), family + ".csv"));
        var rows = new List<SampleRow>();
        while (reader.Read())
        {
            var cells = new Dictionary<string, string>();
            for (var i = 0; i < reader.FieldCount; i++) cells[reader.GetName(i)] = reader.GetString(i);
            rows.Add(new SampleRow(cells));
        }

        return rows;
    }

    public static string Folder([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "catalog-sample"));
}

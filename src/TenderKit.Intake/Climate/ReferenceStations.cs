using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sylvan.Data.Csv;
using TenderKit.Sizing.Climate;

namespace TenderKit.Intake.Climate;

/// <summary>
/// The built-in reference table of monthly climate, out of two data files that are kept apart for their licences:
/// <c>typical-years.csv</c> (open hourly typical years, with temperatures) and <c>city-sunshine.csv</c> (sunshine hours, CC BY-SA, irradiation estimated).
/// </summary>
public static class ReferenceStations
{
    private const string SunshineSource = "monthly sunshine hours, CC BY-SA, irradiation estimated from them";

    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
    private static readonly Lazy<IReadOnlyList<ReferenceStation>> Stations = new(Read);

    /// <summary>All stations, by country, name and source; read once.</summary>
    public static IReadOnlyList<ReferenceStation> Load() => Stations.Value;

    /// <summary>The comment lines of the two data files: their sources and licences, for documents and about texts.</summary>
    public static IReadOnlyList<string> Notices() => [.. Comments("typical-years.csv"), .. Comments("city-sunshine.csv")];

    private static IReadOnlyList<ReferenceStation> Read() =>
        [.. Rows("typical-years.csv", TypicalYear).Concat(Rows("city-sunshine.csv", Sunshine))
            .OrderBy(s => s.Country, StringComparer.Ordinal).ThenBy(s => s.Name, StringComparer.Ordinal).ThenBy(s => s.Source, StringComparer.Ordinal)];

    private static ReferenceStation TypicalYear(CsvDataReader row) => Station(row, "ghi_", row.GetString(row.GetOrdinal("source"))) with
    {
        MeanC = Values(row, "tmean_"),
        DailyMaxC = Values(row, "tmax_"),
        DailyMinC = Values(row, "tmin_"),
        LowC = Value(row, "low_c"),
        HighC = Value(row, "high_c"),
    };

    private static ReferenceStation Sunshine(CsvDataReader row) => Station(row, "ghi_est_", SunshineSource);

    private static ReferenceStation Station(CsvDataReader row, string prefix, string source) => new(
        row.GetString(row.GetOrdinal("name")), row.GetString(row.GetOrdinal("country")), Value(row, "lat"), Value(row, "lon"), Values(row, prefix), null, null, null, null, null, source);

    private static ImmutableArray<double> Values(CsvDataReader row, string prefix) => [.. Months.Select(m => Value(row, prefix + m))];

    private static double Value(CsvDataReader row, string column) => double.Parse(row.GetString(row.GetOrdinal(column)), CultureInfo.InvariantCulture);

    private static List<ReferenceStation> Rows(string resource, Func<CsvDataReader, ReferenceStation> make)
    {
        var body = string.Join('\n', Lines(resource).Where(line => !line.StartsWith('#')));
        using var rows = CsvDataReader.Create(new StringReader(body), new CsvDataReaderOptions { Delimiter = ',', Culture = CultureInfo.InvariantCulture });
        var stations = new List<ReferenceStation>();
        while (rows.Read()) stations.Add(make(rows));
        return stations;
    }

    private static IEnumerable<string> Comments(string resource) => Lines(resource).TakeWhile(l => l.StartsWith('#')).Select(l => l[1..].Trim());

    private static string[] Lines(string resource)
    {
        using var stream = typeof(ReferenceStations).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException("the built-in table " + resource + " is missing from the program");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}

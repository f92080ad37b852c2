using System.Globalization;
using Sylvan.Data.Csv;

namespace TenderKit.Benchmarks.Scale;

/// <summary>
/// Writes a tender of many sites and a catalogue of many parts into a folder. Sites stand in villages of ten; parts are those of the sample
/// catalogue again and again, each with a price, and where it has them a life, a weight and a warranty, of its own, so that most of them are
/// beaten by some other. Everything is drawn from a fixed seed.
/// </summary>
internal static class BigTender
{
    /// <summary>Columns that are multiplied at random, with the spread.</summary>
    private static readonly Dictionary<string, double> _varied = new(StringComparer.Ordinal)
    {
        ["unit_price"] = 0.25, ["warranty_years"] = 0.3, ["lead_time_days"] = 0.3, ["life_l80_h"] = 0.15, ["cycles_at_depth"] = 0.2,
        ["noct_c"] = 0.03, ["volume_m3"] = 0.1, ["weight_kg"] = 0.05, ["max_charge_a"] = 0.1, ["own_use_w"] = 0.3, ["max_content_kg"] = 0.1,
    };

    /// <param name="root">Root of the repository.</param>
    /// <returns>Path of the tender file.</returns>
    public static string Write(string folder, string root, int siteCount, int partCount)
    {
        var random = new Random(20270215);
        Directory.CreateDirectory(folder);
        WriteCatalog(Path.Combine(root, "catalog-sample"), Path.Combine(folder, "catalog"), partCount, random);
        File.Copy(Path.Combine(root, "templates", "design-rules.yaml"), Path.Combine(folder, "design-rules.yaml"), true);
        File.Copy(Path.Combine(root, "templates", "starter", "climate.csv"), Path.Combine(folder, "climate.csv"), true);
        File.WriteAllLines(Path.Combine(folder, "sites.csv"), SiteRows(siteCount, random));
        var tender = File.ReadAllText(Path.Combine(root, "templates", "starter", "tender.yaml"))
            .Replace("../../catalog-sample", "catalog", StringComparison.Ordinal)
            .Replace("../design-rules.yaml", "design-rules.yaml", StringComparison.Ordinal)
            .Replace("sites: sites.xlsx", "sites: sites.csv", StringComparison.Ordinal);
        var lots = tender.IndexOf("lots:", StringComparison.Ordinal);
        var path = Path.Combine(folder, "tender.yaml");
        File.WriteAllText(path, tender.Remove(lots, tender.IndexOf("kits:", StringComparison.Ordinal) - lots));
        return path;
    }

    private static IEnumerable<string> SiteRows(int count, Random random)
    {
        string Of(params string[] words) => words[random.Next(words.Length)];
        yield return "Site,Name,Latitude,Longitude,Kind,Length (m),Width (m),Class,Schedule,Arrangement,Mounting height (m),Shading,Wind (m/s),Soil";
        var (latitude, longitude, wind, soil) = (0.0, 0.0, 24, "medium");
        for (var i = 0; i < count; i++)
        {
            if (i % 10 == 0) (latitude, longitude, wind, soil) = (-13 - (random.NextDouble() * 2), 33.5 + (random.NextDouble() * 2), 22 + (2 * random.Next(3)), Of("dense", "medium", "soft"));
            var yard = random.Next(20) == 0;
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"S{i + 1:0000},Village {(i / 10) + 1} street {(i % 10) + 1},{latitude + (random.NextDouble() * 0.01):0.0000},{longitude + (random.NextDouble() * 0.01):0.0000},{(yard ? "yard" : "road")},{(yard ? 30 + (5 * random.Next(7)) : 150 + (10 * random.Next(120)))},{(yard ? 20 + (5 * random.Next(3)) : 4 + random.Next(4))},{Of("P3", "P4", "P5", "P6")},{Of("village-night", "all-night", "market-night")},{(yard ? "" : Of("single-sided", "single-sided", "staggered"))},{Of("", "6", "5")},{Of("0", "0", "0", "5")} %,{wind},{soil}");
        }
    }

    private static void WriteCatalog(string sample, string folder, int partCount, Random random)
    {
        Directory.CreateDirectory(Path.Combine(folder, "photometry"));
        foreach (var file in Directory.EnumerateFiles(Path.Combine(sample, "photometry"))) File.Copy(file, Path.Combine(folder, "photometry", Path.GetFileName(file)), true);
        var files = Directory.EnumerateFiles(sample, "*.csv").Order(StringComparer.Ordinal).ToList();
        var total = files.Where(f => !f.EndsWith("services.csv", StringComparison.Ordinal)).Sum(f => File.ReadAllLines(f).Length - 1);
        var times = (int)Math.Ceiling((double)partCount / total);
        foreach (var file in files) WriteFamily(file, Path.Combine(folder, Path.GetFileName(file)), file.EndsWith("services.csv", StringComparison.Ordinal) ? 1 : times, random);
    }

    private static void WriteFamily(string from, string to, int times, Random random)
    {
        using var reader = CsvDataReader.Create(from);
        var rows = new List<string[]>();
        while (reader.Read()) rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        using var output = new StreamWriter(to);
        var heads = Enumerable.Range(0, reader.FieldCount).Select(reader.GetName).ToArray();
        output.WriteLine(string.Join(',', heads));
        for (var n = 0; n < times; n++)
        {
            foreach (var row in rows) output.WriteLine(string.Join(',', row.Select((text, c) => Quoted(n == 0 ? text : Varied(heads[c], text, n, random)))));
        }
    }

    private static string Varied(string head, string text, int n, Random random)
    {
        if (head == "code") return string.Create(CultureInfo.InvariantCulture, $"{text}-{n:000}");
        if (!_varied.TryGetValue(head, out var spread) || !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)) return text;
        var varied = value * (1 + (spread * ((2 * random.NextDouble()) - 1)));
        return (head == "lead_time_days" ? Math.Round(varied) : Math.Round(varied, 4)).ToString(CultureInfo.InvariantCulture);
    }

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(',', '"') < 0 ? text : '"' + text.Replace("\"", "\"\"", StringComparison.Ordinal) + '"';
}

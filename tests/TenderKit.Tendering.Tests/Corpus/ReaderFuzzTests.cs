using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using CsCheck;
using TenderKit.Intake.Climate;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Photometry;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.PartsStated;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>
/// Every reader on damaged copies of real files of the corpus, of the starter tender and of the sample catalogue: they end in a result or in
/// diagnostics with words, never in an exception. TENDERKIT_FUZZ=50 runs fifty times as many.
/// </summary>
public sealed class ReaderFuzzTests
{
    private static readonly int Times = int.TryParse(Environment.GetEnvironmentVariable("TENDERKIT_FUZZ"), NumberStyles.Integer, CultureInfo.InvariantCulture, out var times) ? Math.Max(1, times) : 1;

    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, 7.5, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    [Theory]
    [InlineData(".csv", 100)]
    [InlineData(".xlsx", 60)]
    [InlineData(".xls", 60)]
    public void Site_lists(string extension, int count) => Sample(Of("tests/TenderKit.Tendering.Tests/Corpus/Files", extension), count, (name, bytes) =>
    {
        var read = TableReader.Read(bytes, name);
        return read.Value is { } tables ? [.. read.Diagnostics, .. SiteListReader.Read(tables, Defaults, _ => null, ["P4"]).Diagnostics] : read.Diagnostics;
    });

    [Theory]
    [InlineData(".kml", 150)]
    [InlineData(".kmz", 60)]
    [InlineData(".geojson", 250)]
    public void Maps(string extension, int count) => Sample(Of("tests/TenderKit.Tendering.Tests/Corpus/Maps", extension), count, (name, bytes) =>
    {
        var read = MapReader.Read(bytes, name);
        return read.Value is { } map ? [.. read.Diagnostics, .. DrawnSites.Read(map, Defaults, _ => null, ["P4"]).Diagnostics] : read.Diagnostics;
    });

    [Fact]
    public void Tender_files() => Sample([("tender.yaml", Encoding.UTF8.GetBytes(FullTender()))], 200, (name, bytes) =>
    {
        var problems = new List<Diagnostic>();
        TenderFile.Read(Encoding.UTF8.GetString(bytes), name, "", problems);
        return [.. problems];
    });

    [Fact]
    public void A_tender_file_a_hundred_thousand_deep_is_refused()
    {
        var problems = new List<Diagnostic>();
        Assert.Null(TenderFile.Read("a: " + new string('[', 100_000), "tender.yaml", "", problems));
        Assert.Equal("TK110", Assert.Single(problems).Code);
    }

    [Fact]
    public void Photometric_files() => Sample([.. Of("catalog-sample", ".ies").Take(6), .. Of("catalog-sample", ".ldt").Take(3)], 150, (name, bytes) => PhotometryReader.Read(name, bytes).Diagnostics);

    [Fact]
    public void Climate_files() => Sample([.. Of("templates/starter", "climate.csv"), .. Of("tests", ".epw").Take(2)], 150, (name, bytes) => ClimateFile.Read(name, bytes, -13.7, 34.5).Diagnostics);

    [Fact]
    public void Texts_of_parts() => Gen.Select(Gen.Int[0, 1_000_000], Gen.String[0, 60]).Sample((seed, text) =>
    {
        PartsText.Read(Encoding.UTF8.GetString(Damaged("a.txt", Encoding.UTF8.GetBytes("2 x 75 Wp, 12 V 75 Ah gel, 12 W LED, 10 A PWM, 12 hours, 3 days"), seed)) + text);
        return true;
    }, iter: 300 * Times);

    private static void Sample(List<(string Name, byte[] Bytes)> files, int count, Func<string, byte[], IEnumerable<Diagnostic>> read)
    {
        Assert.NotEmpty(files);
        Gen.Select(Gen.Int[0, files.Count - 1], Gen.Int[0, 1_000_000]).Sample((file, seed) =>
        {
            var (name, bytes) = files[file];
            return read(name, Damaged(name, bytes, seed)).All(d => d.Message.Length > 0 && d.Code.StartsWith("TK", StringComparison.Ordinal));
        }, iter: count * Times);
    }

    /// <summary>A copy cut, doubled, with bytes or words changed; of a packed file every other time inside one of its members.</summary>
    private static byte[] Damaged(string name, byte[] bytes, int seed)
    {
        var random = new Random(seed);
        if ((name.EndsWith(".xlsx", StringComparison.Ordinal) || name.EndsWith(".kmz", StringComparison.Ordinal)) && random.Next(4) > 0) return Inside(bytes, random);
        return Text(bytes, random);
    }

    private static byte[] Text(byte[] bytes, Random random)
    {
        if (bytes.Length < 4) return bytes;
        string[] words = ["", "-1", "NaN", "1e308", "-1e308", "999999999999", "null", "[]", "{}", "\"", "<", "</", "&amp;", ",", ";", "\0", "\n", "é中", "36S", "P4", new('9', 300)];
        var copy = (byte[])bytes.Clone();
        switch (random.Next(6))
        {
            case 0:
                return copy[..random.Next(copy.Length)];
            case 1:
                for (var i = 0; i < 1 + random.Next(30); i++) copy[random.Next(copy.Length)] = (byte)random.Next(256);
                return copy;
            case 2:
                var (from, length) = (random.Next(copy.Length), random.Next(200));
                return [.. copy[..from], .. copy[Math.Min(copy.Length, from + length)..]];
            case 3:
                var (start, size) = (random.Next(copy.Length), random.Next(200));
                return [.. copy[..start], .. copy[start..Math.Min(copy.Length, start + size)], .. copy[start..]];
            default:
                for (var i = 0; i < 1 + random.Next(4); i++)
                {
                    var at = random.Next(copy.Length);
                    copy = [.. copy[..at], .. Encoding.UTF8.GetBytes(words[random.Next(words.Length)]), .. copy[Math.Min(copy.Length, at + random.Next(8))..]];
                }

                return copy;
        }
    }

    private static byte[] Inside(byte[] bytes, Random random)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(new MemoryStream(bytes), ZipArchiveMode.Read))
        using (var made = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            var harmed = random.Next(zip.Entries.Count);
            foreach (var (entry, index) in zip.Entries.Select((e, i) => (e, i)))
            {
                using var from = entry.Open();
                using var copy = new MemoryStream();
                from.CopyTo(copy);
                using var to = made.CreateEntry(entry.FullName).Open();
                to.Write(index == harmed ? Text(copy.ToArray(), random) : copy.ToArray());
            }
        }

        return stream.ToArray();
    }

    private static string FullTender() => File.ReadAllText(Path.Combine(Root(), "templates", "starter", "tender.yaml"))
        + "\nstated: { sites: 14, length_m: 8060, poles: 300 }\nparts_stated:\n  - { name: A, clause: '4', text: '75 Wp, 12 V 75 Ah, 12 W', sites: [S01] }\n"
        + "region:\n  name: North\n  poles: 40\n  places:\n    - { name: X, latitude: 1, longitude: 2, climate: a.csv }\n  box: { latitude: -1 to 3, longitude: 30 to 34 }\n";

    private static List<(string Name, byte[] Bytes)> Of(string folder, string end) =>
        [.. Directory.GetFiles(Path.Combine(Root(), folder), "*", SearchOption.AllDirectories).Where(f => f.EndsWith(end, StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal) && !f.Contains("/obj/", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(f => (Path.GetFileName(f), File.ReadAllBytes(f)))];

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) folder = folder.Parent;
        return folder!.FullName;
    }
}

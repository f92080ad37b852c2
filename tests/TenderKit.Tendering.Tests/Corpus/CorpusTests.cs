using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>
/// Messy files and what must be understood of each: the files lie in <c>Corpus/Files</c>, beside each its understanding as read by a person.
/// Set TENDERKIT_REWRITE_SAMPLES=1 to write the files again; a changed understanding is written as <c>.received.txt</c>.
/// </summary>
public sealed class CorpusTests
{
    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, 7.5, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    private static readonly ImmutableArray<CorpusFile> Made = [.. CsvFaults.Form(), .. CsvFaults.Numbers(), .. CsvFaults.Headings(), .. SurveyFaults.All(), .. PositionFaults.All(), .. WorkbookFaults.All()];

    /// <summary>Saved by a spreadsheet program out of another file of the corpus.</summary>
    private static readonly (string Name, string From)[] Saved = [("72-old-binary.xls", "60-two-row-header.xlsx"), ("73-old-binary-merged.xls", "61-merged-districts.xlsx")];

    public static TheoryData<string> Names => [.. AllNames];

    private static IEnumerable<string> AllNames => Made.Select(f => f.Name).Concat(Saved.Select(s => s.Name));

    [Fact]
    public void CorpusIsLargeAndNamesItsFaults()
    {
        if (Environment.GetEnvironmentVariable("TENDERKIT_REWRITE_SAMPLES") == "1")
        {
            foreach (var file in Made) File.WriteAllBytes(Path.Combine(Folder(), file.Name), file.Bytes);
        }

        Assert.True(Made.Length >= 40);
        Assert.Equal(Made.Length, Made.Select(f => f.Fault).Distinct().Count());
        var onDisk = Directory.GetFiles(Folder()).Select(Path.GetFileName).Where(n => !n!.EndsWith(".txt", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
        Assert.Equal(AllNames.Order(StringComparer.Ordinal), onDisk);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void FileIsUnderstoodAsExpected(string name)
    {
        var understood = View(name, Read(name));
        var approved = Path.Combine(Folder(), name + ".expected.txt");
        var received = Path.Combine(Folder(), name + ".received.txt");
        if (File.Exists(approved) && File.ReadAllText(approved) == understood) return;
        File.WriteAllText(received, understood);
        Assert.Fail($"{name} is understood in another way than expected; compare {received} with {approved}");
    }

    [Fact]
    public void DisguisesOfOneListGiveTheSameSites()
    {
        foreach (var file in Made.Where(f => f.IsSameList))
        {
            var sites = Read(file.Name).Sites;
            Assert.True(PlainList.Sites.Length == sites.Length, $"{file.Name} gives {sites.Length} sites");
            foreach (var (expected, site) in PlainList.Sites.Zip(sites))
            {
                Assert.Equal((expected.Id, expected.Name), (site.Id, site.Name));
                Assert.Equal(expected.Kind, site.Kind.ToString().ToLowerInvariant());
                Assert.Equal(expected.LengthM, site.LengthM, 1e-9);
                Assert.Equal(expected.WidthM, site.WidthM, 1e-9);
                Assert.Equal(expected.Latitude, site.LatitudeDegrees, 5e-6);
                Assert.Equal(expected.Longitude, site.LongitudeDegrees, 5e-6);
            }
        }
    }

    [Fact]
    public void OldBinaryWorkbooksAreReadLikeTheNewOnes()
    {
        foreach (var (name, from) in Saved) Assert.Equal(Lines(Read(from)), Lines(Read(name)));
    }

    private static SiteListReading Read(string name)
    {
        var file = TableReader.Read(Path.Combine(Folder(), name));
        Assert.NotNull(file.Value);
        var reading = SiteListReader.Read(file.Value, Defaults, n => n == "P4" ? Defaults.Target : null, ["P4"]);
        return reading with { Diagnostics = [.. file.Diagnostics, .. reading.Diagnostics] };
    }

    private static string View(string name, SiteListReading reading)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{name}: {Made.FirstOrDefault(f => f.Name == name)?.Fault ?? "saved by a spreadsheet program in its old binary form"}\n\n");
        foreach (var column in reading.Columns.Columns)
            text.Append(CultureInfo.InvariantCulture, $"{Cell.ColumnName(column.Column)} '{column.Heading.ReplaceLineEndings(" ")}' -> {column.Meaning?.Id ?? "not read"}{(column.Unit is { } u ? $", {u}" : "")}{(column.Meaning is null ? "" : $", {column.Score * 100:0} %")}\n");
        text.Append('\n').Append(Lines(reading)).Append('\n');
        foreach (var diagnostic in reading.Diagnostics) text.Append(diagnostic.ToString().ReplaceLineEndings(" ")).Append('\n');
        return text.ToString();
    }

    private static string Lines(SiteListReading reading) => string.Concat(reading.Sites.Select(s => string.Create(CultureInfo.InvariantCulture,
        $"{s.Id} | {s.Name} | {s.LatitudeDegrees:0.00000} {s.LongitudeDegrees:0.00000}{(s.IsPositionStated ? "" : " (taken)")} | {s.Kind} {s.LengthM:0.###} x {s.WidthM:0.###} m | {Extra(s)}\n")));

    private static string Extra(Site site) => string.Create(CultureInfo.InvariantCulture,
        $"height {string.Join(", ", site.MountingHeightsM)} m, wind {site.BasicWindMPerS:0.##} m/s{(site.FixedPoles is { } p ? $", {p} poles" : "")}{(site.Lot.Length > 0 ? ", lot " + site.Lot : "")}{(site.District.Length > 0 ? ", district " + site.District : "")}");

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "tests", "TenderKit.Tendering.Tests", "Corpus", "Files");
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TenderKit.Intake.Maps;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>
/// Messy maps and what must be understood of each, as read by a person: the files lie in <c>Corpus/Maps</c>, beside each its understanding.
/// Set TENDERKIT_REWRITE_SAMPLES=1 to write the files again; a changed understanding is written as <c>.received.txt</c>.
/// </summary>
public sealed class MapCorpusTests
{
    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, 7.5, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    public static TheoryData<string> Names => [.. MapFaults.All().Select(m => m.Name)];

    [Fact]
    public void CorpusIsLargeAndNamesItsFaults()
    {
        var all = MapFaults.All().ToList();
        if (Environment.GetEnvironmentVariable("TENDERKIT_REWRITE_SAMPLES") == "1")
        {
            foreach (var (name, _, bytes) in all) File.WriteAllBytes(Path.Combine(Folder(), name), bytes);
        }

        Assert.True(all.Count >= 12);
        Assert.Equal(all.Count, all.Select(f => f.Fault).Distinct().Count());
        var onDisk = Directory.GetFiles(Folder()).Select(Path.GetFileName).Where(n => !n!.EndsWith(".txt", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
        Assert.Equal(all.Select(f => f.Name).Order(StringComparer.Ordinal), onDisk);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void MapIsUnderstoodAsExpected(string name)
    {
        var understood = View(name);
        var approved = Path.Combine(Folder(), name + ".expected.txt");
        var received = Path.Combine(Folder(), name + ".received.txt");
        if (File.Exists(approved) && File.ReadAllText(approved) == understood) return;
        File.WriteAllText(received, understood);
        Assert.Fail($"{name} is understood in another way than expected; compare {received} with {approved}");
    }

    private static string View(string name)
    {
        var map = MapReader.Read(Path.Combine(Folder(), name));
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{name}: {MapFaults.All().First(f => f.Name == name).Fault}\n\n");
        var found = map.Diagnostics;
        if (map.Value is { } file)
        {
            var reading = DrawnSites.Read(file, Defaults, n => n == "P4" ? Defaults.Target : null, ["P4"]);
            foreach (var site in reading.Sites) text.Append(Line(site)).Append('\n');
            text.Append('\n');
            found = [.. found, .. reading.Diagnostics];
        }

        foreach (var diagnostic in found) text.Append(diagnostic.ToString().ReplaceLineEndings(" ")).Append('\n');
        return text.ToString();
    }

    private static string Line(Site site) => string.Create(CultureInfo.InvariantCulture,
        $"{site.Id} | {site.Name} | {site.LatitudeDegrees:0.00000} {site.LongitudeDegrees:0.00000} | {site.Kind} {site.LengthM:0.#} x {site.WidthM:0.##} m{(site.FixedPoles is { } p ? $", {p} poles" : "")} | {Drawn(site)}");

    private static string Drawn(Site site) => site.Geometry switch
    {
        null => "a point",
        { Shape: MapShape.Line } line => string.Create(CultureInfo.InvariantCulture, $"{line.Parts.Length} line(s), {line.LengthM:0.0} m, {line.BendFractions.Length} bend(s)"),
        { Lit: { } lit } => string.Create(CultureInfo.InvariantCulture, $"an area lit as drawn, {lit.Area.AreaM2:0} m2, {lit.Area.Holes.Length} opening(s)"),
        _ => "an area lit as its rectangle",
    };

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "tests", "TenderKit.Tendering.Tests", "Corpus", "Maps");
    }
}

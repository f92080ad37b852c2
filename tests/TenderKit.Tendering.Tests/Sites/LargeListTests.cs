using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Tests.Corpus;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Tendering.Tests.Sites;

public sealed class LargeListTests(ITestOutputHelper output)
{
    private const int Count = 5000;

    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, 7.5, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    [Theory]
    [InlineData("csv")]
    [InlineData("xlsx")]
    public void ThousandsOfSitesAreRead(string extension)
    {
        var rows = Enumerable.Range(0, Count).Select(i => (object?[])[i + 1, $"Street {i + 1}", Math.Round(9 + (i % 100 * 0.005), 6), Math.Round(38 + (i / 100 * 0.005), 6), "road", 100 + (i % 900), 4.5]);
        object?[][] all = [[.. PlainList.Headings], .. rows];
        var bytes = extension == "csv" ? Encoding.UTF8.GetBytes(string.Concat(all.Select(r => string.Join(',', r.Select(c => Convert.ToString(c, CultureInfo.InvariantCulture))) + "\n"))) : Book.Of(new Sheet("Sites", all));
        var clock = Stopwatch.StartNew();
        var reading = SiteListReader.Read(TableReader.Read(bytes, "a." + extension).Value!, Defaults, _ => null, ["P4"]);
        output.WriteLine($"{extension}: {Count} sites in {clock.Elapsed.TotalSeconds:0.00} s");
        Assert.Equal(Count, reading.Sites.Length);
        Assert.Empty(reading.Diagnostics);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), $"took {clock.Elapsed}");
    }

    [Fact]
    public void ThousandsOfSitesAtOnePlaceWithoutPositionsEndToo()
    {
        var text = new StringBuilder("No,Name,Latitude,Longitude,Type,Length (m)\n");
        for (var i = 0; i < Count; i++) text.Append(CultureInfo.InvariantCulture, $"{i},Road {i},{(i % 2 == 0 ? "9.0,38.0" : ",")},road,100\n");
        var clock = Stopwatch.StartNew();
        var reading = SiteListReader.Read(TableReader.Read(Encoding.UTF8.GetBytes(text.ToString()), "a.csv").Value!, Defaults, _ => null, ["P4"]);
        Assert.Equal(Count, reading.Sites.Length);
        Assert.Equal(Count / 2, reading.Diagnostics.Count(d => d.Code == "TK177"));
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), $"took {clock.Elapsed}");
    }
}

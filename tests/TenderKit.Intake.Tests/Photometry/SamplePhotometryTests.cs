using System.Globalization;
using System.Text;
using TenderKit.Intake.Photometry;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Intake.Tests.Photometry;

/// <summary>Set <c>TENDERKIT_REWRITE_SAMPLES=1</c> to write the files of the sample catalogue anew.</summary>
public class SamplePhotometryTests
{
    /// <summary>A unit on purpose wrong: many watts by its name, little light.</summary>
    private const string SoldByItsWatts = "INT-120X";

    public static TheoryData<string> Codes => [.. SamplePhotometry.All.Select(l => l.Code)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void Committed_file_is_what_the_formula_gives(string code)
    {
        var luminaire = SamplePhotometry.All.Single(l => l.Code == code);
        var file = Path.Combine(Repository.SamplePhotometryFolder, luminaire.FileName);
        if (Environment.GetEnvironmentVariable("TENDERKIT_REWRITE_SAMPLES") == "1") File.WriteAllText(file, SamplePhotometry.Text(luminaire));
        Assert.Equal(SamplePhotometry.Text(luminaire), File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void File_and_catalogue_row_agree(string code)
    {
        var file = code + ".ies";
        var read = PhotometryReader.Read(file, File.ReadAllBytes(Path.Combine(Repository.SamplePhotometryFolder, file)));
        var distribution = read.Value!.Distribution;
        Assert.False(read.HasErrors);
        var rows = CatalogueRows().Where(r => r["photometric_file"] == file).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row =>
        {
            var flux = Number(row["flux_lm"]);
            Assert.Equal(flux, distribution.FluxLm, 0.005 * flux);
            Assert.Equal(Number(row["input_power_w"]), distribution.StatedPowerW);
            if (row["code"] != SoldByItsWatts) Assert.InRange(flux / Number(row["input_power_w"]), 140, 175);
            else Assert.InRange(flux / Number(row["input_power_w"]), 1, 59);
        });
    }

    [Fact]
    public void Every_row_has_a_file_and_every_file_a_row() =>
        Assert.Equal(
            Directory.GetFiles(Repository.SamplePhotometryFolder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal),
            CatalogueRows().Select(r => r["photometric_file"]).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void Only_the_plain_cover_is_reported_as_lighting_backwards() =>
        Assert.Equal(
            ["LUM-B30-40"],
            SamplePhotometry.All.Where(l => Read(l).Diagnostics.Any(d => d.Code == "TK161")).Select(l => l.Code));

    [Fact]
    public void Road_optic_reaches_P4_at_village_spacing()
    {
        // what the sample is made for: 30 W, 6 m, a 5 m road, one side, MF 0.8, 30 m or more
        var distribution = Read(SamplePhotometry.All.Single(l => l.Code == "LUM-R30-40")).Value!.Distribution;
        var found = SpacingSearch.Road(
            distribution, new RoadLayout(5, 10, 6, 0.5, 0, Arrangement.SingleSided), LightClasses.Find("P4")!, 0.8, new SpacingBounds(0.5, 1, 7, 0.1));
        Assert.True(found.Met);
        Assert.InRange(found.SpacingM, 30, 40);
    }

    private static Outcome<PhotometricFile> Read(SampleLuminaire luminaire) =>
        Lm63Reader.Read(luminaire.FileName, Encoding.UTF8.GetBytes(SamplePhotometry.Text(luminaire)));

    private static List<Dictionary<string, string>> CatalogueRows() => [.. RowsOf("luminaires"), .. RowsOf("integrated_units")];

    private static IEnumerable<Dictionary<string, string>> RowsOf(string family)
    {
        var lines = File.ReadAllLines(Path.Combine(Repository.Root, "catalog-sample", family + ".csv"));
        var header = lines[0].Split(',');
        return lines.Skip(1).Select(l => header.Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

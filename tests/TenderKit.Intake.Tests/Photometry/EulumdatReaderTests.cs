using System.Globalization;
using System.Text;
using CsCheck;
using TenderKit.Intake.Photometry;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Intake.Tests.Photometry;

public class EulumdatReaderTests
{
    /// <summary>Four C planes 0, 90, 180, 270 and gamma 0, 45, 90 of a 2000 lm lamp; line numbers are those of the format.</summary>
    private static List<string> Lines(int symmetry, params string[] data) =>
    [
        "somebody", "2", symmetry.ToString(CultureInfo.InvariantCulture), "4", "90", "3", "45", "r1", "a luminaire", "n1", "a.ldt", "2025",
        "300", "200", "80", "300", "200", "0", "0", "0", "0", "100", "0", "1", "0", "1",
        "1", "LED", "2000", "4000", "70", "20",
        .. Enumerable.Repeat("0.5", 10), "0", "90", "180", "270", "0", "45", "90", .. data,
    ];

    private static Outcome<PhotometricFile> Read(IEnumerable<string> lines) => EulumdatReader.Read("a.ldt", Encoding.Latin1.GetBytes(string.Join("\r\n", lines)));

    [Theory]
    [InlineData("G07_isym2_asym.ldt", 3000, "street side and house side equal")] // closed forms of 3000 lm
    [InlineData("G08_isym3_asym_C90.ldt", 3000, "left and right equal")]
    [InlineData("G09_isym4_decimal_comma_cf0.9.ldt", 2700, "four equal quadrants")] // conversion factor 0.9, decimal commas
    public void Closed_forms(string name, double fluxLm, string symmetry)
    {
        var read = EulumdatReader.Read(name, Repository.Fixture(name));
        Assert.False(read.HasErrors);
        Assert.Equal(fluxLm, read.Value!.Distribution.FluxLm, 0.0025 * fluxLm);
        Assert.Equal(symmetry, read.Value.Symmetry);
        Assert.Equal(3000, read.Value.Distribution.StatedFluxLm);
    }

    [Fact]
    public void The_bright_side_lies_where_the_file_puts_it()
    {
        var along = EulumdatReader.Read("g", Repository.Fixture("G07_isym2_asym.ldt")).Value!.Distribution;
        var street = EulumdatReader.Read("g", Repository.Fixture("G08_isym3_asym_C90.ldt")).Value!.Distribution;
        Assert.Equal(3, along.IntensityCd(0, 30) / along.IntensityCd(180, 30), 1e-3); // Lambertian (1 + 0.5 cos C)
        Assert.Equal(3, street.IntensityCd(90, 30) / street.IntensityCd(270, 30), 1e-3); // the same turned to C 90
    }

    [Theory]
    [InlineData(0, new[] { 80, 60, 20, 40 }, 80, 60, 20, 40)]
    [InlineData(1, new[] { 80 }, 80, 80, 80, 80)]
    [InlineData(2, new[] { 80, 60, 20 }, 80, 60, 20, 60)]
    [InlineData(3, new[] { 40, 80, 60 }, 80, 60, 80, 40)] // planes start at C 270
    [InlineData(4, new[] { 80, 60 }, 80, 60, 80, 60)]
    public void Symmetries(int symmetry, int[] at45, double at0, double at90, double at180, double at270)
    {
        var file = Read(Lines(symmetry, [.. at45.SelectMany(v => new[] { "100", v.ToString(CultureInfo.InvariantCulture), "0" })])).Value!;
        Assert.Equal([2 * at0, 2 * at90, 2 * at180, 2 * at270], new[] { 0.0, 90, 180, 270 }.Select(c => file.Distribution.IntensityCd(c, 45)));
    }

    [Fact]
    public void Decimal_commas_and_conversion_factor()
    {
        var lines = Lines(1, "100,5", "80", "0");
        lines[23] = "0,9";
        Assert.Equal(100.5 * 2 * 0.9, Read(lines).Value!.Distribution.PeakIntensityCd, 1e-9);
    }

    [Fact]
    public void List_of_planes_wins_over_the_step()
    {
        var lines = Lines(1, "100", "80", "0");
        lines[4] = "15";
        var read = Read(lines);
        Assert.NotNull(read.Value);
        Assert.Contains(read.Diagnostics, d => d.Code == "TK163");
    }

    [Fact]
    public void First_of_several_lamp_sets()
    {
        var lines = Lines(1, "100", "80", "0");
        lines[25] = "2";
        lines.InsertRange(32, ["2", "LED", "9000", "4000", "70", "90"]);
        var read = Read(lines);
        Assert.Equal(200, read.Value!.Distribution.PeakIntensityCd, 1e-9);
        Assert.Equal(20, read.Value.Distribution.StatedPowerW);
        Assert.Contains(read.Diagnostics, d => d.Code == "TK164");
    }

    [Fact]
    public void Latin_1_text_and_absolute_photometry()
    {
        var lines = Lines(1, "100", "80", "0");
        lines[8] = "Straßenleuchte";
        lines[26] = "-1";
        var file = Read(lines).Value!;
        Assert.True(file.IsAbsolute);
        Assert.Contains(new PhotometricKeyword("LUMINAIRE", "Straßenleuchte"), file.Keywords);
        Assert.Equal(new LuminousOpening(0.2, 0.3, 0, false), file.Opening);
    }

    [Fact]
    public void Light_output_ratio_contradicted()
    {
        var lines = Lines(1, "100", "70.7", "0");
        lines[22] = "80";
        Assert.Contains(Read(lines).Diagnostics, d => d.Code == "TK156" && d.Message.Contains("0.800", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(3, "7", "TK153", "symmetry indicator")]
    [InlineData(4, "three", "TK151", "'three'")]
    [InlineData(29, "0", "TK153", "total flux")]
    [InlineData(44, "x", "TK151", "'x'")]
    [InlineData(45, "90", "TK153", "ascend")]
    public void Refusals_name_the_line(int line, string text, string code, string words)
    {
        var lines = Lines(1, "100", "80", "0");
        lines[line - 1] = text;
        var error = Read(lines).Diagnostics.Single(d => d.Severity == Severity.Error);
        Assert.Equal((code, line), (error.Code, error.Place.Row));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Cut_off_files_never_throw()
    {
        var bytes = Repository.Fixture("G09_isym4_decimal_comma_cf0.9.ldt");
        Gen.Select(Gen.Int[0, bytes.Length - 1], Gen.Byte, Gen.Int[0, bytes.Length]).Sample((at, value, length) =>
        {
            var damaged = (byte[])bytes.Clone();
            damaged[at] = value;
            var read = PhotometryReader.Read("a.ldt", damaged[..length]);
            return read.Value is null == read.HasErrors;
        });
    }

    [Fact]
    public void Content_decides_before_the_name()
    {
        var ies = Repository.Fixture("G01_lambertian_1000lm_sym.ies");
        var ldt = Repository.Fixture("G07_isym2_asym.ldt");
        Assert.Equal("LM-63-2002", PhotometryReader.Read("wrong.ldt", ies).Value!.Format);
        Assert.Equal("LM-63-2002", PhotometryReader.Read("none.txt", ies).Value!.Format);
        Assert.Equal("EULUMDAT", PhotometryReader.Read("none.txt", ldt).Value!.Format);
        Assert.Equal("EULUMDAT", PhotometryReader.Read("A.LDT", ldt).Value!.Format);
        Assert.Equal("TK150", PhotometryReader.Read("a.txt", [1, 2, 3]).Diagnostics.Single().Code);
        Assert.Equal("TK155", PhotometryReader.Read("a.ies", []).Diagnostics.Single().Code);
    }
}

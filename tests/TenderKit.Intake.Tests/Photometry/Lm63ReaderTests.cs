using System.Text;
using CsCheck;
using TenderKit.Intake.Photometry;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Intake.Tests.Photometry;

public class Lm63ReaderTests
{
    private static readonly Lm63Text Plain = new();

    [Theory]
    [InlineData("G01_lambertian_1000lm_sym.ies", 1000)] // closed form: 1000/pi cos(gamma)
    [InlineData("G02_isotropic_1000lm.ies", 1000)] // closed form: 1000/(4 pi)
    [InlineData("G03_cos2_absolute_2xmult.ies", 1000)] // closed form: cos^2, absolute, multiplier 2
    [InlineData("G04_tilt_include_ballast0.9_2lamps_commas.ies", 900)] // ballast factor 0.9 on 2 x 500 lm
    [InlineData("G05_asym_360_lambertian.ies", 1000)] // Lambertian (1 + 0.5 cos C), over 360, in feet
    [InlineData("G06_asym_180_same.ies", 1000)] // the same over 180
    public void Closed_forms(string name, double fluxLm)
    {
        var read = Lm63Reader.Read(name, Repository.Fixture(name));
        Assert.False(read.HasErrors);
        Assert.Equal(fluxLm, read.Value!.Distribution.FluxLm, 0.0025 * fluxLm); // two ways of integrating differ by up to 0.25 %
    }

    [Fact]
    public void Full_circle_and_half_circle_read_the_same()
    {
        var full = Fixture("G05_asym_360_lambertian.ies").Distribution;
        var half = Fixture("G06_asym_180_same.ies").Distribution;
        Gen.Select(Gen.Double[0, 360], Gen.Double[0, 90]).Sample((c, g) => Math.Abs(full.IntensityCd(c, g) - half.IntensityCd(c, g)) < 1e-9);
    }

    [Fact]
    public void Street_side_at_0_becomes_C90()
    {
        var file = Fixture("G06_asym_180_same.ies");
        Assert.Equal(1.5 * 1000 / Math.PI, file.Distribution.IntensityCd(90, 0), 1e-3);
        Assert.Equal(3.0, file.Distribution.IntensityCd(90, 30) / file.Distribution.IntensityCd(270, 30), 1e-3); // (1 + 0.5) / (1 - 0.5)
        Assert.Equal(file.Distribution.IntensityCd(0, 30), file.Distribution.IntensityCd(180, 30), 1e-9);
        Assert.Equal("left and right equal", file.Symmetry);
    }

    [Theory]
    [InlineData("IESNA:LM-63-2002\n", "LM-63-2002")]
    [InlineData("IESNA:LM-63-1995\n", "LM-63-1995")]
    [InlineData("IESNA91\n", "LM-63-1991")]
    [InlineData("IES:LM-63-2019\n", "LM-63-2019")]
    [InlineData("a luminaire\nof 1986\n", "LM-63-1986")]
    [InlineData("", "LM-63-1986")]
    public void Versions(string head, string format) => Assert.Equal(format, (Plain with { Head = head }).Value().Format);

    [Fact]
    public void Keywords_join_their_continuation() =>
        Assert.Equal([new PhotometricKeyword("TEST", "1"), new PhotometricKeyword("LUMINAIRE", "one two")], Plain.Value().Keywords.AsEnumerable());

    [Fact]
    public void Absolute_photometry_is_never_rescaled()
    {
        var file = Plain.Value();
        Assert.True(file.IsAbsolute);
        Assert.Null(file.FluxRatio);
        Assert.Null(file.Distribution.StatedFluxLm);
        Assert.Equal(100, file.Distribution.PeakIntensityCd);
        Assert.Equal(20, file.Distribution.StatedPowerW);
    }

    [Fact]
    public void Multiplier_and_ballast_factor_apply()
    {
        var file = (Plain with { Counts = "1 -1 2.5 3 1 1 2 0 0 0\n", Factors = "0.9 1 20\n" }).Value();
        Assert.Equal(100 * 2.5 * 0.9, file.Distribution.PeakIntensityCd, 1e-9);
    }

    [Theory]
    [InlineData("IESNA91\n", 80, false)] // ballast-lamp photometric factor up to 1991
    [InlineData("IESNA:LM-63-2002\n", 100, true)] // reserved
    [InlineData("IES:LM-63-2019\n", 100, false)] // kind of file
    public void Second_factor_by_version(string head, double peakCd, bool warned)
    {
        var read = (Plain with { Head = head, Factors = "1 0.8 20\n" }).Read();
        Assert.Equal(peakCd, read.Value!.Distribution.PeakIntensityCd, 1e-9);
        Assert.Equal(warned, read.Diagnostics.Any(d => d.Code == "TK166"));
    }

    [Theory]
    [InlineData("1 -1 1 3 1 1 1 1 2 0.5\n", 0.3048, 0.6096, 0.1524, false)] // feet
    [InlineData("1 -1 1 3 1 1 2 1 2 0.5\n", 1, 2, 0.5, false)]
    [InlineData("1 -1 1 3 1 1 2 -0.12 0 0\n", 0.12, 0.12, 0, true)] // negative: round
    [InlineData("1 -1 1 3 1 1 2 -0.12 -0.12 0.1\n", 0.12, 0.12, 0.1, true)]
    public void Opening(string counts, double widthM, double lengthM, double heightM, bool round) =>
        Assert.Equal(new LuminousOpening(widthM, lengthM, heightM, round), (Plain with { Counts = counts }).Value().Opening);

    [Theory]
    [InlineData("0\n45\n\n90\n", "100\n80 0\n")] // wrapped, with a blank line
    [InlineData("0,45,90\n", "100,80,0\n")]
    [InlineData("0, 45 ,90\n", " 1.0E+02, 80.,\t0\n")]
    public void Wrapped_lines_and_commas(string gammas, string candela)
    {
        var file = (Plain with { Gammas = gammas, Candela = candela }).Value();
        Assert.Equal(Plain.Value().Distribution.FluxLm, file.Distribution.FluxLm, 1e-9);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_endings(string ending) =>
        Assert.NotNull(Lm63Reader.Read("a.ies", Encoding.ASCII.GetBytes(Plain.Text.Replace("\n", ending, StringComparison.Ordinal))).Value);

    [Theory]
    [InlineData(1, "0", "100 80 0", "the same all round", 80, 80, 80, 80)]
    [InlineData(2, "0 90", "100 80 0 100 60 0", "four equal quadrants", 80, 60, 80, 60)]
    [InlineData(3, "0 90 180", "100 80 0 100 60 0 100 20 0", "left and right equal", 80, 60, 20, 60)]
    [InlineData(5, "0 90 180 270 360", "100 80 0 100 60 0 100 20 0 100 40 0 100 80 0", "no symmetry", 80, 60, 20, 40)]
    [InlineData(4, "0 90 180 270", "100 80 0 100 60 0 100 20 0 100 40 0", "no symmetry", 80, 60, 20, 40)]
    [InlineData(3, "90 180 270", "100 60 0 100 80 0 100 20 0", "street side and house side equal", 80, 60, 80, 20)]
    public void Horizontal_ranges(int count, string planes, string candela, string symmetry, double at0, double at90, double at180, double at270)
    {
        var file = (Plain with { Counts = $"1 -1 1 3 {count} 1 2 0 0 0\n", Planes = planes + "\n", Candela = candela + "\n" }).Value();
        Assert.Equal(symmetry, file.Symmetry);
        Assert.Equal([at0, at90, at180, at270], new[] { 90.0, 180, 270, 0 }.Select(c => file.Distribution.IntensityCd(c, 45)));
    }

    [Fact]
    public void Half_spheres_and_full_spheres()
    {
        var full = (Plain with { Gammas = "0 90 180\n", Candela = "100 50 100\n" }).Value().Distribution;
        Assert.Equal(0.5, full.UpwardFraction, 1e-9);
        var up = (Plain with { Gammas = "90 135 180\n", Candela = "50 80 100\n" }).Read();
        Assert.Equal(1, up.Value!.Distribution.UpwardFraction, 1e-4);
        Assert.Equal(0, up.Value.Distribution.IntensityCd(0, 45));
        Assert.Contains(up.Diagnostics, d => d.Code == "TK162");
    }

    [Fact]
    public void Tilt_factors_are_passed_over_and_reported()
    {
        var read = (Plain with { Tilt = "TILT=INCLUDE\n1\n3\n0 45 90\n1.0 0.95 0.85\n" }).Read();
        Assert.Equal(100, read.Value!.Distribution.PeakIntensityCd);
        Assert.Contains(read.Diagnostics, d => d.Code == "TK158" && d.Message.Contains("0.85 to 1.00", StringComparison.Ordinal));
        Assert.Contains((Plain with { Tilt = "TILT = other.tlt\n" }).Read().Diagnostics, d => d.Code == "TK158");
    }

    [Theory]
    [InlineData("1 500", 0.4, "TK156")] // more light than its lamps
    [InlineData("2 1500", 0.8, "TK157")] // losses in the luminaire
    [InlineData("1 1000", 0.1, "TK156")] // hardly any of it
    public void Flux_against_the_header(string lampsAndLumens, double scale, string code)
    {
        var read = (Plain with { Counts = $"{lampsAndLumens} 10 3 1 1 2 0 0 0\n", Candela = FormattableString.Invariant($"{100 * scale} {70.7 * scale} 0\n") }).Read();
        var found = read.Diagnostics.Single(d => d.Code == code);
        Assert.Contains(read.Value!.FluxRatio!.Value.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture), found.Message, StringComparison.Ordinal);
        Assert.Equal(read.Value.Warnings.AsEnumerable(), read.Diagnostics);
    }

    [Fact]
    public void Agreeing_header_says_nothing() => Assert.Empty(Lm63Reader.Read("g.ies", Repository.Fixture("G01_lambertian_1000lm_sym.ies")).Diagnostics);

    [Fact]
    public void Turned_round_file_is_reported() =>
        Assert.Contains((Plain with { Counts = "1 -1 1 3 3 1 2 0 0 0\n", Planes = "0 90 180\n", Candela = "100 20 0 100 60 0 100 80 0\n" }).Read().Diagnostics, d => d.Code == "TK161");

    [Theory]
    [InlineData("1 -1 1 3 1 2 2 0 0 0\n", "TK154", "type B")]
    [InlineData("1 -1 1 3 1 3 2 0 0 0\n", "TK154", "type A")]
    [InlineData("one -1 1 3 1 1 2 0 0 0\n", "TK151", "'one'")]
    [InlineData("1 -1 1 3.5 1 1 2 0 0 0\n", "TK153", "number of vertical angles is 3.5")]
    [InlineData("1 -1 1 -3 1 1 2 0 0 0\n", "TK153", "number of vertical angles is -3")]
    [InlineData("1 -1 0 3 1 1 2 0 0 0\n", "TK153", "multiplier is 0")]
    [InlineData("1 -1 1e300 3 1 1 2 0 0 0\n", "TK151", "'1e300'")]
    [InlineData("1 NaN 1 3 1 1 2 0 0 0\n", "TK151", "'NaN'")]
    [InlineData("1 0 1 3 1 1 2 0 0 0\n", "TK153", "lumens per lamp are 0")]
    [InlineData("1 -1 1 3 1 1 7 0 0 0\n", "TK153", "unit of length")]
    public void Refused_head_names_its_line(string counts, string code, string words) => Refused((Plain with { Counts = counts }).Read(), code, 6, words);

    [Theory]
    [InlineData("0 90 45\n", "0\n", "100 80 0\n", "TK153", 8, "ascend")]
    [InlineData("0 45 80\n", "0\n", "100 80 0\n", "TK153", 8, "0 to 80")]
    [InlineData("0 45 90\n", "0\n", "100 x 0\n", "TK151", 10, "'x'")]
    [InlineData("0 45 90\n", "0\n", "100 80\n", "TK152", 10, "ends where a candela value")]
    [InlineData("0 45 90\n", "0\n", "0 0 0\n", "TK168", null, "no light")]
    public void Refused_table_names_its_line(string gammas, string planes, string candela, string code, int? line, string words) =>
        Refused((Plain with { Gammas = gammas, Planes = planes, Candela = candela }).Read(), code, line, words);

    [Fact]
    public void Horizontal_range_of_no_symmetry_is_refused() =>
        Refused((Plain with { Counts = "1 -1 1 3 2 1 2 0 0 0\n", Planes = "0 100\n", Candela = "1 1 0 1 1 0\n" }).Read(), "TK153", 9, "0 to 100");

    [Fact]
    public void Words_instead_of_numbers_name_the_line() =>
        Refused(Lm63Reader.Read("w.ies", Encoding.ASCII.GetBytes("IESNA91\nTILT=NONE\nfile format error\n1 0 1 2 5 2 1 0 0 0\n")), "TK151", 3, "'file'");

    [Fact]
    public void No_tilt_line_is_refused() => Refused((Plain with { Tilt = "" }).Read(), "TK155", null, "TILT");

    [Fact]
    public void Odd_values_are_reported_and_survive()
    {
        var read = (Plain with { Candela = "100 80 -0.5 7\n" }).Read();
        Assert.Equal(0, read.Value!.Distribution.IntensityCd(0, 90));
        Assert.Equal(["TK159", "TK160"], read.Diagnostics.Select(d => d.Code));
    }

    [Fact]
    public void Latin_1_labels_are_kept()
    {
        var file = Lm63Reader.Read("a.ies", Encoding.Latin1.GetBytes((Plain with { Head = "IESNA91\n[LUMINAIRE] Chaussée\n" }).Text)).Value!;
        Assert.Equal("Chaussée", file.Keywords[0].Value);
    }

    [Fact]
    public void Damaged_bytes_never_throw() => Gen.Select(Gen.Int[0, 300], Gen.Byte, Gen.Int[0, 300]).Sample((at, value, length) =>
    {
        var bytes = Encoding.ASCII.GetBytes(Plain.Text);
        bytes[at % bytes.Length] = value;
        var read = Lm63Reader.Read("a.ies", bytes[..Math.Min(length, bytes.Length)]);
        return read.Value is null == read.HasErrors;
    });

    [Fact]
    public void A_file_without_a_version_line_is_noted_TK167() =>
        Assert.Contains((Plain with { Head = "an old file\n" }).Read().Diagnostics, d => d.Code == "TK167" && d.Severity == Severity.Note);

    [Fact]
    public void Planes_that_stop_short_of_360_are_closed_with_the_plane_at_0_TK165()
    {
        var open = Plain with { Counts = "1 -1 1 3 4 1 2 0 0 0\n", Planes = "0 90 180 270\n", Candela = "100 80 0 100 70 0 100 60 0 100 50 0\n" };
        Assert.Contains(open.Read().Diagnostics, d => d.Code == "TK165" && d.Severity == Severity.Warning);
    }

    private static PhotometricFile Fixture(string name) => Lm63Reader.Read(name, Repository.Fixture(name)).Value!;

    private static void Refused(Outcome<PhotometricFile> read, string code, int? line, string words)
    {
        Assert.Null(read.Value);
        var error = read.Diagnostics.Single(d => d.Severity == Severity.Error);
        Assert.Equal(code, error.Code);
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
        if (line is not { } l) return;
        Assert.Equal(l, error.Place.Row);
        Assert.Contains(FormattableString.Invariant($"line {l}:"), error.Message, StringComparison.Ordinal);
    }
}

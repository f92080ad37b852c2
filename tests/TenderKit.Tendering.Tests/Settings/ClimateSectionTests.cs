using TenderKit.Intake.Climate;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Tendering.Tests.Settings;

/// <summary>Climates as a tender file writes them.</summary>
public sealed class ClimateSectionTests
{
    private const string Air = "mean_c: 25 25 25 24 22 20 19 21 24 27 27 26, max_c: 29 29 30 29 28 26 25 27 31 33 33 31, min_c: 21 21 21 19 17 14 13 15 17 20 22 22";

    [Theory]
    [InlineData("irradiation_kwh_per_m2_day: [5, 5.1, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5]")]
    [InlineData("irradiation_kwh_per_m2_day: \"5, 5.1, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5\"")]
    [InlineData("irradiation_kwh_per_m2_day: 5 5,1 5 5 5 5 5 5 5 5 5 5")]
    [InlineData("irradiation_kwh_per_m2_day: 5;5,1;5;5;5;5;5;5;5;5;5;5")]
    [InlineData("irradiation_kwh_per_m2_day: { feb: 5.1, jan: 5, mar: 5, apr: 5, may: 5, jun: 5, jul: 5, aug: 5, sep: 5, oct: 5, nov: 5, dec: 5 }")]
    [InlineData("irradiation_mj_per_m2_day: 18 18.36 18 18 18 18 18 18 18 18 18 18")]
    [InlineData("irradiation: 18 18.36 18 18 18 18 18 18 18 18 18 18, unit: MJ/m2/day")]
    [InlineData("irradiation_wh_per_m2_day: 5000 5100 5000 5000 5000 5000 5000 5000 5000 5000 5000 5000")]
    [InlineData("irradiation_kwh_per_m2_month: 155 142.8 155 150 155 150 155 155 150 155 150 155")]
    public void Twelve_values_are_read_in_every_form_and_unit(string values)
    {
        var climates = Read($"monthly: {{ {(values.Contains('"') || values.Contains('[') || values.Contains('{') ? values : Quoted(values))}, {QuotedAir}, source: station 12, kind: measured record, years: 2001-2015 }}", out var problems);
        Assert.Empty(problems);
        Assert.Equal("monthly", climates.NameOf(null));
        var monthly = MonthlyClimateFile.Read(climates.Named["monthly"].Values!).Value!;
        Assert.Equal([5, 5.1, 5], monthly.IrradiationKWhPerM2.Take(3).Select(h => Math.Round(h, 6)));
        Assert.Equal((27.0, 33.0, 13.0), (monthly.MeanC[9], monthly.DailyMaxC[9], monthly.DailyMinC[6]));
        Assert.Equal((ClimateGrade.MeasuredRecord, "station 12"), (monthly.Grade, monthly.Source));
    }

    [Theory]
    [InlineData("monthly: { irradiation_kwh_per_m2_day: [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5] }", "TK133", "holds 11 values where twelve are needed; counted from January there is none for December.")]
    [InlineData("monthly: { irradiation_kwh_per_m2_day: [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5] }", "TK133", "holds 13 values where twelve are needed; write January to December without a mean of the year")]
    [InlineData("monthly: { source: s }", "TK113", "holds no irradiation; add irradiation_kwh_per_m2_day")]
    [InlineData("monthly: { irradiation_kwh_per_m2_dai: [5] }", "TK111", "did you mean 'irradiation_kwh_per_m2_day'?")]
    [InlineData("monthly: { irradiation_kwh_per_m2_day: { jan: 5, smarch: 5 } }", "TK111", "is no month")]
    [InlineData("{ default: a.csv, monthly: { irradiation_kwh_per_m2_day: [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5] } }", "TK112", "it is not clear which holds")]
    [InlineData("named: { estimate: { file: a.csv } }", "TK112", "the word stands for the built-in table")]
    [InlineData("named: { lake: { fil: a.csv } }", "TK111", "did you mean 'file'?")]
    public void What_is_wrong_is_named(string section, string code, string words)
    {
        Read(section, out var problems);
        Assert.Contains(problems, d => d.Code == code && d.Message.Contains(words, StringComparison.Ordinal));
    }

    // a month left out by name is told by its name
    [Fact]
    public void A_missing_month_is_named()
    {
        var climates = Read("monthly: { irradiation_kwh_per_m2_day: { jan: 5, feb: 5, apr: 5, may: 5, jun: 5, jul: 5, aug: 5, sep: 5, oct: 5, nov: 5, dec: 5 } }", out _);
        var outcome = MonthlyClimateFile.Read(climates.Named["monthly"].Values!, airPlace: (-13.7, 34.5));
        Assert.Contains(outcome.Diagnostics, d => d.Code == "TK133" && d.Message.StartsWith("irradiation lacks March", StringComparison.Ordinal));
    }

    [Fact]
    public void Named_climates_are_found_in_any_case_and_anything_else_is_a_file()
    {
        var climates = Read("{ default: Lake, named: { lake: { monthly: { irradiation_kwh_per_m2_day: [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5] } }, hill: { file: x.csv } } }", out var problems);
        Assert.Empty(problems);
        Assert.Equal(("lake", "hill", "other.csv"), (climates.NameOf(null), climates.NameOf("HILL"), climates.NameOf("other.csv")));
        Assert.Null(climates.NameOf("Estimate"));
        Assert.Equal("x.csv", climates.Named["hill"].File);
    }

    private static string QuotedAir => string.Join(", ", Air.Split(", ").Select(Quoted));

    private static string Quoted(string pairs) => string.Join(", ", pairs.Split(", ").Select(p => p.Split(": ", 2)).Select(p => $"{p[0]}: \"{p[1]}\""));

    private static TenderClimates Read(string section, out List<Diagnostic> problems)
    {
        problems = [];
        var text = section.StartsWith('{') ? "climate: " + section : "climate:\n  " + section;
        var top = YamlFile.Read(text, "tender.yaml", problems)!;
        return ClimateSection.Read(top.Section("climate"));
    }
}

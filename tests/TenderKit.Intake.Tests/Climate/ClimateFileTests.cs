using TenderKit.Intake.Climate;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using Xunit;

namespace TenderKit.Intake.Tests.Climate;

public sealed class ClimateFileTests
{
    private const string Months = "# source: own\n# record_low_c: 4\n# record_high_c: 41\nmonth,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c\n1,5,20,27,14\n2,5,20,27,14\n3,5,20,27,14\n4,5,20,27,14\n5,5,20,27,14\n6,5,20,27,14\n7,5,20,27,14\n8,5,20,27,14\n9,5,20,27,14\n10,5,20,27,14\n11,5,20,27,14\n12,5,20,27,14\n";

    [Fact]
    public void The_kind_is_told_by_content_and_not_by_name()
    {
        Assert.Equal(SeriesKind.TypicalYear, Value("a.txt", SampleHours.Epw()).Series!.Kind);
        Assert.Equal(SeriesKind.TypicalYear, Value("a.epw", SampleHours.Tmy3()).Series!.Kind);
        Assert.Equal(SeriesKind.SatelliteYears, Value("a", SamplePower.Hourly("LST", "Wh/m^2", 1)).Series!.Kind);
        Assert.NotNull(Value("a.csv", SamplePower.Daily("kW-hr/m^2/day", 1, true)).Days);
        Assert.Equal(5, Value("a.csv", Months).Monthly.IrradiationKWhPerM2[0]);
        Assert.NotNull(Value("a.txt", "\uFEFF" + SampleHours.Epw()).Series);
    }

    [Fact]
    public void Content_that_is_none_of_them_is_refused()
    {
        Assert.Equal("TK141", Assert.Single(ClimateFile.Read("a.pdf", SampleHours.Bytes("%PDF-1.7"), null, null).Diagnostics).Code);
        Assert.Equal("TK105", Assert.Single(ClimateFile.Read("a.epw", [], null, null).Diagnostics).Code);
        Assert.Contains(ClimateFile.Read("a.csv", SampleHours.Bytes("some;text"), null, null).Diagnostics, d => d.Code == "TK131");
    }

    // by hand: half a degree of latitude is 55.6 km, 0.4 degrees 44.5 km
    [Theory]
    [InlineData(10.5, true)]
    [InlineData(10.4, false)]
    public void A_place_far_from_the_site_is_told(double latitude, bool isTold)
    {
        var found = ClimateFile.Read("a.epw", SampleHours.Bytes(SampleHours.Epw()), latitude, 30).Diagnostics;
        Assert.Equal(isTold, found.Any(d => d is { Code: "TK147", Severity: Severity.Warning }));
        if (isTold) Assert.Contains("56 km from the site at 10.50, 30.00", found.Single(d => d.Code == "TK147").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_typical_year_is_said_to_be_one_and_its_records_are_widened()
    {
        var outcome = Read("a.epw", SampleHours.Epw());
        Assert.Equal("TK148", Assert.Single(outcome.Diagnostics).Code);
        Assert.Equal((21.0 - 5, 36.0 + 5), (outcome.Value!.Monthly.RecordLowC, outcome.Value.Monthly.RecordHighC));
    }

    [Fact]
    public void A_clock_that_does_not_fit_the_sun_is_told()
    {
        var outcome = Read("a.epw", SampleHours.Epw(location: "LOCATION,Made,-,XXX,own,0,10.0,30.0,4.0,100.0"));
        var warning = outcome.Diagnostics.Single(d => d.Code == "TK149");
        Assert.Contains("lies at 10.", warning.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_heat_beyond_the_usual_reach_is_told()
    {
        var outcome = Read("a.epw", SampleHours.Epw(air: t => t is { Month: 7, Day: 1, Hour: 2 } ? "54.0" : SampleHours.Text(SampleHours.AirC(t.Month, t.Hour))));
        Assert.Contains(outcome.Diagnostics, d => d.Code == "TK146" && d.Message.StartsWith("the highest hour, 54.0 degC, is 17.0 K above", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("epw")]
    [InlineData("tmy3")]
    [InlineData("hours")]
    [InlineData("days")]
    [InlineData("json")]
    public void Damaged_files_are_refused_with_a_reason_and_never_throw(string kind)
    {
        var whole = kind switch
        {
            "epw" => SampleHours.Epw(),
            "tmy3" => SampleHours.Tmy3(),
            "hours" => SamplePower.Hourly("UTC", "Wh/m^2", 1),
            "days" => SamplePower.Daily("MJ/m^2/day", 3.6, true),
            _ => SamplePower.Json("\"ALLSKY_SFC_SW_DWN\":{\"2001010100\":1.5,\"2001010101\":-999},\"T2M\":{\"2001010100\":20}", "Wh/m^2", "\"time_standard\":\"UTC\""),
        };
        var random = new Random(7);
        const string Letters = "0123456789,;:./-\"{}[]\n\r xyN\u00E9\0";
        for (var i = 0; i < 400; i++)
        {
            var text = whole[..random.Next(1, Math.Min(whole.Length, 3000))].ToCharArray();
            for (var k = random.Next(6); k > 0; k--) text[random.Next(text.Length)] = Letters[random.Next(Letters.Length)];
            var outcome = Read("a.dat", new string(text));
            Assert.True(outcome.Value is null && outcome.HasErrors, new string(text));
        }
    }

    private static Outcome<ClimateReading> Read(string name, string text) => ClimateFile.Read(name, SampleHours.Bytes(text), null, null);

    private static ClimateReading Value(string name, string text) => Read(name, text).Value!;
}

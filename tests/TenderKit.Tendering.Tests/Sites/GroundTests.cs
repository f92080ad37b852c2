using System.Collections.Immutable;
using System.Text;
using TenderKit.Catalog.Families;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

/// <summary>Wind definition, traffic, corrosivity, soil values and floods of the site list.</summary>
public class GroundTests
{
    private static readonly LightTarget P4 = new("P4", 5, 1, null, 7.5, "test target");

    private static readonly SiteDefaults Defaults = new(
        P4, "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn with { Name = "full" }),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    [Fact]
    public void Columns_are_read()
    {
        var reading = Read("Site,Latitude,Longitude,Length (m),Wind (m/s),Wind definition,Traffic speed (km/h),Corrosion category,Soil kPa per m,Bearing capacity (kPa),Flood prone\nA,1,2,100,40,3-s gust 50 years,80,C4,31.4,150,yes");
        var site = Assert.Single(reading.Sites);
        Assert.Equal(new SiteGround(WindStandard.En1991, WindDefinition.Gust50, 80, CorrosionCategory.C4, true), site.Ground);
        Assert.Equal((31.4, 150), (site.Soil.LateralBearingKPaPerM, site.Soil.BearingKPa));
        Assert.True(site.SoilStated);
        Assert.Equal(40 * 1.065 / 1.52, site.Wind.Wind.SpeedMPerS, 1e-9);
    }

    [Theory]
    [InlineData("0.2", CorrosionCategory.C5)]
    [InlineData("3", CorrosionCategory.C4)]
    [InlineData("400", CorrosionCategory.C3)]
    public void Distance_to_the_coast_gives_a_category(string km, CorrosionCategory expected) =>
        Assert.Equal(expected, Assert.Single(Read($"Site,Latitude,Longitude,Length (m),Distance to coast (km)\nA,1,2,100,{km}").Sites).Ground.Corrosivity);

    [Theory]
    [InlineData("yes", true, null)]
    [InlineData("no", false, null)]
    [InlineData("", false, null)]
    [InlineData("2027-03-15", true, "2027-03-15")]
    [InlineData("15 Mar 2027", true, "2027-03-15")]
    [InlineData("46096", true, "2026-03-15")] // day number of a workbook
    public void A_survey_is_yes_no_or_its_day(string cell, bool isSurveyed, string? on)
    {
        var site = Assert.Single(Read($"Site,Latitude,Longitude,Length (m),Surveyed\nA,1,2,100,{cell}").Sites);
        Assert.Equal((isSurveyed, on is null ? null : DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture)), (site.IsSurveyed, site.SurveyedOn));
    }

    [Fact]
    public void A_silent_row_takes_the_usual()
    {
        var site = Assert.Single(Read("Site,Latitude,Longitude,Length (m)\nA,1,2,100").Sites);
        Assert.Equal(SiteGround.Usual, site.Ground);
        Assert.Equal(1, site.Wind.Conversion.Factor);
    }

    [Theory]
    [InlineData("Wind definition", "storm", "TK185")]
    [InlineData("Corrosion category", "C9", "TK185")]
    [InlineData("Flood prone", "perhaps", "TK185")]
    [InlineData("Surveyed", "last week", "TK185")]
    [InlineData("Surveyed", "03/04/2027", "TK185")]
    [InlineData("Traffic speed (km/h)", "900", "TK184")]
    [InlineData("Soil kPa per m", "0", "TK184")]
    public void What_is_not_understood_is_said(string heading, string cell, string code) =>
        Assert.Contains(Read($"Site,Latitude,Longitude,Length (m),{heading}\nA,1,2,100,{cell}").Diagnostics, d => d.Code == code);

    [Theory]
    [InlineData("10-minute mean 50 years", WindDefinition.TenMinuteMean50)]
    [InlineData("mean 10 min", WindDefinition.TenMinuteMean50)]
    [InlineData("hourly mean", WindDefinition.HourlyMean50)]
    [InlineData("3-s gust 50 years", WindDefinition.Gust50)]
    [InlineData("3 second gust, 700 years", WindDefinition.Gust700)]
    public void Definitions_in_words(string words, WindDefinition expected) =>
        Assert.Equal(expected, Assert.Single(Read($"Site,Latitude,Longitude,Length (m),Wind definition\nA,1,2,100,\"{words}\"").Sites).Ground.Definition);

    private static SiteListReading Read(string csv) => SiteListReader.Read(TableReader.Read(Encoding.UTF8.GetBytes(csv), "a.csv").Value!, Defaults, _ => P4, ["P4"]);
}

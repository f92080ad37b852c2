using System.Collections.Immutable;
using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Documents.Workbooks;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Forms;

[Collection("world")]
public class SurveyFormsTests
{
    [Fact]
    public void The_text_is_as_approved() => Approved.Same("survey", TextView.Of(SurveyForms.Document(HandMadeDesign.Small())));

    [Fact]
    public void Each_site_has_one_page()
    {
        var design = HandMadeDesign.Many(9);
        Assert.Equal(10, PdfPrinter.Lay(SurveyForms.Document(design).Blocks).Sheets.Count);
    }

    [Theory]
    [InlineData(-13.7042, "13° 42.252′ S")]
    [InlineData(0.99999999, "1° 00.000′ N")]
    [InlineData(34.5518, "34° 33.108′ N")]
    public void Degrees_are_written_with_minutes(double degrees, string expected) => Assert.Equal(expected, SurveyForms.DegreesMinutes(degrees, "N", "S"));

    [Fact]
    public void Sites_not_surveyed_are_marked_in_the_site_table()
    {
        var design = HandMadeDesign.Small();
        var surveyed = design with { Sites = [.. design.Sites.Select(s => s with { Site = s.Site with { IsSurveyed = true, SurveyedOn = new DateOnly(2027, 3, 1) } })] };
        Assert.Contains("8*", TextView.Of(TechnicalSchedule.Document(design)), StringComparison.Ordinal);
        Assert.DoesNotContain("8*", TextView.Of(TechnicalSchedule.Document(surveyed)), StringComparison.Ordinal);
        Assert.Contains("1 March 2027", TextView.Of(SurveyForms.Document(surveyed)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_answers_are_read_back_as_a_site_list()
    {
        var design = HandMadeDesign.Small();
        var horizon = new HorizonProfile([(0, 5), (90, 12)]);
        var site = design.Sites[0] with { Site = design.Sites[0].Site with { Horizon = horizon, IsSurveyed = true, SurveyedOn = new DateOnly(2027, 3, 1), District = "North" } };
        var file = TableReader.Read(SurveyAnswers.Make(design with { Sites = design.Sites.SetItem(0, site) }), "answers.xlsx").Value!;
        var target = new LightTarget("P4", 5, 1, null, null, "test");
        var reading = SiteListReader.Read(file, new SiteDefaults(
            target, "s", ImmutableSortedDictionary<string, Sizing.Energy.LightingSchedule>.Empty.Add("s", Sizing.Energy.LightingSchedule.DuskToDawn with { Name = "s" }), [6], 5, Arrangement.SingleSided, 0, 28,
            Sizing.Structure.Terrain.II, Sizing.Structure.SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty), _ => null, []);

        Assert.Equal(design.Sites.Select(s => s.Site.Id), reading.Sites.Select(s => s.Id));
        Assert.Equal(("North", new DateOnly(2027, 3, 1), 0.03, "0:5 90:12"), (reading.Sites[0].District, reading.Sites[0].SurveyedOn, Math.Round(reading.Sites[0].ShadedFraction, 9), HorizonText.Of(reading.Sites[0].Horizon!)));
        Assert.Equal(design.Sites.Select(s => (s.Site.SoilStated, Math.Round(s.Site.LatitudeDegrees, 6), s.Site.LengthM)), reading.Sites.Select(s => (s.SoilStated, Math.Round(s.LatitudeDegrees, 6), s.LengthM)));
        Assert.Equal([true, false, false], reading.Sites.Select(s => s.IsSurveyed));
    }

    [Fact]
    public void A_site_without_a_design_gets_a_page_too()
    {
        var small = HandMadeDesign.Small();
        var unmet = small.Unmet[0] with { Site = small.Sites[0].Site with { Id = "S-04", Name = "Ferry landing" } };
        var text = TextView.Of(SurveyForms.Document(small with { Unmet = [unmet] }));

        Assert.Contains("S-04 Ferry landing", text, StringComparison.Ordinal);
        Assert.Contains("none: no design was found", text, StringComparison.Ordinal);
        Assert.Contains("4 sites are not surveyed", text.Replace('\n', ' '), StringComparison.Ordinal);
    }
}

using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

public sealed class HorizonTests
{
    [Theory]
    [InlineData("0:5 90:12 180:0 270:20", "0:5 90:12 180:0 270:20")]
    [InlineData("270:20; 90:12, 0:5 / 180:0", "0:5 90:12 180:0 270:20")]
    [InlineData("N:5 E:12 S:0 W:20", "0:5 90:12 180:0 270:20")]
    [InlineData("nw:7,5 se:2.5", "135:2.5 315:7.5")]
    [InlineData("0:5,90:12", "0:5 90:12")]
    [InlineData("0\u00B0: 5\u00B0, 360\u00B0: 5\u00B0, 90\u00B0: 12,5\u00B0", "0:5 90:12.5")]
    public void A_skyline_is_read_as_people_write_it(string text, string profile) => Assert.Equal(profile, HorizonText.Of(HorizonText.Read(text).Profile!));

    [Theory]
    [InlineData("hill in the east", "is no skyline; write pairs of azimuth and elevation")]
    [InlineData("90:12", "needs at least two directions")]
    [InlineData("0:5 400:12", "has the azimuth 400; 0 to 360 degrees clockwise from north are possible")]
    [InlineData("0:5 90:85", "has the elevation 85; 0 to 80 degrees are possible")]
    [InlineData("0:5 90:-2", "has the elevation -2")]
    [InlineData("0:5 360:12 90:3", "gives one azimuth two elevations")]
    public void What_is_no_skyline_is_refused(string text, string words)
    {
        var (profile, problem) = HorizonText.Read(text);
        Assert.Null(profile);
        Assert.Contains(words, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_of_skylines_is_read_and_a_bad_one_leaves_its_site_out()
    {
        var sites = Samples.HandMadeDesign.Small().Sites.Select(s => s.Site).ToArray();
        var problems = new List<Diagnostic>();
        var read = Apply("Site,Azimuth deg,Elevation deg\nS-01,0,5\nS-01,90,12\nS-02,0,high\nS-99,0,5\n");
        Assert.Equal(["S-01", "S-03"], read.Select(s => s.Id));
        Assert.Equal("0:5 90:12", HorizonText.Of(read[0].Horizon!));
        Assert.Null(read[1].Horizon);
        Assert.Equal(["TK198", "TK199"], problems.Select(d => d.Code));
        Assert.Equal(("S-02", 4), (problems[1].Place.Site, problems[1].Place.Row));
        problems.Clear();
        Assert.Empty(Apply("a,b\n1,2\n"));
        Assert.Equal("TK197", Assert.Single(problems).Code);

        Site[] Apply(string text) => [.. HorizonFile.Apply(TableReader.Read(Encoding.UTF8.GetBytes(text), "horizons.csv").Value!.Tables[0], [.. sites], problems)];
    }
}

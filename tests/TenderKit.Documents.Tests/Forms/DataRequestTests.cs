using System.Collections.Immutable;
using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Forms;

[Collection("world")]
public class DataRequestTests
{
    private static readonly ImmutableArray<double> _factors = [0.98, 0.95, 0.94, 0.93, 0.88, 0.88, 0.77];

    [Fact]
    public void It_says_for_which_place_in_which_unit_under_which_name_and_what_changes()
    {
        var view = TextView.Of(DataRequest.Document(Design()));
        Assert.All(
            new[] { "S-01, S-02,", "34.7610", "214", "climate-1.csv", "ALLSKY_SFC_SW_DWN and T2M", "not the total of the month", "month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c", "column 'Climate file'", "now 0.93", "measured record: at least 10 years" },
            words => Assert.Contains(words, view, StringComparison.Ordinal));
        Assert.Matches(@"measured record.*0\.98.*5", view); // 0.98 / 0.93 = 1.054
    }

    // far_km 50: sites more than 25 km from the first of a place get a file of their own
    [Fact]
    public void Sites_near_one_another_share_a_file()
    {
        var design = Design();
        var far = design.Sites[2] with { Site = design.Sites[2].Site with { LatitudeDegrees = 1 } };
        Assert.Equal(["S-01 S-02", "S-03"], DataRequest.Places(design with { Sites = design.Sites.SetItem(2, far) }).Select(p => string.Join(' ', p.Select(s => s.Site.Id))));
    }

    [Fact]
    public void A_supplied_climate_needs_none()
    {
        var design = Design();
        Assert.True(DataRequest.IsNeeded(design));
        Assert.False(DataRequest.IsNeeded(design with { Sites = [.. design.Sites.Select(s => s with { Climate = s.Climate with { Monthly = s.Climate.Monthly with { Grade = ClimateGrade.TypicalYear } } })] }));
    }

    [SkippableFact]
    public void It_is_one_page() => Assert.Single(PdfReader.Pages(DataRequest.Make(Design())));

    private static TenderDesign Design()
    {
        var design = HandMadeDesign.Small();
        var factors = ClimateGrades.All.Select((g, i) => new DesignRule(ClimateGrades.RuleId(g), _factors[i], 0.5, 1, "fraction", "test", "climate", false));
        return design with { Rules = [.. design.Rules, .. factors, new DesignRule("climate.far_km", 50, 10, 150, "km", "test", "climate", false)] };
    }
}

using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Documents.Tests.Workbooks;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Schedule;

/// <summary>The quantities of a site nobody has stood on are marked provisional wherever they are counted; those of a surveyed site nowhere.</summary>
[Collection("world")]
public class ProvisionalTests
{
    private static readonly TenderDesign _open = HandMadeDesign.Small();

    [Fact]
    public void The_schedule_marks_summary_kits_sites_and_maintenance()
    {
        var text = Schedule(_open);
        foreach (var words in new[] { "poles, provisional until", ProvisionalWords.Legend, "The number of poles is provisional until every site is surveyed.", "Numbers are provisional until every site is surveyed." })
            Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.Equal(2, Count(text, ProvisionalWords.Legend));
        Assert.All(_open.Kits, k => Assert.Matches($@"(?m)^{k.Id} \| [^|]+ \| {k.Poles}\* \|", text));
    }

    [Fact]
    public void Bill_with_and_without_prices_and_their_site_sheets_name_the_sites_of_the_lot()
    {
        var bill = BillBuilder.Build(_open).Value!;
        foreach (var workbook in new[] { UnpricedSchedule.Make(_open, bill), PriceWorkbook.Make(_open, bill) })
        {
            var text = WorkbookText.View(workbook);
            foreach (var sites in new[] { "S-01, S-02, S-03.", "S-01, S-02.", "S-03." })
                Assert.Contains("Not surveyed, so their poles and everything counted from them are provisional: " + sites, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_survey_form_says_so_on_every_page() =>
        Assert.Equal(_open.Sites.Length, Count(TextView.Of(SurveyForms.Document(_open)), "no: quantities provisional"));

    [Fact]
    public void Nothing_is_provisional_once_every_site_is_surveyed()
    {
        var done = _open with { Sites = [.. _open.Sites.Select(s => s with { Site = s.Site with { IsSurveyed = true, SoilStated = true } })] };
        var bill = BillBuilder.Build(done).Value!;
        foreach (var text in new[] { Schedule(done), TextView.Of(SurveyForms.Document(done)), WorkbookText.View(UnpricedSchedule.Make(done, bill)) })
        {
            Assert.DoesNotContain("Not surveyed", text, StringComparison.Ordinal);
            Assert.DoesNotContain("until every site is surveyed", text, StringComparison.Ordinal);
            Assert.DoesNotContain("quantities provisional", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Only_the_kits_of_unsurveyed_sites_are_marked()
    {
        var part = _open with { Sites = _open.Sites.SetItem(1, _open.Sites[1] with { Site = _open.Sites[1].Site with { IsSurveyed = true } }) };
        Assert.True(ProvisionalWords.Holds(part, part.Kits[0]));
        Assert.False(ProvisionalWords.Holds(part, part.Kits[1]));
        Assert.Equal("Not surveyed, so their poles and everything counted from them are provisional: S-01.", ProvisionalWords.Of(part, "A"));
    }

    private static string Schedule(TenderDesign design) => TextView.Of(TechnicalSchedule.Document(design));

    private static int Count(string text, string part) => text.Split(part).Length - 1;
}

using TenderKit.Documents.Buyer;
using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Documents.Tests.Languages;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Layout;

[Collection("world")]
public class PlacedTextTests
{
    [Theory]
    [InlineData(0, "en")]
    [InlineData(60, "en")]
    [InlineData(0, "fr")]
    [InlineData(0, "es")]
    [InlineData(0, "pt")]
    public void No_text_leaves_its_page_or_runs_into_other_text_and_no_heading_stands_alone(int sites, string language)
    {
        var design = (sites == 0 ? HandMadeDesign.Small() : HandMadeDesign.Many(sites)).SpokenIn(language);
        Note[] notes = [.. Enumerable.Range(1, 12).Select(i => new Note("n" + i, "Topic " + (i / 3), "IEC 62619; local law", "why " + i, string.Join(' ', Enumerable.Repeat("do it with care", i)), "electrician", "because"))];
        PaperDocument[] documents =
        [
            TechnicalSchedule.Document(design), SettingsSheets.Document(design), SurveyForms.Document(design), CommunityPage.Document(design), NeutralSpecification.Document(design), NotesAppendix.Document(design, [.. notes]),
        ];
        Assert.All(documents, PlacedText.AssertSound);
    }

    [Fact]
    public void Long_names_clauses_and_twelve_kits_leave_every_line_in_its_place()
    {
        var design = Stressed();
        Note[] notes = [.. Enumerable.Range(1, 20).Select(i => new Note("n" + i, "A topic with a name that is long enough to need a second line of the heading " + (i / 3), "IEC 62619; local law", Long(40), Long(90), "licensed electrician; licensed structural engineer", Long(25)))];
        PaperDocument[] documents =
        [
            TechnicalSchedule.Document(design), SettingsSheets.Document(design), SurveyForms.Document(design), CommunityPage.Document(design), NeutralSpecification.Document(design), NotesAppendix.Document(design, [.. notes]),
        ];
        Assert.All(documents, PlacedText.AssertSound);
    }

    private static string Long(int words) => string.Join(' ', Enumerable.Repeat("extraordinarily", words));

    private static TenderDesign Stressed()
    {
        var many = HandMadeDesign.Many(48);
        var name = "Nyamagabe-Rutsiro intercommunal market road, section 4 of 12"; // 60 characters
        return many with
        {
            Tender = many.Tender with
            {
                Head = many.Tender.Head with { Title = "Supply and installation of stand-alone solar street lighting in forty-eight villages of the northern and eastern districts, second phase", Employer = Long(6), Bidder = Long(6) },
            },
            Sites = [.. many.Sites.Select(s => s with { Site = s.Site with { Name = name, Lot = "Lot " + s.Site.Lot + " of the northern districts", District = "Intercommunal district of the upper valley", Remark = Long(12) } })],
            Kits = [.. many.Kits.Select(k => k with { Checks = [.. k.Checks.Select(c => c with { Property = c.Property + ", as the clause on " + Long(5), Basis = c.Basis + "; " + Long(4), Offered = c.Offered * 1000, Required = c.Required * 1000 })] })],
            Unmet = [.. Enumerable.Range(0, 12).Select(i => new UnmetSite("S-9" + i, name, Long(30)))],
            Diagnostics = [.. many.Diagnostics, TenderKit.Sizing.Basics.Diagnostic.Warning("TK310", Long(60))],
        };
    }

    [Fact]
    public void Text_that_leaves_the_page_or_crosses_other_text_is_found()
    {
        static PaperDocument Of(params Block[] blocks) => new("t", "a", "s", "r", null, [.. blocks]);
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Stray(Paper.RightPt - 5, 80))));
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Stray(100, 80), new Stray(110, 82))));
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Heading(1, "Alone"))));
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Heading(1, "Alone"), new Heading(2, "with another"), new PageBreak(), new Paragraph("and text on the next page"))));
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Stray(100, 80, (100, 110)))));
        PlacedText.AssertSound(Of(new Stray(100, 80), new Stray(100, 95)));
    }

    private sealed record Stray(double X, double Top, (double Left, double Right)? Cell = null) : Block
    {
        public override double LeadHeight => 0;

        public override void Place(PageFlow flow) => flow.Line("a stray word", TextStyle.Body, X, Top, Cell);
    }
}

using TenderKit.Documents.Buyer;
using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Tests.Languages;
using TenderKit.Documents.Schedule;
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
    public void Text_that_leaves_the_page_or_crosses_other_text_is_found()
    {
        static PaperDocument Of(params Block[] blocks) => new("t", "a", "s", "r", null, [.. blocks]);
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Stray(Paper.RightPt - 5, 80))));
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Stray(100, 80), new Stray(110, 82))));
        Assert.ThrowsAny<Exception>(() => PlacedText.AssertSound(Of(new Heading(1, "Alone"))));
        PlacedText.AssertSound(Of(new Stray(100, 80), new Stray(100, 95)));
    }

    private sealed record Stray(double X, double Top) : Block
    {
        public override double LeadHeight => 0;

        public override void Place(PageFlow flow) => flow.Line("a stray word", TextStyle.Body, X, Top);
    }
}

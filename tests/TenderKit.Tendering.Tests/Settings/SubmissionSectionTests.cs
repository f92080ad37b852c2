using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Settings;

public class SubmissionSectionTests
{
    [Fact]
    public void Forms_security_and_deviations_are_read()
    {
        var read = Read("submission: { bid_security: { share: 2 %, days_beyond_validity: 28 }, forms: [ { form: Letter of bid, clause: 11.1, signed_by: chair } ], deviations: [ { clause: 4, text: Pole 5 m, reason: stock } ] }", out var problems);

        Assert.Empty(problems);
        Assert.Equal(0.02m, read.Security!.ShareFraction);
        Assert.Equal("Letter of bid", Assert.Single(read.Forms).Form);
        Assert.Equal("Pole 5 m", Assert.Single(read.Deviations).Text);
    }

    [Theory]
    [InlineData("submission: { bid_security: { share: 2 %, amount: 500 } }", "TK113")]
    [InlineData("submission: { bid_security: { days_beyond_validity: 28 } }", "TK113")]
    [InlineData("submission: { forms: [ { form: Letter, expires: 31/12/2027 } ] }", "TK114")]
    [InlineData("submission: { forms: [ { from: Letter } ] }", "TK113")]
    [InlineData("submission: { fields: [] }", "TK111")]
    public void What_is_wrong_is_named(string text, string code)
    {
        Read(text, out var problems);

        Assert.Contains(problems, p => p.Code == code);
    }

    [Fact]
    public void A_form_that_ends_before_the_bid_and_a_file_that_is_not_there_are_named()
    {
        var read = Read("submission: { forms: [ { form: Tax clearance, expires: 2027-04-01 }, { form: Licence, file: lost.pdf } ] }", out _);

        var found = SubmissionSection.Examine(read, HandMadeDesign.Small().Tender.Head).ToArray();

        Assert.Contains(found, d => d.Code == "TK717" && d.Message.Contains("2027-07-13"));
        Assert.Contains(found, d => d.Code == "TK718" && d.Message.Contains("lost.pdf"));
    }

    private static Submission Read(string text, out List<Diagnostic> problems)
    {
        problems = [];
        var top = YamlFile.Read(text, "tender.yaml", problems)!;
        return SubmissionSection.Read(top.Section("submission"), Path.GetTempPath());
    }
}

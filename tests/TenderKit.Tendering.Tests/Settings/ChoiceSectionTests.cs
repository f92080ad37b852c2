using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Design;
using Xunit;

namespace TenderKit.Tendering.Tests.Settings;

public class ChoiceSectionTests
{
    [Theory]
    [InlineData("", "first cost", null)]
    [InlineData("choice: { by: first cost }", "first cost", null)]
    [InlineData("choice: { by: present value, years: 15, discount: 6.5 % }", "present value over 15 years at 6.5 % a year", null)]
    [InlineData("choice: { by: present value }", "present value over 10 years at 8 % a year", null)]
    [InlineData("choice: { by: guess }", "first cost", "TK117")]
    [InlineData("choice: { by: present value, years: 0 }", "present value over 10 years at 8 % a year", "TK116")]
    [InlineData("choice: { by: present value, discount: 80 % }", "present value over 10 years at 0 % a year", "TK116")]
    [InlineData("choice: { by: present value, disount: 8 % }", "present value over 10 years at 8 % a year", "TK111")]
    public void Reads_what_the_designs_are_chosen_by(string lines, string words, string? code)
    {
        var problems = new List<Diagnostic>();
        var text = File.ReadAllText(Path.Combine(StarterTender.Inputs.Tender.Folder, "tender.yaml"));
        var read = TenderFile.Read(text + "\n" + lines + "\n", "tender.yaml", "", problems)!;
        Assert.Equal(words, read.Tender.Choice.InWords);
        Assert.Equal(code is null ? [] : [code], problems.Select(p => p.Code));
    }
}

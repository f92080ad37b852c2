using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Languages;

[Collection("world")]
public class SpokenDocumentTests
{
    [Theory]
    [InlineData("fr", "Sommaire")]
    [InlineData("es", "Índice")]
    [InlineData("pt", "Índice")]
    public void The_schedule_speaks_the_language_of_the_tender(string language, string contents) =>
        Assert.Contains(contents, TextView.Of(TechnicalSchedule.Document(HandMadeDesign.Small().SpokenIn(language))), StringComparison.Ordinal);

    [Fact]
    public void The_same_bytes_under_every_culture()
    {
        var design = HandMadeDesign.Small().SpokenIn("fr");
        var bill = BillBuilder.Build(design).Value!;
        Assert.Single(SameEverywhere.Run(() => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(TechnicalSchedule.Make(design)))).Take(6).Distinct());
        Assert.Single(SameEverywhere.Run(() => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(PriceWorkbook.Make(design, bill)))).Distinct());
    }

    [Theory]
    [InlineData("en", "one thousand two hundred and thirty-four US dollars and 50/100")]
    [InlineData("fr", "mille deux cent trente-quatre dollars des États-Unis et 50/100")]
    [InlineData("es", "mil doscientos treinta y cuatro dólares de los Estados Unidos y 50/100")]
    [InlineData("pt", "mil duzentos e trinta e quatro dólares dos Estados Unidos e 50/100")]
    public void Amounts_are_written_in_words(string language, string words) => Assert.Equal(words, AmountInWords.Of(1234.50m, "USD", Wording.In(language)));
}

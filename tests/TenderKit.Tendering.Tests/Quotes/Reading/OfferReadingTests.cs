using TenderKit.Tendering.Quotes.Checks;
using TenderKit.Tendering.Quotes.Reading;
using Xunit;

namespace TenderKit.Tendering.Tests.Quotes.Reading;

public class OfferReadingTests
{
    [Theory]
    [InlineData("LED street light 30W IP66 5100 lm 4000K", "luminaire", "input_power_w=30 ip_code=66 flux_lm=5100 colour_temperature_k=4000")]
    [InlineData("Panel solar 80Wp mono 780x670x30", "module", "rated_wp=80 length_m=0.78 width_m=0.67 thickness_m=0.03")]
    [InlineData("Batterie LiFePO4 12,8V 60Ah 5 ans", "battery", "chemistry=LithiumIronPhosphate nominal_voltage_v=12.8 rated_ah=60 warranty_years=5")]
    [InlineData("Controlador de carga MPPT 10 A 12/24 V", "controller", "control=tracking rated_charge_a=10 system_voltages_v=12/24")]
    [InlineData("Mât acier galvanisé 6 m, 133/60 mm, ép. 3 mm", "pole", "height_m=6 base_mm=133 top_mm=60 wall_mm=3")]
    [InlineData("Luminaire LED 2 450 lumens, 140 lm/W", "luminaire", "flux_lm=2450 efficacy_lm_per_w=140")]
    public void Ratings_stand_in_free_text(string text, string family, string ratings)
    {
        var read = RatingReader.Read(text);
        Assert.Equal(family, read.Family);
        Assert.Equal(ratings.Split(' ').Order(), read.Ratings.Select(r => $"{r.Name}={r.Text}").Order());
    }

    [Theory]
    [InlineData("ciento dos mil cincuenta y uno dólares de los Estados Unidos con 32/100", 102051.32)]
    [InlineData("quatre-vingt-dix-sept mille deux cent quatre-vingts euros et 00/100", 97280)]
    [InlineData("cento e oitenta e cinco mil oitocentos e dez dólares e 00/100", 185810)]
    [InlineData("two hundred and fifteen thousand five hundred and fifty-eight US dollars and 76/100", 215558.76)]
    public void Amounts_are_read_in_words(string text, double amount) => Assert.Equal((decimal)amount, AmountWords.Find(text));

    [Fact]
    public void A_correction_of_an_officer_holds_on_later_runs_and_one_without_a_name_does_not()
    {
        var offer = QuoteCorpus.Read("q03.csv");
        var entry = ReadingRecord.Of(offer, null).Entries.First(e => e is { Row: 6, Name: "ip_code" });
        Assert.Equal("54", entry.Read);
        var path = Path.Combine(QuoteCorpus.Folder, "q03.csv");
        var corrected = OfferReader.Read(path, new ReadingRecord([entry with { Corrected = "65", By = "A. Officer" }])).Value!;
        Assert.DoesNotContain(OfferChecker.Check(corrected, CorpusAsked.Value).Findings, f => f.Code == "TK809" && f.Where.Row == 6);
        Assert.Equal("A. Officer", corrected.Lines.First(l => l.Place.Row == 6).Find("ip_code")!.CorrectedBy);
        Assert.Equal("65", ReadingRecord.Of(corrected, new ReadingRecord([entry with { Corrected = "65", By = "A. Officer" }])).Entries.First(e => e is { Row: 6, Name: "ip_code" }).Corrected);
        var unsigned = OfferReader.Read(path, new ReadingRecord([entry with { Corrected = "65" }])).Value!;
        Assert.Contains(OfferChecker.Check(unsigned, CorpusAsked.Value).Findings, f => f.Code == "TK809" && f.Where.Row == 6);
    }

    [Theory]
    [InlineData("hello", "TK800")]
    [InlineData("", "TK105")]
    public void What_holds_no_offer_is_refused_with_a_reason(string text, string code)
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("tenderkit-").FullName, "offer.txt");
        File.WriteAllText(path, text);
        Assert.Equal(code, Assert.Single(OfferReader.Read(path).Diagnostics).Code);
    }

    [Fact]
    public void Notes_tell_what_is_of_no_known_family()
    {
        Assert.Contains(QuoteCorpus.Read("q17.csv").Diagnostics, d => d.Code == "TK801");
    }

    [Fact]
    public void A_record_without_its_headings_is_refused()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("tenderkit-").FullName, "record.csv");
        File.WriteAllText(path, "a,b\n1,2\n");
        Assert.Equal("TK834", Assert.Single(ReadingRecord.Read(path).Diagnostics).Code);
    }

    /// <summary>An incoterm other than asked is TK828, a warranty nobody states TK833.</summary>
    [Fact]
    public void Conditions_are_held_against_the_tender()
    {
        var asked = CorpusAsked.Value with { Settings = CorpusAsked.Value.Settings with { Incoterm = "EXW" } };
        Assert.Contains(OfferChecker.Check(QuoteCorpus.Read("q01.xlsx"), asked).Findings, f => f.Code == "TK828");
        var offer = QuoteCorpus.Read("q01.xlsx");
        Assert.Contains(OfferChecker.Check(offer with { Terms = offer.Terms with { Warranties = [] } }, asked).Findings, f => f.Code == "TK833");
    }
}

using TenderKit.Documents.Forms;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Forms;

[Collection("world")]
public class SettingsSheetsTests
{
    [Fact]
    public void The_text_is_as_approved() => Approved.Same("settings", TextView.Of(SettingsSheets.Document(HandMadeDesign.Small())));

    [Fact]
    public void Two_sheets_a_kit_with_everything_to_be_set_tested_and_signed()
    {
        var view = TextView.Of(SettingsSheets.Document(HandMadeDesign.Small()));
        Assert.Contains("---- page 5 of 5", view, StringComparison.Ordinal); // opening and two kits
        foreach (var words in new[]
        {
            "Absorption", "Float", "Equalise", "Temperature compensation", "Load off (disconnect)", "Load on again (reconnect)", "Order of connection", "Polarity", "Set-points",
            "Lamp by hand", "Dusk", "Charging", "Disconnect", "Light to be read when new", "Latitude, longitude (GPS)", "serial no.", "Anchor bolts tightened", "Earth electrode",
            "Licensed electrician", "Licensed structural engineer", "local code",
        })
        {
            Assert.Contains(words, view, StringComparison.Ordinal);
        }
    }

    [SkippableFact]
    public void No_amount_of_money_stands_in_it() => Assert.Empty(MoneyWords.In(string.Join('\n', PdfReader.Pages(SettingsSheets.Make(HandMadeDesign.Small())))));

    [Fact]
    public void Equal_bytes_come_out_under_every_culture_and_time_zone()
    {
        var first = SettingsSheets.Make(HandMadeDesign.Small());
        Assert.All(SameEverywhere.Run(() => SettingsSheets.Make(HandMadeDesign.Small())), bytes => Assert.Equal(first, bytes));
    }
}

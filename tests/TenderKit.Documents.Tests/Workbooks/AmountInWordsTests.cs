using System.Globalization;
using TenderKit.Documents.Workbooks;
using Xunit;

namespace TenderKit.Documents.Tests.Workbooks;

public class AmountInWordsTests
{
    [Theory]
    [InlineData("362061.28", "USD", "three hundred and sixty-two thousand and sixty-one US dollars and 28/100")]
    [InlineData("0.05", "EUR", "zero euros and 05/100")]
    [InlineData("1000000", "KES", "one million Kenyan shillings and 00/100")]
    [InlineData("19.99", "ZZZ", "nineteen ZZZ and 99/100")]
    public void Spells_the_whole_and_counts_the_cents(string amount, string currency, string expected) =>
        Assert.Equal(expected, AmountInWords.Of(decimal.Parse(amount, CultureInfo.InvariantCulture), currency));

    [Fact]
    public void Speaks_English_whatever_the_culture()
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo("fr-FR");
            Assert.Equal("twenty-one US dollars and 10/100", AmountInWords.Of(21.10m, "USD"));
        }
        finally
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = before;
        }
    }
}

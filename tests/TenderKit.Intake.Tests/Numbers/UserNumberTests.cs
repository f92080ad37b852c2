using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using Xunit;

namespace TenderKit.Intake.Tests.Numbers;

public sealed class UserNumberTests
{
    // conversions: 1 ft = 0.3048 m and 1 in = 0.0254 m exactly, 1 mile = 1609.344 m, 1 knot = 1852 m/h
    // (international yard and pound agreement of 1959; SI brochure, knot; from memory); 1 kWh = 3.6 MJ by definition
    [Theory]
    [InlineData("0,3", QuantityKind.Length, 0.3)]
    [InlineData("6 m", QuantityKind.Length, 6)]
    [InlineData("6m.", QuantityKind.Length, 6)]
    [InlineData("5 mm", QuantityKind.Length, 0.005)]
    [InlineData("1.2 km", QuantityKind.Length, 1200)]
    [InlineData("20 ft", QuantityKind.Length, 6.096)]
    [InlineData("5'6\"", QuantityKind.Length, 1.6764)]
    [InlineData("5\u20326\u2033", QuantityKind.Length, 1.6764)]
    [InlineData("5 ft 6 in", QuantityKind.Length, 1.6764)]
    [InlineData("12'", QuantityKind.Length, 3.6576)]
    [InlineData("1 234,5 m", QuantityKind.Length, 1234.5)]
    [InlineData("1\u202F234,5", QuantityKind.Length, 1234.5)]
    [InlineData("1.234,5", QuantityKind.Length, 1234.5)]
    [InlineData("1,234.5", QuantityKind.Length, 1234.5)]
    [InlineData("1'234.5", QuantityKind.Length, 1234.5)]
    [InlineData("1,00,000", QuantityKind.Length, 100000)]
    [InlineData("1.234.567", QuantityKind.Length, 1234567)]
    [InlineData("0,125", QuantityKind.Length, 0.125)]
    [InlineData(".5", QuantityKind.Length, 0.5)]
    [InlineData("1.5e3", QuantityKind.Length, 1500)]
    [InlineData("\u0661\u0662", QuantityKind.Length, 12)]
    [InlineData("100 km/h", QuantityKind.Speed, 100 / 3.6)]
    [InlineData("100 mph", QuantityKind.Speed, 44.704)]
    [InlineData("30 knots", QuantityKind.Speed, 30 * 1852 / 3600.0)]
    [InlineData("30 W", QuantityKind.Power, 30)]
    [InlineData("120 Wp", QuantityKind.Power, 120)]
    [InlineData("0.12 kWp", QuantityKind.Power, 120)]
    [InlineData("1.2 kWh", QuantityKind.Energy, 1200)]
    [InlineData("100 Ah", QuantityKind.Charge, 100)]
    [InlineData("2.5 mm\u00B2", QuantityKind.Area, 2.5e-6)]
    [InlineData("4 h", QuantityKind.Hours, 4)]
    [InlineData("45 min", QuantityKind.Hours, 0.75)]
    [InlineData("4 h 30", QuantityKind.Hours, 4.5)]
    [InlineData("4:30", QuantityKind.Hours, 4.5)]
    [InlineData("04:30:00", QuantityKind.Hours, 4.5)]
    [InlineData("80 %", QuantityKind.Fraction, 0.8)]
    [InlineData("0.8", QuantityKind.Fraction, 0.8)]
    [InlineData("80", QuantityKind.Fraction, 0.8)]
    [InlineData("0,5 %", QuantityKind.Fraction, 0.005)]
    [InlineData("1", QuantityKind.Fraction, 1)]
    [InlineData("15 lux", QuantityKind.Illuminance, 15)]
    [InlineData("25 \u00B0C", QuantityKind.Temperature, 25)]
    [InlineData("\u221210 degC", QuantityKind.Temperature, -10)]
    [InlineData("77 F", QuantityKind.Temperature, 25)]
    [InlineData("298.15 K", QuantityKind.Temperature, 25)]
    [InlineData("5.2 kWh/m\u00B2/day", QuantityKind.Irradiation, 5.2)]
    [InlineData("18 MJ/m2/day", QuantityKind.Irradiation, 5)]
    [InlineData("2 nos", QuantityKind.Count, 2)]
    [InlineData("2 Nos.", QuantityKind.Count, 2)]
    [InlineData("1.500", QuantityKind.Count, 1500)]
    [InlineData("approx. 15", QuantityKind.Length, 15)]
    [InlineData("~15 m", QuantityKind.Length, 15)]
    [InlineData("env. 15 m", QuantityKind.Length, 15)]
    [InlineData("USD 1,250.50", QuantityKind.Money, 1250.5)]
    public void Reads(string text, QuantityKind kind, double expected)
    {
        var reading = UserNumber.Read(text, kind);
        Assert.Null(reading.Problem);
        Assert.Equal(expected, reading.Value!.Value, 1e-12 * Math.Max(1, Math.Abs(expected)) * 10);
        Assert.NotEmpty(reading.Understood);
    }

    [Theory]
    [InlineData("14.2508", 14.2508, null)]
    [InlineData("-4,25", -4.25, null)]
    [InlineData("14\u00B015'03\" N", 14.250833333333333, 'N')]
    [InlineData("14\u00BA15\u203203\u2033S", -14.250833333333333, 'S')]
    [InlineData("14\u00B015\u2019 03\u201D S", -14.250833333333333, 'S')]
    [InlineData("14\u00B015'03''S", -14.250833333333333, 'S')]
    [InlineData("S 14 15 03", -14.250833333333333, 'S')]
    [InlineData("14 15 03S", -14.250833333333333, 'S')]
    [InlineData("14:15:03 W", -14.250833333333333, 'W')]
    [InlineData("14d15m", 14.25, null)]
    [InlineData("4\u00B0 15.5' W", -4.258333333333333, 'W')]
    [InlineData("4.25 S", -4.25, 'S')]
    [InlineData("N4.25\u00B0", 4.25, 'N')]
    [InlineData("4.25 Ouest", -4.25, 'W')]
    [InlineData("120.5E", 120.5, 'E')]
    [InlineData("-14\u00B015' S", -14.25, 'S')]
    public void ReadsAngles(string text, double expected, char? hemisphere)
    {
        var reading = UserNumber.Read(text, QuantityKind.Degrees);
        Assert.Null(reading.Problem);
        Assert.Equal(expected, reading.Value!.Value, 1e-12);
        Assert.Equal(hemisphere, reading.Hemisphere);
    }

    [Theory]
    [InlineData("", QuantityKind.Length)]
    [InlineData("n/a", QuantityKind.Length)]
    [InlineData("-", QuantityKind.Length)]
    [InlineData("#REF!", QuantityKind.Length)]
    [InlineData("twelve", QuantityKind.Length)]
    [InlineData("5-6", QuantityKind.Length)]
    [InlineData("5 to 6 m", QuantityKind.Length)]
    [InlineData("2026-06-05", QuantityKind.Length)]
    [InlineData("12 W", QuantityKind.Length)]
    [InlineData("12 m", QuantityKind.Number)]
    [InlineData("5'14\"", QuantityKind.Length)]
    [InlineData("1,23,4", QuantityKind.Length)]
    [InlineData("1.2.3", QuantityKind.Length)]
    [InlineData("12 34", QuantityKind.Length)]
    [InlineData("1e999", QuantityKind.Length)]
    [InlineData("2.5", QuantityKind.Count)]
    [InlineData("4 h 75", QuantityKind.Hours)]
    [InlineData("14\u00B075'", QuantityKind.Degrees)]
    [InlineData("14.5\u00B030'", QuantityKind.Degrees)]
    [InlineData("-14 N", QuantityKind.Degrees)]
    [InlineData("N 14 S", QuantityKind.Degrees)]
    [InlineData("14.2, -4.1", QuantityKind.Degrees)]
    [InlineData("free", QuantityKind.Money)]
    public void RefusesWithAnAdvice(string text, QuantityKind kind)
    {
        var reading = UserNumber.Read(text, kind);
        Assert.Null(reading.Value);
        Assert.False(string.IsNullOrEmpty(reading.Problem));
    }

    [Fact]
    public void DoubtfulThousandsFollowTheRestOfTheFile()
    {
        var alone = UserNumber.Read("1,500", QuantityKind.Length);
        Assert.Equal(1500, alone.Value);
        Assert.True(alone.Ambiguous);
        Assert.NotNull(alone.Note);
        Assert.Equal(1.5, UserNumber.Read("1,500", QuantityKind.Length, DecimalMark.Comma).Value);
        Assert.Equal(1500, UserNumber.Read("1.500", QuantityKind.Length, DecimalMark.Comma).Value);
        Assert.Equal(1.5, UserNumber.Read("1.500", QuantityKind.Length).Value);
        Assert.False(UserNumber.Read("1,500", QuantityKind.Length, DecimalMark.Point).Ambiguous);
    }

    [Theory]
    [InlineData(DecimalMark.Comma, "A1", "1,500", "12,75 m")]
    [InlineData(DecimalMark.Comma, "0,125")]
    [InlineData(DecimalMark.Comma, "1.234,567")]
    [InlineData(DecimalMark.Point, "1,500", "12.75")]
    [InlineData(DecimalMark.Point, "14.12345")]
    [InlineData(DecimalMark.Unknown, "1,500", "14.125", "2,000,000", "6")]
    [InlineData(DecimalMark.Unknown, "0,3", "0.3")]
    public void DecimalMarkOfAFile(DecimalMark expected, params string[] texts) => Assert.Equal(expected, DecimalMarks.Guess(texts));

    [Fact]
    public void PercentIsSaidWhenGuessed()
    {
        Assert.Contains("percent", UserNumber.Read("80", QuantityKind.Fraction).Note, StringComparison.Ordinal);
        Assert.Null(UserNumber.Read("80 %", QuantityKind.Fraction).Note);
        Assert.Equal("80 %", UserNumber.Read("0.8", QuantityKind.Fraction).Understood);
    }

    [Fact]
    public void HeadingUnitHoldsWhereTheCellNamesNone()
    {
        Assert.Equal(3.048, UserNumber.Read("10", QuantityKind.Length, unit: "ft").Value!.Value, 1e-12);
        Assert.Equal(10, UserNumber.Read("10 m", QuantityKind.Length, unit: "ft").Value);
        Assert.Equal(0.05, UserNumber.Read(new Cell("5", 1, 1, 5), QuantityKind.Fraction, unit: "%").Value);
        Assert.Equal(0.05, UserNumber.Read(new Cell("5 %", 1, 1, 0.05), QuantityKind.Fraction, unit: "%").Value);
    }

    [Fact]
    public void RangesHaveTwoEnds()
    {
        var (low, high) = UserNumber.ReadRange("5-6 m", QuantityKind.Length);
        Assert.Equal((5, 6), (low.Value, high.Value));
        (low, high) = UserNumber.ReadRange("16 to 20 ft", QuantityKind.Length);
        Assert.Equal(4.8768, low.Value!.Value, 1e-12);
        Assert.Equal(6.096, high.Value!.Value, 1e-12);
        (low, high) = UserNumber.ReadRange("6,5", QuantityKind.Length);
        Assert.Equal((6.5, 6.5), (low.Value, high.Value));
    }

    [Theory]
    [InlineData("0.1", "0.1", null)]
    [InlineData("\u20AC 1.234,56", "1234.56", "\u20AC")]
    [InlineData("1 250 000 FCFA", "1250000", "FCFA")]
    [InlineData("Rs. 1,00,000", "100000", "Rs.")]
    [InlineData("-12.30", "-12.30", null)]
    public void MoneyIsExact(string text, string amount, string? currency)
    {
        var money = UserNumber.ReadMoney(text);
        Assert.Equal(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), money.Amount);
        Assert.Equal(currency, money.Currency);
    }
}

using System.Globalization;
using CsCheck;
using TenderKit.Intake.Numbers;
using Xunit;

namespace TenderKit.Intake.Tests.Numbers;

public sealed class NumberRelationTests
{
    private static readonly Gen<decimal> Amount = Gen.Int[-99_999_999, 99_999_999].Select(Gen.Int[1, 2], (n, d) => n / (decimal)Math.Pow(10, d));

    [Fact]
    public void EveryWayOfWritingANumberReadsTheSame() => Amount.Sample(amount =>
    {
        var point = amount.ToString("N2", CultureInfo.InvariantCulture);
        string[] texts =
        [
            point,
            point.Replace(",", "", StringComparison.Ordinal),
            point.Replace(",", " ", StringComparison.Ordinal),
            point.Replace(",", "\u202F", StringComparison.Ordinal).Replace('.', ','),
            point.Replace(",", "'", StringComparison.Ordinal),
            point.Replace(',', '_').Replace('.', ',').Replace('_', '.'),
        ];
        foreach (var text in texts)
        {
            Assert.Equal(amount, UserNumber.ReadMoney(text).Amount);
            Assert.Equal((double)amount, UserNumber.Read(text, QuantityKind.Number).Value);
            Assert.False(UserNumber.Read(text, QuantityKind.Number).Ambiguous);
        }
    });

    [Fact]
    public void DegreesMinutesSecondsReadBack() => Gen.Int[0, 179].Select(Gen.Int[0, 59], Gen.Int[0, 59]).Sample(t =>
    {
        var (degrees, minutes, seconds) = t;
        var expected = degrees + (minutes / 60.0) + (seconds / 3600.0);
        foreach (var (before, after, sign) in new[] { ("", "", 1), ("", " N", 1), ("S ", "", -1), ("", "W", -1), ("-", "", -1) })
        {
            var reading = UserNumber.Read(string.Create(CultureInfo.InvariantCulture, $"{before}{degrees}\u00B0{minutes:00}'{seconds:00}\"{after}"), QuantityKind.Degrees);
            Assert.Equal(sign * expected, reading.Value!.Value, 1e-12);
        }
    });
}

using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Amounts and quantities of an offer: the decimal mark is the one under which more rows multiply out.</summary>
internal sealed partial class OfferNumbers(DecimalMark mark)
{
    /// <summary>Chooses the mark from triples of quantity, rate and amount as text.</summary>
    public static OfferNumbers For(IReadOnlyList<(string Quantity, string Rate, string Amount)> triples)
    {
        var (comma, point) = (new OfferNumbers(DecimalMark.Comma), new OfferNumbers(DecimalMark.Point));
        var (commas, points) = (triples.Count(comma.Agrees), triples.Count(point.Agrees));
        if (commas != points) return commas > points ? comma : point;
        var guess = DecimalMarks.Guess(triples.SelectMany(t => new[] { Bare(t.Rate), Bare(t.Amount) }));
        return new(guess == DecimalMark.Unknown ? DecimalMark.Point : guess);
    }

    public decimal? Of(Cell cell) => cell.Number is { } number && Math.Abs(number) < 1e15 ? decimal.Round((decimal)number, 6) : Of(cell.Text);

    /// <summary>The amount in a text, whatever currency stands beside it; null when there is none or more than one.</summary>
    public decimal? Of(string text)
    {
        var bare = Bare(text);
        if (bare.Length == 0) return null;
        var reading = UserNumber.ReadMoney(bare, mark);
        return reading.Amount;
    }

    /// <summary>A quantity that may carry its unit: "128 ea".</summary>
    public (decimal? Quantity, string Unit) Quantity(Cell cell)
    {
        if (cell.Number is { } number) return (decimal.Round((decimal)number, 6), "");
        var match = WithUnit().Match(cell.Text.Replace('\u00A0', ' ').Replace('\u202F', ' '));
        return match.Success ? (Of(match.Groups["n"].Value), match.Groups["u"].Value.Trim()) : (null, "");
    }

    private bool Agrees((string Quantity, string Rate, string Amount) triple)
    {
        var quantity = WithUnit().Match(triple.Quantity) is { Success: true } match ? Of(match.Groups["n"].Value) : null;
        return quantity is { } q && Of(triple.Rate) is { } r && Of(triple.Amount) is { } a && r != 0 && Math.Abs((q * r) - a) <= 0.011m + (0.0001m * Math.Abs(a));
    }

    /// <summary>Digits and marks alone, the sign kept; currencies and spaces for the eye are dropped.</summary>
    private static string Bare(string text)
    {
        var plain = text.Replace('\u00A0', ' ').Replace('\u202F', ' ').Replace('\u2009', ' ').Replace('\u2019', '\'').Replace('\u2212', '-').Trim();
        var match = Amount().Match(plain);
        if (!match.Success || match.NextMatch().Success) return "";
        var before = plain[..match.Index].TrimEnd();
        var negative = before.EndsWith('-') || (plain.StartsWith('(') && plain.EndsWith(')'));
        return (negative && !match.Value.StartsWith('-') ? "-" : "") + match.Value.Trim();
    }

    [GeneratedRegex(@"-?\d(?:[\d.,' ]*\d)?", RegexOptions.CultureInvariant)]
    private static partial Regex Amount();

    [GeneratedRegex(@"^\s*(?<n>\d(?:[\d.,' ]*\d)?)\s*(?<u>\p{L}[\p{L}.² ]*)?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex WithUnit();

    public static string Text(decimal value) => value.ToString("#,##0.00", CultureInfo.InvariantCulture);
}

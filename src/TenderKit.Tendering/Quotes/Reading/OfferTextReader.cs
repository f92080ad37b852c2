using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Lines of pasted text as lines of an offer: a price line is one where quantity, rate and amount stand after the description.</summary>
internal static partial class OfferTextReader
{
    public static ImmutableArray<OfferLine> Read(string text, string file)
    {
        var rows = text.ReplaceLineEndings("\n").Split('\n');
        var mark = MarkOf(rows);
        var lines = new List<OfferLine>();
        var lot = "";
        for (var i = 0; i < rows.Length; i++)
        {
            if (string.IsNullOrWhiteSpace(rows[i])) continue;
            var place = new Place(file, null, i + 1);
            var price = PriceOf(rows[i], mark);
            if (price is { Description: "" } && lines.Count > 0 && lines[^1] is { Kind: LineKind.Text, Place.Row: var before } && before == i)
            {
                lines[^1] = ItemOf(lines[^1].Place, Unnumbered(rows[i - 1]), price, lot);
                continue;
            }

            if (price is null or { Description: "" })
            {
                var line = TotalOf(rows[i], place, mark, lot) ?? Unpriced(rows[i], place, lot) ?? OfferTableReader.Text(place, rows[i].Trim(), lot);
                if (line.Kind == LineKind.Text && RowKind.LotHeading(line.Text) is { } opened)
                {
                    lot = opened;
                    line = line with { Lot = lot };
                }

                lines.Add(line);
            }
            else
            {
                lines.Add(ItemOf(place, Unnumbered(price.Description), price, lot));
            }
        }

        return [.. lines];
    }

    /// <summary>Quantity, rate and amount of a line, and what stands before them.</summary>
    private sealed record Price(string Description, decimal Quantity, string Unit, decimal? Rate, decimal? Amount, string Rest);

    private static OfferLine ItemOf(Place place, string description, Price price, string lot)
    {
        if (RowKind.Of(description) is LineKind.Transport) return OfferTableReader.Text(place, description, lot) with { Kind = LineKind.Transport, Amount = price.Amount ?? price.Rate };
        return OfferTableReader.Item(place, description, price.Rest, lot, "", price.Quantity, price.Unit, price.Rate, price.Amount, null, null);
    }

    private static DecimalMark MarkOf(string[] rows)
    {
        int Fits(DecimalMark mark) => rows.Count(r => PriceOf(r, mark) is { Rate: { } rate, Amount: { } amount } p && Math.Abs((p.Quantity * rate) - amount) < 0.02m);
        var (comma, point) = (Fits(DecimalMark.Comma), Fits(DecimalMark.Point));
        return comma > point ? DecimalMark.Comma : DecimalMark.Point;
    }

    private static Price? PriceOf(string row, DecimalMark mark)
    {
        var numbers = Number().Matches(row).Select(m => (Match: m, Value: UserNumber.ReadMoney(m.Value.Trim(), mark).Amount)).Where(n => n.Value is not null).ToList();
        for (var a = numbers.Count - 1; a >= Math.Max(2, numbers.Count - 2); a--)
        {
            if (!IsMoney(row, numbers[a].Match)) continue;
            for (var r = a - 1; r >= 1; r--)
            {
                for (var q = r - 1; q >= 0; q--)
                {
                    var (quantity, rate, amount) = (numbers[q].Value!.Value, numbers[r].Value!.Value, numbers[a].Value!.Value);
                    if (quantity < 1 || rate < 1 || quantity != decimal.Truncate(quantity) || Math.Abs((quantity * rate) - amount) > 0.011m) continue;
                    return Made(row, numbers[q].Match, numbers[r].Match, quantity, rate, amount, row[(numbers[a].Match.Index + numbers[a].Match.Length)..]);
                }
            }
        }

        return BySigns(row, mark);
    }

    /// <summary>An amount has cents, or a currency or an equals sign stands beside it.</summary>
    private static bool IsMoney(string row, Match number) =>
        Cents().IsMatch(number.Value.Trim()) || MoneySign().IsMatch(row[Math.Max(0, number.Index - 6)..Math.Min(row.Length, number.Index + number.Length + 6)]);

    /// <summary>"qty 104 pcs @ 290.30 = 30,191.20" where the product does not fit, or a price is left out.</summary>
    private static Price? BySigns(string row, DecimalMark mark)
    {
        var match = Signed().Match(row);
        if (!match.Success) return null;
        if (UserNumber.ReadMoney(match.Groups["q"].Value.Trim(), mark).Amount is not { } quantity) return null;
        decimal? Of(string group) => match.Groups[group].Success ? UserNumber.ReadMoney(match.Groups[group].Value.Trim(), mark).Amount : null;
        var (rate, amount) = (Of("r"), Of("a"));
        return new Price(row[..match.Index].Trim(' ', ',', ';', ':', '-', '\t'), quantity, match.Groups["u"].Value, rate, amount, row[(match.Index + match.Length)..].Trim());
    }

    private static Price Made(string row, Match quantity, Match rateAt, decimal q, decimal rate, decimal amount, string rest)
    {
        var before = Lead().Replace(row[..quantity.Index], "").Trim(' ', ',', ';', ':', '-', '\t', '*', '.');
        var unit = UnitWord().Match(row[(quantity.Index + quantity.Length)..]) is { Success: true } u ? u.Groups["u"].Value : "";
        // "128 x lantern ... 57.25 each = 7,328.00": the description stands after the quantity
        var after = UnitWord().Replace(row[(quantity.Index + quantity.Length)..rateAt.Index], "");
        var between = PriceLead().Replace(after, "").Trim(' ', ',', ';', ':', '-', '@', '=', 'x', '\t');
        var isAfter = between.Count(char.IsLetter) >= 8 && between.Count(char.IsLetter) > before.Count(char.IsLetter);
        if (isAfter) return new(between, q, unit, rate, amount, rest.Trim());
        return new(before.Count(char.IsLetter) >= 4 ? before : "", q, unit, rate, amount, rest.Trim());
    }

    private static OfferLine? TotalOf(string row, Place place, DecimalMark mark, string lot)
    {
        if (RowKind.Of(Unnumbered(row)) is not { } kind) return null;
        var numbers = Number().Matches(row).Select(m => UserNumber.ReadMoney(m.Value.Trim(), mark).Amount).OfType<decimal>().ToList();
        if (numbers.Count == 0 || (Math.Abs(numbers[^1]) < 50 && kind == LineKind.Subtotal)) return null;
        if (kind != LineKind.Subtotal && numbers.Count == 1 && row.TrimEnd().EndsWith('%')) return null;
        var negative = kind == LineKind.Discount && NegativeEnd().IsMatch(row);
        return OfferTableReader.Text(place, row.Trim(), RowKind.LotIn(row) ?? lot) with { Kind = kind, Amount = negative ? -Math.Abs(numbers[^1]) : numbers[^1] };
    }

    private static OfferLine? Unpriced(string row, Place place, string lot)
    {
        var match = QuantityOnly().Match(row);
        if (!match.Success || !decimal.TryParse(match.Groups["q"].Value, out var quantity)) return null;
        var text = Unnumbered(row[..match.Index].Trim(' ', ',', ';', ':', '-'));
        var reading = RatingReader.Read(text);
        return reading.Family is "other" or "service" || reading.Item == ItemKind.Unknown && reading.Ratings.IsEmpty
            ? null
            : OfferTableReader.Item(place, text, row[(match.Index + match.Length)..], lot, "", quantity, match.Groups["u"].Value, null, null, null, null);
    }

    private static string Unnumbered(string row) => Numbered().Replace(row.Trim(), "");

    private const string Unit = @"(?:pcs?|pieces?|pces?|ea|each|sets?|no\.?|nos\.?|units?|unites?|u\.?|uds?\.?|unid(?:ades|s)?\.?|un\.?|jgos?|juegos?|jogos?|conj\.?|ens\.?|jeux?|lots?|m|glb|kits?|postes?|pieza[s]?|pecas?|cj)";
    private const string Cur = @"(?:USD|EUR|XOF|XAF|F\s?CFA|FCFA|US\$|\$|€)?";
    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.IgnoreCase;

    [GeneratedRegex(@"(?<![\p{L}\d.,])-?\d(?:(?:[.,']|[ \u00A0\u202F](?=\d{3}(?!\d)))?\d)*(?![\p{L}\d])", Options)]
    private static partial Regex Number();

    [GeneratedRegex(@"(?:\b(?:qty|qte|quantite|quantité|cantidad|cant|quantidade|qtd|quantity)\b\.?\s*:?\s*)?(?<![\p{L}\d.,])(?<q>\d[\d ]{0,6})\s*(?<u>" + Unit + @")\s*(?:@|x|×|à|a|at|por|de|:|-)\s*" + Cur + @"\s*(?:(?<r>\d(?:[\d.,' \u00A0\u202F]*\d)?)\s*" + Cur + @"\s*(?:/\s?\p{L}+\s*)?(?:=|:|->|total|soit|son)\s*" + Cur + @"\s*(?<a>\d(?:[\d.,' \u00A0\u202F]*\d)?)|(?<none>price|prix|precio|preco|preço|to be|a convenir|sur demande|on request|by request|sob consulta|bajo pedido|a confirmer|tba|tbd|incl))", Options)]
    private static partial Regex Signed();

    [GeneratedRegex(@"\b(?:qty|qte|qté|quantité|cantidad|cant|quantidade|qtd|quantity)\b\.?\s*:?\s*(?<q>\d+)\s*(?<u>" + Unit + @")?", Options)]
    private static partial Regex QuantityOnly();

    [GeneratedRegex(@"[,;:\s-]*\b(?:qty|qte|qté|quantité|quantite|cantidad|cant|quantidade|qtd|quantity)\b\.?\s*:?\s*$", Options)]
    private static partial Regex Lead();

    [GeneratedRegex(@"^\s*(?<u>" + Unit + @")(?![\p{L}])", Options)]
    private static partial Regex UnitWord();

    [GeneratedRegex(@"[,;:\s-]*(?:\b(?:at|à|a|por|unit price|prix unitaire|precio unitario|preço unitário|p\.?u\.?|rate)\b)?[:\s]*(?:USD|EUR|XOF|XAF|FCFA|US\$|\$|€)?\s*$", Options)]
    private static partial Regex PriceLead();

    [GeneratedRegex(@"[.,]\d{2}$", Options)]
    private static partial Regex Cents();

    [GeneratedRegex(@"=|USD|EUR|XOF|XAF|CFA|\$|€", Options)]
    private static partial Regex MoneySign();

    [GeneratedRegex(@"^\s*(?:[-*•–]|\(?[a-z]?\d{1,3}[a-z]?[.):]|\d{1,3}\s*-)\s+", Options)]
    private static partial Regex Numbered();

    [GeneratedRegex(@"-\s*(?:USD|EUR|XOF|\$|€)?\s*\d[\d.,' ]*\s*(?:USD|EUR|XOF|\$|€)?\s*$", Options)]
    private static partial Regex NegativeEnd();
}

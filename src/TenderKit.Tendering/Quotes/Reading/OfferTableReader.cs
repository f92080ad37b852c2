using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Rows of a table as lines of an offer: blocks under rows of headings, lots by headings, columns or sheets.</summary>
internal static class OfferTableReader
{
    public static ImmutableArray<OfferLine> Read(TableFile file)
    {
        var blocks = file.Tables.SelectMany(t => BlocksOf(t)).ToList();
        var numbers = OfferNumbers.For([.. blocks.SelectMany(TriplesOf)]);
        return [.. blocks.SelectMany(b => LinesOf(b, numbers))];
    }

    /// <summary>Rows between two rows of headings.</summary>
    private sealed record Block(Table Table, OfferColumns? Columns, ImmutableArray<ImmutableArray<Cell>> Rows, string Lot);

    private static IEnumerable<Block> BlocksOf(Table table)
    {
        var heads = table.Rows.Select((row, i) => OfferColumns.Of(row, i)).ToList();
        var lot = table.Sheet is { } sheet ? RowKind.LotIn(sheet) ?? "" : "";
        var starts = Enumerable.Range(0, table.Rows.Length).Where(i => heads[i] is not null).ToList();
        if (starts.Count == 0 && ColumnsByContent.Find(table) is { } found)
        {
            yield return new(table, found, table.Rows, lot);
            yield break;
        }

        if (starts.Count == 0 || starts[0] > 0) yield return new(table, null, table.Rows[..(starts.Count == 0 ? table.Rows.Length : starts[0])], lot);
        for (var s = 0; s < starts.Count; s++)
        {
            var end = s + 1 < starts.Count ? starts[s + 1] : table.Rows.Length;
            var below = table.Rows[(starts[s] + 1)..end];
            yield return new(table, null, table.Rows[starts[s]..(starts[s] + 1)], lot);
            yield return new(table, heads[starts[s]]!.Settled(below), below, lot);
        }
    }

    private static IEnumerable<(string Quantity, string Rate, string Amount)> TriplesOf(Block block) => block.Columns is not { } columns ? [] : block.Rows
        .Select(r => (columns.TextOf(r, "quantity") ?? "", columns.TextOf(r, "rate") ?? "", columns.TextOf(r, "amount") ?? "")).Where(t => t.Item2.Length > 0 && t.Item3.Length > 0);

    private static IEnumerable<OfferLine> LinesOf(Block block, OfferNumbers numbers)
    {
        var lot = block.Lot;
        foreach (var row in block.Rows)
        {
            if (row.All(c => c.IsEmpty)) continue;
            var line = block.Columns is { } columns ? Line(block.Table, columns, row, lot, numbers) : TextLine(block.Table, row, lot);
            if (line.Kind == LineKind.Text && RowKind.LotHeading(line.Text) is { } opened && row.Count(c => !c.IsEmpty) <= 2)
            {
                lot = opened;
                line = line with { Lot = lot };
            }

            yield return line;
        }
    }

    private static Place PlaceOf(Table table, ImmutableArray<Cell> row) => new(table.File, table.Sheet, row[0].Row);

    private static OfferLine TextLine(Table table, ImmutableArray<Cell> row, string lot) => Text(PlaceOf(table, row), Joined(row.Select(c => c.Text)), lot);

    internal static OfferLine Text(Place place, string text, string lot) =>
        new(place, LineKind.Text, ItemKind.Unknown, "", text, "", lot, "", false, [], null, "", null, null);

    internal static string Joined(IEnumerable<string> texts) => string.Join(", ", texts.Select(t => t.ReplaceLineEndings(" ").Trim()).Where(t => t.Length > 0).Distinct());

    private static OfferLine Line(Table table, OfferColumns columns, ImmutableArray<Cell> row, string blockLot, OfferNumbers numbers)
    {
        var place = PlaceOf(table, row);
        var texts = columns.Meanings.Where(m => m.Key < row.Length && m.Value is "description" or "item" or "technical" or "kit").Select(m => row[m.Key].Text);
        var text = Joined(texts);
        var (quantity, packedUnit) = columns.CellOf(row, "quantity") is { } q ? numbers.Quantity(q) : (null, "");
        var rate = columns.CellOf(row, "rate") is { } r ? numbers.Of(r) : null;
        var amountCell = columns.CellOf(row, "amount");
        var amount = amountCell is { } a ? numbers.Of(a) : null;
        var unit = columns.TextOf(row, "unit") is { Length: > 0 } u ? u : packedUnit;
        var lot = columns.TextOf(row, "lot") is { Length: > 0 } l ? RowKind.LotIn("lot " + l) ?? l.ToUpperInvariant() : blockLot;
        // "Discount 1.5 %" holds a number and is a text
        var all = Joined(row.Where(c => c.Number is null && (numbers.Of(c) is null || RowKind.Of(c.Text) is LineKind.Discount or LineKind.Tax)).Select(c => c.Text));
        if (text.Length == 0) text = all;
        if (quantity is null && RowKind.Of(text) is { } kind && (rate is not null || amount is not null || LastNumber(row, numbers) is not null))
            return Text(place, text, RowKind.LotIn(text) ?? lot) with { Kind = kind, Amount = amount ?? rate ?? LastNumber(row, numbers), Rate = null };
        var labels = row.Where((c, i) => !c.IsEmpty && columns.Meanings.GetValueOrDefault(i) is "unit" or "rate" or "amount").Any();
        var isItem = (quantity is not null && (rate is not null || amount is not null || unit.Length > 0 || labels)) || (rate is not null && amount is not null);
        if (!isItem && amount is not null && RowKind.LotIn(text) is { } named && row.Count(c => !c.IsEmpty) <= 3)
            return Text(place, text, named) with { Kind = LineKind.Subtotal, Amount = amount };
        if (!isItem || text.Length == 0) return TextLine(table, row, lot);
        if (RowKind.Of(text) is LineKind.Transport or LineKind.Discount && (quantity is null or 1)) return Text(place, text, lot) with { Kind = RowKind.Of(text)!.Value, Amount = amount ?? rate };
        var remark = Joined(columns.Meanings.Where(m => m.Key < row.Length && m.Value is "remark").Select(m => row[m.Key].Text)
            .Concat(row.Where((c, i) => !columns.Meanings.ContainsKey(i)).Select(c => c.Text))
            .Concat([rate is null ? columns.TextOf(row, "rate") ?? "" : "", amount is null ? amountCell?.Text ?? "" : ""]));
        return Item(place, text, remark, lot, columns.TextOf(row, "site") ?? "", quantity, unit, rate, amount, columns.TextOf(row, "warranty"), columns.TextOf(row, "certificate"));
    }

    internal static OfferLine Item(Place place, string text, string remark, string lot, string site, decimal? quantity, string unit, decimal? rate, decimal? amount, string? warranty, string? certificate)
    {
        var reading = RatingReader.Read(text);
        var ratings = reading.Ratings;
        if (warranty is { Length: > 0 } && YearsOf(warranty) is { } years) ratings = [.. ratings.Where(r => r.Name != "warranty_years"), Rating.Of("warranty_years", years, warranty)];
        if (certificate is { Length: > 0 } && Certificates.In(certificate).ToList() is { Count: > 0 } named)
            ratings = [.. ratings.Where(r => r.Name != "certificates"), Rating.Word("certificates", string.Join('+', named), certificate)];
        return new OfferLine(place, LineKind.Item, reading.Item, reading.Family, text, remark, lot, site, reading.Spare, ratings, quantity, unit, rate, amount)
        {
            Certificates = certificate,
            Included = IncludedWords.In(remark),
        };
    }

    private static double? YearsOf(string text)
    {
        var measure = Measures.Find(text).Find(m => m.Kind == MeasureKind.Years);
        return measure?.Value ?? (PlainText.Number(text, false) is { } bare and > 0 and <= 50 ? bare : null);
    }

    private static decimal? LastNumber(ImmutableArray<Cell> row, OfferNumbers numbers) => row.Reverse().Select(c => c.IsEmpty ? null : numbers.Of(c)).FirstOrDefault(n => n is not null);
}

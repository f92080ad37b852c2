using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>One value as read, and as an officer corrected it.</summary>
/// <param name="Name">A rating, or <c>family</c>, <c>quantity</c>, <c>rate</c>, <c>amount</c>.</param>
/// <param name="Corrected">The right value; empty where it stands as read.</param>
/// <param name="By">Who corrected it.</param>
public sealed record ReadingEntry(string Offer, string Sheet, int Row, string Name, string Read, string Words, double Confidence, string Corrected, string By);

/// <summary>
/// The csv record of what was read out of an offer, row by row. An officer fills <c>corrected</c> and <c>by</c>; later runs on the same
/// file, known by its digest, take the corrections. A correction without a name is not taken.
/// </summary>
public sealed record ReadingRecord(ImmutableArray<ReadingEntry> Entries)
{
    public static readonly ImmutableArray<string> Columns = ["offer", "sheet", "row", "name", "read", "words", "confidence", "corrected", "by"];

    /// <summary>Everything read from an offer, with the corrections of an earlier record kept.</summary>
    public static ReadingRecord Of(Offer offer, ReadingRecord? earlier)
    {
        var kept = (earlier?.Entries ?? []).Where(e => e.Offer == offer.Sha256 && e.Corrected.Length > 0).GroupBy(e => (e.Sheet, e.Row, e.Name)).ToDictionary(g => g.Key, g => g.Last());
        var entries = offer.Items.SelectMany(l => EntriesOf(offer.Sha256, l)).Select(e => kept.Remove((e.Sheet, e.Row, e.Name), out var k) ? e with { Read = k.Read, Words = k.Words, Confidence = k.Confidence, Corrected = k.Corrected, By = k.By } : e).ToList();
        return new([.. entries, .. kept.Values]);
    }

    /// <summary>The record of a csv file as written here; null with an error when its headings are not there.</summary>
    public static Outcome<ReadingRecord> Read(string path)
    {
        var read = TableReader.Read(path);
        if (read.Value?.Tables.FirstOrDefault() is not { } table) return Outcome.None<ReadingRecord>(read.Diagnostics);
        var heads = table.Rows[0].Select(c => c.Text.Trim().ToLowerInvariant()).ToList();
        var at = Columns.Select(heads.IndexOf).ToArray();
        if (Array.Exists(at, a => a < 0)) return Outcome.None<ReadingRecord>(Diagnostic.Error("TK834", $"the record of readings needs the headings {string.Join(", ", Columns)}", new Place(Path.GetFileName(path))));
        var problems = read.Diagnostics.ToBuilder();
        var entries = ImmutableArray.CreateBuilder<ReadingEntry>();
        foreach (var row in table.Rows.Skip(1))
        {
            string Text(int i) => row[at[i]].Text.TrimStart('\'');
            if (!int.TryParse(Text(2), NumberStyles.None, CultureInfo.InvariantCulture, out var number)) continue;
            _ = double.TryParse(Text(6), NumberStyles.Float, CultureInfo.InvariantCulture, out var sure);
            var entry = new ReadingEntry(Text(0), Text(1), number, Text(3), Text(4), Text(5), sure, Text(7), Text(8));
            if (entry.Corrected.Length > 0 && entry.By.Length == 0)
                problems.Add(Diagnostic.Warning("TK834", $"the correction of {entry.Name} to '{entry.Corrected}' names nobody in 'by' and is not taken", new Place(Path.GetFileName(path), Row: row[0].Row)));
            entries.Add(entry);
        }

        return Outcome.Of(new ReadingRecord(entries.ToImmutable()), problems);
    }

    internal ImmutableArray<OfferLine> Apply(string offer, ImmutableArray<OfferLine> lines)
    {
        var mine = Entries.Where(e => e.Offer == offer && e.Corrected.Length > 0 && e.By.Length > 0).ToLookup(e => (e.Sheet, e.Row));
        return [.. lines.Select(l => mine[(l.Place.Sheet ?? "", l.Place.Row ?? 0)].Aggregate(l, Corrected))];
    }

    private static OfferLine Corrected(OfferLine line, ReadingEntry entry)
    {
        decimal? Money() => decimal.TryParse(entry.Corrected, NumberStyles.Number, CultureInfo.InvariantCulture, out var value) ? value : null;
        switch (entry.Name)
        {
            case "family": return line with { Family = entry.Corrected, Kind = LineKind.Item };
            case "quantity": return line with { Quantity = Money() };
            case "rate": return line with { Rate = Money() };
            case "amount": return line with { Amount = Money() };
        }

        var isNumber = double.TryParse(entry.Corrected, NumberStyles.Float, CultureInfo.InvariantCulture, out var number);
        var rating = new Rating(entry.Name, isNumber ? number : 0, entry.Corrected, entry.Words, 1) { CorrectedBy = entry.By };
        return line with { Ratings = [.. line.Ratings.Where(r => r.Name != entry.Name), .. entry.Corrected == "-" ? Array.Empty<Rating>() : [rating]] };
    }

    private static IEnumerable<ReadingEntry> EntriesOf(string offer, OfferLine line)
    {
        ReadingEntry Entry(string name, string read, string words, double confidence, string? by = null) =>
            new(offer, line.Place.Sheet ?? "", line.Place.Row ?? 0, name, read, words, confidence, "", "");
        yield return Entry("family", line.Family, line.Text, line.Item == ItemKind.Unknown ? 0.7 : 1);
        foreach (var rating in line.Ratings) yield return Entry(rating.Name, rating.Text, rating.Words, rating.Confidence);
    }
}

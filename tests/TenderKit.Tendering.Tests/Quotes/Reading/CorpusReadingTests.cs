using System.Globalization;
using System.Text;
using TenderKit.Tendering.Quotes.Reading;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Tendering.Tests.Quotes.Reading;

/// <summary>What is read out of the corpus against what a careful reader wrote down (lines.csv). The even files were never looked at while the reader was written.</summary>
public class CorpusReadingTests(ITestOutputHelper output)
{
    private sealed record Score(int Rows, int KindRight, int FamilyRight, int Asked, int Found, int Extra);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Rows_and_ratings_are_read(bool odd)
    {
        var wrong = new StringBuilder();
        var byRating = new SortedDictionary<string, (int Asked, int Found, int Extra)>(StringComparer.Ordinal);
        var (rows, kinds, families) = (0, 0, 0);
        foreach (var file in QuoteCorpus.Files.Where(f => QuoteCorpus.IsOdd(f) == odd))
        {
            var offer = QuoteCorpus.Read(file);
            foreach (var row in QuoteCorpus.Ledger("lines.csv").Where(r => r["file"] == file))
            {
                rows++;
                var line = offer.Lines.FirstOrDefault(l => l.Place.Row == int.Parse(row["row"], CultureInfo.InvariantCulture) && (row["sheet"].Length == 0 || l.Place.Sheet == row["sheet"]));
                var kind = line?.Kind.ToString().ToLowerInvariant() ?? "text";
                if (kind == row["kind"]) kinds++;
                else wrong.AppendLine(CultureInfo.InvariantCulture, $"{file} {row["sheet"]} {row["row"]} kind {kind} not {row["kind"]}: {line?.Text}");
                if (row["kind"] != "item" || line is null) continue;
                if (line.Family == row["family"]) families++;
                else wrong.AppendLine(CultureInfo.InvariantCulture, $"{file} {row["row"]} family {line.Family} not {row["family"]}: {line.Text}");
                Compare(row["ratings"], line, byRating, wrong, file);
            }
        }

        foreach (var (name, (asked, found, extra)) in byRating) output.WriteLine($"{name}: {found} of {asked}, {extra} read that were not there");
        var (all, got, more) = (byRating.Values.Sum(v => v.Asked), byRating.Values.Sum(v => v.Found), byRating.Values.Sum(v => v.Extra));
        output.WriteLine(FormattableString.Invariant($"{(odd ? "odd" : "even")} files: kind {kinds}/{rows}; family {families}; ratings recall {got}/{all} = {(double)got / all:0.000}, precision {(double)got / (got + more):0.000}"));
        if (odd) output.WriteLine(wrong.ToString());
        Assert.True((double)got / all >= 0.97, wrong.ToString());
        Assert.True((double)kinds / rows >= 0.97, wrong.ToString());
    }

    private static void Compare(string asked, OfferLine line, SortedDictionary<string, (int Asked, int Found, int Extra)> byRating, StringBuilder wrong, string file)
    {
        var expected = asked.Split(';', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split('=')).ToDictionary(p => p[0], p => p[1]);
        foreach (var (name, value) in expected)
        {
            var read = name == "use" ? (line.Spare ? "spare" : "") : line.Find(name)?.Text;
            var right = read is not null && (read == value || (Number(read) is { } a && Number(value) is { } b && Math.Abs(a - b) < 1e-6) || SameSet(read, value));
            var count = byRating.GetValueOrDefault(name);
            byRating[name] = (count.Asked + 1, count.Found + (right ? 1 : 0), count.Extra);
            if (!right) wrong.AppendLine(CultureInfo.InvariantCulture, $"{file} {line.Place.Row} {name} {read ?? "nothing"} not {value}: {line.Text}");
        }

        foreach (var rating in line.Ratings.Where(r => !expected.ContainsKey(r.Name)))
        {
            var count = byRating.GetValueOrDefault(rating.Name);
            byRating[rating.Name] = (count.Asked, count.Found, count.Extra + 1);
            wrong.AppendLine(CultureInfo.InvariantCulture, $"{file} {line.Place.Row} extra {rating.Name}={rating.Text}: {line.Text}");
        }
    }

    private static bool SameSet(string one, string other) => one.Split('+').ToHashSet().SetEquals(other.Split('+'));

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
}

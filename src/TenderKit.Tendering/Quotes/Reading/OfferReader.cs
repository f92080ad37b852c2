using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Reads an offer out of a workbook, a csv file or pasted text.</summary>
public static class OfferReader
{
    private const int LeastTabs = 3;

    /// <param name="path">The file; .txt is read as pasted text, anything else as tables.</param>
    /// <param name="corrections">What an officer corrected on an earlier run, or null.</param>
    public static Outcome<Offer> Read(string path, ReadingRecord? corrections = null)
    {
        var name = Path.GetFileName(path);
        if (Path.GetExtension(name).ToUpperInvariant() is not (".TXT" or ".EML" or ".MD")) return Of(TableReader.Read(path), corrections);
        if (!File.Exists(path)) return Outcome.None<Offer>(Diagnostic.Error("TK101", "the file does not exist; check the name and the folder", new Place(name)));
        return FromText(File.ReadAllBytes(path), name, corrections);
    }

    /// <summary>Reads tables already open.</summary>
    public static Outcome<Offer> Of(Outcome<TableFile> tables, ReadingRecord? corrections = null)
    {
        if (tables.Value is not { } file) return Outcome.None<Offer>(tables.Diagnostics);
        var lines = OfferTableReader.Read(file);
        var all = string.Join('\n', file.Tables.SelectMany(t => t.Rows).SelectMany(r => r).Where(c => !c.IsEmpty).Select(c => c.Text));
        return Finish(file.File, file.Sha256, lines, all, tables.Diagnostics, corrections);
    }

    private static Outcome<Offer> FromText(byte[] bytes, string name, ReadingRecord? corrections)
    {
        var text = TextOf(bytes);
        if (string.IsNullOrWhiteSpace(text)) return Outcome.None<Offer>(Diagnostic.Error("TK105", "the file is empty; save it again from the program that made it", new Place(name)));
        // a table pasted out of a spreadsheet keeps its tabs
        if (text.Split('\n').Count(l => l.Count(c => c == '\t') >= LeastTabs) >= LeastTabs && TableReader.Read(bytes, Path.ChangeExtension(name, ".tsv")).Value is { } pasted)
            return Finish(name, pasted.Sha256, OfferTableReader.Read(pasted), text, [], corrections);
        return Finish(name, Convert.ToHexStringLower(SHA256.HashData(bytes)), OfferTextReader.Read(text, name), text, [], corrections);
    }

    private static string TextOf(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }

    private static Outcome<Offer> Finish(string file, string sha256, ImmutableArray<OfferLine> lines, string all, ImmutableArray<Diagnostic> noticed, ReadingRecord? corrections)
    {
        lines = WithLots(WithTotal([.. lines.Select(l => l with { Place = l.Place with { File = file } })]));
        if (corrections is not null) lines = corrections.Apply(sha256, lines);
        if (!lines.Any(l => l.Kind == LineKind.Item))
        {
            return Outcome.None<Offer>([.. noticed, Diagnostic.Error(
                "TK800", "no item with a quantity and a price was found; the offer needs a row of headings such as description, quantity, unit price, amount, or lines such as '12 pcs @ 45.00 = 540.00'", new Place(file))]);
        }

        var found = noticed.AddRange(lines.Where(l => l.Kind == LineKind.Item && l.Family == "other" && l.Quantity is not null)
            .Select(l => Diagnostic.Note("TK801", $"'{Short(l.Text)}' is of no family known here", l.Place)));
        var bidder = lines.Select(l => l.Text).FirstOrDefault(t => t.Length is > 3 and < 80 && t.Any(char.IsLetter)) ?? file;
        return Outcome.Of(new Offer(file, sha256, bidder, lines, TermsReader.Read(lines, all), found), found);
    }

    /// <summary>Of all totals the last is the offer's, the others are subtotals.</summary>
    private static ImmutableArray<OfferLine> WithTotal(ImmutableArray<OfferLine> lines)
    {
        for (var i = lines.Length - 1; i >= 0; i--)
        {
            if (lines[i].Kind != LineKind.Subtotal) continue;
            return IsOwnTotal(lines, i) ? lines.SetItem(i, lines[i] with { Kind = LineKind.Total, Lot = "" }) : lines;
        }

        return lines;
    }

    /// <summary>"Total lot A" under rows that name no lot says which lot they are.</summary>
    private static ImmutableArray<OfferLine> WithLots(ImmutableArray<OfferLine> lines)
    {
        var named = lines.ToBuilder();
        var first = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].Kind is not (LineKind.Subtotal or LineKind.Total)) continue;
            for (var k = first; k < i && lines[i].Lot.Length > 0; k++)
            {
                if (named[k].Kind == LineKind.Item && named[k].Lot.Length == 0) named[k] = named[k] with { Lot = lines[i].Lot };
            }

            first = i + 1;
        }

        return named.ToImmutable();
    }

    /// <summary>A subtotal after which items follow closes no offer.</summary>
    private static bool IsOwnTotal(ImmutableArray<OfferLine> lines, int at) => !lines.Skip(at + 1).Any(l => l.Kind == LineKind.Item && l.Amount is not null);

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";
}

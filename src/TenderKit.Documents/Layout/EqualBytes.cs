using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace TenderKit.Documents.Layout;

/// <summary>
/// Takes out of a written PDF file what differs between two runs, each by a text of the same length so that no offset moves:
/// names and dates of annotations, tags of font subsets, the identifiers of the metadata and of the trailer.
/// </summary>
internal static partial class EqualBytes
{
    /// <summary>What the format's mandatory dates say of a document that has none.</summary>
    private static readonly DateOnly _undated = new(2000, 1, 1);

    /// <summary>The moment written into the file for a date.</summary>
    public static DateTime Noon(DateOnly? issued) => (issued ?? _undated).ToDateTime(new TimeOnly(12, 0), DateTimeKind.Utc);

    public static byte[] Fix(byte[] pdf, DateOnly? issued)
    {
        var text = Encoding.Latin1.GetString(pdf);
        text = Numbered(text, AnnotationName(), n => FormattableString.Invariant($"/NM({n:x8}-0000-4000-8000-000000000000)"));
        text = AnnotationDate().Replace(text, $"/M(D:{Noon(issued).ToString("yyyyMMddHHmmss", CultureInfo.InvariantCulture)}+00'00')");
        text = SameForSame(text, SubsetTag());
        return Encoding.Latin1.GetBytes(Identified(text));
    }

    private static string Numbered(string text, Regex pattern, Func<int, string> nth)
    {
        var n = 0;
        return pattern.Replace(text, _ => nth(++n));
    }

    private static string SameForSame(string text, Regex pattern)
    {
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        return pattern.Replace(text, m =>
        {
            if (!tags.TryGetValue(m.Value, out var tag)) tags[m.Value] = tag = "TENDE" + (char)('A' + tags.Count) + "+";
            return tag;
        });
    }

    /// <summary>Identifiers made from a digest of everything else in the file.</summary>
    private static string Identified(string text)
    {
        var blank = new Guid(new byte[16]);
        var digest = new Guid(SHA256.HashData(Encoding.Latin1.GetBytes(WithIdentifier(text, blank)))[..16]);
        return WithIdentifier(text, digest);
    }

    private static string WithIdentifier(string text, Guid id)
    {
        var hex = id.ToString("N").ToUpperInvariant();
        text = MetadataIdentifier().Replace(text, "uuid:" + id.ToString("D"));
        return TrailerIdentifier().Replace(text, $"/ID[<{hex}><{hex}>]");
    }

    [GeneratedRegex(@"/NM\([0-9a-f-]{36}\)")]
    private static partial Regex AnnotationName();

    [GeneratedRegex(@"/M\(D:\d{14}[+-]\d\d'\d\d'\)")]
    private static partial Regex AnnotationDate();

    [GeneratedRegex(@"(?<=/)[A-Z]{6}\+(?=Inter)")]
    private static partial Regex SubsetTag();

    [GeneratedRegex("uuid:[0-9a-f-]{36}")]
    private static partial Regex MetadataIdentifier();

    [GeneratedRegex(@"/ID\[<[0-9A-F]{32}><[0-9A-F]{32}>\]")]
    private static partial Regex TrailerIdentifier();
}

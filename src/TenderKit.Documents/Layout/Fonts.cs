using System.Globalization;
using System.Text;
using PdfSharp.Fonts;

namespace TenderKit.Documents.Layout;

/// <summary>The one typeface of the documents in its two weights, made known to the PDF library once.</summary>
internal static class Fonts
{
    public const string Family = "Inter";
    public const string RegularFile = "Inter-Regular";
    public const string StrongFile = "Inter-SemiBold";

    private static readonly Lock _gate = new();
    private static readonly Lazy<FontFace> _regular = new(() => new FontFace(File(RegularFile)));
    private static readonly Lazy<FontFace> _strong = new(() => new FontFace(File(StrongFile)));

    public static FontFace Face(bool strong) => strong ? _strong.Value : _regular.Value;

    /// <summary>Puts the font resolver in place; safe to call from any thread, any number of times.</summary>
    public static void Register()
    {
        lock (_gate)
        {
            if (GlobalFontSettings.FontResolver is null) GlobalFontSettings.FontResolver = new Resolver();
        }
    }

    /// <summary>
    /// The text with every character the font cannot draw replaced by plain letters (accents dropped, compatibility forms
    /// spelled out) or, where there are none, by a question mark; line ends and control characters become spaces.
    /// </summary>
    public static string Drawable(string text)
    {
        if (text.All(c => c is >= ' ' and <= '~')) return text;
        var drawable = new StringBuilder(text.Length);
        foreach (var rune in text.Normalize(NormalizationForm.FormC).EnumerateRunes()) drawable.Append(Drawable(rune));
        return drawable.ToString();
    }

    /// <summary>Whether <see cref="Drawable(string)"/> loses a character to a question mark.</summary>
    public static bool Loses(string text) => Drawable(text).Count(c => c == '?') > text.Count(c => c == '?');

    /// <summary>The font file as used: digits of equal width.</summary>
    internal static byte[] File(string name) => TabularDigits.Apply(InterFiles.Bytes(name));

    private static string Drawable(Rune rune)
    {
        if (Rune.IsControl(rune) || rune.Value == 0x2028 || rune.Value == 0x2029) return " ";
        if (Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format) return "";
        if (_regular.Value.Draws(rune.Value) && _strong.Value.Draws(rune.Value)) return rune.ToString();
        var plain = new StringBuilder();
        foreach (var part in rune.ToString().Normalize(NormalizationForm.FormKD).EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(part) == UnicodeCategory.NonSpacingMark) continue;
            if (!_regular.Value.Draws(part.Value) || !_strong.Value.Draws(part.Value)) return "?";
            plain.Append(part.ToString());
        }

        return plain.ToString();
    }

    private sealed class Resolver : IFontResolver
    {
        public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? StrongFile : RegularFile);

        public byte[]? GetFont(string faceName) => File(faceName);
    }
}

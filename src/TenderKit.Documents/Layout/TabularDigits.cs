using System.Buffers.Binary;
using System.Text;

namespace TenderKit.Documents.Layout;

/// <summary>
/// Gives a font digits of equal width, so that numbers in a column stand under each other. The font holds such digits behind
/// its <c>tnum</c> feature, which the PDF library does not apply; so the character map of the copy in memory is written anew,
/// leading the ten digits to them. Tables GSUB and cmap as in ISO/IEC 14496-22 (OpenType).
/// </summary>
internal sealed class TabularDigits
{
    private readonly byte[] _font;
    private readonly int _gsub;
    private readonly int _cmapEntry;

    private TabularDigits(byte[] font)
    {
        _font = font;
        for (var entry = 12; entry < 12 + (16 * U16(4)); entry += 16)
        {
            var tag = Tag(entry);
            if (tag == "GSUB") _gsub = Offset32(entry + 8);
            if (tag == "cmap") _cmapEntry = entry;
        }
    }

    /// <summary>The font with tabular digits; the same bytes when it has none.</summary>
    public static byte[] Apply(byte[] font)
    {
        var reader = new TabularDigits(font);
        var substitutes = reader.Substitutes();
        return substitutes.Count == 0 ? font : reader.WithMap(substitutes);
    }

    private byte[] WithMap(Dictionary<int, int> substitutes)
    {
        var glyphs = new SortedDictionary<int, int>(new FontFace(_font).Glyphs.Where(g => g.Key < 0xFFFF).ToDictionary());
        for (int c = '0'; c <= '9'; c++) glyphs[c] = substitutes.GetValueOrDefault(glyphs[c], glyphs[c]);
        var map = CharacterMap.Write(glyphs);
        var start = (_font.Length + 3) / 4 * 4;
        var changed = new byte[start + map.Length];
        _font.CopyTo(changed, 0);
        map.CopyTo(changed, start);
        BinaryPrimitives.WriteInt32BigEndian(changed.AsSpan(_cmapEntry + 8), start);
        BinaryPrimitives.WriteInt32BigEndian(changed.AsSpan(_cmapEntry + 12), map.Length);
        return changed;
    }

    /// <summary>Glyph to glyph, of every single substitution of the feature.</summary>
    private Dictionary<int, int> Substitutes()
    {
        var found = new Dictionary<int, int>();
        if (_gsub == 0) return found;
        int features = _gsub + U16(_gsub + 6), lookups = _gsub + U16(_gsub + 8);
        for (var i = 0; i < U16(features); i++)
        {
            var record = features + 2 + (6 * i);
            if (Tag(record) != "tnum") continue;
            var feature = features + U16(record + 4);
            for (var l = 0; l < U16(feature + 2); l++) ReadLookup(lookups + U16(lookups + 2 + (2 * U16(feature + 4 + (2 * l)))), found);
        }

        return found;
    }

    private void ReadLookup(int lookup, Dictionary<int, int> found)
    {
        for (var s = 0; s < U16(lookup + 4); s++)
        {
            var (type, subtable) = (U16(lookup), lookup + U16(lookup + 6 + (2 * s)));
            if (type == 7) (type, subtable) = (U16(subtable + 2), subtable + Offset32(subtable + 4));
            if (type == 1) ReadSingle(subtable, found);
        }
    }

    private void ReadSingle(int t, Dictionary<int, int> found)
    {
        var index = 0;
        foreach (var glyph in Covered(t + U16(t + 2)))
        {
            found[glyph] = U16(t) == 1 ? (glyph + U16(t + 4)) & 0xFFFF : U16(t + 6 + (2 * index));
            index++;
        }
    }

    private IEnumerable<int> Covered(int t)
    {
        for (var i = 0; i < U16(t + 2); i++)
        {
            if (U16(t) == 1) yield return U16(t + 4 + (2 * i));
            else for (int g = U16(t + 4 + (6 * i)), last = U16(t + 6 + (6 * i)); g <= last; g++) yield return g;
        }
    }

    private string Tag(int at) => Encoding.ASCII.GetString(_font, at, 4);

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_font.AsSpan(at));

    private int Offset32(int at) => BinaryPrimitives.ReadInt32BigEndian(_font.AsSpan(at));
}

using System.Buffers.Binary;
using System.Text;

namespace TenderKit.Documents.Layout;

/// <summary>
/// What layout must know of a TrueType file: which characters it draws and how wide they are.
/// Tables head, hhea, hmtx and cmap (formats 4 and 12) as in ISO/IEC 14496-22 (OpenType).
/// </summary>
internal sealed class FontFace
{
    private readonly byte[] _file;
    private readonly Dictionary<string, int> _tables = [];
    private readonly Dictionary<int, int> _glyphs = [];
    private readonly double _unitsPerEm;
    private readonly int _advanceCount;

    public FontFace(byte[] file)
    {
        _file = file;
        for (var i = 0; i < U16(4); i++)
        {
            var entry = 12 + (i * 16);
            _tables[Encoding.ASCII.GetString(file, entry, 4)] = (int)U32(entry + 8);
        }

        _unitsPerEm = U16(_tables["head"] + 18);
        _advanceCount = U16(_tables["hhea"] + 34);
        ReadCharacterMap(_tables["cmap"]);
    }

    /// <summary>Glyph by code point.</summary>
    public IReadOnlyDictionary<int, int> Glyphs => _glyphs;

    public bool Draws(int codePoint) => _glyphs.ContainsKey(codePoint);

    /// <summary>Advance width of a text at a size, in the unit of the size; a character not drawn counts nothing.</summary>
    public double Width(string text, double size)
    {
        long units = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            if (_glyphs.TryGetValue(rune.Value, out var glyph)) units += U16(_tables["hmtx"] + (4 * Math.Min(glyph, _advanceCount - 1)));
        }

        return units * size / _unitsPerEm;
    }

    private void ReadCharacterMap(int map)
    {
        for (var i = 0; i < U16(map + 2); i++)
        {
            var subtable = map + (int)U32(map + 4 + (8 * i) + 4);
            if (U16(subtable) == 4) ReadFormat4(subtable);
            else if (U16(subtable) == 12) ReadFormat12(subtable);
        }
    }

    private void ReadFormat4(int t)
    {
        var twice = U16(t + 6);
        for (var s = 0; s < twice; s += 2)
        {
            int last = U16(t + 14 + s), first = U16(t + 16 + twice + s), delta = U16(t + 16 + (2 * twice) + s);
            var rangeAt = t + 16 + (3 * twice) + s;
            for (var c = first; c <= last && c != 0xFFFF; c++)
            {
                var glyph = U16(rangeAt) == 0 ? c : U16(rangeAt + U16(rangeAt) + (2 * (c - first)));
                if (glyph != 0) Add(c, (glyph + delta) & 0xFFFF);
            }
        }
    }

    private void ReadFormat12(int t)
    {
        for (var g = 0; g < U32(t + 12); g++)
        {
            var group = t + 16 + (12 * g);
            for (var c = U32(group); c <= U32(group + 4); c++) Add((int)c, (int)(U32(group + 8) + c - U32(group)));
        }
    }

    private void Add(int codePoint, int glyph)
    {
        if (glyph != 0) _glyphs[codePoint] = glyph;
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(at));
}

using System.Buffers.Binary;
using System.Numerics;

namespace TenderKit.Documents.Layout;

/// <summary>Writes a cmap table with one subtable of format 4 (platform 3, encoding 1), as in ISO/IEC 14496-22 (OpenType).</summary>
internal static class CharacterMap
{
    private const int HeaderLength = 12;

    /// <param name="glyphs">Glyph by code point, code points below 0xFFFF.</param>
    public static byte[] Write(SortedDictionary<int, int> glyphs)
    {
        var runs = Runs(glyphs);
        runs.Add((0xFFFF, 0xFFFF, 1));
        var map = new byte[HeaderLength + 16 + (8 * runs.Count)];
        Words(map, 0, 0, 1, 3, 1, 0, HeaderLength);
        var largest = (int)BitOperations.RoundUpToPowerOf2((uint)runs.Count + 1) / 2;
        Words(map, HeaderLength, 4, map.Length - HeaderLength, 0, 2 * runs.Count, 2 * largest, BitOperations.Log2((uint)largest), 2 * (runs.Count - largest));
        for (var i = 0; i < runs.Count; i++)
        {
            var at = HeaderLength + 14 + (2 * i);
            Words(map, at, runs[i].Last);
            Words(map, at + 2 + (2 * runs.Count), runs[i].First);
            Words(map, at + 2 + (4 * runs.Count), runs[i].Delta & 0xFFFF);
        }

        return map;
    }

    private static List<(int First, int Last, int Delta)> Runs(SortedDictionary<int, int> glyphs)
    {
        var runs = new List<(int First, int Last, int Delta)>();
        foreach (var (code, glyph) in glyphs)
        {
            if (runs.Count > 0 && runs[^1].Last == code - 1 && runs[^1].Delta == glyph - code) runs[^1] = runs[^1] with { Last = code };
            else runs.Add((code, code, glyph - code));
        }

        return runs;
    }

    private static void Words(byte[] map, int at, params ReadOnlySpan<int> values)
    {
        foreach (var value in values)
        {
            BinaryPrimitives.WriteUInt16BigEndian(map.AsSpan(at), (ushort)value);
            at += 2;
        }
    }
}

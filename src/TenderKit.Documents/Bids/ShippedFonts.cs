using System.Security.Cryptography;
using TenderKit.Documents.Layout;

namespace TenderKit.Documents.Bids;

/// <summary>A font file of the documents, held against the digest of the one they were tested with.</summary>
/// <param name="Expected">SHA-256 of the file tested, lower-case hex.</param>
/// <param name="Found">SHA-256 of the file that came with the program, lower-case hex.</param>
public sealed record ShippedFont(string Name, string Expected, string Found)
{
    public bool IsWhole => Expected == Found;
}

/// <summary>The font files that come with the program.</summary>
public static class ShippedFonts
{
    private static readonly (string Name, string Digest)[] _tested =
    [
        (Fonts.RegularFile, "41ab0f707a2bfab8133ccdfcdab52282f5f79e5751f43a264805451c7bb95fb8"),
        (Fonts.StrongFile, "e8cbc2b88bc4268237ff5e251776d3c54edcb14e015a9e66e4883bde4b55f13f"),
    ];

    public static IEnumerable<ShippedFont> All() =>
        _tested.Select(f => new ShippedFont(f.Name, f.Digest, Convert.ToHexStringLower(SHA256.HashData(InterFiles.Bytes(f.Name)))));
}

using System.Collections.Immutable;
using System.Text;
using TenderKit.Documents.Bids;

namespace TenderKit.Cli;

/// <summary>The starter tender with its own rules and catalogue, as it lies in the program.</summary>
internal static class StarterFiles
{
    public const string TenderName = "tender.yaml";
    private const string Prefix = "starter/";

    /// <summary>Every file of the starter, its path relative to the folder it goes into.</summary>
    public static ImmutableArray<BidDocument> All()
    {
        var assembly = typeof(StarterFiles).Assembly;
        return
        [
            .. assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal)
                .Select(n => new BidDocument(n[Prefix.Length..], n == Prefix + TenderName ? WithOwnFiles(Bytes(n)) : Bytes(n))),
        ];
    }

    private static byte[] Bytes(string name)
    {
        using var resource = typeof(StarterFiles).Assembly.GetManifestResourceStream(name)!;
        using var bytes = new MemoryStream();
        resource.CopyTo(bytes);
        return bytes.ToArray();
    }

    /// <summary>The starter's paths point into the project; a new folder holds its own catalogue and rules.</summary>
    private static byte[] WithOwnFiles(byte[] tender) => Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(tender)
        .Replace("../../catalog-sample", "catalog", StringComparison.Ordinal)
        .Replace("../design-rules.yaml", "design-rules.yaml", StringComparison.Ordinal));
}

using System.Collections.Immutable;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text;

namespace TenderKit.Documents.Layout;

/// <summary>
/// The font files of the documents, read out of the font package's assembly, which lies in this assembly as a resource.
/// The assembly is read as data and never loaded: its one resource is an index (path, offset, length) followed by the files.
/// </summary>
internal static class InterFiles
{
    private const string EmbeddedAssembly = "Inter.dll";
    private const string IndexedResource = "!AvaloniaResources";

    private static readonly Lazy<ImmutableSortedDictionary<string, byte[]>> _all = new(ReadAll);

    /// <summary>Bytes of one font file, e.g. <c>Inter-Regular</c>.</summary>
    /// <exception cref="InvalidOperationException">No such file in the package.</exception>
    public static byte[] Bytes(string face) =>
        _all.Value.TryGetValue(face, out var bytes) ? bytes : throw new InvalidOperationException($"font file {face}.ttf is missing from the font package");

    private static ImmutableSortedDictionary<string, byte[]> ReadAll()
    {
        using var stream = typeof(InterFiles).Assembly.GetManifestResourceStream(EmbeddedAssembly)
            ?? throw new InvalidOperationException($"resource {EmbeddedAssembly} is missing from the documents assembly");
        using var assembly = new PEReader(stream, PEStreamOptions.PrefetchEntireImage);
        return Unpack(ResourceBytes(assembly));
    }

    private static byte[] ResourceBytes(PEReader assembly)
    {
        var metadata = assembly.GetMetadataReader();
        var resource = metadata.ManifestResources.Select(metadata.GetManifestResource).First(r => metadata.GetString(r.Name) == IndexedResource);
        var directory = assembly.PEHeaders.CorHeader!.ResourcesDirectory.RelativeVirtualAddress;
        var reader = assembly.GetSectionData(directory).GetReader((int)resource.Offset, sizeof(int));
        return [.. assembly.GetSectionData(directory).GetContent((int)resource.Offset + sizeof(int), reader.ReadInt32())];
    }

    private static ImmutableSortedDictionary<string, byte[]> Unpack(byte[] resource)
    {
        using var reader = new BinaryReader(new MemoryStream(resource), Encoding.UTF8);
        var dataStart = sizeof(int) + reader.ReadInt32();
        reader.ReadInt32();
        var count = reader.ReadInt32();
        var files = ImmutableSortedDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        for (var i = 0; i < count; i++)
        {
            var path = reader.ReadString();
            var start = dataStart + reader.ReadInt32();
            var length = reader.ReadInt32();
            if (path.EndsWith(".ttf", StringComparison.Ordinal)) files[Path.GetFileNameWithoutExtension(path)] = resource[start..(start + length)];
        }

        return files.ToImmutable();
    }
}

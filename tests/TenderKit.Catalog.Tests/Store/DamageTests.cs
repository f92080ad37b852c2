using System.Collections.Concurrent;
using TenderKit.Catalog.Import;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Catalog.Tests.Store;

/// <summary>What a damaged file, a killed import and others at work at the same time do to a catalogue.</summary>
public sealed class DamageTests
{
    [Fact]
    public void ACutFileIsSaidToBeDamaged()
    {
        using var folder = new SmallCatalog();
        var path = Imported(folder);
        var bytes = File.ReadAllBytes(path);
        foreach (var length in new[] { 1, 100, 4096, bytes.Length / 2, bytes.Length - 4096 })
        {
            File.WriteAllBytes(path, bytes[..length]);
            var error = Assert.Single(Catalogs.Open(path).Diagnostics);
            Assert.Equal(("TK610", Severity.Error, "parts.db"), (error.Code, error.Severity, error.Place.File));
        }
    }

    [Fact]
    public void DamagedBytesAreAnAnswerAndNeverAFault()
    {
        using var folder = new SmallCatalog();
        var path = Imported(folder);
        var bytes = File.ReadAllBytes(path);
        var random = new Random(20261125);
        for (var i = 0; i < 60; i++)
        {
            var damaged = (byte[])bytes.Clone();
            var at = random.Next(damaged.Length - 16);
            for (var k = 0; k < 16; k++) damaged[at + k] = (byte)random.Next(256);
            File.WriteAllBytes(path, damaged);
            var outcome = Catalogs.Open(path);
            Assert.True(outcome.Value is not null || outcome.HasErrors);
        }
    }

    [Fact]
    public void WhatAKilledImportLeftIsClearedAwayByTheNext()
    {
        using var folder = new SmallCatalog();
        var path = Imported(folder);
        var left = path + ".2147483646.new";
        File.WriteAllText(left, "half a catalogue");
        File.WriteAllText(path + ".notes.new", "not ours");
        Imported(folder);
        Assert.False(File.Exists(left));
        Assert.True(File.Exists(path + ".notes.new"));
    }

    [Fact]
    public async Task ReadersSeeTheOldOrTheNewCatalogueWholeWhileOthersImport()
    {
        using var folder = new SmallCatalog();
        var path = Imported(folder);
        using var other = new SmallCatalog().With("poles", ",180,", ",181,");
        var known = new[] { Catalogs.Open(folder.Folder).Value!.Digest, Catalogs.Open(other.Folder).Value!.Digest };
        var seen = new ConcurrentBag<string>();
        var done = false;
        Task Reader() => Task.Run(() =>
        {
            do seen.Add(Catalogs.Open(path).Value?.Digest ?? "damaged");
            while (!Volatile.Read(ref done));
        });
        var readers = new[] { Reader(), Reader() };
        for (var i = 0; i < 8; i++) CatalogImporter.ToFile((i % 2 == 0 ? other : folder).Folder, path).Value!.Dispose();
        Volatile.Write(ref done, true);
        await Task.WhenAll(readers);
        Assert.NotEmpty(seen);
        Assert.Subset(known.ToHashSet(), seen.ToHashSet());
    }

    private static string Imported(SmallCatalog folder)
    {
        var path = Path.Combine(folder.Folder, "parts.db");
        CatalogImporter.ToFile(folder.Folder, path).Value!.Dispose();
        return path;
    }
}

using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using TenderKit.Documents.Bids;
using Xunit;

namespace TenderKit.Documents.Tests.Bids;

/// <summary>A folder holds a whole set of documents, the old or the new, whatever goes wrong.</summary>
public sealed class BidFolderTests : IDisposable
{
    private static readonly ImmutableArray<BidDocument> Old = Set("old", "technical/a.pdf", "financial/b.xlsx", "internal/c.json", "internal/data-request.pdf");
    private static readonly ImmutableArray<BidDocument> New = Set("new", "technical/a.pdf", "financial/b.xlsx", "internal/c.json");

    private readonly DirectoryInfo _above = Directory.CreateTempSubdirectory("tenderkit-folder-");

    private string Folder => Path.Combine(_above.FullName, "bid");

    public void Dispose() => _above.Delete(recursive: true);

    [Fact]
    public void A_disk_that_is_full_at_any_document_changes_nothing_and_names_the_document()
    {
        BidFolder.WriteBid(Folder, Old, []);
        var before = View();
        for (var full = 0; full < New.Length; full++)
        {
            var left = full;
            var e = Assert.Throws<IOException>(() => BidFolder.Write(Folder, New, keepsList: true, path => left-- > 0 ? File.Create(path) : new FullStream(path)));
            Assert.Contains(Path.GetFileName(New[full].RelativePath), e.Message, StringComparison.Ordinal);
            Assert.Contains("no room", e.Message, StringComparison.Ordinal);
            Assert.EndsWith("Nothing was changed.", e.Message, StringComparison.Ordinal);
            Assert.Equal(before, View());
        }
    }

    [Fact]
    public void A_disk_that_is_full_at_the_first_bid_leaves_no_folder()
    {
        Assert.Throws<IOException>(() => BidFolder.Write(Folder, New, keepsList: true, path => new FullStream(path)));
        Assert.False(Directory.Exists(Folder));
    }

    [Fact]
    public void A_document_no_longer_part_of_the_bid_goes_and_one_changed_by_hand_stays_and_is_named()
    {
        Assert.Empty(BidFolder.WriteBid(Folder, Old, []).Left);
        File.WriteAllText(Path.Combine(Folder, "technical", "ours-to-keep.txt"), "signed");
        var changes = BidFolder.WriteBid(Folder, New, []);
        Assert.Equal<IEnumerable<string>>(["internal/data-request.pdf"], changes.Removed);
        Assert.Equal<IEnumerable<string>>(["technical/ours-to-keep.txt"], changes.Left);

        BidFolder.WriteBid(Folder, Old, []);
        File.AppendAllText(Path.Combine(Folder, "internal", "data-request.pdf"), "a remark");
        changes = BidFolder.WriteBid(Folder, New, []);
        Assert.Empty(changes.Removed);
        Assert.Equal<IEnumerable<string>>(["internal/data-request.pdf", "technical/ours-to-keep.txt"], changes.Left);
    }

    [Fact]
    public void A_document_changed_by_hand_is_kept_beside_the_new_one()
    {
        BidFolder.WriteBid(Folder, Old, []);
        var answers = Path.Combine(Folder, "technical", "a.pdf");
        File.WriteAllText(answers, "filled in on the ground");
        Assert.Equal<IEnumerable<string>>(["technical/a.changed-1.pdf"], BidFolder.WriteBid(Folder, New, []).Left);
        File.WriteAllText(answers, "filled in again");
        Assert.Equal<IEnumerable<string>>(["technical/a.changed-1.pdf", "technical/a.changed-2.pdf"], BidFolder.WriteBid(Folder, Old, []).Left);
        Assert.Equal("filled in on the ground", File.ReadAllText(Path.Combine(Folder, "technical", "a.changed-1.pdf")));
        Assert.Equal("filled in again", File.ReadAllText(Path.Combine(Folder, "technical", "a.changed-2.pdf")));
        Assert.Equal("old technical/a.pdf", File.ReadAllText(answers));
    }

    [Fact]
    public void The_list_holds_the_digest_of_each_document()
    {
        BidFolder.WriteBid(Folder, New, []);
        var lines = File.ReadAllLines(Path.Combine(Folder, "documents.sha256"));
        Assert.Equal(New.Select(d => $"{Convert.ToHexStringLower(SHA256.HashData(d.Bytes))}  {d.RelativePath}").Order(StringComparer.Ordinal).OrderBy(l => l[66..], StringComparer.Ordinal), lines);
    }

    [Fact]
    public void After_a_kill_in_the_moment_of_replacing_documents_of_either_run_are_known_as_our_own()
    {
        BidFolder.WriteBid(Folder, Old, []);
        File.WriteAllBytes(Path.Combine(Folder, "technical", "a.pdf"), New[0].Bytes);
        var note = "Some words.\n" + Encoding.UTF8.GetString(DocumentList.Of(New).Bytes);
        File.WriteAllText(Path.Combine(Folder, BidFolder.UnfinishedName), note);
        var changes = BidFolder.WriteBid(Folder, Set("newer", "technical/a.pdf", "financial/b.xlsx", "internal/c.json"), []);
        Assert.Empty(changes.Left);
        Assert.Equal<IEnumerable<string>>(["internal/data-request.pdf"], changes.Removed);
    }

    [Theory]
    [InlineData("../precious.txt")]
    [InlineData("internal/../../precious.txt")]
    [InlineData("/precious.txt")]
    public void A_list_that_names_files_outside_harms_nothing(string path)
    {
        BidFolder.WriteBid(Folder, Old, []);
        var precious = Path.Combine(_above.FullName, "precious.txt");
        File.WriteAllText(precious, "mine");
        var named = path == "/precious.txt" ? precious : path;
        File.AppendAllText(Path.Combine(Folder, "documents.sha256"), $"{Convert.ToHexStringLower(SHA256.HashData("mine"u8))}  {named}\n");
        BidFolder.WriteBid(Folder, New, []);
        Assert.True(File.Exists(precious));
    }

    [Fact]
    public void A_file_the_tender_is_made_from_is_never_replaced()
    {
        BidFolder.WriteBid(Folder, Old, []);
        var before = View();
        var e = Assert.Throws<IOException>(() => BidFolder.WriteBid(Folder, New, [Path.Combine(Folder, "financial", "..", "financial", "b.xlsx")]));
        Assert.Contains("b.xlsx is a file this tender is made from", e.Message, StringComparison.Ordinal);
        Assert.Equal(before, View());
    }

    [Fact]
    public void What_killed_runs_left_is_cleared_away()
    {
        BidFolder.WriteBid(Folder, Old, []);
        File.WriteAllText(Path.Combine(Folder, "technical", "a.pdf.99999.being-written"), "half");
        File.WriteAllText(Path.Combine(Folder, BidFolder.UnfinishedName), "note");
        File.WriteAllText(Path.Combine(Folder, "being-written.lock"), "");
        BidFolder.WriteBid(Folder, New, []);
        Assert.DoesNotContain(View(), f => f.StartsWith("technical/a.pdf.", StringComparison.Ordinal) || f.StartsWith(BidFolder.UnfinishedName, StringComparison.Ordinal) || f.Contains("lock", StringComparison.Ordinal));
    }

    [Fact]
    public void A_folder_another_run_holds_is_waited_for_and_then_named()
    {
        Directory.CreateDirectory(Folder);
        var held = FolderLock.Take(Folder);
        var e = Assert.Throws<IOException>(() => FolderLock.Take(Folder, TimeSpan.FromMilliseconds(120)));
        Assert.Contains("another run is writing into", e.Message, StringComparison.Ordinal);
        using var later = new Timer(_ => held.Dispose(), null, 100, Timeout.Infinite);
        BidFolder.WriteBid(Folder, New, []);
        Assert.Equal("new technical/a.pdf", File.ReadAllText(Path.Combine(Folder, "technical", "a.pdf")));
    }

    [Fact]
    public void Bids_at_once_into_one_folder_leave_one_whole_bid()
    {
        Parallel.For(0, 12, i => BidFolder.WriteBid(Folder, Set($"run {i}", "technical/a.pdf", "financial/b.xlsx", "internal/c.json"), []));
        var whose = New.Select(d => File.ReadAllText(Path.Combine(Folder, d.RelativePath)).Replace(d.RelativePath, "", StringComparison.Ordinal)).Distinct();
        Assert.Single(whose);
        Assert.Equal(4, View().Length);
    }

    [Theory]
    [InlineData("CON", "bid-CON")]
    [InlineData("lpt1", "bid-lpt1")]
    [InlineData("COM10", "COM10")]
    [InlineData("KIS/2027/014", "KIS-2027-014")]
    [InlineData("..", "bid")]
    [InlineData("-rf", "rf")]
    [InlineData("Ünïcødé 'quoted'", "n-c-d---quoted")]
    [InlineData("", "bid")]
    public void A_reference_becomes_a_name_every_system_takes(string reference, string expected) => Assert.Equal(expected, SafeName.OfReference(reference, "bid"));

    [Fact]
    public void A_long_reference_is_cut() => Assert.Equal(SafeName.MostCharacters, SafeName.OfReference(new string('x', 400), "bid").Length);

    [Theory]
    [InlineData("../../etc/passwd", "etc-passwd")]
    [InlineData("A:B*C?\"", "A-B-C--")]
    public void A_code_cannot_leave_its_folder(string code, string expected) => Assert.Equal(expected, SafeName.Part(code));

    private static ImmutableArray<BidDocument> Set(string text, params string[] paths) => [.. paths.Select(p => new BidDocument(p, Encoding.UTF8.GetBytes($"{text} {p}")))];

    private string[] View() =>
    [
        .. Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/') + ": " + File.ReadAllText(f)),
    ];

    /// <summary>A file on a disk that takes three bytes more.</summary>
    private sealed class FullStream(string path) : FileStream(path, FileMode.Create)
    {
        public override void Write(ReadOnlySpan<byte> buffer)
        {
            base.Write(buffer[..3]);
            base.Flush();
            throw new IOException("no room on the disk");
        }
    }
}

using System.Diagnostics;
using System.Text;
using TenderKit.Documents.Bids;
using Xunit;

namespace TenderKit.Cli.Tests.Faults;

/// <summary>Disks and folders that do not take a bid, and names that are hard to take.</summary>
public class FolderFaultTests
{
    [SkippableFact]
    public void A_full_disk_is_named_and_the_old_bid_stays_where_a_disk_can_be_mounted()
    {
        using var folder = new TenderFolder();
        var disk = Directory.CreateDirectory(folder.PathOf("disk")).FullName;
        Skip.IfNot(OperatingSystem.IsLinux() && Ended("mount", "-t", "tmpfs", "-o", "size=400k", "tmpfs", disk), "needs the right to mount a small disk in memory");
        try
        {
            File.WriteAllText(Path.Combine(disk, "kept.txt"), "kept");
            var place = Path.Combine(disk, "bid");
            BidFolder.WriteBid(place, [new("technical/a.txt", "old"u8.ToArray())], []);
            var run = folder.WithSites("S11").Bid(place);
            Assert.Equal(ExitCodes.CouldNotRun, run.Code);
            Assert.Matches("error: .* cannot be written: .*(space|full).* Make room .* Nothing was changed", run.Errors);
            Assert.Equal("old", File.ReadAllText(Path.Combine(place, "technical", "a.txt")));
            Assert.Equal(["documents.sha256", "technical"], Directory.EnumerateFileSystemEntries(place).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal));
        }
        finally
        {
            Ended("umount", disk);
        }
    }

    [SkippableFact]
    public void A_device_without_room_is_named()
    {
        Skip.IfNot(File.Exists("/dev/full"), "needs the device /dev/full");
        using var folder = new TenderFolder();
        BidFolder.WriteBid(folder.Out, [new("a.txt", "old"u8.ToArray())], []);
        var e = Assert.Throws<IOException>(() => BidFolder.Write(folder.Out, [new("a.txt", "new"u8.ToArray())], keepsList: true, _ => new FileStream("/dev/full", FileMode.Open, FileAccess.Write)));
        Assert.Matches("a.txt cannot be written: .*space.* Nothing was changed", e.Message);
        Assert.Equal("old", File.ReadAllText(Path.Combine(folder.Out, "a.txt")));
    }

    [SkippableFact]
    public void A_folder_that_cannot_be_written_is_named()
    {
        Skip.IfNot(Directory.Exists("/proc/self"), "needs a file system nobody may write to");
        using var folder = new TenderFolder().WithSites("S11");
        var run = folder.Bid("/proc/bids/2027");
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("the folder /proc/bids/2027 cannot be made", run.Errors, StringComparison.Ordinal);
        Assert.Contains("--out", run.Errors, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.SomethingUnmet, TenderFolder.Run("prove", "--out", "/proc/bids").Code);
    }

    [Fact]
    public void A_file_where_the_folder_would_be_is_named_and_stays()
    {
        using var folder = new TenderFolder().WithSites("S11");
        var before = File.ReadAllBytes(folder.Tender);
        var run = folder.Bid(folder.Tender);
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("tender.yaml", run.Errors, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(folder.Tender));
    }

    // Names with blanks, quotes, other alphabets, a leading dash, brackets, an at sign and an ending that means something, and a path beyond
    // the 260 characters some systems stop at: the same bytes as anywhere else
    [Fact]
    public void Odd_and_long_names_change_no_byte()
    {
        using var folder = new TenderFolder().WithSites("S11");
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        string[] names = ["it's a \"tender\", 50% & more", "-rf ünï 市場 الطريق", "@here [red]bold[/] {0} $HOME; .xlsx", Path.Combine([.. Enumerable.Repeat(new string('x', 60), 8)])];
        foreach (var place in names.Select(n => Path.Combine(folder.PathOf("odd"), n)))
        {
            Directory.CreateDirectory(place);
            foreach (var file in Directory.EnumerateFiles(Path.GetDirectoryName(folder.Tender)!)) File.Copy(file, Path.Combine(place, Path.GetFileName(file)));
            var run = TenderFolder.Run("bid", Path.Combine(place, "tender.yaml"), "--out", place);
            Assert.True(run.Code == ExitCodes.Good, run.Errors);
            Assert.Equal(File.ReadAllText(Path.Combine(folder.Out, "documents.sha256")), File.ReadAllText(Path.Combine(place, "documents.sha256")));
        }
    }

    [Fact]
    public void A_reference_is_a_folder_name_that_every_system_takes()
    {
        using var folder = new TenderFolder().WithSites("S11").Change("tender.yaml", "reference: KIS-2027-014", "reference: CON");
        using var bid = Child.Start(["bid", "tender.yaml", "--format", "json"], workingFolder: Path.GetDirectoryName(folder.Tender));
        Assert.Equal(ExitCodes.Good, bid.WaitForExit());
        Assert.True(Directory.Exists(folder.PathOf(Path.Combine("output", "bid-CON", "technical"))), bid.Output);
    }

    [Fact]
    public void TK744_a_document_this_run_does_not_write_goes_and_what_was_changed_by_hand_is_kept_and_named()
    {
        using var folder = new TenderFolder().WithSites("S08", "S11");
        Assert.Equal(ExitCodes.Good, folder.Bid().Code);
        var request = Path.Combine(folder.Out, "internal", "data-request.pdf");
        var answers = Path.Combine(folder.Out, "technical", "survey-answers.xlsx");
        Assert.True(File.Exists(request));
        File.WriteAllText(answers, "filled in on the ground");
        File.WriteAllLines(folder.PathOf("sites.csv"), File.ReadAllLines(folder.PathOf("sites.csv")).Where(l => !l.StartsWith("S08", StringComparison.Ordinal)));
        var run = folder.Bid();
        Assert.Equal(ExitCodes.Good, run.Code);
        Assert.False(File.Exists(request));
        Assert.Contains("Removed internal/data-request.pdf", run.Errors, StringComparison.Ordinal);
        Assert.Contains("TK744: not of this run and left in the folder: technical/survey-answers.changed-1.xlsx", run.Errors, StringComparison.Ordinal);
        Assert.Equal("filled in on the ground", File.ReadAllText(Path.Combine(folder.Out, "technical", "survey-answers.changed-1.xlsx")));
    }

    [Fact]
    public void A_form_or_list_the_tender_is_made_from_is_never_replaced()
    {
        using var folder = new TenderFolder().WithSites("S11");
        Directory.CreateDirectory(folder.PathOf("technical"));
        File.Copy(folder.PathOf("sites.csv"), folder.PathOf("technical/community-page.pdf"));
        folder.Change("tender.yaml", "catalog:", "quotes: { asked: technical/community-page.pdf }\ncatalog:");
        var run = folder.Bid(Path.GetDirectoryName(folder.Tender));
        Assert.Equal(ExitCodes.CouldNotRun, run.Code);
        Assert.Contains("community-page.pdf is a file this tender is made from", run.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.PathOf("financial")));
    }

    private static bool Ended(string program, params string[] args)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, args) { RedirectStandardError = true, StandardErrorEncoding = Encoding.UTF8 })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}

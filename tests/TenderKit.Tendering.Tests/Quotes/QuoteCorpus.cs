using System.Collections.Immutable;
using TenderKit.Intake.Tables;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Tests.Quotes;

/// <summary>The thirty invented offers with their ledgers.</summary>
internal static class QuoteCorpus
{
    public static string Folder { get; } = FindFolder();

    public static ImmutableArray<string> Files { get; } = [.. Directory.EnumerateFiles(Folder, "q*.*").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    /// <summary>Ten offers written, with their faults, before the checker met them.</summary>
    public static string BlindFolder { get; } = Path.Combine(Folder, "..", "Blind");

    public static ImmutableArray<string> BlindFiles { get; } = [.. Directory.EnumerateFiles(BlindFolder, "b*.*").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    public static bool IsOdd(string file) => int.Parse(file.AsSpan(1, 2), System.Globalization.CultureInfo.InvariantCulture) % 2 == 1;

    public static Offer Read(string file, string? folder = null) => OfferReader.Read(Path.Combine(folder ?? Folder, file)).Value ?? throw new InvalidOperationException(file + " was not read");

    /// <summary>Rows of a csv ledger as cells by heading.</summary>
    public static IReadOnlyList<Dictionary<string, string>> Ledger(string name, string? folder = null)
    {
        var table = TableReader.Read(Path.Combine(folder ?? Folder, name)).Value!.Tables[0];
        var heads = table.Rows[0].Select(c => c.Text).ToList();
        return [.. table.Rows.Skip(1).Select(r => heads.Select((h, i) => (h, r[i].Text)).ToDictionary(p => p.h, p => p.Text))];
    }

    private static string FindFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "TenderKit.sln"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "tests", "TenderKit.Tendering.Tests", "Quotes", "Corpus");
    }
}

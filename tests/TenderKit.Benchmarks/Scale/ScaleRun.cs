using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using TenderKit.Documents.Bids;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Settings;

namespace TenderKit.Benchmarks.Scale;

/// <summary>One run of a whole bid over many sites and parts, step by step with time and memory.</summary>
internal static class ScaleRun
{
    /// <param name="args">scale, then sites and parts.</param>
    public static int Run(string[] args)
    {
        var sites = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1000;
        var parts = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 20000;
        var folder = Directory.CreateTempSubdirectory("tenderkit-scale-");
        try
        {
            var path = BigTender.Write(folder.FullName, Root(), sites, parts);
            Console.WriteLine(FormattableString.Invariant($"{sites} sites, {parts} parts"));
            var loaded = Timed("read", () => TenderLoader.Load(path));
            if (loaded.Inputs is not { } inputs)
            {
                foreach (var problem in loaded.Diagnostics.Where(d => d.Severity == Severity.Error).Take(5)) Console.Error.WriteLine(problem);
                return 1;
            }

            Console.WriteLine(FormattableString.Invariant($"{inputs.Sites.Length} sites and {inputs.Catalog.All.Count()} parts read"));
            if (args.Contains("free")) inputs = inputs with { Tender = inputs.Tender with { KitsAtMost = null } };
            var design = Timed("design", () => TenderDesigner.Run(inputs, loaded.Diagnostics));
            Console.WriteLine("digest " + DigestOf(design));
            Console.WriteLine(FormattableString.Invariant($"{design.Sites.Length} designed, {design.Unmet.Length} not, {design.Kits.Length} kits, {design.PoleCount} poles"));
            if (design.Unmet.Length > 0) Console.WriteLine(design.Unmet[0].Reason);
            var bill = Timed("bill", () => BillBuilder.Build(design));
            if (args.Contains("documents")) Timed("documents", () => BidDocuments.Make(design, bill.Value, NoteSelector.Select(design, NoteLibrary.Load())));
            if (bill.Value is { } b) Console.WriteLine(FormattableString.Invariant($"grand total {LedgerValues.Evaluate(b.Ledger)[b.GrandTotal]:N2}"));
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The same for two runs that designed the same: every site with its make-up, poles, level, checks and what is said of it.</summary>
    private static string DigestOf(TenderDesign design)
    {
        var text = new StringBuilder();
        foreach (var site in design.Sites)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{site.Site.Id} {site.KitId} {site.Poles} {site.Parts.Key} {site.Light.LevelFraction:R} {site.Energy.Simulated.DarkNightsUpperBound:R}");
            foreach (var check in site.Checks) text.AppendLine(CultureInfo.InvariantCulture, $"{check.Id} {check.Required:R} {check.Offered:R} {check.Basis}");
        }

        foreach (var site in design.Unmet) text.AppendLine(site.SiteId + " " + site.Reason);
        foreach (var diagnostic in design.Diagnostics) text.AppendLine(diagnostic.ToString());
        return Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    private static T Timed<T>(string step, Func<T> work)
    {
        var watch = Stopwatch.StartNew();
        var result = work();
        using var process = Process.GetCurrentProcess();
        Console.WriteLine(FormattableString.Invariant(
            $"{step}: {watch.Elapsed.TotalSeconds:0.0} s, processor {process.TotalProcessorTime.TotalSeconds:0.0} s so far, greatest memory {process.PeakWorkingSet64 / 1e6:0} MB, allocated {GC.GetTotalAllocatedBytes() / 1e9:0.0} GB so far"));
        return result;
    }

    /// <summary>The folder above the program that holds the sample catalogue.</summary>
    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "catalog-sample"))) folder = folder.Parent ?? throw new DirectoryNotFoundException("catalog-sample");
        return folder.FullName;
    }
}

using System.Globalization;
using TenderKit.Catalog;
using TenderKit.Documents.Bids;
using TenderKit.Intake.Climate;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.SelfCheck;

/// <summary>What comes with the program: fonts, note texts, reference climate, the starter with its rules and catalogue.</summary>
internal static class ShippedFiles
{
    private const string Reinstall = "Install the program again: a file it came with is missing or was changed.";

    public static IEnumerable<Proof> Run()
    {
        foreach (var font in ShippedFonts.All()) yield return new("fonts", font.Name, font.IsWhole, Short(font.Found), Short(font.Expected), Cure: Reinstall);
        foreach (var language in TenderLanguages.All) yield return Counted("notes", $"note texts in '{language}'", () => NotesIn(language), "notes");
        yield return Counted("climate", "built-in reference table", () => ReferenceStations.Load().Count, "stations");
        foreach (var proof in OfStarter()) yield return proof;
    }

    /// <summary>A catalogue of the user's own.</summary>
    public static Proof OwnCatalog(string path)
    {
        var opened = Catalogs.Open(path);
        var errors = opened.Diagnostics.Where(d => d.Severity == Severity.Error).ToList();
        return opened.Value is { } catalog
            ? new("catalogue", path, true, FormattableString.Invariant($"{catalog.Parts.All.Count()} parts, {Odd(opened.Diagnostics)} implausible"), "readable")
            : new("catalogue", path, false, errors.FirstOrDefault()?.ToString() ?? "unreadable", "readable", Cure: FormattableString.Invariant($"Mend the {errors.Count} cells or files named by: tenderkit catalog list {path}"));
    }

    private static IEnumerable<Proof> OfStarter()
    {
        var folder = Directory.CreateTempSubdirectory("tenderkit-prove-");
        try
        {
            BidFolder.Write(folder.FullName, StarterFiles.All());
            var loaded = TenderLoader.Load(Path.Combine(folder.FullName, StarterFiles.TenderName));
            var error = loaded.Diagnostics.FirstOrDefault(d => d.Severity == Severity.Error);
            if (loaded.Inputs is not { } inputs || error is not null)
            {
                yield return new("templates", "starter tender", false, error?.ToString() ?? "unreadable", "readable", Cure: Reinstall);
                yield break;
            }

            yield return new("templates", "starter tender", true, Number(inputs.Sites.Length, "sites"), "readable");
            yield return new("rules", "design rules", inputs.Rules.Rules.All(r => r.InRange), Number(inputs.Rules.Rules.Length, "rules"), "each inside its range", Cure: Reinstall);
            yield return new("catalogue", "sample catalogue", true, FormattableString.Invariant($"{Number(inputs.Catalog.All.Count(), "parts")}, {Odd(loaded.Diagnostics)} implausible on purpose"), "readable");
            yield return WholeSite(inputs);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>One site of the starter from climate to foundation: every check complies and no energy is lost.</summary>
    private static Proof WholeSite(DesignInputs inputs)
    {
        const string what = "one site of the starter: what the energy balance fails to close by";
        var design = TenderDesigner.Run(inputs with { Sites = [inputs.Sites[0]] }, []);
        if (design.Sites.IsEmpty) return new("design", what, false, design.Unmet[0].Reason, "a design", Cure: Reinstall);
        var ledger = design.Sites[0].Energy.Simulated.Ledger;
        var open = Math.Abs(ledger.InWh - ledger.LampWh - ledger.OwnUseWh - ledger.LossesWh - ledger.DumpedWh - ledger.StoreChangeWh) / ledger.InWh;
        return new("design", what, open <= 1e-9 && design.Sites[0].Checks.All(c => c.Complies), open.ToString("0.0E+0", CultureInfo.InvariantCulture), "at most 1E-9 of the energy in, every check met", open, "conservation of energy", Reinstall);
    }

    /// <summary>Number of notes in a language of its own; none where English stands in.</summary>
    private static int NotesIn(string language) => NoteLibrary.Load(language) is { Value: { } library, Diagnostics.IsEmpty: true } ? library.Rules.Length : 0;

    private static Proof Counted(string part, string what, Func<int> count, string unit)
    {
        try
        {
            var found = count();
            return new(part, what, found > 0, Number(found, unit), "readable", Cure: Reinstall);
        }
        catch (InvalidOperationException e)
        {
            return new(part, what, false, e.Message, "readable", Cure: Reinstall);
        }
    }

    private static int Odd(IEnumerable<Diagnostic> diagnostics) => diagnostics.Count(d => d.Code == "TK613");

    private static string Number(int count, string unit) => string.Create(CultureInfo.InvariantCulture, $"{count} {unit}");

    private static string Short(string digest) => "SHA-256 " + digest[..12] + "...";
}

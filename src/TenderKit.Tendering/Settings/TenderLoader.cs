using System.Collections.Immutable;
using System.Security.Cryptography;
using TenderKit.Catalog;
using TenderKit.Intake.Climate;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Photometry;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Regions;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Settings;

/// <summary>A tender with every file it names, read and understood.</summary>
/// <param name="Inputs">Ready for the design; null when something without which nothing can run is missing or wrong.</param>
/// <param name="SiteList">What was understood of the site list; null when it could not be read.</param>
/// <param name="Diagnostics">Every problem found.</param>
public sealed record LoadedTender(DesignInputs? Inputs, SiteListReading? SiteList, ImmutableArray<Diagnostic> Diagnostics);

/// <summary>Reads a tender file and all files it names. Bad rows of the site list are left out; a bad tender, rules or catalogue file stops everything.</summary>
public static class TenderLoader
{
    /// <param name="path">Path of the tender file.</param>
    public static LoadedTender Load(string path)
    {
        var problems = new List<Diagnostic>();
        var digests = new List<InputDigest>();
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        if (TextOf(path, Path.GetFileName(path), problems, digests) is not { } text || TenderFile.Read(text, Path.GetFileName(path), folder, problems) is not { } content)
            return new LoadedTender(null, null, [.. problems]);

        var rules = RulesOf(content, problems, digests);
        var catalog = CatalogOf(content.Tender, problems);
        var limits = LimitsOf(rules);
        problems.AddRange(SubmissionSection.Examine(content.Tender.Submission, content.Tender.Head));
        var canRun = !problems.Exists(p => p.Severity == Severity.Error);
        var (stations, region) = (ReferenceStations.Load(), content.Tender.Region);
        var list = region is null ? SitesOf(content, problems, digests) : null;
        if (list is not null) problems.AddRange(content.Tender.Stated?.OfList(list.Sites, list.Rows.Length, new Place(content.Tender.SitesFile)) ?? []);
        var climates = new ClimateLoader(content.Tender, limits, problems, digests);
        var sites = climates.Load(region is not null ? RegionSites.Of(region, content.Defaults, stations) : list is null ? [] : WithHorizons(list.Sites, content.Tender, problems, digests));
        canRun &= content.Tender.Climates.NameOf(null) is not { } standard || climates.Readings.ContainsKey(standard);
        var form = FormOf(content.Tender, problems, digests);
        var clauses = ClausesOf(content.Tender, problems, digests);
        if (!canRun || (list is null && region is null) || rules is null || catalog is null) return new LoadedTender(null, list, [.. problems]);

        var light = LightOf(catalog, problems);
        var offered = catalog.Parts with
        {
            Luminaires = [.. catalog.Parts.Luminaires.Where(l => light.ContainsKey(l.PhotometricFile))],
            IntegratedUnits = [.. catalog.Parts.IntegratedUnits.Where(u => light.ContainsKey(u.PhotometricFile))],
        };
        var inputs = new DesignInputs(
            content.Tender, rules, sites, offered, catalog.Digest, light, climates.Readings, stations, [.. digests])
        {
            Form = form,
            Clauses = clauses,
        };
        return new LoadedTender(inputs, list, [.. problems]);
    }

    private static string? TextOf(string path, string name, List<Diagnostic> problems, List<InputDigest> digests)
    {
        if (!File.Exists(path))
        {
            problems.Add(Diagnostic.Error("TK101", "the file does not exist; check the name and the folder", new Place(name)));
            return null;
        }

        var bytes = File.ReadAllBytes(path);
        digests.Add(new InputDigest(name, Convert.ToHexStringLower(SHA256.HashData(bytes))));
        using var reader = new StreamReader(new MemoryStream(bytes));
        return reader.ReadToEnd();
    }

    private static RuleSet? RulesOf(TenderFileContent content, List<Diagnostic> problems, List<InputDigest> digests)
    {
        var file = content.Tender.RulesFile;
        return TextOf(Path.Combine(content.Tender.Folder, file), Path.GetFileName(file), problems, digests) is { } text
            ? RulesFile.Read(text, Path.GetFileName(file), content.RuleOverrides, problems)
            : null;
    }

    private static CatalogSource? CatalogOf(Tender tender, List<Diagnostic> problems)
    {
        var opened = Catalogs.Open(Path.GetFullPath(Path.Combine(tender.Folder, tender.CatalogPath)));
        problems.AddRange(opened.Diagnostics);
        return opened.Value;
    }

    /// <summary>Limits of the climate readers from the design rules; a rules file that lacks them is refused anyway.</summary>
    private static ClimateLimits LimitsOf(RuleSet? rules)
    {
        var usual = new ClimateLimits();
        return usual with
        {
            MissingDaysAllowed = (int)(rules?.Find("climate.missing_days") ?? usual.MissingDaysAllowed),
            TypicalYearMarginK = rules?.Find("climate.typical_margin") ?? usual.TypicalYearMarginK,
        };
    }

    /// <summary>The employer's price form; a form that cannot be read is an error, and the bid goes on without it.</summary>
    private static Forms.PriceForm? FormOf(Tender tender, List<Diagnostic> problems, List<InputDigest> digests)
    {
        if (tender.PriceForm is not { } settings) return null;
        var path = Path.Combine(tender.Folder, settings.File);
        if (TablesOf(path, problems, digests) is not { } tables) return null;
        var list = settings.LinesFile is { } lines ? TablesOf(Path.Combine(tender.Folder, lines), problems, digests) : null;
        var read = Forms.PriceFormReader.Read(settings, File.ReadAllBytes(path), tables, list);
        problems.AddRange(read.Diagnostics);
        return read.Value;
    }

    /// <summary>The employer's clauses; a row that cannot be read is an error, and the bid goes on without it.</summary>
    private static Specification.Clauses ClausesOf(Tender tender, List<Diagnostic> problems, List<InputDigest> digests)
    {
        if (tender.SpecificationFile is not { } file || TablesOf(Path.Combine(tender.Folder, file), problems, digests) is not { } tables) return Specification.Clauses.None;
        var read = Specification.ClauseReader.Read(tables);
        problems.AddRange(read.Diagnostics);
        return read.Value ?? Specification.Clauses.None;
    }

    private static TableFile? TablesOf(string path, List<Diagnostic> problems, List<InputDigest> digests)
    {
        var read = TableReader.Read(path);
        problems.AddRange(read.Diagnostics);
        if (read.Value is { } tables) digests.Add(new InputDigest(tables.File, tables.Sha256));
        return read.Value;
    }

    private static SiteListReading? SitesOf(TenderFileContent content, List<Diagnostic> problems, List<InputDigest> digests)
    {
        var path = Path.Combine(content.Tender.Folder, content.Tender.SitesFile);
        var saved = SavedOf(content.Tender.Folder, problems, digests);
        var list = MapReader.IsMap(path)
            ? ListOf(MapReader.Read(path), m => (m.File, m.Sha256), m => DrawnSites.Read(m, content.Defaults, TenderClasses.Find, TenderClasses.Names, saved), problems, digests)
            : ListOf(TableReader.Read(path), t => (t.File, t.Sha256), t => SiteListReader.Read(t, content.Defaults, TenderClasses.Find, TenderClasses.Names, saved), problems, digests);
        if (list is null) return null;
        ReportLots(list.Sites, content.Defaults.LotOfSite, problems);
        return list;
    }

    private static SiteListReading? ListOf<T>(
        Outcome<T> file, Func<T, (string File, string Sha256)> digest, Func<T, SiteListReading> read, List<Diagnostic> problems, List<InputDigest> digests)
        where T : class
    {
        problems.AddRange(file.Diagnostics);
        if (file.Value is not { } value) return null;
        digests.Add(new InputDigest(digest(value).File, digest(value).Sha256));
        var list = read(value);
        problems.AddRange(list.Diagnostics);
        return list;
    }

    /// <summary>The meanings of columns saved beside the tender file; none when there are none.</summary>
    private static SavedColumns SavedOf(string folder, List<Diagnostic> problems, List<InputDigest> digests) =>
        File.Exists(Path.Combine(folder, SavedColumns.FileName)) && TextOf(Path.Combine(folder, SavedColumns.FileName), SavedColumns.FileName, problems, digests) is { } text
            ? SavedColumns.Read(text, SavedColumns.FileName, problems)
            : SavedColumns.None;

    /// <summary>The sites with the horizons of the tender's file; none where it cannot be read, for then nobody knows which sites stand in shade.</summary>
    private static ImmutableArray<Site> WithHorizons(ImmutableArray<Site> sites, Tender tender, List<Diagnostic> problems, List<InputDigest> digests)
    {
        if (tender.HorizonsFile is not { } file) return sites;
        var read = TableReader.Read(Path.Combine(tender.Folder, file));
        problems.AddRange(read.Diagnostics);
        if (read.Value is not { } tables) return [];
        digests.Add(new InputDigest(tables.File, tables.Sha256));
        return HorizonFile.Apply(tables.Tables[0], sites, problems);
    }

    /// <summary>Says which sites a lot names that are not in the list, and which sites stand in no lot although others do.</summary>
    private static void ReportLots(ImmutableArray<Site> sites, ImmutableSortedDictionary<string, string> lotOfSite, List<Diagnostic> problems)
    {
        var known = sites.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var lot in lotOfSite.Where(p => !known.Contains(p.Key)).GroupBy(p => p.Value, p => p.Key, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
            problems.Add(Diagnostic.Warning("TK195", $"lot {lot.Key} names {string.Join(", ", lot)}, not in the site list or in a row that could not be used; correct the lot or the list"));
        if (sites.All(s => s.Lot.Length == 0)) return;
        foreach (var site in sites.Where(s => s.Lot.Length == 0))
            problems.Add(Diagnostic.Warning("TK196", "stands in no lot, though others do; it is billed apart: name it under 'lots' or in the Lot column", new Place(Site: site.Id, Row: site.Row)));
    }

    private static ImmutableSortedDictionary<string, LightDistribution> LightOf(CatalogSource catalog, List<Diagnostic> problems)
    {
        var found = ImmutableSortedDictionary.CreateBuilder<string, LightDistribution>(StringComparer.Ordinal);
        foreach (var file in catalog.Parts.Luminaires.Select(l => l.PhotometricFile).Concat(catalog.Parts.IntegratedUnits.Select(u => u.PhotometricFile)).Distinct())
        {
            if (!catalog.Photometry.TryGetValue(file, out var bytes)) continue;
            var read = PhotometryReader.Read(file, bytes);
            problems.AddRange(read.Diagnostics.Where(d => d.Severity != Severity.Note).Select(d => d with { Severity = Severity.Warning }));
            if (read.Value is { } value) found[file] = value.Distribution;
        }

        return found.ToImmutable();
    }
}

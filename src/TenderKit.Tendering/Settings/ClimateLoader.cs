using System.Collections.Immutable;
using System.Security.Cryptography;
using TenderKit.Intake.Climate;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Settings;

/// <summary>Reads every climate that a tender and its sites name: each once, files and typed values alike.</summary>
internal sealed class ClimateLoader(Tender tender, ClimateLimits limits, List<Diagnostic> problems, List<InputDigest> digests)
{
    private readonly ImmutableSortedDictionary<string, ClimateReading>.Builder readings = ImmutableSortedDictionary.CreateBuilder<string, ClimateReading>(StringComparer.OrdinalIgnoreCase);

    /// <summary>Climates read so far, by name or file.</summary>
    public ImmutableSortedDictionary<string, ClimateReading> Readings => readings.ToImmutable();

    /// <summary>Reads the tender's own climate and those of the site rows; a site whose climate cannot be read is left out with an error.</summary>
    public ImmutableArray<Site> Load(ImmutableArray<Site> sites)
    {
        var names = sites.Select(s => tender.Climates.NameOf(s.ClimateFile)).Append(tender.Climates.NameOf(null)).OfType<string>()
            .Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal);
        foreach (var name in names) Read(name, sites.FirstOrDefault(s => name.Equals(tender.Climates.NameOf(s.ClimateFile), StringComparison.OrdinalIgnoreCase)) ?? sites.FirstOrDefault());
        foreach (var site in sites.Where(s => !Has(s)))
            problems.Add(Diagnostic.Error("TK321", $"its climate '{tender.Climates.NameOf(site.ClimateFile)}' could not be read, so the site is left out{Known()}", new Place(Site: site.Id, Row: site.Row)));
        return [.. sites.Where(Has)];
    }

    private bool Has(Site site) => tender.Climates.NameOf(site.ClimateFile) is not { } name || readings.ContainsKey(name);

    private string Known() => tender.Climates.Named.IsEmpty ? "" : "; the tender names " + string.Join(", ", tender.Climates.Named.Keys);

    /// <param name="user">First site that uses it, else the first of all: missing temperatures are taken for its place.</param>
    private void Read(string name, Site? user)
    {
        (double, double)? airPlace = user is null ? null : (user.LatitudeDegrees, user.LongitudeDegrees);
        if (tender.Climates.Named.GetValueOrDefault(name) is not { } entry) ReadFile(name, name, airPlace);
        else if (entry.File is { } file) ReadFile(name, file, airPlace);
        else if (entry.Values is { } values)
        {
            var outcome = MonthlyClimateFile.Read(values, airPlace: airPlace);
            problems.AddRange(outcome.Diagnostics.Select(d => d with { Message = $"climate '{name}': {d.Message}", Place = new Place(values.File, Row: entry.Line) }));
            if (outcome.Value is { } monthly) readings[name] = new ClimateReading(monthly);
        }
    }

    private void ReadFile(string name, string file, (double, double)? airPlace)
    {
        var path = Path.Combine(tender.Folder, file);
        var shown = Path.GetFileName(file);
        if (!File.Exists(path))
        {
            problems.Add(Diagnostic.Error("TK101", "the file does not exist; check the name and the folder" + Known(), new Place(shown)));
            return;
        }

        var bytes = File.ReadAllBytes(path);
        var digest = new InputDigest(shown, Convert.ToHexStringLower(SHA256.HashData(bytes)));
        if (!digests.Contains(digest)) digests.Add(digest);
        var climate = ClimateFile.Read(shown, bytes, null, null, limits, airPlace);
        problems.AddRange(climate.Diagnostics);
        if (climate.Value is { } found) readings[name] = found;
    }
}

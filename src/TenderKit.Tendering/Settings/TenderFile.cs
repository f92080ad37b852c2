using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Words;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Settings;

/// <summary>A tender file with the defaults for its sites and the rows it changes in the design rules.</summary>
public sealed record TenderFileContent(Tender Tender, SiteDefaults Defaults, YamlSection? RuleOverrides);

/// <summary>Reads the tender file.</summary>
public static class TenderFile
{
    /// <summary>Freight and duty may pass the supply price itself where the place is remote or the tariff steep; other shares may not.</summary>
    private const decimal GreatestLandedShare = 3m;

    private static readonly string[] ArrangementWords = ["single-sided", "staggered", "opposite"];

    /// <summary>The tender; null when the text is not YAML. Every other problem is collected and the reading goes on with a safe value.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">File name for messages.</param>
    /// <param name="folder">Folder the other files are named from.</param>
    /// <param name="problems">Collects what is wrong.</param>
    public static TenderFileContent? Read(string text, string file, string folder, List<Diagnostic> problems)
    {
        if (YamlFile.Read(text, file, problems) is not { } top) return null;
        var schedules = ScheduleReader.Read(top.Section("schedules"));
        var climates = ClimateSection.Read(top.Section("climate"));
        var region = Regions.RegionSection.Read(top.Section("region"));
        if (region is not null && top.Scalar("sites") is { } both) top.AddError("TK116", "'sites' and 'region' stand side by side; keep the sites where they are known, the region where they are not", both.Line);
        var tender = new Tender(
            HeadOf(SectionOf(top, "tender")),
            folder,
            region is null ? top.RequiredText("sites") : "",
            top.RequiredText("catalog"),
            top.RequiredText("rules"),
            climates.Default,
            schedules,
            ReliabilityOf(SectionOf(top, "reliability")),
            PricesOf(SectionOf(top, "prices")),
            KitsOf(top.Section("kits")))
        {
            Climates = climates,
            HorizonsFile = top.Text("horizons"),
            PriceForm = Forms.PriceFormSection.Read(top.Section("price_form")),
            Submission = SubmissionSection.Read(top.Section("submission"), folder),
            Quotes = Quotes.QuoteSection.Read(top.Section("quotes")),
            SpecificationFile = top.Text("specification"),
            Region = region,
            PartsStated = PartsStated.PartsSection.Read(top, "parts_stated"),
            Stated = StatedTotals.Read(top.Section("stated")),
            Choice = ChoiceSection.Read(top.Section("choice")),
            Programme = Programme.ProgrammeSection.Read(top.Section("programme")),
            Village = Upkeep.VillageSection.Read(top.Section("village")),
        };
        var defaults = DefaultsOf(SectionOf(top, "requirement"), schedules, LotsOf(top.Section("lots")));
        if (region is not null && defaults.Target is null) top.AddError("TK113", "'requirement' states no class and no lux; a region needs one, since no site row can state it", top.Line);
        var overrides = top.Section("rules_changed");
        top.ReportUnknownKeys();
        return new TenderFileContent(tender, defaults, overrides);
    }

    /// <summary>A required section; a missing one is an error and reads as empty.</summary>
    private static YamlSection SectionOf(YamlSection top, string key)
    {
        if (top.Section(key) is { } section) return section;
        top.AddError("TK113", $"the section '{key}' is missing; add it", top.Line);
        return YamlFile.Read("_: _", top.File, [])!;
    }

    private static TenderHead HeadOf(YamlSection head)
    {
        var read = new TenderHead(
            head.RequiredText("reference"),
            head.RequiredText("title"),
            head.RequiredText("employer"),
            head.RequiredText("bidder"),
            DateOf(head, "issue_date"),
            head.Whole("validity_days", 1, 3650, 90),
            CurrencyOf(head, "currency"),
            head.Whole("delivery_days", 1, 3650, 180),
            [.. head.Sections("exchange").Select(ExchangeOf)])
        { Language = LanguageOf(head) };
        head.ReportUnknownKeys();
        return read;
    }

    private static string LanguageOf(YamlSection head)
    {
        if (head.Scalar("language") is not { } scalar) return TenderLanguages.English;
        var written = scalar.Text.ToLowerInvariant();
        if (TenderLanguages.All.Contains(written)) return written;
        head.AddError("TK117", TenderLanguages.Unknown(scalar.Text), scalar.Line);
        return TenderLanguages.English;
    }

    private static DateOnly DateOf(YamlSection head, string key)
    {
        if (DateOnly.TryParseExact(head.RequiredText(key), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        head.AddError("TK114", $"'{key}' must be a date written year-month-day, such as 2027-02-15", head.Scalar(key)?.Line ?? head.Line);
        return new DateOnly(2000, 1, 1);
    }

    private static string CurrencyOf(YamlSection section, string key)
    {
        var code = section.RequiredText(key).ToUpperInvariant();
        if (code.Length != 3 || !code.All(char.IsAsciiLetter))
            section.AddError("TK114", $"'{key}' must be a three-letter currency code such as USD", section.Scalar(key)?.Line ?? section.Line);
        return code;
    }

    private static ExchangeRate ExchangeOf(YamlSection row)
    {
        var rate = new ExchangeRate(CurrencyOf(row, "currency"), (decimal)row.RequiredNumber("rate", QuantityKind.Number));
        if (rate.Rate <= 0) row.AddError("TK114", "'rate' must be greater than zero", row.Line);
        row.ReportUnknownKeys();
        return rate;
    }

    private static ReliabilityTarget ReliabilityOf(YamlSection section)
    {
        var read = new ReliabilityTarget(section.RequiredNumber("dark_nights_per_year", QuantityKind.Number), section.RequiredNumber("autonomy_nights", QuantityKind.Number));
        if (read.AutonomyNights is < 0.5 or > 30) section.AddError("TK116", $"autonomy_nights must lie between 0.5 and 30, not {read.AutonomyNights.ToString(CultureInfo.InvariantCulture)}", section.Line);
        if (read.DarkNightsPerYear is not (> 0 and <= 365)) section.AddError("TK116", $"dark_nights_per_year must be more than 0 and no more than 365, not {read.DarkNightsPerYear.ToString(CultureInfo.InvariantCulture)}; no number of simulated years can show that none is ever dark", section.Line);
        section.ReportUnknownKeys();
        return read;
    }

    private static int? KitsOf(YamlSection? section)
    {
        if (section is null) return null;
        var most = (int)section.RequiredNumber("at_most", QuantityKind.Count);
        if (most < 1) section.AddError("TK116", "at_most must be 1 or more", section.Line);
        section.ReportUnknownKeys();
        return most;
    }

    private static PriceBasis PricesOf(YamlSection section)
    {
        var spares = section.Section("spares");
        var families = new[] { "luminaires", "modules", "batteries", "controllers", "integrated_units", "protection" };
        var read = new PriceBasis(
            section.Share("freight", GreatestLandedShare),
            section.Share("duty", GreatestLandedShare),
            section.Share("overhead"),
            section.Share("profit"),
            section.Share("finance"),
            section.Share("contingency"),
            section.Share("tax"),
            families.Where(f => spares?.Has(f) == true).ToImmutableSortedDictionary(f => f.Replace('_', ' '), f => spares!.Share(f), StringComparer.Ordinal),
            section.Share("cable_waste"),
            section.Whole("maintenance_years", 0, 50, 0),
            section.Whole("rate_decimals", 0, 6, 2))
        {
            ProvisionalSums = [.. section.Sections("provisional_sums").Select(ProvisionalSumOf)],
            Daywork = DayworkOf(section.Section("daywork")),
            Buying = BuyingOf(section.Section("buying")),
        };
        spares?.ReportUnknownKeys();
        section.ReportUnknownKeys();
        return read;
    }

    private static ProvisionalSum ProvisionalSumOf(YamlSection section)
    {
        var read = new ProvisionalSum(section.RequiredText("text"), (decimal)section.RequiredNumber("amount", QuantityKind.Number), section.Text("lot") ?? "");
        if (read.Amount < 0) section.AddError("TK116", "'amount' of a provisional sum must be zero or more", section.Line);
        section.ReportUnknownKeys();
        return read;
    }

    private static Buying BuyingOf(YamlSection? section)
    {
        if (section is null) return new Buying(true, true);
        var read = new Buying(IsYes(section, "price_breaks"), IsYes(section, "excess_in_rates"));
        section.ReportUnknownKeys();
        return read;
    }

    /// <summary>Yes where nothing is said.</summary>
    private static bool IsYes(YamlSection section, string key)
    {
        if (section.Scalar(key) is not { } scalar || scalar.Text.ToUpperInvariant() is "YES" or "TRUE") return true;
        if (scalar.Text.ToUpperInvariant() is not ("NO" or "FALSE")) section.AddError("TK114", $"'{scalar.Path}' must be yes or no", scalar.Line);
        return false;
    }

    private static Daywork DayworkOf(YamlSection? section)
    {
        if (section is null) return new Daywork(0, 0, 0);
        decimal Of(string key) => section.Whole(key, 0, 100_000, 0);
        var read = new Daywork(Of("labour_days"), Of("skilled_days"), Of("plant_h"));
        section.ReportUnknownKeys();
        return read;
    }

    private static ImmutableSortedDictionary<string, string> LotsOf(YamlSection? lots) =>
        lots is null
            ? ImmutableSortedDictionary<string, string>.Empty
            : lots.Keys.SelectMany(lot => lots.Scalars(lot).Select(site => (lot, site.Text)))
                .GroupBy(p => p.Text, StringComparer.Ordinal)
                .ToImmutableSortedDictionary(g => g.Key, g => g.First().lot, StringComparer.Ordinal);

    private static SiteDefaults DefaultsOf(
        YamlSection section,
        ImmutableSortedDictionary<string, Sizing.Energy.LightingSchedule> schedules,
        ImmutableSortedDictionary<string, string> lots)
    {
        var soilText = section.Scalar("soil");
        var soil = SoilClasses.Find(soilText?.Text ?? "");
        if (soil is null) section.AddError("TK117", $"soil '{soilText!.Text}' is not known; use dense, medium or soft", soilText.Line);
        var scheduleName = section.Text("schedule") ?? "dusk-to-dawn";
        if (!schedules.ContainsKey(scheduleName))
        {
            section.AddError("TK117", UnknownWord("schedule", scheduleName, schedules.Keys), section.Scalar("schedule")!.Line);
            scheduleName = "dusk-to-dawn";
        }

        var read = new SiteDefaults(
            TargetOf(section),
            scheduleName,
            schedules,
            HeightsOf(section),
            section.Number("width_m", QuantityKind.Length, 5),
            ArrangementOf(section),
            section.Number("shading", QuantityKind.Fraction, 0),
            section.RequiredNumber("wind_m_per_s", QuantityKind.Speed),
            TerrainOf(section),
            GroundReader.Soil(section, soil ?? SoilClasses.Soft),
            soilText is not null || (section.Has("soil_kpa_per_m") && section.Has("soil_bearing_kpa")),
            lots)
        { Ground = GroundReader.Read(section) };
        section.ReportUnknownKeys();
        return read;
    }

    private static string UnknownWord(string what, string written, IEnumerable<string> known)
    {
        var nearest = Nearest.Of(written, known);
        return $"{what} '{written}' is not known" + (nearest is null ? "" : $"; did you mean '{nearest}'?") + $" Known: {string.Join(", ", known)}";
    }

    private static LightTarget? TargetOf(YamlSection section)
    {
        if (section.Section("lux") is { } lux)
        {
            var target = new LightTarget(
                "lux asked for",
                lux.RequiredNumber("average", QuantityKind.Illuminance),
                lux.Has("minimum") ? lux.Number("minimum", QuantityKind.Illuminance, 0) : null,
                lux.Has("uniformity") ? lux.Number("uniformity", QuantityKind.Fraction, 0) : null,
                null,
                "tender, requirement lux");
            lux.ReportUnknownKeys();
            return target;
        }

        if (section.Scalar("class") is not { } scalar) return null;
        if (TenderClasses.Find(scalar.Text) is { } found) return found;
        section.AddError("TK117", UnknownWord("class", scalar.Text, TenderClasses.Names), scalar.Line);
        return null;
    }

    private static ImmutableArray<double> HeightsOf(YamlSection section)
    {
        if (section.Scalar("mounting_height_m") is not { } scalar)
        {
            section.RequiredText("mounting_height_m");
            return [6];
        }

        var (low, high) = UserNumber.ReadRange(scalar.Text, QuantityKind.Length);
        if (low.Value is not { } lowM || high.Value is not { } highM)
        {
            section.AddError("TK114", $"'{scalar.Path}' is '{scalar.Text}', which {low.Problem ?? high.Problem}", scalar.Line);
            return [6];
        }

        var heights = new[] { lowM, highM }.Distinct().Order().ToImmutableArray();
        if (heights[0] is >= 2 && heights[^1] <= 20) return heights;
        section.AddError("TK116", "mounting_height_m must lie between 2 and 20 m", scalar.Line);
        return [6];
    }

    private static Arrangement ArrangementOf(YamlSection section)
    {
        if (section.Scalar("arrangement") is not { } scalar) return Arrangement.SingleSided;
        var index = Array.IndexOf(ArrangementWords, scalar.Text.ToLowerInvariant());
        if (index >= 0) return (Arrangement)index;
        section.AddError("TK117", UnknownWord("arrangement", scalar.Text, ArrangementWords), scalar.Line);
        return Arrangement.SingleSided;
    }

    private static Terrain TerrainOf(YamlSection section)
    {
        var words = new[] { "0", "I", "II", "III", "IV" };
        if (section.Scalar("terrain") is not { } scalar) return Terrain.II;
        var index = Array.IndexOf(words, scalar.Text.ToUpperInvariant());
        if (index >= 0) return (Terrain)index;
        section.AddError("TK117", UnknownWord("terrain", scalar.Text, words), scalar.Line);
        return Terrain.II;
    }
}

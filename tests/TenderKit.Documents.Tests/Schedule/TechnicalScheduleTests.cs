using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Documents.Tests.Light;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Tests.Samples;
using Xunit;
using Xunit.Abstractions;

namespace TenderKit.Documents.Tests.Schedule;

[Collection("world")]
public class TechnicalScheduleTests(ITestOutputHelper output)
{
    [Fact]
    public void The_text_of_the_small_tender_is_as_approved() => Approved.Same("small", TextView.Of(TechnicalSchedule.Document(HandMadeDesign.Small())));

    [SkippableFact]
    public void The_pages_say_who_what_and_out_of_which_inputs()
    {
        var pages = PdfReader.Pages(TechnicalSchedule.Make(HandMadeDesign.Small()));

        Assert.All(new[] { "Solar street lighting of the market ward", "SL/2027/014", "Municipality of Sample Town", "Sample Bidder", "15 March 2027", "sites.xlsx", "bbbbbbbbbbbb", "cccccccccccc", "estimate within 300 km: 3 sites" }, t => Assert.Contains(t, pages[0], StringComparison.Ordinal));
        Assert.DoesNotContain("bbbbbbbbbbbbb", pages[0], StringComparison.Ordinal);
    }

    [SkippableFact]
    public void The_summary_holds_five_figures_and_at_most_200_words()
    {
        var design = HandMadeDesign.Small();
        var page = PdfReader.Pages(TechnicalSchedule.Make(design))[2];

        var autonomy = design.Sites.Min(s => s.Energy.AutonomyNights).ToString("N1", CultureInfo.InvariantCulture);
        Assert.Matches($@"\b3\s+19\s+2\s+0\.62\s+{autonomy}\b", page);
        Assert.Contains("S-04 Ferry landing", page, StringComparison.Ordinal);
        var words = string.Join(' ', SummaryPage.Texts(design)).Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.InRange(words, 40, 200);
        Assert.InRange(string.Join(' ', SummaryPage.Texts(Troubled())).Split(' ', StringSplitOptions.RemoveEmptyEntries).Length, 40, 200);
    }

    [SkippableFact]
    public void Each_page_says_which_page_of_how_many_it_is()
    {
        var pages = PdfReader.Pages(TechnicalSchedule.Make(HandMadeDesign.Many(60)));

        for (var i = 0; i < pages.Count; i++) Assert.Contains($"Page {i + 1} of {pages.Count}", pages[i], StringComparison.Ordinal);
    }

    [SkippableFact]
    public void The_contents_page_leads_to_the_pages_where_the_headings_stand()
    {
        var pages = PdfReader.Pages(TechnicalSchedule.Make(HandMadeDesign.Small()));
        var entries = System.Text.RegularExpressions.Regex.Matches(pages[1], @"^\s*(\d+(?:\.\d+)?)\s+(.+?)\s+(\d+)\s*$", System.Text.RegularExpressions.RegexOptions.Multiline);

        Assert.True(entries.Count >= 12, pages[1]);
        foreach (System.Text.RegularExpressions.Match e in entries)
        {
            Assert.Matches($@"(?m)^\s*{System.Text.RegularExpressions.Regex.Escape(e.Groups[1].Value)}\s+{System.Text.RegularExpressions.Regex.Escape(e.Groups[2].Value)}", pages[int.Parse(e.Groups[3].Value, CultureInfo.InvariantCulture) - 1]);
        }
    }

    [Fact]
    public void Every_check_of_every_kit_stands_in_its_compliance_table_with_the_site_that_governs()
    {
        var design = HandMadeDesign.Small();
        var lines = Lines(design);

        foreach (var (kit, check, site) in design.Kits.SelectMany(k => k.Checks.Zip(k.CheckSites, (c, s) => (k, c, s))))
        {
            Assert.Contains(lines, l => l.Contains(Required(check), StringComparison.Ordinal) && l.Contains($"| {check.OfferedText} | {check.MarginText} |", StringComparison.Ordinal) && l.Contains("| yes |", StringComparison.Ordinal));
            Assert.Contains(lines, l => l.Contains($"Compliance of kit {kit.Id} at site {site}", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Where_different_sites_govern_each_row_names_its_own()
    {
        var small = HandMadeDesign.Small();
        var mixed = small.Kits[0] with { CheckSites = small.Kits[0].CheckSites.SetItem(3, "S-03") };
        var lines = Lines(small with { Kits = small.Kits.SetItem(0, mixed) });

        Assert.Equal(1, lines.Count(l => l.EndsWith("| tender, reliability | S-03", StringComparison.Ordinal)));
        Assert.Equal(1, lines.Count(l => l.EndsWith("| tender, reliability | S-01", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_basis_names_a_rule_by_its_number_in_the_table_of_rules()
    {
        var design = HandMadeDesign.Small();
        var numbers = new RuleNumbers(design);
        var (first, last) = (numbers.Shown[0].Id, numbers.Shown[^1].Id);

        Assert.Equal("rule 1; IEC 60529", numbers.InWords($"design rule {first}; IEC 60529"));
        Assert.Equal($"wind; rules 1, {numbers.Shown.Length}", numbers.InWords($"wind; design rules {first}, {last}"));
        Assert.Equal("design rule", numbers.InWords("design rule no.such_rule"));
        Assert.Contains(Lines(design), l => l.StartsWith($"{numbers.Shown.Length} | {last} | ", StringComparison.Ordinal));
    }

    [Fact]
    public void Sites_not_met_have_a_chapter_only_when_there_are_some()
    {
        var small = HandMadeDesign.Small();

        Assert.DoesNotContain("Every site asked for is met.", Lines(small));
        var met = Lines(small with { Unmet = [] });
        Assert.Contains("Every site asked for is met.", met);
        Assert.DoesNotContain(met, l => l.EndsWith("| Sites not met", StringComparison.Ordinal));
    }

    [Fact]
    public void A_kit_takes_at_most_three_pages_and_its_compliance_table_one()
    {
        var small = HandMadeDesign.Small();
        var checks = Enumerable.Range(0, 48).Select(i => small.Kits[0].Checks[i % small.Kits[0].Checks.Length]).ToImmutableArray();
        var many = small with { Kits = [.. small.Kits.Select(k => k with { Checks = checks, CheckSites = [.. checks.Select(_ => k.SiteIds[0])] })] };
        var flow = PdfPrinter.Lay(TechnicalSchedule.Document(many).Blocks);
        int PageOf(string text) => flow.Headings.First(h => h.Text == text).Page;

        Assert.InRange(PageOf("Kit K2") - PageOf("Kit K1"), 1, 3);
        Assert.InRange(PageOf("Sites") - PageOf("Kit K2"), 1, 3);
        Assert.DoesNotContain(flow.Sheets.SelectMany(s => s.Lines), l => l.Text.Contains("Compliance", StringComparison.Ordinal) && l.Text.EndsWith("(continued)", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_luminaire_whose_light_is_known_is_described_once_out_of_its_file()
    {
        var small = HandMadeDesign.Small();
        var files = small.Kits.Select(k => k.Parts.Luminaire.PhotometricFile).Distinct().ToImmutableArray();
        var lit = small with { Light = files.Select((f, i) => (f, InventedLight.Road(1 + i))).ToImmutableSortedDictionary(p => p.f, p => p.Item2) };
        var text = TextView.Of(TechnicalSchedule.Document(lit));

        foreach (var part in small.Kits.Select(k => k.Parts.Luminaire).DistinctBy(l => l.Code))
        {
            var analysis = PhotometricAnalysis.Of(lit.Light[part.PhotometricFile]);
            Assert.Single(text.Split('\n'), l => l.Contains("flux by zone", StringComparison.Ordinal) && l.Contains(part.Code, StringComparison.Ordinal));
            Assert.Contains(analysis.FluxLm.ToString("N0", CultureInfo.InvariantCulture) + " lm", text, StringComparison.Ordinal);
            Assert.Contains(analysis.PeakIntensityCd.ToString("N0", CultureInfo.InvariantCulture) + " cd at C", text, StringComparison.Ordinal);
            Assert.Contains(analysis.Zones.ForwardHighLm.ToString("N0", CultureInfo.InvariantCulture) + " (", text, StringComparison.Ordinal);
        }

        Assert.Contains("are from memory, to be verified", text.Replace('\n', ' '), StringComparison.Ordinal);
        Assert.Contains("IES TM-15-11", text, StringComparison.Ordinal);
        Assert.Empty(MoneyWords.In(text));
        Assert.DoesNotContain("| Luminaires", TextView.Of(TechnicalSchedule.Document(small)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_luminaire_whose_file_holds_no_light_is_left_out()
    {
        var small = HandMadeDesign.Small();
        var dark = new LightDistribution([0, 360], [0, 90], [0, 0, 0, 0], null, null);
        var unlit = small with { Light = small.Light.Add(small.Kits[0].Parts.Luminaire.PhotometricFile, dark) };

        Assert.DoesNotContain("| Luminaires", TextView.Of(TechnicalSchedule.Document(unlit)), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_site_stands_in_both_tables_with_its_figures()
    {
        var design = HandMadeDesign.Small();
        var lines = Lines(design);

        foreach (var s in design.Sites)
        {
            var light = string.Create(CultureInfo.InvariantCulture, $"| {s.Poles}* | {s.Light.SpacingM:F1} | {s.Light.Layout?.MountingHeightM ?? s.Light.Yard!.MountingHeightM:F1} | {s.Light.Result.AverageLx:F2} | {s.Light.Result.MinimumLx:F2} |");
            Assert.Contains(lines, l => l.StartsWith($"{s.Site.Id} | {s.Site.Name} | ", StringComparison.Ordinal) && l.Contains(light, StringComparison.Ordinal) && l.EndsWith(s.KitId, StringComparison.Ordinal));
            Assert.Contains(lines, l => l.StartsWith($"{s.Site.Id} | {s.Site.Name} | {s.KitId} | ", StringComparison.Ordinal) && l.Contains("estimate", StringComparison.Ordinal));
        }
    }

    [SkippableFact]
    public void No_amount_of_money_stands_in_the_technical_envelope()
    {
        Assert.Empty(MoneyWords.In(string.Join('\n', PdfReader.Pages(TechnicalSchedule.Make(HandMadeDesign.Small())))));
        Assert.Empty(MoneyWords.In(string.Join('\n', PdfReader.Pages(TechnicalSchedule.Make(Troubled())))));
    }

    [Fact]
    public void A_warning_about_money_is_left_out_and_counted()
    {
        var text = string.Join('\n', Lines(Troubled()));

        Assert.Contains("1 further warning is commercial", text, StringComparison.Ordinal);
        Assert.Contains("1 rule is commercial", text, StringComparison.Ordinal);
        Assert.DoesNotContain("TK701", text, StringComparison.Ordinal);
        Assert.Contains("TK310", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_that_fails_and_a_rule_out_of_range_are_said_plainly()
    {
        var text = string.Join('\n', Lines(Troubled()));

        Assert.Contains("At 1 site a requirement is NOT met", text, StringComparison.Ordinal);
        Assert.Contains("| NO |", text, StringComparison.Ordinal);
        Assert.Contains("OUT OF RANGE", text, StringComparison.Ordinal);
        Assert.Contains("1 design rule lies outside the allowed range", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_bytes_come_out_under_every_culture_and_time_zone()
    {
        var first = TechnicalSchedule.Make(HandMadeDesign.Small());

        Assert.All(SameEverywhere.Run(() => TechnicalSchedule.Make(HandMadeDesign.Small())), bytes => Assert.Equal(first, bytes));
    }

    [Fact]
    public void A_tender_without_any_site_met_still_makes_a_document()
    {
        var small = HandMadeDesign.Small();
        var text = string.Join('\n', Lines(small with { Sites = [], Kits = [] }));

        Assert.Contains("No site could be met.", text, StringComparison.Ordinal);
        Assert.NotEmpty(TechnicalSchedule.Make(small with { Sites = [], Kits = [], Diagnostics = [], Inputs = [], Rules = [] }));
    }

    [Fact]
    public void A_name_the_typeface_cannot_write_is_said_so()
    {
        var small = HandMadeDesign.Small();
        var named = small with { Sites = small.Sites.SetItem(1, small.Sites[1] with { Site = small.Sites[1].Site with { Name = "\u5e02\u5834" } }) };

        Assert.Contains("The names of 1 site hold characters this typeface lacks", string.Join('\n', Lines(named)), StringComparison.Ordinal);
        Assert.DoesNotContain("typeface lacks", string.Join('\n', Lines(small)), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_kit_shows_its_curve_its_worst_days_and_its_recovery()
    {
        var lines = string.Join(' ', Lines(HandMadeDesign.Small()));
        foreach (var words in new[] { "the 30 days with the most light missed", "smallest battery, to 2 %", "full again within 9 days", "would just keep the dark nights allowed" })
            Assert.Contains(words, lines, StringComparison.Ordinal);
    }

    [Fact]
    public void Odd_results_are_drawn_without_stopping()
    {
        var small = HandMadeDesign.Small();
        var site = small.Sites[0];
        var narrow = site.Light with { Result = site.Light.Result with { Points = [.. site.Light.Result.Points.Select(p => p with { YM = p.YM / 5, IlluminanceLx = 3 })], MinimumLx = 3, MaximumLx = 3, AverageLx = 3 } };
        var still = site.Energy.Simulated with { WorstMonthStates = [], WorstSpell = TenderKit.Sizing.Energy.WorstSpell.None, MonthlySupplyWhPerDay = [.. Enumerable.Repeat(0.0, 12)], MonthlyDemandWhPerDay = [.. Enumerable.Repeat(0.0, 12)] };
        var odd = site with { Light = narrow, Energy = site.Energy with { Simulated = still, AutonomyNights = double.PositiveInfinity } };
        var bare = site with { Light = site.Light with { Layout = null, Result = site.Light.Result with { Points = [], PointsAlong = 0, PointsAcross = 0 } } };

        Assert.NotEmpty(TechnicalSchedule.Make(small with { Sites = small.Sites.SetItem(0, odd) }));
        var curve = small.Curves[0];
        foreach (var strange in new[] { curve with { AutonomyBatteryWh = double.PositiveInfinity, HandArrayWp = double.PositiveInfinity }, curve with { Points = [curve.Points[0], curve.Points[0] with { BatteryWh = 1e7 }] } })
            Assert.NotEmpty(TechnicalSchedule.Make(small with { Curves = [strange] }));
        Assert.DoesNotContain(Lines(small with { Curves = [] }), l => l.Contains("just keep the dark nights", StringComparison.Ordinal));
        Assert.Contains("cannot be drawn", string.Join('\n', Lines(small with { Sites = small.Sites.SetItem(0, bare) })), StringComparison.Ordinal);
        Assert.NotEmpty(TechnicalSchedule.Make(small with { Sites = small.Sites.SetItem(0, bare) }));
    }

    [Fact]
    public void Three_hundred_sites_are_written_in_seconds()
    {
        var design = HandMadeDesign.Many(300);
        var clock = Stopwatch.StartNew();
        var bytes = TechnicalSchedule.Make(design);

        var pages = PdfPrinter.Lay(TechnicalSchedule.Document(design).Blocks).Sheets.Count;
        output.WriteLine($"300 sites, 12 kits: {pages} pages, {bytes.Length / 1024} KiB in {clock.ElapsedMilliseconds} ms");
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 20);
        var lines = Lines(design);
        Assert.All(design.Sites, s => Assert.Equal(2, lines.Count(l => l.StartsWith($"{s.Site.Id} | {s.Site.Name}", StringComparison.Ordinal))));
    }

    /// <summary>The small tender with a failing check, a rule out of range, a warning about money and awkward names.</summary>
    private static TenderDesign Troubled()
    {
        var small = HandMadeDesign.Small();
        var failing = small.Kits[0].Checks[0] with { Offered = 4.2 };
        return small with
        {
            Sites = small.Sites.SetItem(0, small.Sites[0] with { Checks = small.Sites[0].Checks.SetItem(0, failing), Climate = small.Sites[0].Climate with { Monthly = small.Sites[0].Climate.Monthly with { Grade = ClimateGrade.MeansWithSource } } }),
            Kits = small.Kits.SetItem(0, small.Kits[0] with { Checks = small.Kits[0].Checks.SetItem(0, failing) }),
            Rules = small.Rules.Add(new DesignRule("array.tilt_least", 80, 0, 45, "degrees", "common practice, no source", "module tilt", true)).Add(new DesignRule("choice.present_cost_years", 10, 1, 30, "years", "common practice, no source", "cost over the years", false)),
            Diagnostics = small.Diagnostics.Add(Diagnostic.Warning("TK701", "unit price of BAT-L060 lapsed on 2027-01-31, 148.00 EUR; ask for a new quotation")),
            Unmet = [.. Enumerable.Range(10, 30).Select(n => new UnmetSite($"S-{n}", "Place d'été nº " + n, "no part fits within the price asked"))],
        };
    }

    private static string Required(Check check) => check.RequiredText.Replace("at least", "≥", StringComparison.Ordinal).Replace("at most", "≤", StringComparison.Ordinal);

    private static string[] Lines(TenderDesign design) => TextView.Of(TechnicalSchedule.Document(design)).Split('\n');
}

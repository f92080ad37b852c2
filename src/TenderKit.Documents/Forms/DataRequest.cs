using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Forms;

/// <summary>
/// What the bidder is to fetch for the sites whose climate is an estimate: for which coordinates, in which unit, where to put it, and what changes then.
/// One page, for the bidder alone. Same design, same bytes.
/// </summary>
public static class DataRequest
{
    private static readonly ImmutableArray<ClimateGrade> Obtainable =
        [ClimateGrade.MeasuredRecord, ClimateGrade.SatelliteSeries, ClimateGrade.TypicalYear, ClimateGrade.MeansWithSource];

    /// <summary>Whether any site rests on an estimate.</summary>
    public static bool IsNeeded(TenderDesign design) => Estimated(design).Any();

    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design));
    }

    internal static PaperDocument Document(TenderDesign design)
    {
        var head = design.Tender.Head;
        return new PaperDocument(
            $"{head.Reference} {head.Title}: climate data request", head.Bidder, "Climate data request", $"{head.Reference}  ·  Climate data request",
            head.IssueDate, [.. Blocks(design)])
        { Wording = Echoes.WordingOf(design) };
    }

    /// <summary>Sites near enough to one another to share one file: half the distance at which a file would warn of being of another place.</summary>
    internal static ImmutableArray<ImmutableArray<SiteDesign>> Places(TenderDesign design)
    {
        var places = new List<List<SiteDesign>>();
        var shareKm = design.Rule("climate.far_km") / 2;
        foreach (var site in Estimated(design))
        {
            var near = places.Find(p => Km(p[0], site) <= shareKm);
            if (near is null) places.Add([site]);
            else near.Add(site);
        }

        return [.. places.Select(p => p.ToImmutableArray())];
    }

    private static IEnumerable<SiteDesign> Estimated(TenderDesign design) => design.Sites.Where(s => ClimateGrades.IsEstimate(s.Climate.Monthly.Grade));

    private static double Km(SiteDesign a, SiteDesign b) =>
        GreatCircle.DistanceKm(a.Site.LatitudeDegrees, a.Site.LongitudeDegrees, b.Site.LatitudeDegrees, b.Site.LongitudeDegrees);

    private static IEnumerable<Block> Blocks(TenderDesign design)
    {
        var head = design.Tender.Head;
        var places = Places(design);
        yield return new Paragraph("Climate data request", TextStyle.BodyStrong);
        yield return new Paragraph($"{head.Reference}, {head.Title}, {Figures.Date(head.IssueDate)}", TextStyle.Section, AfterSteps: 2);
        yield return new Paragraph(
            $"The climate of {Figures.Count(Estimated(design).Count(), "site", "sites")} is an estimate from the built-in table of stations and is lowered for it. "
            + "Module and battery sizes there are provisional. Fetch the data below, put each file where it says, and run the bid again.");
        yield return Table(design, places);
        yield return new Paragraph("What to fetch", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
        yield return new ItemList(
        [
            "Best: the hours of at least ten whole years, global horizontal irradiation in Wh/m² and air temperature in °C (in files of the public NASA POWER service "
                + "ALLSKY_SFC_SW_DWN and T2M; csv or JSON, header kept). The energy is then also run on those years as they were.",
            "Enough: for each month the mean over at least ten years of the daily global horizontal irradiation in kWh/m² a day (not the total of the month), and of "
                + "the mean, highest and lowest air temperature of the day in °C; the lowest and highest temperature on record; who measured it, where and in which years.",
        ],
            Numbered: true);
        yield return new Paragraph("Where to put it", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
        yield return new Paragraph(
            "Beside the tender file, under the name in the table; the same name goes into the column 'Climate file' of the site list, in the rows of those sites. "
            + "A table of months is a text file of these lines, then one line a month:", TextStyle.Body, AfterSteps: 0);
        foreach (var line in new[] { "# source: name, station or grid cell, coordinates", "# kind: satellite   (or: measured record, typical year)", "# years: 2005-2020", "# record_low_c: 4", "# record_high_c: 41", "month,irradiation_kwh_m2_day,t_mean_c,t_max_c,t_min_c" })
            yield return new Paragraph(line, TextStyle.Small, IndentPt: 16, AfterSteps: 0);
        yield return new Gap(1);
        yield return new Paragraph("What changes", TextStyle.BodyStrong, AfterSteps: 0) { KeepWithNext = true };
        yield return Changes(design);
    }

    private static TableBlock Table(TenderDesign design, ImmutableArray<ImmutableArray<SiteDesign>> places) => new(
        "Places to fetch data for; sites near one another share a file",
        [
            new("Sites", Share: 1.6), new("Latitude", "degrees", 1, Side.End, 54), new("Longitude", "degrees", 1, Side.End, 58), new("Nearest station", "km", 1, Side.End, 66),
            new("Dullest month estimated", "kWh/m² a day", 1, Side.End, 96), new("Taken at", "fraction", 1, Side.End, 40), new("File name", FixedPt: 92),
        ],
        [.. places.Select((p, i) => Row.Of(
            Words.List(p.Select(s => s.Site.Id), 8), Figures.Signed(p[0].Site.LatitudeDegrees, 4), Figures.Signed(p[0].Site.LongitudeDegrees, 4),
            Figures.Number(p[0].Climate.Monthly.NearestStationKm ?? double.NaN, 0), Figures.Number(p[0].Climate.Monthly.IrradiationKWhPerM2.Min(), 2),
            Figures.Number(p.Min(s => s.Climate.CautiousFactor), 2), FormattableString.Invariant($"climate-{i + 1}.csv")))]);

    private static TableBlock Changes(TenderDesign design)
    {
        var now = Estimated(design).Select(s => s.Climate.CautiousFactor).Order().ToImmutableArray();
        var text = now[0] == now[^1] ? Figures.Number(now[0], 2) : $"{Figures.Number(now[0], 2)} to {Figures.Number(now[^1], 2)}";
        return new TableBlock(
            $"Fraction of the irradiation that is taken, now {text}; the data may also show another irradiation than the estimate",
            [new("With", Share: 2), new("Taken at", "fraction", 1, Side.End, 60), new("More sun to count on, %", "", 1, Side.End, 110)],
            [.. Obtainable.Select(g => (Grade: g, Factor: design.Rule(ClimateGrades.RuleId(g)))).Select(g => Row.Of(
                Meaning(g.Grade), Figures.Number(g.Factor, 2), Gain(g.Factor, now[^1], now[0])))]);
    }

    private static string Gain(double factor, double greatest, double least)
    {
        var (low, high) = (Figures.Number((factor / greatest - 1) * 100, 0), Figures.Number((factor / least - 1) * 100, 0));
        return low == high ? low : $"{low} to {high}";
    }

    private static string Meaning(ClimateGrade grade) => ClimateGrades.Words(grade) + grade switch
    {
        ClimateGrade.MeasuredRecord => FormattableString.Invariant($": at least {ClimateGrades.LongTermYears} years measured at the ground, years stated"),
        ClimateGrade.SatelliteSeries => FormattableString.Invariant($": means or hours of at least {ClimateGrades.SeveralYears} years"),
        ClimateGrade.TypicalYear => ": EPW or TMY3 file",
        _ => ": kind or years not stated",
    };
}

using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>Climate and energy of each site: where the sun comes from, how far it is trusted, and the dark nights on synthetic years beside those on hours supplied.</summary>
internal static class ClimateSheet
{
    private static readonly string[] Headings =
    [
        "Site", "Name", "Grade of the climate", ">Taken at", "Rule", ">Years", ">Spread between years", ">Nearest station, km", ">Dullest month, kWh/m2 a day", ">Tilt, degrees", ">Azimuth, degrees",
        "Horizon, azimuth:elevation", ">Shading", ">Dark nights a year, upper 90 %", "Hours supplied", ">Years of hours", ">Dark nights a year on them", ">Worst year", "Judged", "Source",
    ];

    public static void Write(Book book, TenderDesign design)
    {
        var sheet = book.Add("Climate", landscape: true);
        sheet.Columns(8, 22, 18, 8, 22, 7, 9, 9, 11, 8, 9, 18, 8, 11, 11, 8, 9, 7, 18, 44);
        var row = TitleBlock.Write(sheet, book, "Climate and energy by site", "Irradiation is taken at the fraction of its grade before anything is computed. Where the series has eight years or more its own spread between years stands here and replaces the rule climate.year_spread. Where hours were supplied, the balance of the design was run on them as well.");
        sheet.Header(row, Headings);
        sheet.Repeat(row, row, 2);
        foreach (var site in design.Sites) Line(sheet, ++row, site);
    }

    private static void Line(Sheet sheet, int row, SiteDesign design)
    {
        var (site, climate, monthly) = (design.Site, design.Climate, design.Climate.Monthly);
        sheet.Words(row, 1, site.Id, Look.Row);
        sheet.Words(row, 2, site.Name, Look.Row);
        sheet.Words(row, 3, Words.Of(monthly.Grade), Look.Row);
        sheet.Figure(row, 4, climate.CautiousFactor, Look.Number("0.00"));
        sheet.Words(row, 5, ClimateGrades.RuleId(monthly.Grade), Look.Row);
        Maybe(6, monthly.YearCount, Look.WholeFormat);
        Maybe(7, monthly.YearSpreadFraction, "0.0%");
        Maybe(8, monthly.NearestStationKm, Look.WholeFormat);
        sheet.Figure(row, 9, monthly.IrradiationKWhPerM2.Min(), Look.Number("0.00"));
        sheet.Figure(row, 10, climate.Plane.TiltDegrees, Look.Number("0"));
        sheet.Figure(row, 11, climate.Plane.AzimuthDegrees, Look.Number("0"));
        sheet.Words(row, 12, site.Horizon is { } horizon ? HorizonText.Of(horizon) : "", Look.Row);
        sheet.Figure(row, 13, site.ShadedFraction, Look.Number("0%"));
        sheet.Figure(row, 14, design.Energy.Simulated.DarkNightsUpperBound, Look.Number("0.00"));
        var own = design.Energy.OnOwnSeries;
        sheet.Words(row, 15, own is null ? "" : own.Kind switch { SeriesKind.TypicalYear => "typical year", SeriesKind.SatelliteYears => "satellite years", _ => "measured years" }, Look.Row);
        Maybe(16, own?.Years, Look.WholeFormat);
        Maybe(17, own?.Result.DarkNightsPerYear, "0.00");
        Maybe(18, own?.Result.WorstYearDarkNights, Look.WholeFormat);
        sheet.Words(row, 19, own is null ? "" : OwnSeriesCheck.IsJudged(own) ? "yes" : "shown only: " + own.Caution, Look.Row);
        sheet.Words(row, 20, monthly.Source, Look.Row);

        void Maybe(int column, double? value, string format)
        {
            if (value is { } figure) sheet.Figure(row, column, figure, Look.Number(format));
            else sheet.Words(row, column, "", Look.Row);
        }
    }
}

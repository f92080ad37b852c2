using TenderKit.Documents.Languages;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Documents.Workbooks;

/// <summary>A row a site under the headings of the site list, for the answers of the survey; read again as it is. What the offer assumes stands in the cells to begin with, what is not known is empty.</summary>
public static class SurveyAnswers
{
    private static readonly string[] _headings =
        ["Site", "Name", "District", ">Latitude", ">Longitude", "Kind", ">Length (m)", ">Width (m)", ">Shading (%)", "Horizon", "Soil", "Flood prone", "Surveyed", "Remark"];

    public static byte[] Make(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        using var culture = InvariantScope.Enter();
        var book = new Book(design.Tender.Head, "Survey answers", new Ledger([]), Wording.English);
        var sheet = book.Add("Sites", landscape: true);
        sheet.Columns(9, 30, 14, 12, 12, 8, 10, 9, 10, 30, 11, 11, 12, 34);
        sheet.Header(1, _headings);
        sheet.Repeat(1, 1, 2);
        var row = 1;
        foreach (var site in design.Sites.Select(s => s.Site).Concat(design.Unmet.Select(u => u.Site).OfType<Site>())) Write(sheet, ++row, site);
        return book.Save();
    }

    private static void Write(Sheet sheet, int row, Site site)
    {
        string[] before = [site.Id, site.Name, site.District];
        for (var i = 0; i < before.Length; i++) sheet.Words(row, i + 1, before[i], i == 2 ? Look.Row.AsInput() : Look.Row);
        var figure = Look.Number("General").AsInput();
        if (site.IsPositionStated) (sheet, row).Figures(4, figure, site.LatitudeDegrees, site.LongitudeDegrees);
        sheet.Words(row, 6, Schedule.Words.Of(site.Kind), Look.Row);
        (sheet, row).Figures(7, figure, site.LengthM, site.WidthM, Math.Round(site.ShadedFraction * 100, 6));
        string[] found =
        [
            site.Horizon is { } horizon ? HorizonText.Of(horizon) : "", site.SoilStated && SoilIsClass(site) ? site.Soil.Name : "", site.Ground.FloodProne ? "yes" : "",
            site.SurveyedOn is { } on ? FormattableString.Invariant($"{on:yyyy-MM-dd}") : site.IsSurveyed ? "yes" : "no", site.Remark,
        ];
        for (var i = 0; i < found.Length; i++) sheet.Words(row, i + 10, found[i], Look.Row.AsInput());
        sheet.Fill(row, 1, _headings.Length, Look.Row.AsInput());
    }

    private static bool SoilIsClass(Site site) => Sizing.Structure.SoilClasses.Find(site.Soil.Name) is not null;

    private static void Figures(this (Sheet Sheet, int Row) at, int column, Look look, params double[] values)
    {
        for (var i = 0; i < values.Length; i++) at.Sheet.Figure(at.Row, column + i, values[i], look);
    }
}

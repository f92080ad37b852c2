using System.Globalization;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Workbooks.Sheets;

/// <summary>How far the climate behind the quantities can be trusted, in one sentence.</summary>
internal static class ClimateWords
{
    public static string Of(TenderDesign design)
    {
        var grades = design.Sites.GroupBy(s => (s.Climate.Monthly.Grade, s.Climate.CautiousFactor)).OrderBy(g => g.Key.Grade)
            .Select(g => string.Create(CultureInfo.InvariantCulture, $"{ClimateGrades.Words(g.Key.Grade)} on {g.Count()} site{(g.Count() == 1 ? "" : "s")}, irradiation taken at {g.Key.CautiousFactor:0.00} of it"));
        return "Grade of the climate: " + string.Join("; ", grades) + ".";
    }
}

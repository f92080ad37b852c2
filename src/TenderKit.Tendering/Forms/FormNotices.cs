using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Forms;

/// <summary>What the bidder must know before the employer's form is handed in.</summary>
public static class FormNotices
{
    /// <summary>Lines without a rate and items without a line warn; quantities that differ are noted, since they are the employer's to answer.</summary>
    public static IEnumerable<Diagnostic> Of(PriceForm form, PricedForm priced, IReadOnlyList<FormLine> kept)
    {
        foreach (var answer in priced.Answers.Where(a => a.Rate is null))
            yield return Diagnostic.Warning("TK713", $"'{Short(answer.Line.Description)}': no rate was written; {answer.Remark}", PlaceOf(form, answer.Line));
        foreach (var answer in priced.Answers.Where(a => a.QuantityDiffers))
            yield return Diagnostic.Note("TK714", $"'{Short(answer.Line.Description)}': {answer.Remark}", PlaceOf(form, answer.Line));
        foreach (var line in kept)
            yield return Diagnostic.Warning("TK716", $"'{Short(line.Description)}': the cell of the rate holds a formula of the employer's and was left alone", PlaceOf(form, line));
        var lost = priced.Unplaced.Where(u => !u.Spread && u.Amount != 0).ToArray();
        if (lost.Length > 0)
        {
            yield return Diagnostic.Warning(
                "TK715",
                string.Create(CultureInfo.InvariantCulture, $"{lost.Length} of our items, {lost.Sum(l => l.Amount):N2} in all, have no line in the form and are not spread, so its price leaves them out: {string.Join(", ", lost.Take(8).Select(l => l.BillCode))}"),
                new Place(form.Settings.File));
        }
    }

    private static Place PlaceOf(PriceForm form, FormLine line) => new(Path.GetFileName(form.Settings.File), line.Sheet, line.Row);

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";
}

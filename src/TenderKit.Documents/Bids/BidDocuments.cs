using System.Collections.Immutable;
using TenderKit.Documents.Forms;
using TenderKit.Documents.Machine;
using TenderKit.Documents.Maps;
using TenderKit.Documents.Schedule;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Forms;
using TenderKit.Tendering.Notes;
using TenderKit.Tendering.Positions;

namespace TenderKit.Documents.Bids;

/// <summary>One document of a bid.</summary>
/// <param name="RelativePath">Path below the bid's folder, with '/'.</param>
public sealed record BidDocument(string RelativePath, byte[] Bytes);

/// <summary>Makes every document of a bid. Two envelopes: nothing in <c>technical</c> holds an amount of money, nothing in <c>internal</c> is handed in.</summary>
public static class BidDocuments
{
    private const string PriceWorkbookName = "price-workbook.xlsx";

    /// <param name="design">The design.</param>
    /// <param name="bill">The bill, or null when it could not be priced: then the documents with money are left out.</param>
    /// <param name="notes">Notes for the appendix.</param>
    /// <param name="poles">Poles on the ground, where sites are drawn on a map.</param>
    /// <param name="doing">Told the name of each document before it is made.</param>
    /// <param name="evidence">Data sheets to go with the technical envelope; see <see cref="Evidence"/>.</param>
    public static ImmutableArray<BidDocument> Make(
        TenderDesign design, BillOfQuantities? bill, ImmutableArray<Note> notes, Action<string>? doing = null, PoleSchedule? poles = null, ImmutableArray<BidDocument> evidence = default)
    {
        var documents = ImmutableArray.CreateBuilder<BidDocument>();
        void Add(string path, Func<byte[]> make)
        {
            doing?.Invoke(path);
            documents.Add(new BidDocument(path, make()));
        }

        Add("technical/technical-schedule.pdf", () => TechnicalSchedule.Make(design));
        Add("technical/notes-appendix.pdf", () => NotesAppendix.Make(design, notes));
        Add("technical/settings-and-tests.pdf", () => SettingsSheets.Make(design));
        Add("technical/survey-forms.pdf", () => SurveyForms.Make(design));
        Add("technical/survey-answers.xlsx", () => SurveyAnswers.Make(design));
        Add("technical/community-page.pdf", () => CommunityPage.Make(design));
        if (design.PartsStated is not null) Add("technical/clarification-request.pdf", () => ClarificationRequest.Make(design));
        if (!evidence.IsDefault) documents.AddRange(evidence);
        if (poles is { Poles.Length: > 0 })
        {
            Add("technical/poles.csv", () => PoleDocuments.Csv(poles));
            Add("technical/poles.geojson", () => PoleDocuments.GeoJson(poles));
            Add("technical/poles.kml", () => PoleDocuments.Kml(poles));
        }
        if (bill is not null)
        {
            Add("technical/unpriced-bill.xlsx", () => UnpricedSchedule.Make(design, bill));
            Add("financial/" + PriceWorkbookName, () => PriceWorkbook.Make(design, bill));
            if (design.Form is { } form) AddForm(form, FormPricing.Of(design, bill, form), Add);
            string[] handedIn = [.. documents.Select(d => d.RelativePath).Where(p => !p.StartsWith("internal/", StringComparison.Ordinal))];
            Add("internal/calculation-workbook.xlsx", () => CalculationWorkbook.Make(design, bill, handedIn: handedIn));
        }

        if (DataRequest.IsNeeded(design)) Add("internal/data-request.pdf", () => DataRequest.Make(design));
        Add("internal/bid.json", () => BidJson.Make(design, bill));
        return documents.ToImmutable();
    }

    private static void AddForm(PriceForm form, PricedForm priced, Action<string, Func<byte[]>> add)
    {
        add("financial/" + FormName(Path.GetFileName(form.Settings.File)), () => FilledForm.Make(form, priced, out _));
        add("internal/price-form-lines.csv", () => FormLinesList.Make(priced));
    }

    /// <summary>The employer's own name, unless it is that of our price workbook.</summary>
    private static string FormName(string file) => file.Equals(PriceWorkbookName, StringComparison.OrdinalIgnoreCase) ? "employer-" + file : file;
}

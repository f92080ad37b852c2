using static TenderKit.Tendering.Tests.Corpus.CorpusFile;

namespace TenderKit.Tendering.Tests.Corpus;

/// <summary>Faults only a workbook can have.</summary>
internal static class WorkbookFaults
{
    public static IEnumerable<CorpusFile> All()
    {
        object?[] headings = [.. PlainList.Headings];
        yield return Xlsx("60-two-row-header", "a header of two rows with merged group headings below a merged title", true, new Sheet("Sites",
        [
            ["SITE LIST FOR STREET LIGHTING"], [], ["No", "Name", "Position", null, "Type", "Dimensions (m)"], [null, null, "Lat", "Long", null, "Length", "Width"], .. PlainList.Cells,
        ])
        { Merged = ["A1:G1", "A3:A4", "B3:B4", "C3:D3", "E3:E4", "F3:G3"] });
        yield return Xlsx("61-merged-districts", "district and lot cells merged over their sites", false, new Sheet("Sites",
            [["District", "Lot", .. headings], .. PlainList.Cells.Select((r, i) => (object?[])[i == 0 ? "Upper Kasola" : i == 3 ? "Lower Kasola" : null, i is 0 or 2 ? "L" + (i / 2 + 1) : null, .. r])])
        { Merged = ["A2:A4", "A5:A7", "B2:B3", "B4:B7"] });
        yield return Xlsx("62-sheet-per-lot", "a sheet for each lot, with sites numbered anew", false,
            new Sheet("Cover", [["Tender for street lighting"], ["Sheets", 2]]), new Sheet("Lot 1", [headings, .. PlainList.Cells[..3]]), new Sheet("Lot 2", [headings, ["S1", .. PlainList.Cells[3][1..]], .. PlainList.Cells[4..]]));
        yield return Xlsx("63-old-copy", "a sheet that repeats sites of another, and a hidden one", true,
            new Sheet("Draft", [headings, .. PlainList.Cells[..4]]), new Sheet("Final", [headings, .. PlainList.Cells]), new Sheet("Backup", [headings, ["X1", "Old road", 14.2, -4.2, "road", 99, 5]]) { IsHidden = true });
        yield return Xlsx("64-hidden-columns", "a hidden older length beside the one that is shown, and a hidden width", true,
            new Sheet("Sites", [[.. headings[..5], "Length", "Length (m)", "Width (m)"], .. PlainList.Cells.Select(r => (object?[])[.. r[..5], 111, .. r[5..]])]) { HiddenColumns = [6, 8] });
        yield return Xlsx("65-hidden-rows", "rows filtered out of sight", true, new Sheet("Sites", [headings, .. PlainList.Cells]) { HiddenRows = [4, 5, 7] });
        yield return Xlsx("66-numbers-as-text", "numbers stored as text", true, new Sheet("Sites", [headings, .. PlainList.Cells.Select(r => r.Select(v => (object?)FormattableString.Invariant($"{v}")).ToArray())]));
        yield return Xlsx("67-error-cells", "cells of formulas that failed", false, new Sheet("Sites", [headings, .. PlainList.Cells[..2], ["S3", "Clinic street", 14.2575, -4.2548, "road", "#REF!", 7.5]]));
        yield return Xlsx("68-offset-list", "the list starts at D9, with notes beside it", true, new Sheet("Sites",
            [[], [], ["Prepared by the works department"], [], [], [], [], [], [null, null, null, .. headings], .. PlainList.Cells.Select((r, i) => (object?[])[i == 1 ? "see plan" : null, null, null, .. r])]));
        yield return Xlsx("69-merged-groups", "merged rows that name the district of the sites below", false, new Sheet("Sites",
            [headings, ["Upper Kasola"], .. PlainList.Cells[..3], ["Lower Kasola"], .. PlainList.Cells[3..]])
        { Merged = ["A2:G2", "A6:G6"] });
        yield return Xlsx("70-dms-two-rows", "degrees, minutes and seconds under merged headings", true, new Sheet("Sites",
        [
            ["No", "Name", "Latitude", null, null, "Longitude", null, null, "Type", "Length (m)", "Width (m)"], [null, null, "\u00B0", "'", "\"", "\u00B0", "'", "\""],
            .. PlainList.Sites.Select(s => (object?[])[s.Id, s.Name, .. Parts(s.Latitude, 1), .. Parts(s.Longitude, -1), s.Kind, s.LengthM, s.WidthM]),
        ])
        { Merged = ["C1:E1", "F1:H1"] });
        yield return Xlsx("71-total-of-numbers", "a total row with a merged word, and poles that do not add up", false, new Sheet("Sites",
            [[.. headings, "Poles"], .. PlainList.Cells.Select((r, i) => (object?[])[.. r, i + 4]), ["Total", null, null, null, null, 2146.5, null, 40]])
        { Merged = ["A8:E8"] });
    }

    private static object?[] Parts(double value, int sign)
    {
        var seconds = Math.Round(Math.Abs(value) * 3600, 2);
        return [sign * Math.Floor(seconds / 3600), Math.Floor(seconds % 3600 / 60), Math.Round(seconds % 60, 2)];
    }
}

using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>Makes rows of a sheet a table that can be filtered.</summary>
internal static class SheetTable
{
    public static TableParts Write(WorksheetPart part, Sheet sheet, TableArea area, int number)
    {
        var range = new Address("", area.HeaderRow, 1).Local + ":" + new Address("", area.LastRow, area.LastColumn).Local;
        var heads = Enumerable.Range(1, area.LastColumn).Select(c => ((Content.Words)sheet.Cells[(area.HeaderRow, c)].Content).Text);
        var table = part.AddNewPart<TableDefinitionPart>("rTable");
        table.Table = new Table(
            new AutoFilter { Reference = range },
            new TableColumns(heads.Select((name, i) => new TableColumn { Id = (uint)i + 1, Name = SheetXml.Clean(name) })) { Count = (uint)area.LastColumn },
            new TableStyleInfo { ShowFirstColumn = false, ShowLastColumn = false, ShowRowStripes = false, ShowColumnStripes = false })
        {
            Id = (uint)number,
            Name = area.Name,
            DisplayName = area.Name,
            Reference = range,
            TotalsRowShown = false,
        };
        return new TableParts(new TablePart { Id = part.GetIdOfPart(table) }) { Count = 1 };
    }
}

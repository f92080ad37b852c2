using System.Diagnostics;
using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using TenderKit.Documents.Workbooks;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Benchmarks.Scale;

/// <summary>Workbooks of many sites, with time, memory and rows per second beside a writer that does nothing but stream as many cells.</summary>
internal static class WorkbookRun
{
    /// <param name="args">workbook, then sites and price, calculation or bare; one kind a run, so that the greatest memory is its own.</param>
    public static int Run(string[] args)
    {
        var sites = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1000;
        var kind = args.Length > 2 ? args[2] : "calculation";
        var design = Copies(sites);
        var bill = Timed("bill", () => BillBuilder.Build(design)).Value!;
        var workbook = Timed(kind, () => kind == "price" ? PriceWorkbook.Make(design, bill) : CalculationWorkbook.Make(design, bill));
        var (rows, cells) = Count(workbook);
        Console.WriteLine(FormattableString.Invariant($"{rows} rows, {cells} cells, {workbook.Length / 1e6:0.0} MB"));
        Timed("bare", () => Bare(rows, cells / rows));
        return 0;
    }

    /// <summary>The starter tender, its sites copied; the documents are measured, not the design.</summary>
    private static TenderDesign Copies(int sites)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "catalog-sample"))) folder = folder.Parent ?? throw new DirectoryNotFoundException("catalog-sample");
        var loaded = TenderLoader.Load(Path.Combine(folder.FullName, "templates", "starter", "tender.yaml"));
        var design = TenderDesigner.Run(loaded.Inputs!, loaded.Diagnostics);
        return design with
        {
            Sites = [.. Enumerable.Range(0, sites).Select(i => design.Sites[i % design.Sites.Length]).Select((s, i) => s with { Site = s.Site with { Id = FormattableString.Invariant($"T{i + 1:0000}") } })],
        };
    }

    private static (int Rows, int Cells) Count(byte[] workbook)
    {
        using var document = SpreadsheetDocument.Open(new MemoryStream(workbook), false);
        var (rows, cells) = (0, 0);
        foreach (var part in document.WorkbookPart!.WorksheetParts)
        {
            using var reader = OpenXmlReader.Create(part);
            while (reader.Read())
            {
                if (reader.ElementType == typeof(Row) && reader.IsStartElement) rows++;
                if (reader.ElementType == typeof(Cell) && reader.IsStartElement) cells++;
            }
        }

        return (rows, cells);
    }

    /// <summary>The bound: numbers only, one sheet, no styles, straight into the package.</summary>
    private static long Bare(int rows, int columns)
    {
        using var stream = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(stream, SpreadsheetDocumentType.Workbook))
        {
            var workbook = document.AddWorkbookPart();
            var sheet = workbook.AddNewPart<WorksheetPart>("rSheet");
            using (var writer = OpenXmlWriter.Create(sheet))
            {
                writer.WriteStartElement(new Worksheet());
                writer.WriteStartElement(new SheetData());
                for (var row = 1; row <= rows; row++)
                {
                    writer.WriteStartElement(new Row { RowIndex = (uint)row });
                    for (var column = 0; column < columns; column++) writer.WriteElement(new Cell { CellValue = new CellValue((row * 1.25) + column) });
                    writer.WriteEndElement();
                }

                writer.WriteEndElement();
                writer.WriteEndElement();
            }

            workbook.Workbook = new Workbook(new Sheets(new Sheet { Name = "Bare", SheetId = 1, Id = "rSheet" }));
        }

        return stream.Length;
    }

    private static T Timed<T>(string step, Func<T> work)
    {
        var watch = Stopwatch.StartNew();
        var result = work();
        using var process = Process.GetCurrentProcess();
        Console.WriteLine(FormattableString.Invariant($"{step}: {watch.Elapsed.TotalSeconds:0.00} s, greatest memory of the process {process.PeakWorkingSet64 / 1e6:0} MB, allocated {GC.GetTotalAllocatedBytes() / 1e9:0.00} GB so far"));
        return result;
    }
}

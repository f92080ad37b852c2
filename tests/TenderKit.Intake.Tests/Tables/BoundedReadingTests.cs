using System.IO.Compression;
using System.Text;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Tests.Maps;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Intake.Tests.Tables;

/// <summary>Files made to harm end in a clear refusal, within seconds and without large memory.</summary>
public sealed class BoundedReadingTests
{
    private const long MostBytes = 500L << 20;

    [Fact]
    public void BombInAWorkbookIsRefused()
    {
        var bomb = Swollen("xl/worksheets/sheet1.xml", 120 << 20, TestWorkbook.Xlsx(("S", "<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>")));
        Assert.True(bomb.Length < 4 << 20);
        Refused("TK107", () => TableReader.Read(bomb, "a.xlsx").Diagnostics);
    }

    [Fact]
    public void BombInAMapIsRefused()
    {
        var bomb = Swollen("doc.kml", 120 << 20, MapReaderTests.Zip(("readme.txt", "x")));
        Refused("TK107", () => MapReader.Read(bomb, "a.kmz").Diagnostics);
    }

    [Theory]
    [InlineData("<row r=\"1\"><c r=\"A1\"><v>1</v></c><c r=\"BDWGN1\"><v>1</v></c></row>")]
    [InlineData("<row r=\"1\"><c r=\"ZZZZZZZZZZZZ1\"><v>1</v></c></row>")]
    [InlineData("<row r=\"1\"><c r=\"XFD1\"><v>1</v></c></row>")]
    [InlineData("<row r=\"1048576\"><c r=\"A1048576\"><v>1</v></c></row>")]
    [InlineData("<row r=\"99999999999999999999\"><c r=\"A99999999999\"><v>1</v></c></row>")]
    public void FarCellsAreRefused(string rows) => Refused("TK107", () => TableReader.Read(TestWorkbook.Xlsx(("S", rows)), "a.xlsx").Diagnostics);

    [Fact]
    public void StyledEmptyCellsToTheLastColumnAreRead()
    {
        var row = string.Concat(Enumerable.Range(1, 16384).Select(c => $"<c r=\"{Cell.ColumnName(c)}2\"/>"));
        var table = TableReader.Read(TestWorkbook.Xlsx(("S", $"<row r=\"1\"><c r=\"B1\"><v>7</v></c></row><row r=\"2\">{row}</row>")), "a.xlsx").Value!.Tables[0];
        Assert.Equal(2, Assert.Single(table.Rows).Length);
    }

    [Fact]
    public void MillionColumnsOfTextAreRefused()
    {
        Refused("TK107", () => TableReader.Read(Encoding.UTF8.GetBytes(new string(',', 1_000_000) + "x\n"), "a.csv").Diagnostics);
        Refused("TK107", () => TableReader.Read(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("a,b\n", 150_000))), "a.csv").Diagnostics);
    }

    [Fact]
    public void EntitiesInAWorkbookAreRefused()
    {
        const string laughs = """<?xml version="1.0"?><!DOCTYPE w [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;"><!ENTITY x SYSTEM "file:///etc/hostname">]>""";
        var book = Replaced("xl/workbook.xml", laughs + "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheets><sheet name=\"&c;&x;\" sheetId=\"1\"/></sheets></workbook>",
            TestWorkbook.Xlsx(("S", "<row r=\"1\"><c r=\"A1\"><v>1</v></c></row>")));
        Refused("TK103", () => TableReader.Read(book, "a.xlsx").Diagnostics);
    }

    [Fact]
    public void DeepAndHugeMapsAreRefused()
    {
        Refused("TK103", () => MapReader.Read(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("{\"type\":\"GeometryCollection\",\"geometries\":[", 100_000))), "a.geojson").Diagnostics);
        Refused("TK103", () => MapReader.Read(Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("<Folder>", 200_000))), "a.kml").Diagnostics);
        var many = new StringBuilder("<kml>");
        for (var i = 0; i <= ReadingLimits.GreatestRows; i++) many.Append("<Placemark><Point><coordinates>1,2</coordinates></Point></Placemark>");
        Refused("TK107", () => MapReader.Read(Encoding.UTF8.GetBytes(many.Append("</kml>").ToString()), "a.kml").Diagnostics);
    }

    [Fact]
    public void HugeFilesAreNotOpened()
    {
        var path = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N"));
        try
        {
            foreach (var extension in new[] { ".csv", ".kml" })
            {
                using (var file = File.Create(path + extension)) file.SetLength(3L << 30);
                Refused("TK107", () => extension == ".csv" ? TableReader.Read(path + extension).Diagnostics : MapReader.Read(path + extension).Diagnostics);
                File.Delete(path + extension);
            }
        }
        finally
        {
            File.Delete(path + ".csv");
            File.Delete(path + ".kml");
        }
    }

    private static void Refused(string code, Func<IEnumerable<Diagnostic>> read)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var error = Assert.Single(read(), d => d.Severity == Severity.Error);
        Assert.Equal(code, error.Code);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < MostBytes, "took too much memory");
    }

    /// <summary>An archive with a part of spaces in the place of one of its own.</summary>
    private static byte[] Swollen(string part, int size, byte[] archive) => Changed(part, archive, stream =>
    {
        var spaces = new byte[1 << 20];
        Array.Fill(spaces, (byte)' ');
        for (var i = 0; i < size >> 20; i++) stream.Write(spaces);
    });

    private static byte[] Replaced(string part, string text, byte[] archive) => Changed(part, archive, stream => stream.Write(Encoding.UTF8.GetBytes(text)));

    private static byte[] Changed(string part, byte[] archive, Action<Stream> write)
    {
        using var source = new ZipArchive(new MemoryStream(archive));
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in source.Entries.Where(e => e.FullName != part))
            {
                using var from = entry.Open();
                using var to = zip.CreateEntry(entry.FullName).Open();
                from.CopyTo(to);
            }

            using var target = zip.CreateEntry(part, CompressionLevel.Fastest).Open();
            write(target);
        }

        return stream.ToArray();
    }
}

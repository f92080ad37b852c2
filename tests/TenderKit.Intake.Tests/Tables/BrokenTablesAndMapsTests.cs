using System.Text;
using CsCheck;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Tests.Maps;
using TenderKit.Intake.Tests.Photometry;
using Xunit;

namespace TenderKit.Intake.Tests.Tables;

/// <summary>Damaged files of every kind read here end in a result or a diagnostic, never in an exception.</summary>
public sealed class BrokenTablesAndMapsTests
{
    private static readonly byte[] Workbook = TestWorkbook.Xlsx(("S", "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>No</t></is></c><c r=\"B1\"><v>1.5</v></c></row><row r=\"2\"><c r=\"A2\" t=\"e\"><v>#REF!</v></c></row>"));

    [Theory]
    [InlineData("a.kml", MapReaderTests.Kml)]
    [InlineData("a.geojson", MapReaderTests.GeoJson)]
    [InlineData("a.csv", "No;Name;Lat;Long\n1;\"A;B\";14,25;-4,25\n2;C;14,3;-4,2\n")]
    public void DamagedTextNeverThrows(string name, string text)
    {
        for (var seed = 0; seed < Mutations.KindCount * 12; seed++) Read(name, Mutations.Of(text, seed));
    }

    [Fact]
    public void DamagedPackedFilesNeverThrow() => Gen.Select(Gen.Int[0, 100_000], Gen.Byte.Array[1, 6], OneOf("a.xlsx", "a.xls", "a.kmz")).Sample((at, bytes, name) =>
    {
        var file = name == "a.kmz" ? MapReaderTests.Zip(("doc.kml", MapReaderTests.Kml)) : (byte[])Workbook.Clone();
        for (var i = 0; i < bytes.Length; i++) file[(at + (i * 37)) % file.Length] = bytes[i];
        Read(name, at % 3 == 0 ? file[..(at % file.Length)] : file);
    }, iter: 400);

    [Fact]
    public void AnyBytesNeverThrow() => Gen.Select(Gen.Byte.Array[0, 400], OneOf("a.csv", "a.xlsx", "a.xls", "a.kml", "a.kmz", "a.geojson")).Sample((bytes, name) => Read(name, bytes), iter: 600);

    [Fact]
    public void AnyTextIsANumberOrAProblem() => Gen.Select(Gen.String, Gen.Enum<QuantityKind>(), Gen.Enum<DecimalMark>()).Sample((text, kind, mark) =>
    {
        var reading = UserNumber.Read(text, kind, mark);
        return reading.Value is not null ^ reading.Problem is not null;
    }, iter: 2000);

    private static Gen<string> OneOf(params string[] names) => Gen.Int[0, names.Length - 1].Select(i => names[i]);

    private static void Read(string name, byte[] bytes)
    {
        var diagnostics = MapReader.IsMap(name) ? MapReader.Read(bytes, name).Diagnostics : TableReader.Read(bytes, name).Diagnostics;
        Assert.All(diagnostics, d => Assert.False(string.IsNullOrWhiteSpace(d.Message), Encoding.UTF8.GetString(bytes)));
    }
}

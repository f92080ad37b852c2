using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Tests.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

public sealed class SiteListReaderTests
{
    private const string Header = "No,Name,Latitude,Longitude,Type,Length (m),Width (m),Class,Schedule,Poles,Arrangement,Shading,Mounting height,Wind speed,Terrain,Soil,Lot,Climate file,Remark\n";

    private static readonly LightTarget P4 = new("P4", 5, 1, null, 7.5, "test target");

    private static readonly SiteDefaults Defaults = new(
        P4, "village-night",
        ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("village-night", LightingSchedule.DuskToDawn with { Name = "village-night" }).Add("full", LightingSchedule.DuskToDawn with { Name = "full" }),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false,
        ImmutableSortedDictionary<string, string>.Empty.Add("S2", "B"));

    [Fact]
    public void FullAndSilentRowsAreRead()
    {
        var reading = Read(Header +
            "S1,School path,14\u00B015'03\" N,4.25 W,school path,250,3,P4,Full,12,staggered,10 %,5-6,100 km/h,III,dense,A,town.csv,near well\n" +
            "S2,,14.5,-4.5,,0.5 km,,,,,,,,,,,,,\n");
        Assert.Empty(reading.Diagnostics);
        var s1 = reading.Sites[0];
        Assert.Equal(("S1", "School path", 2), (s1.Id, s1.Name, s1.Row));
        Assert.Equal(14.250833, s1.LatitudeDegrees, 1e-6);
        Assert.Equal((-4.25, SiteKind.Path, 250.0, 3.0, "P4", "full"), (s1.LongitudeDegrees, s1.Kind, s1.LengthM, s1.WidthM, s1.Target.Name, s1.Schedule.Name));
        Assert.Equal((12, Arrangement.Staggered, 0.1, Terrain.III, SoilClasses.Dense, true), (s1.FixedPoles, s1.Arrangement, s1.ShadedFraction, s1.Terrain, s1.Soil, s1.SoilStated));
        Assert.Equal<double>([5, 5.5, 6], s1.MountingHeightsM);
        Assert.Equal(27.7778, s1.BasicWindMPerS, 1e-4);
        Assert.Equal(("A", "town.csv", "near well"), (s1.Lot, s1.ClimateFile, s1.Remark));
        var s2 = reading.Sites[1];
        Assert.Equal((500.0, 4.0, SiteKind.Road, "village-night", 30.0, "B", false), (s2.LengthM, s2.WidthM, s2.Kind, s2.Schedule.Name, s2.BasicWindMPerS, s2.Lot, s2.SoilStated));
        Assert.Null(s2.FixedPoles);
        Assert.Null(s2.ClimateFile);
        Assert.Equal<double>([6], s2.MountingHeightsM);
        var echo = reading.Rows[0].Cells.First(c => c.Heading == "Wind speed");
        Assert.Equal(("100 km/h", "27.777778 m/s"), (echo.Seen, echo.Understood));
        Assert.All(reading.Rows, r => Assert.True(r.IsRead));
    }

    [Theory]
    [InlineData("TK182", "Latitude", "S1,A,,-4,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK182", "Longitude", "S1,A,14,,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK182", "Length (m)", "S1,A,14,-4,road,,4,P4,,,,,,,,,,,")]
    [InlineData("TK182", "Width (m)", "S1,A,14,-4,market,100,,P4,,,,,,,,,,,")]
    [InlineData("TK182", "No", ",A,14,-4,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK183", "Latitude", "S1,A,north,-4,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK183", "Length (m)", "S1,A,14,-4,road,12x,4,P4,,,,,,,,,,,")]
    [InlineData("TK183", "Length (m)", "S1,A,14,-4,road,#REF!,4,P4,,,,,,,,,,,")]
    [InlineData("TK183", "Mounting height", "S1,A,14,-4,road,100,4,P4,,,,,2026-06-05,,,,,,")]
    [InlineData("TK183", "Poles", "S1,A,14,-4,road,100,4,P4,,2.5,,,,,,,,,")]
    [InlineData("TK184", "Latitude", "S1,A,95,-175,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK184", "Longitude", "S1,A,14,190,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK184", "Length (m)", "S1,A,14,-4,road,0,4,P4,,,,,,,,,,,")]
    [InlineData("TK184", "Width (m)", "S1,A,14,-4,road,100,400,P4,,,,,,,,,,,")]
    [InlineData("TK184", "Wind speed", "S1,A,14,-4,road,100,4,P4,,,,,,130,,,,,")]
    [InlineData("TK184", "Shading", "S1,A,14,-4,road,100,4,P4,,,,95 %,,,,,,,")]
    [InlineData("TK184", "Mounting height", "S1,A,14,-4,road,100,4,P4,,,,,20 ft - 90 ft,,,,,,")]
    [InlineData("TK185", "Class", "S1,A,14,-4,road,100,4,P44,,,,,,,,,,,")]
    [InlineData("TK185", "Schedule", "S1,A,14,-4,road,100,4,P4,vilage-night,,,,,,,,,,")]
    [InlineData("TK185", "Soil", "S1,A,14,-4,road,100,4,P4,,,,,,,,swamp,,,")]
    [InlineData("TK185", "Type", "S1,A,14,-4,volcano,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK185", "Terrain", "S1,A,14,-4,road,100,4,P4,,,,,,,VII,,,,")]
    [InlineData("TK185", "Arrangement", "S1,A,14,-4,road,100,4,P4,,,spiral,,,,,,,,")]
    [InlineData("TK187", "Latitude", "S1,A,0,0,road,100,4,P4,,,,,,,,,,,")]
    [InlineData("TK188", "Latitude", "S1,A,-121.5,14,road,100,4,P4,,,,,,,,,,,")]
    public void BadCellIsNamedAndTheOtherRowsComeThrough(string code, string column, string row)
    {
        var reading = Read(Header + row + "\nS9,Good,14,-4,road,100,4,P4,,,,,,,,,,,\n");
        var error = Assert.Single(reading.Diagnostics, d => d.Severity == Severity.Error);
        Assert.Equal((code, "a.csv", 2, column), (error.Code, error.Place.File, error.Place.Row, error.Place.Column));
        Assert.Equal("S9", Assert.Single(reading.Sites).Id);
        Assert.Equal([false, true], reading.Rows.Select(r => r.IsRead));
    }

    [Fact]
    public void EveryBadCellOfARowIsNamed()
    {
        var errors = Read(Header + "S1,A,95,-4,volcano,x,0,P9,nope,0,spiral,99,1,5,VII,swamp,,,\n").Diagnostics.Where(d => d.Severity == Severity.Error).ToList();
        Assert.Equal(13, errors.Count);
        Assert.All(errors, e => Assert.Equal("S1", e.Place.Site));
    }

    [Fact]
    public void UnknownNamesSuggestTheNearest() =>
        Assert.Contains("nearest is 'village-night'", Read(Header + "S1,A,14,-4,road,100,4,P4,vilage-night,,,,,,,,,,\n").Diagnostics[0].Message, StringComparison.Ordinal);

    [Fact]
    public void DuplicateKeepsTheFirst()
    {
        var reading = Read(Header + "S1,A,14,-4,road,100,4,,,,,,,,,,,,\ns1,B,14,-4,road,200,4,,,,,,,,,,,,\n");
        Assert.Equal(100, Assert.Single(reading.Sites).LengthM);
        Assert.Contains("row 2", Assert.Single(reading.Diagnostics, d => d.Code == "TK186").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void BlankTotalRepeatedAndRemarkRowsArePassedOver()
    {
        var reading = Read("No,Lat,Long,Type,Length\n1,14,-4,road,100\n,,,,\nNo,Lat,Long,Type,Length\n2,14,-4,road,150\n,,Total,,250\nAll lengths measured on the map,,,,\n");
        Assert.Equal(["1", "2"], reading.Sites.Select(s => s.Id));
        Assert.False(reading.HasErrors);
        Assert.Equal([4, 6, 7], reading.Diagnostics.Where(d => d.Code == "TK191").Select(d => d.Place.Row!.Value));
        Assert.Single(reading.Diagnostics, d => d.Code == "TK190");
    }

    [Fact]
    public void LuxColumnsMakeATarget()
    {
        var reading = Read("No,Lat,Long,Type,Length,Average lux,Minimum lux,Uniformity,Class\n1,14,-4,road,100,7.5,1.5,0.2,\n2,14,-4,road,100,7.5,,,P4\n3,14,-4,road,100,,1,,\n4,14,-4,road,100,5,6,,\n");
        var target = reading.Sites[0].Target;
        Assert.Equal(("7.5 lx", 7.5, 1.5, 0.2), (target.Name, target.AverageLx, target.MinimumLx, target.OverallUniformity));
        Assert.Contains(reading.Diagnostics, d => d.Code == "TK193" && d.Place.Row == 3);
        Assert.Equal(["TK182", "TK184"], reading.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Code));
        Assert.Equal("TK182", Read("No,Lat,Long,Type,Length\n1,14,-4,road,100\n", Defaults with { Target = null }).Diagnostics[0].Code);
    }

    [Theory]
    [InlineData("14.2508; -4.25")]
    [InlineData("14.2508, -4.25")]
    [InlineData("\"14,2508; -4,25\"")]
    [InlineData("14.2508 -4.25")]
    [InlineData("14.2508/-4.25")]
    [InlineData("\"14.2508,-4.25\"")]
    public void OneColumnOfCoordinates(string pair)
    {
        var cell = pair.Trim('"');
        var reading = Read($"No\tGPS\tType\tLength\n1\t{cell}\troad\t100\n");
        Assert.Empty(reading.Diagnostics);
        Assert.Equal((14.2508, -4.25), (reading.Sites[0].LatitudeDegrees, reading.Sites[0].LongitudeDegrees));
    }

    [Fact]
    public void HemisphereOfTheHeadingHolds()
    {
        var reading = Read("No,Latitude (S),Longitude W,Type,Length\n1,14.25,4.5,road,100\n2,-14.25,-4.5,road,100\n3,14.25 N,4.5,road,100\n");
        Assert.False(reading.HasErrors);
        Assert.Equal([(-14.25, -4.5), (-14.25, -4.5), (14.25, -4.5)], reading.Sites.Select(s => (s.LatitudeDegrees, s.LongitudeDegrees)));
    }

    [Fact]
    public void MissingColumnsAreNamed()
    {
        var reading = Read("No,Name,Width\n1,A,4\n");
        Assert.Equal(3, reading.Diagnostics.Count(d => d.Code == "TK181"));
        Assert.Empty(reading.Sites);
        Assert.Equal("row-2", Read("Lat,Long,Length\n14,-4,100\n").Sites[0].Id);
        Assert.Equal(2, Read("Lat,Long,Length\n14,-4,100\n").Diagnostics.Count(d => d.Code == "TK194"));
        Assert.Contains(Read("No,Lat,Long,Type,Length\n,,,,\n").Diagnostics, d => d.Code == "TK182");
    }

    [Fact]
    public void LongSideOfAYardIsItsLengthAndUnknownSoilIsTheWorst()
    {
        var reading = Read("No,Lat,Long,Type,Length,Width,Soil\n1,14,-4,market,30,80,unknown\n2,14,-4,market,30,80,\n", Defaults with { Soil = SoilClasses.Dense, SoilStated = true });
        Assert.Equal((80.0, 30.0, SoilClasses.Soft, false), (reading.Sites[0].LengthM, reading.Sites[0].WidthM, reading.Sites[0].Soil, reading.Sites[0].SoilStated));
        Assert.Equal((SoilClasses.Dense, true), (reading.Sites[1].Soil, reading.Sites[1].SoilStated));
    }

    [Fact]
    public void FrenchListWithDecimalCommas()
    {
        var reading = Read("N\u00B0;Localit\u00E9;Latitude;Longitude;Type;Longueur (m);Largeur (m);Hauteur de feu (m);Vent (km/h);Ombrage (%)\n1;March\u00E9;14,2508;-4,25;march\u00E9;1,500;40,5;5,5;90;5\n");
        Assert.Empty(reading.Diagnostics.Where(d => d.Severity == Severity.Error && d.Code != "TK184"));
        // with the file's decimal comma, 1,500 is one and a half metres and is refused as too short
        Assert.Contains(reading.Diagnostics, d => d.Code == "TK184" && d.Message.Contains("1.5 m", StringComparison.Ordinal));
    }

    [Fact]
    public void DoubtfulThousandsAreAWarning()
    {
        var reading = Read("No;Lat;Long;Type;Length\n1;14;-4;road;12,500\n2;14;-4;road;1,500\n");
        Assert.Equal([12_500, 1500], reading.Sites.Select(s => s.LengthM)); // 1.5 m would be no length
        Assert.Equal(Severity.Warning, Assert.Single(reading.Diagnostics, d => d.Code == "TK189").Severity);
    }

    [Fact]
    public void WorkbookAndCsvGiveEqualSitesAndTheFittingSheetIsChosen()
    {
        const string csv = "No;Name;Lat;Long;Type;Length (m);Width (m);Shading (%);Mounting height\n1;A;14,25;-4,5;road;250;3,5;5;6,125 m\n2;B;14,5;-4,25;path;0,5 km;;7 %;5-6\n";
        var rows = """<row r="1">""" + Texts(1, "No", "Name", "Lat", "Long", "Type", "Length (m)", "Width (m)", "Shading (%)", "Mounting height") + "</row>" +
            """<row r="2"><c r="A2"><v>1</v></c><c r="B2" t="inlineStr"><is><t>A</t></is></c><c r="C2"><v>14.25</v></c><c r="D2"><v>-4.5</v></c><c r="E2" t="inlineStr"><is><t>road</t></is></c><c r="F2"><v>250</v></c><c r="G2"><v>3.5</v></c><c r="H2"><v>5</v></c><c r="I2"><v>6.125</v></c></row>""" +
            """<row r="3"><c r="A3"><v>2</v></c><c r="B3" t="inlineStr"><is><t>B</t></is></c><c r="C3"><v>14.5</v></c><c r="D3"><v>-4.25</v></c><c r="E3" t="inlineStr"><is><t>path</t></is></c><c r="F3" t="inlineStr"><is><t>0,5 km</t></is></c><c r="H3" s="2"><v>0.07</v></c><c r="I3" t="inlineStr"><is><t>5-6</t></is></c></row>""";
        var cover = """<row r="1">""" + Texts(1, "No", "Name") + "</row>";
        var book = TableReader.Read(TestWorkbook.Xlsx(("Cover", cover), ("Sites", rows)), "a.xlsx").Value!;
        var fromBook = SiteListReader.Read(book, Defaults, Classes);
        Assert.Contains(fromBook.Diagnostics, d => d.Code == "TK192" && d.Message.Contains("'Sites'", StringComparison.Ordinal));
        Assert.Equal(2, fromBook.Sites.Length);
        Assert.Equal(View(Read(csv)), View(fromBook));
        Assert.Equal(0.07, fromBook.Sites[1].ShadedFraction);
    }

    private static string View(SiteListReading reading) => string.Join('\n', reading.Sites.Select(s =>
        s.ToString() + string.Join(';', s.MountingHeightsM.Select(h => h.ToString("R", CultureInfo.InvariantCulture)))));

    private static string Texts(int row, params string[] texts) => string.Concat(texts.Select((t, i) =>
        string.Create(CultureInfo.InvariantCulture, $"<c r=\"{Cell.ColumnName(i + 1)}{row}\" t=\"inlineStr\"><is><t>{t}</t></is></c>")));

    private static LightTarget? Classes(string name) => name.Trim().Equals("P4", StringComparison.OrdinalIgnoreCase) ? P4 : null;

    private static SiteListReading Read(string csv, SiteDefaults? defaults = null) =>
        SiteListReader.Read(TableReader.Read(Encoding.UTF8.GetBytes(csv), "a.csv").Value!, defaults ?? Defaults, Classes, ["P4"]);
}

using System.Collections.Immutable;
using System.Text;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Tables;
using TenderKit.Intake.Tables.Steps;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Sites;
using TenderKit.Tendering.Sites.Positions;
using TenderKit.Tendering.Sites.Steps;
using TenderKit.Tendering.Tests.Corpus;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

/// <summary>Each step mends its one fault and nothing else.</summary>
public sealed class StepTests
{
    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, 7.5, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    [Fact]
    public void MergedCellsAreFilledButATitleIsNot()
    {
        var table = Workbook(new Sheet("S", [["Title"], ["A", "Group"], ["x", null, 5], [], ["y"]]) { Merged = ["A1:C1", "B2:C2", "A3:A4", "A9:B12"] });
        var (filled, found) = FillMerged.Apply(table);
        Assert.Equal("", filled.Rows[0][1].Text);
        Assert.Equal("Group", filled.Rows[1][2].Text);
        Assert.Equal("x", filled.Rows[3][0].Text);
        Assert.Equal("TK122", Assert.Single(found).Code);
        Assert.Empty(FillMerged.Apply(Csv("a,b\n")).Diagnostics);
    }

    [Fact]
    public void DittoTakesTheNearestFilledCellAboveButNotAHeading()
    {
        var (filled, found) = FillDitto.Apply(Csv("a,b\ndo,x\n5,\n-do-,ditto\nidem,idea\n"), 2);
        Assert.Equal(["do", "5", "5", "5"], filled.Rows.Skip(1).Select(r => r[0].Text));
        Assert.Equal(["x", "", "x", "idea"], filled.Rows.Skip(1).Select(r => r[1].Text));
        Assert.Equal("TK123", Assert.Single(found).Code);
    }

    [Fact]
    public void BlankRowsBelowTheHeadingsGo()
    {
        var (table, found) = DropBlankRows.Apply(Csv("\na,b\n\n1,2\n,\n3,4\n"), 3);
        Assert.Equal([1, 2, 4, 6], table.Rows.Select(r => r[0].Row));
        Assert.StartsWith("2 blank rows", Assert.Single(found, d => d.Code == "TK190").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void GroupRowsGiveTheirDistrictToTheRowsBelow()
    {
        var mapping = GroupRows.Apply(Map("No,Latitude,Longitude,Length\nDistrict: Kasola,,,\n1,2,3,4\nLOT 2,,,\n2,2,3,4\n"));
        Assert.Equal([2, 4], mapping.Diagnostics.Where(d => d.Code == "TK125").Select(d => d.Place.Row!.Value));
        var (district, lot) = (mapping.Of(SiteColumns.District)!.Column - 1, mapping.Of(SiteColumns.Lot)!.Column - 1);
        Assert.Equal([("Kasola", ""), ("", "2")], mapping.DataRows.Select(r => (r[district].Text, r[lot].Text)));
        Assert.Empty(GroupRows.Apply(Map("No,Latitude,Longitude,Length\nKasola,,,\n1,2,3,4\n")).Diagnostics);
    }

    [Fact]
    public void TotalsGoAndAreCompared()
    {
        var right = DropTotals.Apply(Map("No,Latitude,Longitude,Length\n1,2,3,40\n2,2,3,50\nSubtotal lot 1,,,90\n3,2,3,10\nTotal,,,100\n"));
        Assert.Equal(3, right.DataRows.Count());
        Assert.All(right.Diagnostics, d => Assert.Equal("TK191", d.Code));
        var wrong = DropTotals.Apply(Map("No,Latitude,Longitude,Length\n1,2,3,40\n2,2,3,50\nTotal,,,95\n"));
        var said = Assert.Single(wrong.Diagnostics, d => d.Code == "TK126");
        Assert.Equal(("D4", Severity.Warning), (said.Place.Cell, said.Severity));
        Assert.Contains("95 m, the rows above add to 90 m", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RepeatedHeadingsAndRemarksGo()
    {
        Assert.Single(DropRepeatedHeadings.Apply(Map("No,Latitude,Longitude,Length\nNO.,latitude,Longitude,Length\n1,2,3,4\n")).DataRows);
        Assert.Single(DropRemarks.Apply(Map("No,Latitude,Longitude,Length\n1,2,3,4\nmeasured with a wheel by hand,,,\n")).DataRows);
    }

    [Fact]
    public void HiddenPartsAreRead_AndSaid()
    {
        var reading = Read(Workbook(new Sheet("S", [["No", "Latitude", "Longitude", "Length", "Width"], ["1", 14.2, -4.2, 100, 3], ["2", 14.21, -4.2, 100, 3]]) { HiddenColumns = [5], HiddenRows = [3] }));
        Assert.Equal([3.0, 3.0], reading.Sites.Select(s => s.WidthM));
        Assert.Equal(2, reading.Diagnostics.Count(d => d is { Code: "TK124", Severity: Severity.Warning }));
        var book = TableReader.Read(Book.Of(new Sheet("S", [["No", "Latitude", "Longitude", "Length"], ["1", 14.2, -4.2, 100]]) { IsHidden = true }), "a.xlsx").Value!;
        Assert.Contains(SiteListReader.Read(book, Defaults, _ => null).Diagnostics, d => d.Code == "TK124");
    }

    [Fact]
    public void AnglesInPartsAreJoined()
    {
        var reading = Read(Csv("No,Lat d,Lat m,Lat s,Lon d,Lon m,Length\n1,14,15,3,-4,30,100\n"));
        Assert.Equal(2, reading.Diagnostics.Count(d => d.Code == "TK180"));
        var site = Assert.Single(reading.Sites);
        Assert.Equal((14.2508333, -4.5), (site.LatitudeDegrees, site.LongitudeDegrees));
        Assert.DoesNotContain(Map("No,Lat d,Lon d,Length\n1,14,-4,100\n").Diagnostics, d => d.Code == "TK180");
    }

    [Fact]
    public void PositionsAreHeldAgainstEachOther()
    {
        const string head = "No,Name,District,Latitude,Longitude,Length\n";
        const string five = "1,A,K,14.20,-4.2,99\n2,B,K,14.21,-4.2,99\n3,C,K,14.22,-4.2,99\n4,D,L,14.60,-4.2,99\n5,E,L,14.61,-4.2,99\n";
        Assert.Contains(Read(Csv(head + five + "6,F,K,-4.25,14.2,99\n")).Diagnostics, d => d is { Code: "TK178", Severity: Severity.Warning });
        var exchanged = Read(Csv(head + five + "6,F,K,-4.25,14.2,99\n7,G,K,-14.2,-4.2,99\n8,H,K,-121.5,14,99\n"));
        Assert.Equal([(14.2, -4.25), (14.2, -4.2)], exchanged.Sites.Skip(5).Select(s => (s.LatitudeDegrees, s.LongitudeDegrees)));
        Assert.Contains(exchanged.Diagnostics, d => d is { Code: "TK188", Severity: Severity.Error });
        var missing = Read(Csv(head + five + "6,F,L,,,99\n"));
        var said = Assert.Single(missing.Diagnostics, d => d.Code == "TK177");
        Assert.Contains("2 other sites of L", said.Message, StringComparison.Ordinal);
        Assert.False(missing.Sites[^1].IsPositionStated);
        Assert.Equal("TK182", Assert.Single(Read(Csv(head + "1,A,K,14.2,-4.2,99\n2,B,K,40.2,50.2,99\n3,C,K,,,99\n")).Diagnostics, d => d.Severity == Severity.Error).Code);
    }

    [Fact]
    public void SitesThatMayBeOneAreSaid()
    {
        const string head = "No,Name,Latitude,Longitude,Length\n";
        Assert.Equal("TK127", Assert.Single(Read(Csv(head + "1,Market road,14.2,-4.2,99\n2,Market raod,14.2003,-4.2,99\n")).Diagnostics, d => d.Severity == Severity.Warning).Code);
        Assert.DoesNotContain(Read(Csv(head + "1,Market road 1,14.2,-4.2,99\n2,Market road 2,14.2003,-4.2,99\n3,Market road 1,14.8,-4.2,99\n")).Diagnostics, d => d.Code == "TK127");
        Assert.Equal(Severity.Note, Assert.Single(Read(Csv(head + "1,North,14.2,-4.2,99\n2,South,14.2,-4.2,99\n")).Diagnostics, d => d.Code == "TK127").Severity);
    }

    [Theory]
    [InlineData("36S", 36, 'S')]
    [InlineData("36 M", 36, 'M')]
    [InlineData("UTM zone 36 south", 36, 'S')]
    [InlineData("37", 37, null)]
    public void ZonesAreRead(string text, int number, char? letter) => Assert.Equal(new UtmZone(number, letter), UtmText.Zone(text));

    [Fact]
    public void GridPositionsSayWhatTheyAssume()
    {
        // 32 to 40 degrees north is band S, and the south has no land at such northings
        Assert.True(UtmText.Read(new(36, 'S'), 500_000, 4_000_000).Point!.Value.LatitudeDegrees > 36);
        Assert.True(UtmText.Read(new(36, 'S'), 500_000, 8_000_000).Point!.Value.LatitudeDegrees < -18);
        Assert.NotNull(UtmText.Read(new(36, null), 500_000, 1_000_000).Note);
        Assert.True(UtmText.Read(new(36, null), 500_000, 9_800_000).Point!.Value.LatitudeDegrees < 0);
        Assert.NotNull(UtmText.Read(new(36, 'N'), 5_000, 1_000_000).Problem);
        Assert.NotNull(UtmText.Read(new(36, 'N'), 500_000, 9_900_000).Problem);
        Assert.Null(UtmText.Zone("61N"));
        Assert.Equal("TK179", Assert.Single(Read(Csv("No,Easting,Northing,Length\n1,365020,1575826,99\n")).Diagnostics, d => d.Severity == Severity.Error).Code);
        Assert.Equal(new GeoPoint(14.2508, -4.2512), Rounded(UtmText.OneCell("30P 365020.2689 1575826.6758")!.Value.Point!.Value)); // PROJ 9.1.1, recomputed
    }

    [Fact]
    public void SavedColumnsWin()
    {
        var found = Map("No,Latitude,Longitude,Length,Span\n1,14,-4,100,7\n");
        var problems = new List<Diagnostic>();
        var saved = SavedColumns.Read(SavedColumns.Text([found], SiteColumns.All).Replace("heading: \"Span\", meaning: ignore", "heading: \"Span\", meaning: width, unit: ft", StringComparison.Ordinal), "columns.yaml", problems);
        Assert.Empty(problems);
        var applied = saved.Apply(found, SiteColumns.All);
        Assert.Equal(("Span", "ft", true), (applied.Of(SiteColumns.Width)!.Heading, applied.Of(SiteColumns.Width)!.Unit, applied.Of(SiteColumns.Width)!.IsConfirmed));
        Assert.DoesNotContain(applied.Diagnostics, d => d.Code == "TK175");
        Assert.Contains(saved.Apply(Map("No,Latitude,Longitude,Length\n1,14,-4,100\n"), SiteColumns.All).Diagnostics, d => d is { Code: "TK129", Severity: Severity.Warning });
    }

    private static GeoPoint Rounded(GeoPoint p) => new(Math.Round(p.LatitudeDegrees, 7), Math.Round(p.LongitudeDegrees, 7));

    private static Table Csv(string text) => TableReader.Read(Encoding.UTF8.GetBytes(text), "a.csv").Value!.Tables[0];

    private static Table Workbook(Sheet sheet) => TableReader.Read(Book.Of(sheet), "a.xlsx").Value!.Tables[0];

    private static ColumnMapping Map(string csv) => ColumnMap.Find(Csv(csv), SiteColumns.All);

    private static SiteListReading Read(Table table) => SiteListReader.Read(table, Defaults, _ => null, ["P4"]);
}

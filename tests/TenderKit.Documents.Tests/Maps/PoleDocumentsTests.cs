using System.Text;
using TenderKit.Documents.Maps;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Tables;
using TenderKit.Tendering.Positions;
using Xunit;

namespace TenderKit.Documents.Tests.Maps;

public sealed class PoleDocumentsTests
{
    private static readonly PoleSchedule Schedule = new(
    [
        Pole("S1-P01", "S1", "Rue de l'\u00C9cole, nord", new(new(14.25080001, -4.25120002), 90, 12.5, PoleSide.Left, "")),
        Pole("S1-P02", "S1", "Rue de l'\u00C9cole, nord", new(new(14.2512, -4.2512), 270, 37.5, PoleSide.Right, "moved 1.5 m along the road to keep clear of a junction")),
        Pole("S2-P01", "S2", "=1+1 <b>", new(new(-0.5, 179.99999), 0, 0, PoleSide.Drawn, "")),
    ], []);

    [Fact]
    public void CsvIsReadBackWithEveryPole()
    {
        var rows = TableReader.Read(PoleDocuments.Csv(Schedule), "poles.csv").Value!.Tables[0].Rows;
        Assert.Equal(4, rows.Length);
        Assert.Equal(["S1-P01", "S1", "Rue de l'\u00C9cole, nord", "K1", "14.25080001", "-4.25120002", "90", "left", "12.5", "6", ""], rows[1].Select(c => c.Text));
        Assert.Equal("'=1+1 <b>", rows[3][2].Text);
    }

    [Theory]
    [InlineData("poles.geojson")]
    [InlineData("poles.kml")]
    public void MapsAreReadBackWithEveryPole(string name)
    {
        var bytes = name.EndsWith("kml", StringComparison.Ordinal) ? PoleDocuments.Kml(Schedule) : PoleDocuments.GeoJson(Schedule);
        var features = MapReader.Read(bytes, name).Value!.Features;
        Assert.Equal(Schedule.Poles.Select(p => p.Position.Point), features.Select(f => f.Parts[0][0]));
        Assert.All(features, f => Assert.Equal(MapShape.Point, f.Shape));
        Assert.Contains("S1-P02", Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        Assert.Equal(bytes, name.EndsWith("kml", StringComparison.Ordinal) ? PoleDocuments.Kml(Schedule) : PoleDocuments.GeoJson(Schedule));
    }

    private static ScheduledPole Pole(string id, string site, string name, PolePosition position) => new(id, site, name, "K1", 6, position);
}

using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Columns;

public sealed class ColumnMapTests
{
    [Theory]
    [InlineData("Latitude", SiteColumns.Latitude, null)]
    [InlineData("LATITUD", SiteColumns.Latitude, null)]
    [InlineData("Length (m)", SiteColumns.Length, "m")]
    [InlineData("Length, m", SiteColumns.Length, "m")]
    [InlineData("Longueur en m", SiteColumns.Length, "m")]
    [InlineData("Longueur [km]", SiteColumns.Length, "km")]
    [InlineData("Longitud (m)", SiteColumns.Length, "m")]
    [InlineData("Longitud", SiteColumns.Longitude, null)]
    [InlineData("Width [ft]", SiteColumns.Width, "ft")]
    [InlineData("Ancho (m)", SiteColumns.Width, "m")]
    [InlineData("Largura", SiteColumns.Width, null)]
    [InlineData("Extens\u00E3o (m)", SiteColumns.Length, "m")]
    [InlineData("Shading (%)", SiteColumns.Shading, "%")]
    [InlineData("Shading %", SiteColumns.Shading, "%")]
    [InlineData("Hauteur de feu (m)", SiteColumns.MountingHeight, "m")]
    [InlineData("Vitesse du vent (km/h)", SiteColumns.Wind, "km/h")]
    [InlineData("No. of poles", SiteColumns.Poles, null)]
    [InlineData("N\u00B0", SiteColumns.Id, null)]
    [InlineData("N\u00BA", SiteColumns.Id, null)]
    [InlineData("S.No.", SiteColumns.Id, null)]
    [InlineData("\u00C9clairement moyen (lux)", SiteColumns.AverageLux, "lux")]
    [InlineData("Longitude (decimal degrees)", SiteColumns.Longitude, null)]
    [InlineData("Clase de alumbrado", SiteColumns.LightClass, null)]
    public void SameWordsAreUnderstood(string heading, string meaning, string? unit)
    {
        var fit = HeadingMatch.Fits(heading, SiteColumns.All)[0];
        Assert.Equal(meaning, fit.Meaning.Id);
        Assert.Equal(unit, fit.Unit);
        Assert.True(fit.Score >= 0.95);
    }

    [Theory]
    [InlineData("Lenght (m)", SiteColumns.Length)]
    [InlineData("Latitute", SiteColumns.Latitude)]
    [InlineData("Longtitude", SiteColumns.Longitude)]
    [InlineData("Proposed length of the road section (m)", SiteColumns.Length)]
    [InlineData("Remarks by the engineer", SiteColumns.Remark)]
    public void LikeWordsAreUnderstoodWithALowerScore(string heading, string meaning)
    {
        var fit = HeadingMatch.Fits(heading, SiteColumns.All)[0];
        Assert.Equal(meaning, fit.Meaning.Id);
        Assert.InRange(fit.Score, HeadingMatch.LeastScore, 0.99);
    }

    [Theory]
    [InlineData("Population")]
    [InlineData("Contractor")]
    [InlineData("Budget code approved")]
    public void OtherWordsAreNot(string heading) => Assert.Empty(HeadingMatch.Fits(heading, SiteColumns.All));

    [Fact]
    public void HeaderRowIsFoundBelowTitles()
    {
        var mapping = Map("Site list for lot 1\n\nDate,2026-01-01\nNo,Latitude,Longitude,Length (m),Population\n1,14.2,-4.1,250,900\n");
        Assert.Equal(4, mapping.HeaderRow);
        Assert.Equal(5, mapping.FirstDataRow);
        var length = mapping.Of(SiteColumns.Length)!;
        Assert.Equal((4, "Length (m)", "m", 1.0, "250"), (length.Column, length.Heading, length.Unit, length.Score, length.Sample));
        var note = Assert.Single(mapping.Diagnostics, d => d.Code == "TK175");
        Assert.Equal(("Population", 4), (note.Place.Column, note.Place.Row));
    }

    [Fact]
    public void GroupedHeadingsAndUnitRowsAreJoined()
    {
        var grouped = Map("No,Name,Position,,Length\n,,Lat,Long,\n1,A,14.2,-4.1,250\n");
        Assert.Equal(3, grouped.FirstDataRow);
        Assert.Equal((3, 4), (grouped.Of(SiteColumns.Latitude)!.Column, grouped.Of(SiteColumns.Longitude)!.Column));
        var units = Map("No,Lat,Long,Length,Width\n,,,km,(ft)\n1,14.2,-4.1,0.25,12\n");
        Assert.Equal(3, units.FirstDataRow);
        Assert.Equal(("km", "ft"), (units.Of(SiteColumns.Length)!.Unit, units.Of(SiteColumns.Width)!.Unit));
    }

    [Fact]
    public void DoubtsAreSaid()
    {
        Assert.Equal(["TK171"], Map("a,b\n1,2\n").Diagnostics.Select(d => d.Code));
        Assert.Null(Map("a,b\n1,2\n").HeaderRow);
        var twice = Map("No,Length,Road length,Width (chains)\n1,2,3,4\n");
        Assert.Equal("Length", twice.Of(SiteColumns.Length)!.Heading);
        Assert.Equal(["TK172", "TK176"], twice.Diagnostics.Select(d => d.Code).Order(StringComparer.Ordinal));
        var alike = Map("No,Latitude,Longitude,Poles,Length or width\n1,2,3,4,5\n");
        Assert.Equal(Severity.Warning, Assert.Single(alike.Diagnostics, d => d.Code == "TK174").Severity);
        Assert.Contains(Map("No,Lenght\n1,2\n").Diagnostics, d => d.Code == "TK173" && d.Message.Contains("0.83", StringComparison.Ordinal));
        Assert.Contains(Map("No,Length,\n1,2,stray\n").Diagnostics, d => d.Code == "TK175" && d.Severity == Severity.Warning);
    }

    private static ColumnMapping Map(string csv) =>
        ColumnMap.Find(TableReader.Read(Encoding.UTF8.GetBytes(csv), "a.csv").Value!.Tables[0], SiteColumns.All);
}

using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Specification;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Tendering.Tests.Specification;

public sealed class ClauseTests
{
    private const string Head = "clause,item,property,comparison,value,unit,text\n";

    private static Outcome<Clauses> Read(string rows)
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        File.WriteAllText(path, Head + rows);
        try
        {
            return ClauseReader.Read(TableReader.Read(path).Value!);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static Clause One(string row)
    {
        var read = Read(row);
        Assert.Empty(read.Diagnostics);
        return Assert.Single(read.Value!.All);
    }

    private static readonly PoleParts _parts = HandMadeDesign.Small().Kits[0].Parts;

    [Theory]
    [InlineData("4.1,battery,rated energy,at least,1.2 kWh,,", 1200)]
    [InlineData("4.1,battery,rated energy,at least,1.2,kWh,", 1200)]
    [InlineData("4.1,battery,warranty,at least,5 years,,", 5)]
    [InlineData("4.1,luminaire,ip,at least,IP66,,", 66)]
    [InlineData("4.1,luminaire,efficacy,at least,130 lm/W,,", 130)]
    [InlineData("4.1,controller,efficiency,at least,95 %,,", 95)]
    [InlineData("4.1,pole,wall,at least,3 mm,,", 3)]
    [InlineData("4.1,energy,autonomy,at least,3 nights,,", 3)]
    public void AValueIsReadWithItsUnit(string row, double value) => Assert.Equal(value, One(row).Value!.Value, 6);

    [Fact]
    public void AnUnknownWordNamesTheNearestAndTheRow()
    {
        var read = Read("4.1,batery,cycles,at least,100,,\n4.2,battery,cycle,at least,100,,\n4.3,battery,cycles,at least,100,,\n");
        Assert.Equal(["TK645", "TK645"], read.Diagnostics.Select(d => d.Code));
        Assert.Contains("did you mean 'battery'", read.Diagnostics[0].Message, StringComparison.Ordinal);
        Assert.Contains("did you mean 'cycles'", read.Diagnostics[1].Message, StringComparison.Ordinal);
        Assert.Equal([2, 3], read.Diagnostics.Select(d => d.Place.Row!.Value));
        Assert.Equal("4.3", Assert.Single(read.Value!.All).Number);
    }

    [Theory]
    [InlineData("4.1,battery,chemistry,at least,gel,,", "TK646")]
    [InlineData("4.1,controller,dimming,equals,1,,", "TK646")]
    [InlineData("4.1,battery,rated energy,at least,heavy,,", "TK647")]
    [InlineData("4.1,luminaire,efficacy,at least,100,lx,", "TK647")]
    [InlineData("4.1,battery,chemistry,one of,,,", "TK647")]
    public void AValueOrComparisonThatDoesNotSuitIsAnError(string row, string code) => Assert.Equal(code, Assert.Single(Read(row).Diagnostics).Code);

    [Fact]
    public void AMissingColumnIsAnError()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        File.WriteAllText(path, "clause,item,property\n4.1,battery,cycles\n");
        var read = ClauseReader.Read(TableReader.Read(path).Value!);
        File.Delete(path);
        Assert.Equal("TK644", Assert.Single(read.Diagnostics).Code);
    }

    [Fact]
    public void AClauseWithoutPropertyIsLeftToTheBidder()
    {
        var read = Read("7.2,,,,,,The bidder shall train two electricians\n");
        Assert.Equal("TK649", Assert.Single(read.Diagnostics).Code);
        Assert.Equal("The bidder shall train two electricians", Assert.Single(read.Value!.Statements).Text);
    }

    [Fact]
    public void WordsAndNumbersDecideAlikeInFilterAndTable()
    {
        var battery = _parts.Battery;
        Assert.Equal(battery.Chemistry == TenderKit.Sizing.Energy.BatteryChemistry.LithiumIronPhosphate, ClauseChecks.Of(One("4.1,battery,chemistry,one of,LFP;LiFePO4,,"), battery)!.Complies);
        Assert.False(ClauseChecks.Of(One("4.1,battery,chemistry,equals,nickel,,"), battery)!.Complies);
        var check = ClauseChecks.Of(One(FormattableString.Invariant($"4.2,battery,cycles,at least,{battery.CyclesAtDepth + 1},,")), battery)!;
        Assert.False(check.Complies);
        Assert.Equal("4.2", check.Clause);
        Assert.Null(ClauseChecks.Of(One("4.2,pole,zinc,at least,10 um,,"), battery));
    }

    [Fact]
    public void NoPartMeetingAClauseNamesTheNearestMissAndTheChoiceGoesOn()
    {
        var catalog = HandMadeDesign.Small().Catalog;
        var problems = new List<Diagnostic>();
        var most = catalog.Batteries.Max(b => b.CyclesAtDepth);
        var clauses = Read(FormattableString.Invariant($"4.1,battery,cycles,at least,{most + 500},,\n")).Value!;
        Assert.Equal(catalog.Batteries.Length, ClauseFilter.Run(catalog, clauses, problems).Batteries.Length);
        var problem = Assert.Single(problems);
        Assert.Equal("TK648", problem.Code);
        Assert.Contains("nearest miss " + catalog.Batteries.First(b => b.CyclesAtDepth == most).Code, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheFilterKeepsExactlyThePartsWhoseChecksComply()
    {
        var catalog = HandMadeDesign.Small().Catalog;
        var median = catalog.Batteries.Select(b => b.CyclesAtDepth).Order().ElementAt(catalog.Batteries.Length / 2);
        var clauses = Read(FormattableString.Invariant($"4.1,battery,cycles,at least,{median},,\n")).Value!;
        var kept = ClauseFilter.Run(catalog, clauses, []).Batteries;
        Assert.Equal(catalog.Batteries.Where(b => b.CyclesAtDepth >= median).Select(b => b.Code), kept.Select(b => b.Code));
    }

    [Fact]
    public void ClausesOfReliabilityMakeTheTenderHarderNeverEasier()
    {
        var asked = new ReliabilityTarget(1, 3);
        Assert.Equal(new ReliabilityTarget(0.5, 4), Read("1,energy,autonomy,at least,4,,\n2,energy,dark nights,at most,0.5,,\n").Value!.Harder(asked));
        Assert.Equal(asked, Read("1,energy,autonomy,at least,2,,\n2,energy,dark nights,at most,3,,\n").Value!.Harder(asked));
    }
}

using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using Xunit;

namespace TenderKit.Tendering.Tests.Settings;

/// <summary>Lighting schedules as written in files.</summary>
public sealed class ScheduleFileTests
{
    private const string Village = """
        parts:
          - { from: dusk, for: 4 h, level: 100 % }
          - { around: midnight, for: 3 h, level: 60 %, presence: 30 % }
          - { rest: 20 % }
        seasons:
          - { from: 1 Nov, to: 31 Mar, parts: [ { from: dusk, for: 6 h }, { rest: 40 % } ] }
          - from: 15-06
            to: 31/8
            parts: []
        """;

    [Fact]
    public void Parts_seasons_and_presence()
    {
        var schedule = Read(Village, null, out var problems)!;
        Assert.Empty(problems);
        Assert.Equal("night", schedule.Name);
        Assert.Equal(0.3, schedule.Parts[1].PresenceFraction);
        Assert.Equal([1.0, 1.0], schedule.Parts.Where(p => p.LevelFraction == 1).Select(p => p.PresenceFraction).Append(1.0));
        Assert.Equal((305, 90), (schedule.Seasons[0].FromDayOfYear, schedule.Seasons[0].ToDayOfYear));
        Assert.Equal(0.4, schedule.Seasons[0].RestLevelFraction);
        Assert.Equal((166, 243), (schedule.Seasons[1].FromDayOfYear, schedule.Seasons[1].ToDayOfYear));
        Assert.Empty(schedule.Seasons[1].Parts); // no light at all in that season
    }

    [Fact]
    public void The_list_form_has_no_seasons()
    {
        var schedule = Read("schedules:\n  evening:\n    - { from: dusk, for: 5 h }\n", null, out var problems)!;
        Assert.Empty(problems);
        Assert.Equal("evening", schedule.Name);
        Assert.Empty(schedule.Seasons);
        Assert.Equal(5, schedule.Parts[0].ToOffsetH);
    }

    [Fact]
    public void One_of_several_is_named()
    {
        const string Two = "tender: { title: x }\nschedules:\n  evening:\n    - { from: dusk, for: 5 h }\n  all:\n    seasons: [ { from: 1 Jun, to: 31 Aug, parts: [ { rest: 10 % } ] } ]\n    parts: [ { rest: 100 % } ]\n";
        Assert.Equal(0.1, Assert.Single(Read(Two, "all", out var problems)!.Seasons).RestLevelFraction);
        Assert.Empty(problems);
        Assert.Null(Read(Two, null, out problems));
        Assert.Contains("evening, all", Assert.Single(problems).Message, StringComparison.Ordinal);
        Assert.Null(Read(Two, "none", out problems));
        Assert.Equal("TK117", Assert.Single(problems).Code);
    }

    [Theory]
    [InlineData("1 Nov", 305)]
    [InlineData("Nov 1", 305)]
    [InlineData("1-Nov", 305)]
    [InlineData("01 november", 305)]
    [InlineData("1. Nov.", 305)]
    [InlineData("1 novembre", 305)]
    [InlineData("1 de noviembre", 305)]
    [InlineData("31-03", 90)]
    [InlineData("03-31", 90)]
    [InlineData("31/3", 90)]
    [InlineData("11-11", 315)]
    [InlineData("29 Feb", 59)]
    public void Days_and_months(string text, int dayOfYear) => Assert.Equal(new DayMonth(dayOfYear, null), DayMonth.Read(text));

    [Theory]
    [InlineData("11-01", "may be 11 Jan or 1 Nov")]
    [InlineData("1/2", "may be 1 Feb or 2 Jan")]
    [InlineData("30 Feb", "no day of the year")]
    [InlineData("31-31", "no day of the year")]
    [InlineData("0-11", "no day of the year")]
    [InlineData("winter", "no day of the year")]
    [InlineData("1 Winter", "no month")]
    [InlineData("2027-11-01", "no day of the year")]
    public void Days_that_cannot_be_read(string text, string why)
    {
        var read = DayMonth.Read(text);
        Assert.Null(read.DayOfYear);
        Assert.Contains(why, read.Problem!, StringComparison.Ordinal);
        Assert.Contains("1 Nov", read.Problem!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("from: 1 Nov", "from: 11-01", "TK115")]
    [InlineData("from: 1 Nov, to", "form: 1 Nov, to", "TK111")]
    [InlineData("from: 1 Nov, to: 31 Mar", "from: 1 Nov", "TK113")]
    [InlineData("presence: 30 %", "presence: 130 %", "TK115")]
    [InlineData("{ rest: 20 % }", "{ rest: 20 %, presence: 10 % }", "TK111")]
    [InlineData("parts: []", "part: []", "TK111")]
    [InlineData("seasons:", "season:", "TK111")]
    [InlineData("{ from: dusk, for: 6 h }", "{ from: noon, for: 6 h }", "TK115")]
    public void Each_fault_is_an_error_with_its_line(string from, string to, string code)
    {
        Assert.Contains(from, Village, StringComparison.Ordinal);
        Read(Village.Replace(from, to, StringComparison.Ordinal), null, out var problems);
        Assert.Contains(problems, d => d.Code == code && d.Place.Row > 0);
    }

    [Fact]
    public void No_light_in_any_season_is_an_error()
    {
        Read("parts: [ { rest: 0 % } ]\nseasons: [ { from: 1 Jun, to: 1 Jul, parts: [] } ]\n", null, out var problems);
        Assert.Equal("TK115", Assert.Single(problems).Code);
        Read("parts: []\nseasons: [ { from: 1 Jun, to: 1 Jul, parts: [ { rest: 50 % } ] } ]\n", null, out problems);
        Assert.Empty(problems);
    }

    [Fact]
    public void A_file_without_a_schedule_says_so()
    {
        Assert.Null(Read("lamps: 3\n", null, out var problems));
        Assert.Equal("TK113", Assert.Single(problems).Code);
        Assert.Null(Read(": : :", null, out problems));
        Assert.Equal("TK110", Assert.Single(problems).Code);
    }

    private static LightingSchedule? Read(string text, string? name, out List<Diagnostic> problems)
    {
        problems = [];
        return ScheduleFile.Read(text, "night.yaml", name, problems);
    }
}

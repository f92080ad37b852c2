using TenderKit.Documents.Schedule;
using TenderKit.Sizing.Energy;
using Xunit;

namespace TenderKit.Documents.Tests.Schedule;

public class ScheduleWordsTests
{
    [Fact]
    public void The_whole_night() => Assert.Equal("the whole night at 100 %", ScheduleWords.Of(LightingSchedule.DuskToDawn));

    [Fact]
    public void Presence_classes_and_seasons()
    {
        var schedule = new LightingSchedule(
            "village",
            [new SchedulePart(NightAnchor.Dusk, 0, NightAnchor.Dusk, 4, 1), new SchedulePart(NightAnchor.Midnight, -1.5, NightAnchor.Midnight, 1.5, 0.6, 0.3, "P5")],
            0.2)
        {
            Seasons = [new ScheduleSeason(305, 90, [], 0.4, "P6"), new ScheduleSeason(166, 243, [], 0)],
        };
        Assert.Equal(
            "1 Nov to 31 Mar: the whole night at 40 %, class P6. 15 Jun to 31 Aug: no light. Other nights: dusk to dusk + 4 h at 100 %; "
            + "midnight − 1.5 h to midnight + 1.5 h at 60 %, called for 30 % of the time, class P5; rest of the night at 20 %",
            ScheduleWords.Of(schedule));
    }
}

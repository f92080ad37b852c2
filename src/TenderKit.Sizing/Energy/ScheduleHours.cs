using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Turns a schedule and the nights of a year into lamp hours.</summary>
public static class ScheduleHours
{
    /// <summary>Exact within the hour: an hour half dark at full level counts 0.5.</summary>
    public static LampHours For(LightingSchedule schedule, ImmutableArray<NightOfYear> nights) => throw new NotImplementedException();
}

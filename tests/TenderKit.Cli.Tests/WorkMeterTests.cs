using Xunit;

namespace TenderKit.Cli.Tests;

/// <summary>How far long work has come.</summary>
public class WorkMeterTests
{
    private readonly Clock _clock = new();
    private readonly List<string> _lines = [];
    private readonly List<string> _screen = [];

    [Fact]
    public void Short_work_says_nothing()
    {
        var meter = new WorkMeter(_lines.Add, null, "sites", 14, _clock);
        for (var i = 0; i < 14; i++) Advance(meter, 0.1);
        Assert.Empty(_lines);
    }

    [Fact]
    public void Piped_it_says_a_plain_line_at_most_every_five_seconds()
    {
        var meter = new WorkMeter(_lines.Add, null, "sites", 100, _clock);
        for (var i = 0; i < 100; i++) Advance(meter, 0.5);
        Assert.Equal(9, _lines.Count);
        Assert.Equal("  10 of 100 sites, about 45 s left", _lines[0]);
        Assert.DoesNotContain(_lines, l => l.Contains('\r', StringComparison.Ordinal));
    }

    [Fact]
    public void On_a_screen_it_writes_over_its_line()
    {
        var meter = new WorkMeter(_lines.Add, _screen.Add, "sites", 1000, _clock);
        for (var i = 0; i < 10; i++) Advance(meter, 1);
        Assert.Empty(_lines);
        Assert.Equal(9, _screen.Count);
        Assert.Equal("  2 of 1000 sites, about 17 min left", _screen[0]);
    }

    private void Advance(WorkMeter meter, double seconds)
    {
        _clock.Ticks += (long)(seconds * TimeSpan.TicksPerSecond);
        meter.Advance();
    }

    private sealed class Clock : TimeProvider
    {
        public long Ticks { get; set; }

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => Ticks;
    }
}

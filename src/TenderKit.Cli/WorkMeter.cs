using System.Globalization;

namespace TenderKit.Cli;

/// <summary>
/// Says how far long work has come: nothing in the first two seconds; then one line that is written over on a screen, and plain lines
/// at most every five seconds where the stream goes into a file. Safe to call from several threads.
/// </summary>
/// <param name="say">Takes a whole line.</param>
/// <param name="onScreen">Takes a line to be written over; null where nothing may be.</param>
internal sealed class WorkMeter(Action<string> say, Action<string>? onScreen, string unit, int total, TimeProvider time)
{
    private static readonly TimeSpan _quiet = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan _betweenLines = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan _betweenScreens = TimeSpan.FromSeconds(0.5);

    private readonly Lock _gate = new();
    private readonly long _start = time.GetTimestamp();
    private TimeSpan _last = TimeSpan.Zero;
    private int _done;

    /// <summary>One more is done.</summary>
    public void Advance()
    {
        lock (_gate)
        {
            _done++;
            var elapsed = time.GetElapsedTime(_start);
            if (elapsed < _quiet || _done >= total || elapsed - _last < (onScreen is null ? _betweenLines : _betweenScreens)) return;
            _last = elapsed;
            (onScreen ?? say)(Line(elapsed));
        }
    }

    /// <summary>The line of the moment.</summary>
    private string Line(TimeSpan elapsed)
    {
        var left = elapsed * ((total - _done) / (double)_done);
        var words = left.TotalSeconds < 90 ? $"{Math.Ceiling(left.TotalSeconds):0} s" : $"{Math.Ceiling(left.TotalMinutes):0} min";
        return string.Create(CultureInfo.InvariantCulture, $"  {_done} of {total} {unit}, about {words} left");
    }
}

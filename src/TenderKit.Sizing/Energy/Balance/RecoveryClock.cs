namespace TenderKit.Sizing.Energy.Balance;

/// <summary>Measures recoveries day by day; see <see cref="RecoveryTimes"/>.</summary>
internal sealed class RecoveryClock
{
    private bool isOpen;
    private double lowest;
    private int daysSinceLowest;
    private int count;
    private int total;
    private int longest;

    public RecoveryTimes Times => count == 0 ? RecoveryTimes.None : new RecoveryTimes(count, longest, (double)total / count);

    /// <summary>The next day.</summary>
    /// <param name="leastWh">Its lowest store.</param>
    /// <param name="isDark">Whether an hour of it was served less than asked.</param>
    /// <param name="isFull">Whether it reached full charge.</param>
    public void Pass(double leastWh, bool isDark, bool isFull)
    {
        if (isOpen)
        {
            daysSinceLowest++;
            if (isFull) Close();
        }

        if (!isDark && !isOpen) return;
        if (isOpen && leastWh > lowest) return;
        (isOpen, lowest, daysSinceLowest) = (true, leastWh, 0);
    }

    /// <summary>A spell that is still open when the years end counts for as long as it was seen.</summary>
    public void End()
    {
        if (isOpen) Close();
    }

    private void Close()
    {
        (count, total, longest) = (count + 1, total + daysSinceLowest, Math.Max(longest, daysSinceLowest));
        isOpen = false;
    }
}

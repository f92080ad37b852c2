namespace TenderKit.Sizing.Energy.Balance;

/// <summary>Measures recoveries day by day; see <see cref="RecoveryTimes"/>.</summary>
internal sealed class RecoveryClock
{
    private bool isOpen;
    private double lowest;
    private int daysSinceLowest;
    private int daysSinceDark;
    private bool isUnfinished;
    private int count;
    private int total;
    private int longest;

    public RecoveryTimes Times => count == 0 ? RecoveryTimes.None : new RecoveryTimes(count, longest, (double)total / count) { IsUnfinished = isUnfinished };

    /// <summary>The next day.</summary>
    /// <param name="leastWh">Its lowest store.</param>
    /// <param name="isDark">Whether an hour of it was served less than asked.</param>
    /// <param name="isFull">Whether it reached full charge.</param>
    public void Pass(double leastWh, bool isDark, bool isFull)
    {
        if (isOpen)
        {
            daysSinceLowest++;
            daysSinceDark++;
            if (isFull) Close(daysSinceLowest);
        }

        if (!isDark && !isOpen) return;
        if (isOpen && leastWh > lowest) return;
        if (!isOpen) daysSinceDark = 0;
        (isOpen, lowest, daysSinceLowest) = (true, leastWh, 0);
    }

    /// <summary>A spell that is not over when the years end counts from its first dark day, that day included.</summary>
    public void End()
    {
        isUnfinished = isOpen;
        if (isOpen) Close(daysSinceDark + 1);
    }

    private void Close(int days)
    {
        (count, total, longest) = (count + 1, total + days, Math.Max(longest, days));
        isOpen = false;
    }
}

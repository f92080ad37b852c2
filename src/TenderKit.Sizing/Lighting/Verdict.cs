namespace TenderKit.Sizing.Lighting;

/// <summary>How a layout stands against a target at the level it would be run at.</summary>
/// <param name="LevelFraction">Lowest level that meets average and minimum, to the next whole per cent; not below the driver's least.</param>
/// <param name="Margin">Least of reached over required (for the ceiling, allowed over reached); 1 or more when every limit is met.</param>
/// <param name="Limit">The limit with that least margin, in words.</param>
internal readonly record struct Verdict(double LevelFraction, double Margin, string Limit)
{
    public bool Met => Margin >= 1;

    public static Verdict Of(LightResult full, LightTarget target, double leastLevel)
    {
        ArgumentNullException.ThrowIfNull(target);
        var level = Level(full, target, leastLevel);
        var verdict = new Verdict(level, Ratio(full.AverageLx * level, target.AverageLx), "average illuminance");
        if (target.MinimumLx is { } minimum) verdict = verdict.Or(Ratio(full.MinimumLx * level, minimum), "minimum illuminance");
        if (target.OverallUniformity is { } uniformity) verdict = verdict.Or(Ratio(full.OverallUniformity, uniformity), "overall uniformity");
        if (target.AverageCeilingLx is { } ceiling) verdict = verdict.Or(Ratio(ceiling, full.AverageLx * level), "ceiling of the average illuminance");
        return verdict;
    }

    private Verdict Or(double margin, string limit) => margin < Margin ? this with { Margin = margin, Limit = limit } : this;

    private static double Level(LightResult full, LightTarget target, double leastLevel)
    {
        var needed = Math.Max(LevelFor(full.AverageLx, target.AverageLx), LevelFor(full.MinimumLx, target.MinimumLx ?? 0));
        var exact = Math.Clamp(needed, leastLevel, 1);
        var wholePercent = Math.Clamp(Math.Ceiling((exact * 100) - 1e-9) / 100, exact, 1);
        return full.AverageLx * wholePercent <= target.AverageCeilingLx || target.AverageCeilingLx is null ? wholePercent : exact;
    }

    private static double LevelFor(double fullLx, double requiredLx)
    {
        if (requiredLx <= 0) return 0;
        if (fullLx <= 0) return 1;
        var level = requiredLx / fullLx;
        return level * fullLx < requiredLx ? Math.BitIncrement(level) : level;
    }

    private static double Ratio(double numerator, double denominator) => denominator > 0 ? numerator / denominator : double.PositiveInfinity;
}

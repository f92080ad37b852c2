using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>What a class asks of the maintained luminance of a dry carriageway; the wet limit of EN 13201-2 is not worked out.</summary>
/// <param name="AverageCdM2">Least average, cd/m2.</param>
/// <param name="OverallUniformity">Least Uo, fraction.</param>
/// <param name="LongitudinalUniformity">Least Ul, fraction, or null.</param>
public sealed record LuminanceTarget(double AverageCdM2, double OverallUniformity, double? LongitudinalUniformity);

/// <summary>What a class asks of disability glare.</summary>
/// <param name="IncrementFraction">Greatest threshold increment fTI, fraction (0.15 is 15 %).</param>
public sealed record GlareLimit(double IncrementFraction);

/// <summary>What a class asks of the hemispherical illuminance of the ground.</summary>
public sealed record HemisphericalTarget(double AverageLx, double OverallUniformity);

/// <summary>Everything a class asks of a strip; a measure not asked for is null. A user's own target is one of these as well.</summary>
/// <param name="Name">Name as printed, e.g. "M4".</param>
/// <param name="Source">Standard and table, or whose wish it is.</param>
public sealed record RoadClass(string Name, string Source)
{
    /// <summary>Horizontal illuminance.</summary>
    public LightTarget? Illuminance { get; init; }

    public LuminanceTarget? Luminance { get; init; }

    public GlareLimit? Glare { get; init; }

    /// <summary>Least edge illuminance ratio REI, fraction. Not asked for where the strips beside the carriageway have a class of their own.</summary>
    public double? EdgeRatio { get; init; }

    /// <summary>Least vertical illuminance 1.5 m up, lx.</summary>
    public double? MinimumVerticalLx { get; init; }

    /// <summary>Least semicylindrical illuminance 1.5 m up, lx.</summary>
    public double? MinimumSemicylindricalLx { get; init; }

    public HemisphericalTarget? Hemispherical { get; init; }

    /// <summary>Greatest glare rating of a work place, 10 to 90; a measure of areas (<see cref="GlareRating"/>), not of strips along a road.</summary>
    public int? GreatestGlareRating { get; init; }

    /// <summary>A class that asks for horizontal illuminance alone.</summary>
    public static RoadClass Of(LightTarget target)
    {
        ArgumentNullException.ThrowIfNull(target);
        return new RoadClass(target.Name, target.Source) { Illuminance = target };
    }

    /// <summary>The same class, once every value has been found possible: call it on a target a user wrote.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A luminance, illuminance or fraction no road could be asked for.</exception>
    public RoadClass Checked()
    {
        if (Luminance is { } luminance)
        {
            Require.InRange(luminance.AverageCdM2, 0.01, 20, nameof(LuminanceTarget.AverageCdM2));
            Fraction(luminance.OverallUniformity, nameof(LuminanceTarget.OverallUniformity));
            Fraction(luminance.LongitudinalUniformity, nameof(LuminanceTarget.LongitudinalUniformity));
        }

        Illuminances(Illuminance?.AverageLx, Illuminance?.MinimumLx, Illuminance?.AverageCeilingLx, Hemispherical?.AverageLx);
        Illuminances(MinimumVerticalLx, MinimumSemicylindricalLx);
        Fraction(Illuminance?.OverallUniformity, nameof(LightTarget.OverallUniformity));
        Fraction(Hemispherical?.OverallUniformity, nameof(HemisphericalTarget.OverallUniformity));
        Fraction(EdgeRatio, nameof(EdgeRatio));
        Fraction(Glare?.IncrementFraction, nameof(GlareLimit.IncrementFraction));
        return this;
    }

    private static void Fraction(double? value, string name)
    {
        if (value is { } fraction) Require.InRange(fraction, 0.001, 1, name);
    }

    private static void Illuminances(params ReadOnlySpan<double?> values)
    {
        foreach (var value in values)
        {
            if (value is { } lx) Require.InRange(lx, 0.01, 1000, "illuminance");
        }
    }
}

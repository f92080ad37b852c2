using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Poles on a line of given length, spread evenly, the first half a step from the end. Light is calculated for an endless road: the outer
/// half-step at a free end has a luminaire on one side only and is darker, which a line that ends at nothing must be told.
/// </summary>
public static class PoleLine
{
    /// <summary>Fewest poles whose spacing does not pass the one given. Check: 500 m at 35 m, single sided: 15.</summary>
    /// <param name="spacingM">Greatest spacing along one side, m.</param>
    public static int Count(double lengthM, double spacingM, Arrangement arrangement)
    {
        var bays = Require.Positive(lengthM, nameof(lengthM)) / Require.Positive(spacingM, nameof(spacingM));
        return arrangement switch
        {
            Arrangement.Opposite => 2 * Whole(bays),
            Arrangement.Staggered => Math.Max(2, Whole(2 * bays)),
            _ => Whole(bays),
        };
    }

    /// <summary>Spacing along one side of so many poles on the line, m. Check: 15 poles on 500 m, single sided: 33.33 m.</summary>
    public static double SpacingM(double lengthM, int poles, Arrangement arrangement)
    {
        Require.Positive(lengthM, nameof(lengthM));
        Require.InRange(poles, 1, 100_000, nameof(poles));
        return arrangement switch
        {
            Arrangement.Opposite => lengthM / Math.Max(1, poles / 2),
            Arrangement.Staggered => 2 * lengthM / poles,
            _ => lengthM / poles,
        };
    }

    private static int Whole(double bays) => Math.Max(1, (int)Math.Ceiling(bays - 1e-9));
}

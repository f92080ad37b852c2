using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Poles on a line of given length, spread evenly, the first half a step from the end. <see cref="Illuminance.OnRoad"/> takes the road for
/// endless; at a free end the last half-step is lit from one side only and is darker: <see cref="Illuminance.OnLine"/> shows by how much.
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

    /// <summary>Where the luminaires of the line stand, from its start; staggered poles change sides from one to the next.</summary>
    /// <param name="layout">Shape of the road; its spacing is ignored.</param>
    /// <param name="poles">Poles on the line; an odd number on an opposite line leaves one out.</param>
    public static ImmutableArray<LuminairePosition> Positions(RoadLayout layout, double lengthM, int poles)
    {
        ArgumentNullException.ThrowIfNull(layout);
        var spacingM = SpacingM(lengthM, poles, layout.Arrangement);
        return layout.Arrangement switch
        {
            Arrangement.Opposite => [.. Row(spacingM, Math.Max(1, poles / 2)).SelectMany(x => new[] { Near(layout, x), Far(layout, x) })],
            Arrangement.Staggered => [.. Row(spacingM / 2, poles).Select((x, i) => i % 2 == 0 ? Near(layout, x) : Far(layout, x))],
            _ => [.. Row(spacingM, poles).Select(x => Near(layout, x))],
        };
    }

    private static IEnumerable<double> Row(double stepM, int count) => Enumerable.Range(0, count).Select(i => (i + 0.5) * stepM);

    private static LuminairePosition Near(RoadLayout layout, double xM) => new(xM, layout.OverhangM, layout.MountingHeightM, 90, layout.TiltDegrees);

    private static LuminairePosition Far(RoadLayout layout, double xM) =>
        new(xM, layout.WidthM - layout.OverhangM, layout.MountingHeightM, 270, layout.TiltDegrees);

    private static int Whole(double bays) => Math.Max(1, (int)Math.Ceiling(bays - 1e-9));
}

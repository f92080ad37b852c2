using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>Side of the road the poles stand on, looking along its bearing.</summary>
public enum RoadSide
{
    Left,
    Right,
    Both,
}

/// <summary>
/// Where a module fixed to the lamp head faces: the road dictates it. The arm points across the road; the module may be tilted on it.
/// Arm and module turn about the same level axis, so their tilts add up.
/// </summary>
public static class Headings
{
    /// <summary>Step of the headings tried where the road's bearing is not known, degrees.</summary>
    public const double UnknownStepDegrees = 45;

    /// <summary>
    /// Directions the arms point in, degrees clockwise from north: to the right of the bearing from the left side, to the left from the right side.
    /// Without a bearing every 45 degrees. Check value: bearing 0 (north), poles on the left: 90 (east).
    /// </summary>
    /// <param name="roadBearingDegrees">Direction of the road, degrees clockwise from north, or null when it is not known.</param>
    public static ImmutableArray<double> OfRoad(double? roadBearingDegrees, RoadSide side)
    {
        if (roadBearingDegrees is not { } bearing) return [.. Enumerable.Range(0, 8).Select(i => i * UnknownStepDegrees)];
        Require.InRange(bearing, -360, 360, nameof(roadBearingDegrees));
        return side switch
        {
            RoadSide.Left => [Turn(bearing + 90)],
            RoadSide.Right => [Turn(bearing - 90)],
            _ => [Turn(bearing + 90), Turn(bearing - 90)],
        };
    }

    /// <summary>
    /// Plane of the module. Check value: arm to the east (90) rising 5 degrees, module tilted 20 degrees towards the road: 15 degrees facing 90;
    /// module flat on the arm: 5 degrees facing 270, back over the pole.
    /// </summary>
    /// <param name="armHeadingDegrees">Direction the arm points in, degrees clockwise from north.</param>
    /// <param name="armTiltDegrees">Rise of the arm towards its end, degrees, -30 to 60.</param>
    /// <param name="moduleTiltDegrees">Tilt of the module on the arm, positive where it faces more towards the arm's end, degrees, -90 to 90.</param>
    public static PlaneOrientation PlaneOf(double armHeadingDegrees, double armTiltDegrees, double moduleTiltDegrees)
    {
        Require.InRange(armHeadingDegrees, -360, 720, nameof(armHeadingDegrees));
        Require.InRange(armTiltDegrees, -30, 60, nameof(armTiltDegrees));
        Require.InRange(moduleTiltDegrees, -90, 90, nameof(moduleTiltDegrees));
        var towards = Require.InRange(moduleTiltDegrees - armTiltDegrees, -90, 90, nameof(moduleTiltDegrees));
        return towards >= 0
            ? new PlaneOrientation(towards, Turn(armHeadingDegrees))
            : new PlaneOrientation(-towards, Turn(armHeadingDegrees + 180));
    }

    /// <summary>Planes of all headings of a road.</summary>
    public static ImmutableArray<PlaneOrientation> PlanesOf(double? roadBearingDegrees, RoadSide side, double armTiltDegrees, double moduleTiltDegrees) =>
        [.. OfRoad(roadBearingDegrees, side).Select(h => PlaneOf(h, armTiltDegrees, moduleTiltDegrees))];

    /// <summary>0 to below 360.</summary>
    private static double Turn(double degrees) => ((degrees % 360) + 360) % 360;
}

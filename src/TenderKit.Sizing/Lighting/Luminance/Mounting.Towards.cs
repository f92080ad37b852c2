namespace TenderKit.Sizing.Lighting;

internal readonly partial struct Mounting
{
    /// <summary>
    /// Intensity towards a point (dx, dy) from the foot of the luminaire and <paramref name="dropM"/> below its photometric centre, cd: the
    /// direction is turned into the frame of the luminaire, so tilt is a rotation and never an addition of angles.
    /// Source: EN 13201-3:2015, clause 6 (rotation of the luminaire; clause from memory).
    /// </summary>
    public double IntensityCd(LightDistribution distribution, double dx, double dy, double dropM)
    {
        var distanceM = Math.Sqrt((dx * dx) + (dy * dy) + (dropM * dropM));
        var along = (dx * alongX) + (dy * alongY);
        var street = (dx * streetX) + (dy * streetY) - (dropM * streetZ);
        var down = (dx * downX) + (dy * downY) - (dropM * downZ);
        var plane = Math.Atan2(street, along) * DegreesPerRad;
        var gamma = Math.Acos(Math.Clamp(down / distanceM, -1, 1)) * DegreesPerRad;
        return distribution.IntensityCd(plane < 0 ? plane + 360 : plane, gamma);
    }
}

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
        var along = (dx * AlongX) + (dy * AlongY);
        var street = (dx * StreetX) + (dy * StreetY) - (dropM * StreetZ);
        var down = (dx * DownX) + (dy * DownY) - (dropM * DownZ);
        var plane = Math.Atan2(street, along) * DegreesPerRad;
        var gamma = Math.Acos(Math.Clamp(down / distanceM, -1, 1)) * DegreesPerRad;
        return distribution.IntensityCd(plane < 0 ? plane + 360 : plane, gamma);
    }
}

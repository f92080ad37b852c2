using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>The frame of a mounted luminaire: where its C 0, C 90 and gamma 0 point in the world, and its height.</summary>
internal readonly partial struct Mounting
{
    private const double DegreesPerRad = 180 / Math.PI;

    private readonly double heightM;
    private readonly double alongX;
    private readonly double alongY;
    private readonly double streetX;
    private readonly double streetY;
    private readonly double streetZ;
    private readonly double downX;
    private readonly double downY;
    private readonly double downZ;

    /// <summary>The street side axis is turned to its facing, then street side and down axes are turned by the tilt about the C 0 axis.</summary>
    public Mounting(double heightM, double facingDegrees, double tiltDegrees)
    {
        this.heightM = heightM;
        double facingX = Angle.CosDegrees(facingDegrees), facingY = Angle.SinDegrees(facingDegrees);
        double cos = Angle.CosDegrees(tiltDegrees), sin = Angle.SinDegrees(tiltDegrees);
        (alongX, alongY) = (facingY, -facingX);
        (streetX, streetY, streetZ) = (cos * facingX, cos * facingY, sin);
        (downX, downY, downZ) = (sin * facingX, sin * facingY, -cos);
    }

    /// <summary>
    /// Horizontal illuminance at a point (dx, dy) from the foot of the luminaire: E = I(C, gamma) cos^3(e) / H^2, e from the vertical
    /// of the world. Source: EN 13201-3:2015, 7.1 (from memory of the clause). Unit: lx. Check: 15 lx at 0.60 m gives 3.24 lx 0.80 m aside.
    /// </summary>
    public double IlluminanceLx(LightDistribution distribution, double dx, double dy)
    {
        var squared = (dx * dx) + (dy * dy) + (heightM * heightM);
        var distance = Math.Sqrt(squared);
        var along = (dx * alongX) + (dy * alongY);
        var street = (dx * streetX) + (dy * streetY) - (heightM * streetZ);
        var down = (dx * downX) + (dy * downY) - (heightM * downZ);
        var plane = Math.Atan2(street, along) * DegreesPerRad;
        if (plane < 0) plane += 360;
        var gamma = Math.Acos(Math.Clamp(down / distance, -1, 1)) * DegreesPerRad;
        return distribution.IntensityCd(plane, gamma) * heightM / (squared * distance);
    }
}

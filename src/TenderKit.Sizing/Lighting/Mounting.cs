using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>The frame of a mounted luminaire: where its C 0, C 90 and gamma 0 point in the world, and its height.</summary>
internal readonly partial struct Mounting
{
    private const double DegreesPerRad = 180 / Math.PI;

    /// <summary>The street side axis is turned to its facing, then street side and down axes are turned by the tilt about the C 0 axis.</summary>
    public Mounting(double heightM, double facingDegrees, double tiltDegrees)
    {
        HeightM = heightM;
        double facingX = Angle.CosDegrees(facingDegrees), facingY = Angle.SinDegrees(facingDegrees);
        double cos = Angle.CosDegrees(tiltDegrees), sin = Angle.SinDegrees(tiltDegrees);
        (AlongX, AlongY) = (facingY, -facingX);
        (StreetX, StreetY, StreetZ) = (cos * facingX, cos * facingY, sin);
        (DownX, DownY, DownZ) = (sin * facingX, sin * facingY, -cos);
    }

    public double HeightM { get; }

    /// <summary>Unit vector of C 0; it lies level.</summary>
    public double AlongX { get; }

    public double AlongY { get; }

    /// <summary>Unit vector of C 90.</summary>
    public double StreetX { get; }

    public double StreetY { get; }

    public double StreetZ { get; }

    /// <summary>Unit vector of gamma 0.</summary>
    public double DownX { get; }

    public double DownY { get; }

    public double DownZ { get; }

    /// <summary>
    /// Horizontal illuminance at a point (dx, dy) from the foot of the luminaire: E = I(C, gamma) cos^3(e) / H^2, e from the vertical
    /// of the world. Source: EN 13201-3:2015, 7.1 (from memory of the clause). Unit: lx. Check: 15 lx at 0.60 m gives 3.24 lx 0.80 m aside.
    /// </summary>
    public double IlluminanceLx(LightDistribution distribution, double dx, double dy)
    {
        var squared = (dx * dx) + (dy * dy) + (HeightM * HeightM);
        var distance = Math.Sqrt(squared);
        var along = (dx * AlongX) + (dy * AlongY);
        var street = (dx * StreetX) + (dy * StreetY) - (HeightM * StreetZ);
        var down = (dx * DownX) + (dy * DownY) - (HeightM * DownZ);
        var plane = Math.Atan2(street, along) * DegreesPerRad;
        if (plane < 0) plane += 360;
        var gamma = Math.Acos(Math.Clamp(down / distance, -1, 1)) * DegreesPerRad;
        return distribution.IntensityCd(plane, gamma) * HeightM / (squared * distance);
    }
}

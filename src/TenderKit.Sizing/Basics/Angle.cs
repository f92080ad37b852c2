namespace TenderKit.Sizing.Basics;

/// <summary>Conversions between degrees and radians; names elsewhere end in <c>Degrees</c> or <c>Rad</c>.</summary>
public static class Angle
{
    public const double DegreesToRad = Math.PI / 180;

    public static double ToRad(double degrees) => degrees * DegreesToRad;

    public static double ToDegrees(double rad) => rad / DegreesToRad;

    public static double SinDegrees(double degrees) => Math.Sin(degrees * DegreesToRad);

    public static double CosDegrees(double degrees) => Math.Cos(degrees * DegreesToRad);

    public static double TanDegrees(double degrees) => Math.Tan(degrees * DegreesToRad);

    /// <summary>The same direction in [0, 360).</summary>
    public static double Normalised(double degrees)
    {
        var r = degrees % 360;
        return r < 0 ? r + 360 : r;
    }
}

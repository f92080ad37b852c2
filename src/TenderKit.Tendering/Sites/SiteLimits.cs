namespace TenderKit.Tendering.Sites;

/// <summary>Limits at the door of a site list: outside them a unit, a sign or a decimal mark has slipped. Common practice, no source.</summary>
internal static class SiteLimits
{
    public const double LeastLengthM = 2;
    public const double GreatestLengthM = 50_000;
    public const double LeastWidthM = 0.5;

    /// <summary>Widest lit strip the light calculation takes, m; a yard may be as wide as it is long.</summary>
    public const double GreatestStripWidthM = 40;
    public const double LeastHeightM = 2;
    public const double GreatestHeightM = 20;

    /// <summary>Step between the heights of a range such as 5-6, m.</summary>
    public const double HeightStepM = 0.5;
    public const double LeastWindMPerS = 10;
    public const double GreatestWindMPerS = 90;
    public const double LeastLx = 0.1;
    public const double GreatestLx = 200;
    public const double GreatestShadedFraction = 0.9;
    public const double GreatestCoastKm = 5000;
    public const double GreatestTrafficKmPerH = 140;
    public const double LeastSoilKPaPerM = 5;
    public const double GreatestSoilKPaPerM = 200;
    public const double LeastBearingKPa = 20;
    public const double GreatestBearingKPa = 2000;
    public const int GreatestPoles = 5000;
}

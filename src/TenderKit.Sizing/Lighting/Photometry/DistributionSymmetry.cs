using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>Symmetry of a light distribution seen from above.</summary>
public enum DistributionSymmetry
{
    None,

    /// <summary>Equal left and right, along the road: I(C) = I(180 - C).</summary>
    LeftRight,

    /// <summary>Equal to the street side and the house side: I(C) = I(-C).</summary>
    StreetHouse,

    /// <summary>Both of these: four equal quadrants.</summary>
    Quadrants,

    /// <summary>The same all round.</summary>
    Rotational,
}

/// <summary>Finds the symmetry in the intensities themselves, whatever a file claims.</summary>
public static class SymmetryFinder
{
    /// <summary>Mirror images may differ by this part of the greatest intensity: files round to so much. Our choice, no source.</summary>
    private const double DefaultTolerance = 1e-3;

    /// <param name="toleranceFraction">Difference of mirror images allowed, fraction of the greatest intensity.</param>
    public static DistributionSymmetry Of(LightDistribution distribution, double toleranceFraction = DefaultTolerance)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        Require.InRange(toleranceFraction, 0, 1, nameof(toleranceFraction));
        var allowedCd = toleranceFraction * distribution.PeakIntensityCd;
        if (IsEqual(distribution, _ => 0, allowedCd)) return DistributionSymmetry.Rotational;
        var leftRight = IsEqual(distribution, c => 180 - c, allowedCd);
        var streetHouse = IsEqual(distribution, c => -c, allowedCd);
        if (leftRight) return streetHouse ? DistributionSymmetry.Quadrants : DistributionSymmetry.LeftRight;
        return streetHouse ? DistributionSymmetry.StreetHouse : DistributionSymmetry.None;
    }

    private static bool IsEqual(LightDistribution distribution, Func<double, double> image, double allowedCd)
    {
        foreach (var plane in distribution.PlanesDegrees)
        {
            foreach (var gamma in distribution.GammasDegrees)
            {
                if (Math.Abs(distribution.IntensityCd(plane, gamma) - distribution.IntensityCd(image(plane), gamma)) > allowedCd) return false;
            }
        }

        return true;
    }
}

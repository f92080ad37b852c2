namespace TenderKit.Sizing.Climate;

/// <summary>Irradiation of one hour on a tilted plane from its horizontal parts (D&amp;B, 5th ed., sections 2.15 and 2.16). Any unit of irradiation, the same for all.</summary>
public static class SkyModel
{
    /// <summary>Isotropic sky (Liu and Jordan). D&amp;B eq. 2.15.1. Check value: beam 0.244, diffuse 0.796, Rb 1.71, tilt 60, ground 0.6: 1.17 MJ/m2 (example 2.15.1).</summary>
    /// <param name="beam">Beam on the horizontal.</param>
    /// <param name="diffuse">Diffuse on the horizontal.</param>
    /// <param name="beamRatio">Rb, beam on the plane over beam on the horizontal.</param>
    /// <param name="cosTilt">Cosine of the tilt.</param>
    /// <param name="albedo">Ground reflectance, fraction.</param>
    public static double Isotropic(double beam, double diffuse, double beamRatio, double cosTilt, double albedo) =>
        beam * beamRatio + diffuse * (1 + cosTilt) / 2 + Ground(beam + diffuse, cosTilt, albedo);

    /// <summary>Hay and Davies: part of the diffuse comes from around the sun. D&amp;B eq. 2.16.4. Check value: the hour above gives 1.25 MJ/m2.</summary>
    /// <param name="extraterrestrial">I0 on the horizontal for the same hour.</param>
    public static double HayDavies(double beam, double diffuse, double extraterrestrial, double beamRatio, double cosTilt, double albedo)
    {
        var index = AnisotropyIndex(beam, extraterrestrial);
        return (beam + diffuse * index) * beamRatio + diffuse * (1 - index) * (1 + cosTilt) / 2 + Ground(beam + diffuse, cosTilt, albedo);
    }

    /// <summary>HDKR: Hay and Davies with horizon brightening (Reindl, Beckman and Duffie 1990). D&amp;B eq. 2.16.7.</summary>
    /// <param name="horizonTerm">sin^3(tilt / 2).</param>
    /// <param name="openSkyFraction">What a horizon line leaves of the sky the plane faces, fraction; the part around the sun goes with <paramref name="beamRatio"/>.</param>
    /// <returns>The part from the sky and sun; add <see cref="Ground"/>.</returns>
    public static double HdkrSky(double beam, double diffuse, double extraterrestrial, double beamRatio, double cosTilt, double horizonTerm, double openSkyFraction = 1)
    {
        var index = AnisotropyIndex(beam, extraterrestrial);
        var global = beam + diffuse;
        var brightening = global > 0 ? 1 + Math.Sqrt(beam / global) * horizonTerm : 1;
        return (beam + diffuse * index) * beamRatio + diffuse * (1 - index) * (1 + cosTilt) / 2 * brightening * openSkyFraction;
    }

    /// <summary>Reflected from the ground. D&amp;B eq. 2.15.1, last term. Check value: 900, tilt 40, ground 0.25: 26.32.</summary>
    public static double Ground(double global, double cosTilt, double albedo) => global * albedo * (1 - cosTilt) / 2;

    private static double AnisotropyIndex(double beam, double extraterrestrial) =>
        extraterrestrial > 0 ? Math.Clamp(beam / extraterrestrial, 0, 1) : 0;
}

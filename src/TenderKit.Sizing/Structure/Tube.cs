using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>Section properties of a round tube.</summary>
public static class Tube
{
    /// <summary>Density of steel, kg/m3: EN 1991-1-1 table A.4 (77 to 78.5 kN/m3), EN 10025 practice 7850.</summary>
    public const double SteelKgPerM3 = 7850;

    /// <summary>Modulus of elasticity of steel, MPa: EN 1993-1-1 3.2.6.</summary>
    public const double SteelElasticityMPa = 210_000;

    /// <summary>Second moment of area, mm4: pi (D^4 - d^4) / 64.</summary>
    /// <param name="diameterMm">Outer diameter, mm.</param>
    /// <param name="wallMm">Wall, mm, up to half the diameter.</param>
    /// <returns>mm4. Check value: 160 x 4 mm: 5.967e6 mm4.</returns>
    public static double SecondMomentMm4(double diameterMm, double wallMm)
    {
        Require.InRange(wallMm, 0.1, Require.Positive(diameterMm, nameof(diameterMm)) / 2, nameof(wallMm));
        return Math.PI / 64 * (Math.Pow(diameterMm, 4) - Math.Pow(diameterMm - 2 * wallMm, 4));
    }

    /// <summary>Elastic section modulus, mm3: 2 I / D.</summary>
    /// <returns>mm3. Check value: 160 x 4 mm: 74.6e3 mm3.</returns>
    public static double SectionModulusMm3(double diameterMm, double wallMm) => 2 * SecondMomentMm4(diameterMm, wallMm) / diameterMm;

    /// <summary>
    /// Elastic section modulus of a thin tube with a door opening, mm3, about its weaker axis: the ring of mean radius R and wall t
    /// less a sector of half angle a. Own derivation from the definition of the second moment; a reinforced door frame counts for nothing.
    /// </summary>
    /// <param name="diameterMm">Outer diameter at the door, mm.</param>
    /// <param name="wallMm">Wall, mm.</param>
    /// <param name="openingWidthMm">Clear width of the opening, mm, zero to the mean diameter.</param>
    /// <returns>mm3. Check value: 160 x 4 mm without opening: 76.4e3 mm3 (thin ring, pi R^2 t).</returns>
    public static double DoorSectionModulusMm3(double diameterMm, double wallMm, double openingWidthMm)
    {
        var radius = (diameterMm - wallMm) / 2;
        var half = Math.Asin(Require.InRange(openingWidthMm, 0, 2 * radius, nameof(openingWidthMm)) / (2 * radius));
        var arc = Math.PI - half;
        var shift = radius * Math.Sin(half) / arc;
        var ring = wallMm * Math.Pow(radius, 3);
        var acrossDoor = ring * (arc - Math.Sin(2 * half) / 2) - 2 * radius * wallMm * arc * shift * shift;
        var besideDoor = ring * (arc + Math.Sin(2 * half) / 2);
        var farthest = Math.Max(radius * Math.Cos(half) + shift, radius - shift);
        return Math.Min(acrossDoor / farthest, besideDoor / radius);
    }

    /// <summary>Outer diameter of a shaft at a height, mm; straight taper.</summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="heightM">Height above ground, m, 0 to the shaft's height.</param>
    public static double DiameterMm(PoleShaft shaft, double heightM) =>
        shaft.BaseDiameterMm + (shaft.TopDiameterMm - shaft.BaseDiameterMm) * Require.InRange(heightM, 0, shaft.HeightM, nameof(heightM)) / shaft.HeightM;

    /// <summary>Mass of a tapered shaft, kg, without base plate, door frame or arm: pi (mean D - t) t H times 7850 kg/m3.</summary>
    /// <returns>kg. Check value: 160 to 60 mm x 4 mm x 8 m: 83.7 kg.</returns>
    public static double ShaftKg(PoleShaft shaft) =>
        Math.PI * ((shaft.BaseDiameterMm + shaft.TopDiameterMm) / 2 - shaft.WallMm) * shaft.WallMm * 1e-6 * shaft.HeightM * SteelKgPerM3;
}

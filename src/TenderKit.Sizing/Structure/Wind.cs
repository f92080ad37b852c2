using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Structure;

/// <summary>
/// Wind pressure and wind loads on a pole. Screening only: to be checked and signed by a licensed structural engineer under the local
/// code.
/// </summary>
public static partial class Wind
{
    /// <summary>Density of air, kg/m3: recommended value of EN 1991-1-4 4.5.</summary>
    public const double AirKgPerM3 = 1.25;

    private const int Segments = 40;

    /// <summary>Peak velocity pressure, N/m2: EN 1991-1-4 (4.8), (1 + 7 Iv) 0.5 rho vm^2.</summary>
    /// <param name="basicSpeedMPerS">Basic wind speed, 10-minute mean at 10 m, category II, m/s, 10 to 70.</param>
    /// <param name="terrain">Terrain category.</param>
    /// <param name="heightM">Height above ground, m, 0 to 200; below zmin the value at zmin holds.</param>
    /// <returns>N/m2. Check value: 22 m/s, III, 7.02 m: 449 N/m2.</returns>
    public static double PeakPressureNPerM2(double basicSpeedMPerS, Terrain terrain, double heightM) =>
        ExposureFactor(terrain, heightM) * VelocityPressureNPerM2(Require.InRange(basicSpeedMPerS, 10, 70, nameof(basicSpeedMPerS)), AirKgPerM3);

    /// <summary>
    /// Exposure factor ce(z) = (1 + 7 Iv) cr^2, EN 1991-1-4 4.3 to 4.5, with orography and turbulence factors of 1:
    /// cr = kr ln(z / z0), kr = 0.19 (z0 / 0.05)^0.07, Iv = 1 / ln(z / z0).
    /// </summary>
    /// <param name="terrain">Terrain category, table 4.1.</param>
    /// <param name="heightM">Height above ground, m, 0 to 200.</param>
    /// <returns>Factor on the basic velocity pressure. Check value: II, 7 m: 2.13.</returns>
    public static double ExposureFactor(Terrain terrain, double heightM)
    {
        var (roughnessM, leastM) = TerrainTable(terrain);
        var log = Math.Log(Math.Max(Require.InRange(heightM, 0, 200, nameof(heightM)), leastM) / roughnessM);
        var cr = 0.19 * Math.Pow(roughnessM / 0.05, 0.07) * log;
        return (1 + 7 / log) * cr * cr;
    }

    /// <summary>Velocity pressure, N/m2: 0.5 rho v^2.</summary>
    /// <param name="speedMPerS">Wind speed, m/s.</param>
    /// <param name="airKgPerM3">Air density, kg/m3: 1.25 in EN 1991-1-4, 1.2 in IS 875-3.</param>
    /// <returns>N/m2. Check value: 44 m/s at 1.2 kg/m3: 1161.6 N/m2.</returns>
    public static double VelocityPressureNPerM2(double speedMPerS, double airKgPerM3) =>
        0.5 * Require.InRange(airKgPerM3, 0.5, 1.5, nameof(airKgPerM3)) * speedMPerS * speedMPerS;

    /// <summary>Loads of the shaft by segments and of the items under the peak pressure of EN 1991-1-4; characteristic values.</summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="items">What else catches wind.</param>
    /// <param name="basicSpeedMPerS">Basic wind speed, 10-minute mean at 10 m, category II, m/s, 10 to 70.</param>
    /// <param name="terrain">Terrain category.</param>
    /// <param name="shaftForceCoefficient">Force coefficient of the shaft, 0.3 to 2; left out, that of a galvanised cylinder at each segment's Reynolds number.</param>
    /// <param name="structuralFactor">Structural factor cs cd of EN 1991-1-4 section 6 on every force, 0.8 to 2; 1 leaves the dynamic response out.</param>
    public static PoleLoad OnPole(
        PoleShaft shaft,
        ImmutableArray<WindItem> items,
        double basicSpeedMPerS,
        Terrain terrain,
        double? shaftForceCoefficient = null,
        double structuralFactor = 1) =>
        OnPole(shaft, items, z => PeakPressureNPerM2(basicSpeedMPerS, terrain, z), shaftForceCoefficient, structuralFactor);

    /// <summary>
    /// Loads of the shaft and of the items under any pressure profile: F = q(z) cf A on 40 segments of the shaft and on each item;
    /// stress M / W of the tube without its door; deflection of the head by the unit-load integral of M (H - z) / (E I) with Simpson's rule.
    /// Axial load and second-order effects are left out.
    /// </summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="items">What else catches wind.</param>
    /// <param name="pressureNPerM2At">Peak pressure at a height, N/m2.</param>
    /// <param name="shaftForceCoefficient">As in the other overload.</param>
    /// <param name="structuralFactor">As in the other overload.</param>
    /// <returns>
    /// Check value: 0.9347 kN/m2 on 8 m, 160 to 60 mm x 4 mm, cf 0.7, panel 1.0 m2 cf 1.2 at 8.2 m, luminaire 0.06 m2 cf 0.6 at 7.8 m:
    /// 1.731 kN, 11.41 kNm, 153 MPa.
    /// </returns>
    public static PoleLoad OnPole(
        PoleShaft shaft,
        ImmutableArray<WindItem> items,
        Func<double, double> pressureNPerM2At,
        double? shaftForceCoefficient = null,
        double structuralFactor = 1)
    {
        RequireShaft(shaft);
        Require.InRange(structuralFactor, 0.8, 2, nameof(structuralFactor));
        if (shaftForceCoefficient is { } given) Require.InRange(given, 0.3, 2, nameof(shaftForceCoefficient));
        var segments = ShaftForces(shaft, pressureNPerM2At, shaftForceCoefficient, structuralFactor);
        var onItems = items.Select(i => ItemForce(i, pressureNPerM2At, structuralFactor)).ToImmutableArray();
        return Checked(shaft, [Total("pole shaft", segments), .. onItems], [.. segments, .. onItems]);
    }

    /// <summary>
    /// Stress at the door, MPa: the moment there over the section modulus of the open tube (<see cref="Tube.DoorSectionModulusMm3"/>),
    /// whichever way the wind blows; a frame welded round the door counts for nothing.
    /// </summary>
    /// <param name="shaft">The shaft.</param>
    /// <param name="load">Its loads.</param>
    /// <param name="doorHeightM">Lower edge of the door above ground, m, 0 to the shaft's height.</param>
    /// <param name="openingWidthMm">Clear width of the opening, mm, zero to the mean diameter.</param>
    /// <returns>MPa. Check value: without an opening, at the base, that of a thin tube: within 3 % of the base stress.</returns>
    public static double DoorStressMPa(PoleShaft shaft, PoleLoad load, double doorHeightM, double openingWidthMm)
    {
        var stepM = shaft.HeightM / Segments;
        var below = Math.Min((int)(Require.InRange(doorHeightM, 0, shaft.HeightM, nameof(doorHeightM)) / stepM), Segments - 1);
        var share = doorHeightM / stepM - below;
        var momentNm = load.Stations[below].MomentNm * (1 - share) + load.Stations[below + 1].MomentNm * share;
        return momentNm * 1000 / Tube.DoorSectionModulusMm3(Tube.DiameterMm(shaft, doorHeightM), shaft.WallMm, openingWidthMm);
    }

    private static PoleLoad Checked(PoleShaft shaft, ImmutableArray<WindForce> printed, ImmutableArray<WindForce> all)
    {
        var heights = Enumerable.Range(0, Segments + 1).Select(i => Math.Min(shaft.HeightM * i / Segments, shaft.HeightM));
        ImmutableArray<ShaftStation> stations = [.. heights.Select(h => StationAt(shaft, h, all))];
        var worst = stations.MaxBy(s => s.StressMPa);
        return new(printed, all.Sum(f => f.ForceN), stations[0].MomentNm, stations[0].StressMPa, HeadDeflectionM(shaft, stations))
        {
            GreatestStressMPa = worst.StressMPa,
            GreatestStressHeightM = worst.HeightM,
            Stations = stations,
        };
    }

    private static ShaftStation StationAt(PoleShaft shaft, double heightM, ImmutableArray<WindForce> forces)
    {
        var momentNm = forces.Where(f => f.HeightM > heightM).Sum(f => f.ForceN * (f.HeightM - heightM));
        return new(heightM, momentNm, momentNm * 1000 / Tube.SectionModulusMm3(Tube.DiameterMm(shaft, heightM), shaft.WallMm));
    }

    private static double HeadDeflectionM(PoleShaft shaft, ImmutableArray<ShaftStation> stations)
    {
        var sum = 0.0;
        for (var i = 0; i <= Segments; i++)
        {
            var (heightM, momentNm, _) = stations[i];
            var stiffnessNm2 = Tube.SteelElasticityMPa * Tube.SecondMomentMm4(Tube.DiameterMm(shaft, heightM), shaft.WallMm) * 1e-6;
            var weight = i is 0 or Segments ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * momentNm * (shaft.HeightM - heightM) / stiffnessNm2;
        }

        return sum * shaft.HeightM / Segments / 3;
    }

    private static ImmutableArray<WindForce> ShaftForces(
        PoleShaft shaft, Func<double, double> pressureAt, double? coefficient, double structuralFactor) =>
        [.. Enumerable.Range(0, Segments).Select(i => SegmentForce(shaft, i, pressureAt, coefficient, structuralFactor))];

    private static WindForce SegmentForce(
        PoleShaft shaft, int index, Func<double, double> pressureAt, double? coefficient, double structuralFactor)
    {
        var lengthM = shaft.HeightM / Segments;
        var fromM = index * lengthM;
        var lowerM = Tube.DiameterMm(shaft, fromM) / 1000;
        var upperM = Tube.DiameterMm(shaft, Math.Min(fromM + lengthM, shaft.HeightM)) / 1000;
        var centreM = fromM + lengthM / 3 * (lowerM + 2 * upperM) / (lowerM + upperM);
        var pressure = pressureAt(centreM);
        var cf = coefficient ?? DragCoefficients.GalvanisedCylinder((lowerM + upperM) / 2, Math.Sqrt(2 * pressure / AirKgPerM3));
        return new("pole shaft", structuralFactor * pressure * cf * (lowerM + upperM) / 2 * lengthM, centreM);
    }

    private static WindForce ItemForce(WindItem item, Func<double, double> pressureAt, double structuralFactor)
    {
        Require.NotNegative(item.AreaM2, nameof(item.AreaM2));
        Require.InRange(item.ForceCoefficient, 0.1, 2, nameof(item.ForceCoefficient));
        return new(item.Name, structuralFactor * pressureAt(item.HeightM) * item.ForceCoefficient * item.AreaM2, item.HeightM);
    }

    private static WindForce Total(string name, ImmutableArray<WindForce> parts)
    {
        var force = parts.Sum(p => p.ForceN);
        return new(name, force, parts.Sum(p => p.MomentNm) / force);
    }

    private static void RequireShaft(PoleShaft shaft)
    {
        Require.InRange(shaft.HeightM, 1, 30, nameof(shaft.HeightM));
        Require.InRange(shaft.TopDiameterMm, 20, shaft.BaseDiameterMm, nameof(shaft.TopDiameterMm));
        Require.InRange(shaft.WallMm, 1, shaft.TopDiameterMm / 2, nameof(shaft.WallMm));
    }

    private static (double RoughnessM, double LeastM) TerrainTable(Terrain terrain) => terrain switch
    {
        Terrain.Zero => (0.003, 1),
        Terrain.I => (0.01, 1),
        Terrain.II => (0.05, 2),
        Terrain.III => (0.3, 5),
        Terrain.IV => (1.0, 10),
        _ => throw new ArgumentOutOfRangeException(nameof(terrain), terrain, "is not a terrain category"),
    };
}

using System.Collections.Immutable;
using CsCheck;
using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class WindTests
{
    private static readonly PoleShaft EightMetres = new(8, 160, 60, 4, 235);

    // Published calculations, read and recomputed exactly (first two); below zmin recomputed.
    [Theory]
    [InlineData(22, Terrain.III, 7.02, 449, 0.5)]
    [InlineData(25, Terrain.Zero, 28, 1403.3, 0.5)]
    [InlineData(26, Terrain.II, 1, 601, 0.5)]
    [InlineData(26, Terrain.III, 4, 541, 0.5)]
    public void Peak_pressure(double speed, Terrain terrain, double heightM, double expectedPa, double tolerance) =>
        Assert.Equal(expectedPa, Wind.PeakPressureNPerM2(speed, terrain, heightM), tolerance);

    // Below zmin the pressure is that at zmin, EN 1991-1-4 (4.4).
    [Theory]
    [InlineData(Terrain.II, 2)]
    [InlineData(Terrain.III, 5)]
    [InlineData(Terrain.IV, 10)]
    public void Below_zmin_nothing_changes(Terrain terrain, double zminM)
    {
        Assert.Equal(Wind.PeakPressureNPerM2(28, terrain, zminM), Wind.PeakPressureNPerM2(28, terrain, 0));
        Assert.True(Wind.PeakPressureNPerM2(28, terrain, zminM + 1) > Wind.PeakPressureNPerM2(28, terrain, zminM));
    }

    // Procedia Structural Integrity 54 (2024), EN 40-3-1 table 1, read; recomputed 2.130.
    [Fact]
    public void Exposure_factor() => Assert.Equal(2.13, Wind.ExposureFactor(Terrain.II, 7), 0.005);

    // EN 40-3-1:2013, read: size factor at 4, 6, 8 m; q(10) recomputed.
    [Fact]
    public void En40_parts()
    {
        Assert.Equal(0.96, Wind.En40SizeFactor(4), 1e-12);
        Assert.Equal(0.94, Wind.En40SizeFactor(6), 1e-12);
        Assert.Equal(0.92, Wind.En40SizeFactor(8), 1e-12);
        Assert.Equal(517.5, 0.92 * Wind.VelocityPressureNPerM2(30, Wind.AirKgPerM3), 1e-9);
    }

    // EN 40-3-1:2013 with the parts above and beta 1.14 (steel, period 0.20 s, read +-2 %), 6 m column, category II at 7 m: product recomputed by hand.
    [Fact]
    public void En40_pressure_is_the_product_of_its_parts() =>
        Assert.Equal(0.94 * 1.14 * 2.130 * 517.5, Wind.En40PressureNPerM2(30, 0.92, Terrain.II, 7, 6, 1.14), 0.5);

    // ASCE 7-16 table 26.10-1 at 30 ft: B, C read (0.70, 0.98), D recomputed; D is once printed as 1.11, which is wrong.
    [Theory]
    [InlineData(Exposure.B, 30, 0.701, 0.0005)]
    [InlineData(Exposure.C, 30, 0.982, 0.0005)]
    [InlineData(Exposure.D, 30, 1.162, 0.0005)]
    [InlineData(Exposure.C, 15, 0.85, 0.005)] // the rest from memory, recomputed
    [InlineData(Exposure.C, 20, 0.90, 0.005)]
    [InlineData(Exposure.C, 40, 1.04, 0.005)]
    [InlineData(Exposure.C, 50, 1.09, 0.005)]
    public void Asce7_exposure_coefficient(Exposure exposure, double heightFt, double expected, double tolerance) =>
        Assert.Equal(expected, Wind.Asce7ExposureCoefficient(exposure, heightFt * 0.3048), tolerance);

    // ASCE 7 prints 0.94 for C at 25 ft (from memory); the formula gives 0.9453, which rounds to 0.95. The row disagrees by the
    // table's own rounding; the formula is kept, being the larger.
    [Fact]
    public void Asce7_at_25_ft_lies_above_the_printed_value()
    {
        var kz = Wind.Asce7ExposureCoefficient(Exposure.C, 25 * 0.3048);
        Assert.Equal(0.9453, kz, 0.0001);
        Assert.True(kz > 0.94 + 0.005);
    }

    // Recomputed: 45 m/s, C, 8 m, Kd 0.95.
    [Fact]
    public void Asce7_pressure()
    {
        Assert.Equal(0.955, Wind.Asce7ExposureCoefficient(Exposure.C, 8), 0.0005);
        Assert.Equal(1126, Wind.Asce7PressureNPerM2(45, Exposure.C, 8, 0.95), 0.5);
    }

    // IS 875-3, 0.6 V^2 (from memory).
    [Fact]
    public void Indian_pressure() => Assert.Equal(1161.6, Wind.VelocityPressureNPerM2(44, 1.2), 0.05);

    // Recomputed by a second implementation: uniform 0.9347 kN/m2, shaft cf 0.7.
    [Fact]
    public void Base_moment_of_the_reference_pole()
    {
        var load = Wind.OnPole(
            EightMetres, [new("panel", 1.0, 1.2, 8.2), new("luminaire", 0.06, 0.6, 7.8)], _ => 934.7, shaftForceCoefficient: 0.7);

        Assert.Equal(575.8, load.Forces[0].ForceN, 0.05);
        Assert.Equal(3.394, load.Forces[0].HeightM, 0.0005);
        Assert.Equal(1121.6, load.Forces[1].ForceN, 0.05);
        Assert.Equal(33.6, load.Forces[2].ForceN, 0.06);
        Assert.Equal(1731, load.BaseShearN, 0.5);
        Assert.Equal(11_410, load.BaseMomentNm, 5.0);
        Assert.Equal(153, load.BaseStressMPa, 0.5);
    }

    // A widely copied example takes 27 m/s as 365 Pa (air of 1.0 kg/m3) and leaves out the pole's own drag: trap, ours must be larger.
    [Fact]
    public void Moment_is_larger_than_that_of_the_copied_example()
    {
        ImmutableArray<WindItem> items = [new("panel", 1.0, 1.2, 8.2)];
        var copied = 365 * 1.2 * 1.0 * 8.2;
        var own = Wind.OnPole(EightMetres, items, _ => Wind.VelocityPressureNPerM2(27, Wind.AirKgPerM3));
        Assert.True(own.BaseMomentNm > copied * 1.25 / 1.0);
    }

    // Closed form: F L^3 / (3 E I) for a point load at the head of a prismatic cantilever, q L^4 / (8 E I) for a uniform one.
    [Fact]
    public void Deflection_of_a_straight_tube_is_the_closed_form()
    {
        var straight = new PoleShaft(6, 120, 120, 4, 235);
        var stiffness = Tube.SteelElasticityMPa * Tube.SecondMomentMm4(120, 4) * 1e-6;
        const double lineNPerM = 1000 * 0.7 * 0.12;
        const double headN = 1000 * 1.2;
        var load = Wind.OnPole(straight, [new("panel", 1.0, 1.2, 6)], _ => 1000, shaftForceCoefficient: 0.7);
        var expected = headN * 216 / (3 * stiffness) + lineNPerM * 1296 / (8 * stiffness);
        Assert.Equal(expected, load.HeadDeflectionM, expected * 0.002);
    }

    // Unit-load method: y = integral of P x^2 / (E I(x)) for a load P at the tip, by 200 000 midpoints of the exact I(x).
    [Fact]
    public void Deflection_of_a_tapered_tube_is_the_fine_integral()
    {
        var load = Wind.OnPole(EightMetres, [new("panel", 1.0, 1.2, 8)], z => z > 7.999 ? 1000 : 0, shaftForceCoefficient: 0.7);
        var fine = 0.0;
        const int n = 200_000;
        for (var i = 0; i < n; i++)
        {
            var x = 8 * (i + 0.5) / n;
            var d = 60 + 100 * x / 8;
            fine += 1200 * x * x / (210_000e6 * Math.PI / 64 * (Math.Pow(d, 4) - Math.Pow(d - 8, 4)) * 1e-12) * 8 / n;
        }

        Assert.Equal(fine, load.HeadDeflectionM, fine * 1e-3);
    }

    // Relation: with a slender top and a heavy panel there the worst section lies above the base, and is reported.
    [Fact]
    public void Greatest_stress_is_found_above_the_base()
    {
        var load = Wind.OnPole(new(8, 200, 50, 3, 235), [new("panel", 1.5, 1.2, 8.3)], 30, Terrain.II);
        Assert.True(load.GreatestStressHeightM > 1);
        Assert.True(load.GreatestStressMPa > load.BaseStressMPa);
    }

    // Relation: forces grow with the structural factor, and the sum of the printed forces is the base shear.
    [Fact]
    public void Structural_factor_scales_everything()
    {
        ImmutableArray<WindItem> items = [new("panel", 1.0, 1.2, 6.2), new("box", 0.15, 1.2, 4)];
        var plain = Wind.OnPole(EightMetres, items, 28, Terrain.II);
        var dynamic = Wind.OnPole(EightMetres, items, 28, Terrain.II, structuralFactor: 1.2);
        Assert.Equal(1.2 * plain.BaseMomentNm, dynamic.BaseMomentNm, 1e-6);
        Assert.Equal(1.2 * plain.HeadDeflectionM, dynamic.HeadDeflectionM, 1e-9);
        Assert.Equal(plain.BaseShearN, plain.Forces.Sum(f => f.ForceN), 1e-9);
        Assert.Equal(plain.BaseMomentNm, plain.Forces.Sum(f => f.MomentNm), 1e-6);
    }

    // Relations: the moment falls with height; a closed door at the base is the thin tube, close to the exact one; an opening adds stress.
    [Fact]
    public void Door_stress()
    {
        var load = Wind.OnPole(EightMetres, [new("panel", 1.0, 1.2, 8.2)], 28, Terrain.II);
        for (var i = 1; i < load.Stations.Length; i++) Assert.True(load.Stations[i].MomentNm < load.Stations[i - 1].MomentNm);
        Assert.Equal(load.BaseStressMPa, Wind.DoorStressMPa(EightMetres, load, 0, 0), load.BaseStressMPa * 0.03);
        Assert.True(Wind.DoorStressMPa(EightMetres, load, 0.6, 85) > 1.15 * Wind.DoorStressMPa(EightMetres, load, 0.6, 0));
        Assert.Equal(load.BaseMomentNm - (load.BaseShearN * 0.2), load.Stations[1].MomentNm, load.BaseShearN * 0.2 * 0.02);
    }

    // Relation: a faster wind, a rougher shaft or a larger panel never loads the pole less.
    [Fact]
    public void More_wind_and_more_area_load_more() =>
        Gen.Select(Gen.Double[12, 50], Gen.Double[0.2, 1.5], Gen.Double[3, 9]).Sample((speed, areaM2, heightM) =>
        {
            var shaft = new PoleShaft(heightM, 160, 76, 4, 235);
            double Moment(double v, double a) => Wind.OnPole(shaft, [new("panel", a, 1.2, heightM)], v, Terrain.II, 0.8).BaseMomentNm;
            return Moment(speed + 1, areaM2) > Moment(speed, areaM2) && Moment(speed, areaM2 + 0.1) > Moment(speed, areaM2);
        });

    [Fact]
    public void Impossible_inputs_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Wind.PeakPressureNPerM2(9, Terrain.II, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Wind.PeakPressureNPerM2(28, (Terrain)9, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Wind.OnPole(new(6, 60, 120, 4, 235), [], 28, Terrain.II));
        Assert.Throws<ArgumentOutOfRangeException>(() => Wind.OnPole(new(6, 120, 60, 40, 235), [], 28, Terrain.II));
    }
}

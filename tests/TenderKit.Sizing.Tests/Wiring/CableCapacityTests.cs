using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Sizing.Tests.Wiring;

public class CableCapacityTests
{
    private static readonly double[] SectionsMm2 = [1.5, 2.5, 4, 6, 10, 16, 25];

    // IEC 60364-5-52 simplified table, copper, 30 degC air, two loaded conductors, read; B2 and C in PVC to 16 mm2 and E in PVC from
    // SANS 10142-1:2019 table 6.3(a) p. 99, read; method D from a table of four columns, read.
    // Where two stored files differ for PVC clipped 1.5 mm2 (20.0 against 19.5), 19.5 is IEC's: the other file is the trap.
    [Theory]
    [InlineData(CableRun.EnclosedB2, CableInsulation.Pvc70, new[] { 16.5, 23, 30, 38, 52, 69 })]
    [InlineData(CableRun.ClippedC, CableInsulation.Pvc70, new[] { 19.5, 27, 36, 46, 63, 85 })]
    [InlineData(CableRun.FreeAirE, CableInsulation.Pvc70, new double[] { 22, 30, 40, 51, 70, 94, 119 })]
    [InlineData(CableRun.ClippedC, CableInsulation.CrossLinked90, new double[] { 24, 33, 45, 58, 80, 107, 135 })]
    [InlineData(CableRun.FreeAirE, CableInsulation.CrossLinked90, new double[] { 26, 36, 49, 63, 86, 115, 149 })]
    [InlineData(CableRun.BuriedD, CableInsulation.Pvc70, new double[] { 22, 29, 38, 47, 63, 81, 104 })]
    [InlineData(CableRun.BuriedD, CableInsulation.CrossLinked90, new double[] { 26, 34, 44, 56, 73, 95, 121 })]
    public void Reference_capacity_is_that_of_the_standard(CableRun run, CableInsulation insulation, double[] expectedA)
    {
        for (var i = 0; i < expectedA.Length; i++)
            Assert.Equal(expectedA[i], CableCapacity.AtReferenceA(run, insulation, SectionsMm2[i]));
    }

    // IEC 60364-5-52 table B.52.3 (from memory), cross-linked, enclosed B2.
    [Fact]
    public void Enclosed_cross_linked_from_memory()
    {
        double[] expectedA = [22, 30, 40, 51, 69, 91, 119];
        Assert.Equal(expectedA, SectionsMm2.Select(s => CableCapacity.AtReferenceA(CableRun.EnclosedB2, CableInsulation.CrossLinked90, s)));
    }

    // Relation: cooler runs and better insulation never carry less.
    [Fact]
    public void Better_runs_and_insulation_carry_more()
    {
        foreach (var s in SectionsMm2)
        {
            foreach (var insulation in Enum.GetValues<CableInsulation>())
            {
                Assert.True(CableCapacity.AtReferenceA(CableRun.EnclosedB2, insulation, s) < CableCapacity.AtReferenceA(CableRun.ClippedC, insulation, s));
                Assert.True(CableCapacity.AtReferenceA(CableRun.ClippedC, insulation, s) < CableCapacity.AtReferenceA(CableRun.FreeAirE, insulation, s));
            }

            foreach (var run in Enum.GetValues<CableRun>())
            {
                Assert.True(
                    CableCapacity.AtReferenceA(run, CableInsulation.Pvc70, s) < CableCapacity.AtReferenceA(run, CableInsulation.CrossLinked90, s));
            }
        }
    }

    // Ambient derating, PVC 70 degC: 30 to 50 degC read, 55 and 60 from memory (IEC 60364-5-52 table B.52.14).
    [Theory]
    [InlineData(30, 1.00)]
    [InlineData(35, 0.94)]
    [InlineData(40, 0.87)]
    [InlineData(45, 0.79)]
    [InlineData(50, 0.71)]
    [InlineData(55, 0.61)]
    [InlineData(60, 0.50)]
    public void Ambient_factor_pvc(double ambientC, double expected) =>
        Assert.Equal(expected, CableCapacity.AmbientFactor(CableRun.FreeAirE, CableInsulation.Pvc70, ambientC), 0.005);

    // NFPA 70 310.15(B)(1), 90 degC column, equal to IEC cross-linked, read; the value of each band is that of its upper end.
    [Theory]
    [InlineData(10, 1.15)]
    [InlineData(15, 1.12)]
    [InlineData(20, 1.08)]
    [InlineData(25, 1.04)]
    [InlineData(30, 1.00)]
    [InlineData(35, 0.96)]
    [InlineData(40, 0.91)]
    [InlineData(45, 0.87)]
    [InlineData(50, 0.82)]
    [InlineData(55, 0.76)]
    [InlineData(60, 0.71)]
    [InlineData(65, 0.65)]
    [InlineData(70, 0.58)]
    [InlineData(75, 0.50)]
    [InlineData(80, 0.41)]
    public void Ambient_factor_cross_linked(double ambientC, double expected) =>
        Assert.Equal(expected, CableCapacity.AmbientFactor(CableRun.FreeAirE, CableInsulation.CrossLinked90, ambientC), 1e-12);

    // Derated IEC B2, PVC, three loaded conductors: read; base values from SANS 10142-1:2019 table 6.3(a), read. Tolerance 1 A.
    [Theory]
    [InlineData(15, new double[] { 15, 13, 12, 11, 9 })]
    [InlineData(20, new double[] { 20, 17, 16, 14, 12 })]
    [InlineData(27, new double[] { 27, 23, 21, 19, 16 })]
    [InlineData(34, new double[] { 34, 30, 27, 24, 21 })]
    [InlineData(46, new double[] { 46, 40, 36, 33, 28 })]
    [InlineData(62, new double[] { 62, 54, 49, 44, 38 })]
    [InlineData(80, new double[] { 80, 70, 63, 57, 49 })]
    [InlineData(99, new double[] { 99, 86, 78, 70, 60 })]
    public void Derated_capacities_of_a_published_table(double baseA, double[] expectedA)
    {
        double[] ambientsC = [30, 40, 45, 50, 55];
        for (var i = 0; i < ambientsC.Length; i++)
            Assert.Equal(expectedA[i], baseA * CableCapacity.AmbientFactor(CableRun.EnclosedB2, CableInsulation.Pvc70, ambientsC[i]), 1.0);
    }

    // Physics behind the table: factor = sqrt((T - t) / (T - 30)), T the conductor's limit (IEC 60287 in short); within 0.01.
    [Theory]
    [InlineData(CableInsulation.Pvc70, 70, 60)]
    [InlineData(CableInsulation.CrossLinked90, 90, 80)]
    public void Ambient_factor_follows_the_heat_balance(CableInsulation insulation, double limitC, double lastC)
    {
        for (var t = 10.0; t <= lastC; t += 2.5)
        {
            var heat = Math.Sqrt((limitC - t) / (limitC - 30));
            Assert.Equal(heat, CableCapacity.AmbientFactor(CableRun.EnclosedB2, insulation, t), 0.01);
        }
    }

    [Fact]
    public void No_capacity_above_the_last_temperature()
    {
        Assert.Equal(0, Conductor.CapacityA(CableInsulation.Pvc70, 2.5, 60.5));
        Assert.True(Conductor.CapacityA(CableInsulation.CrossLinked90, 2.5, 60.5) > 0);
        Assert.Equal(23, Conductor.CapacityA(CableInsulation.Pvc70, 2.5, 30));
        Assert.Equal(23 * 1.22, Conductor.CapacityA(CableInsulation.Pvc70, 2.5, -30), 1e-9);
    }

    // NFPA 70 table 310.15(C)(1), read.
    [Theory]
    [InlineData(2, 1)]
    [InlineData(4, 0.80)]
    [InlineData(7, 0.70)]
    [InlineData(10, 0.50)]
    [InlineData(21, 0.45)]
    [InlineData(31, 0.40)]
    [InlineData(41, 0.35)]
    public void Grouping_factor(int conductors, double expected) => Assert.Equal(expected, CableCapacity.GroupingFactor(conductors));
}

using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Sizing.Tests.Wiring;

public class ConductorTests
{
    // IEC 60228:2004 tables 2 and 3, read in four agreeing reproductions.
    [Theory]
    [InlineData(0.5, 36.0, 39.0)]
    [InlineData(0.75, 24.5, 26.0)]
    [InlineData(1, 18.1, 19.5)]
    [InlineData(1.5, 12.1, 13.3)]
    [InlineData(2.5, 7.41, 7.98)]
    [InlineData(4, 4.61, 4.95)]
    [InlineData(6, 3.08, 3.30)]
    [InlineData(10, 1.83, 1.91)]
    [InlineData(16, 1.15, 1.21)]
    [InlineData(25, 0.727, 0.780)]
    [InlineData(35, 0.524, 0.554)]
    [InlineData(50, 0.387, 0.386)]
    [InlineData(70, 0.268, 0.272)]
    [InlineData(95, 0.193, 0.206)]
    [InlineData(120, 0.153, 0.161)]
    public void Resistance_is_that_of_the_standard(double mm2, double class2, double class5)
    {
        Assert.Equal(class2, Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, mm2));
        Assert.Equal(class5, Conductor.ResistanceOhmPerKm(ConductorClass.Flexible5, mm2));
    }

    // IEC 60228 table 3, metal-coated, read.
    [Theory]
    [InlineData(1.5, 13.7)]
    [InlineData(2.5, 8.21)]
    [InlineData(4, 5.09)]
    [InlineData(6, 3.39)]
    [InlineData(10, 1.95)]
    [InlineData(16, 1.24)]
    [InlineData(25, 0.795)]
    [InlineData(35, 0.565)]
    public void Tinned_resistance_is_that_of_the_standard(double mm2, double expected) =>
        Assert.Equal(expected, Conductor.TinnedResistanceOhmPerKm(mm2));

    // Resistivity of copper 1.724e-8 Ohm m, read: the standard's greatest resistance can never be below the ideal metal's
    // at the nominal section by more than the few percent by which an effective section may fall short.
    [Fact]
    public void Resistance_times_section_is_near_the_resistivity_of_copper()
    {
        foreach (var mm2 in Conductor.CrossSectionsMm2)
            Assert.InRange(Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, mm2) * mm2, 17.24, 19.5);
    }

    // Temperature coefficient of copper 0.00393 per K at 20 degC, read; agreement to 1 part in 10 000.
    [Theory]
    [InlineData(-20)]
    [InlineData(20)]
    [InlineData(50)]
    [InlineData(70)]
    [InlineData(90)]
    public void Temperature_correction_equals_the_coefficient_of_copper(double conductorC) =>
        Assert.Equal(1 + 0.00393 * (conductorC - 20), Conductor.AtTemperatureOhmPerKm(1, conductorC), 1e-4);

    // IEC 60228 annex, approximate factor 250 / (230 + t) back to 20 degC, read: within half a percent up to 70 degC.
    [Theory]
    [InlineData(5)]
    [InlineData(30)]
    [InlineData(70)]
    public void Temperature_correction_is_near_the_annex_approximation(double conductorC) =>
        Assert.Equal((230 + conductorC) / 250, Conductor.AtTemperatureOhmPerKm(1, conductorC), 0.005);

    // Worked example, read; recomputed 3.992 V and 16.63 % (printed 4.0 V, 16.7 %): 4.99 Ohm per 1000 ft, 100 ft, 4 A, 24 V.
    [Fact]
    public void Drop_of_a_worked_example()
    {
        var drop = Conductor.DropV(100 * 0.3048, 4, 4.99 / 0.3048);
        Assert.Equal(3.992, drop, 0.0005);
        Assert.Equal(4.0, drop, 0.01);
        Assert.Equal(0.1663, drop / 24, 0.0001);
    }

    // Quick constant 0.0164 I L / S with L the loop, read: 5 A, 20 m loop, 4 mm2 is 0.41 V. It takes pure cold copper at the
    // nominal section, so the standard's greatest resistance must drop more.
    [Fact]
    public void Drop_is_above_the_optimistic_quick_constant()
    {
        var quick = 0.0164 * 5 * 20 / 4;
        Assert.Equal(0.41, quick, 0.005);
        Assert.Equal(0.461, Conductor.DropV(10, 5, Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, 4)), 1e-9);
        Assert.True(Conductor.DropV(10, 5, Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, 4)) > quick);
    }

    // Worked example, read: 38 V, 8 A, 3 %.
    [Fact]
    public void Loop_limit_of_a_worked_example() => Assert.Equal(0.1425, Conductor.LoopLimitOhm(0.03, 38, 8), 1e-6);

    // Relation: a run of exactly the limiting resistance drops exactly the fraction.
    [Fact]
    public void Loop_limit_and_drop_agree()
    {
        var loopOhm = Conductor.LoopLimitOhm(0.03, 12.8, 4);
        Assert.Equal(0.03 * 12.8, Conductor.DropV(7, 4, loopOhm / 2 / 0.007), 1e-9);
    }

    [Fact]
    public void Unknown_section_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.TinnedResistanceOhmPerKm(3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.CapacityA(CableInsulation.Pvc70, 3, 30));
    }
}

using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Sizing.Tests.Wiring;

public class ArrayVoltageTests
{
    // Worked example, read; recomputed 48.43 V and 678.0 V with the coefficient it implies (printed 48.5 V, 679 V).
    [Fact]
    public void Cold_open_circuit_voltage()
    {
        Assert.Equal(48.5, ArrayVoltage.ColdOpenCircuitV(42, -0.0034, 1, -20), 0.2);
        Assert.Equal(679, ArrayVoltage.ColdOpenCircuitV(42, -0.0034, 14, -20), 3.0);
        Assert.Equal(48.43, ArrayVoltage.ColdOpenCircuitV(42, -0.0034, 1, -20), 0.005);
        Assert.Equal(678.0, ArrayVoltage.ColdOpenCircuitV(42, -0.0034, 14, -20), 0.05);
    }

    // NFPA 70 table 690.7(A) (from memory; -7.8 degC, 1.14 read).
    [Theory]
    [InlineData(25, 1)]
    [InlineData(22, 1.02)]
    [InlineData(17, 1.04)]
    [InlineData(12, 1.06)]
    [InlineData(7, 1.08)]
    [InlineData(2, 1.10)]
    [InlineData(-3, 1.12)]
    [InlineData(-7.8, 1.14)]
    [InlineData(-13, 1.16)]
    [InlineData(-18, 1.18)]
    [InlineData(-23, 1.20)]
    [InlineData(-28, 1.21)]
    [InlineData(-33, 1.23)]
    [InlineData(-38, 1.25)]
    public void Nfpa70_cold_factor(double lowC, double expected) => Assert.Equal(expected, ArrayVoltage.Nfpa70ColdFactor(lowC));

    // Relation: the table never lies below a module of -0.0030 per K, the usual crystalline coefficient (common practice, no source).
    [Fact]
    public void Table_covers_the_usual_module_down_to_minus_20()
    {
        for (var t = -20.0; t <= 24; t++)
            Assert.True(ArrayVoltage.Nfpa70ColdFactor(t) >= ArrayVoltage.ColdOpenCircuitV(1, -0.0030, 1, t) - 1e-12);
    }

    [Fact]
    public void A_hot_cell_loses_voltage() => Assert.Equal(15.12, ArrayVoltage.AtCellV(18, -0.004, 1, 65), 1e-9);

    [Fact]
    public void A_coefficient_in_percent_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ArrayVoltage.ColdOpenCircuitV(42, -0.34, 1, -20));
}

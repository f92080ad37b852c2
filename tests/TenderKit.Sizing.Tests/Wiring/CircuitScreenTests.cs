using CsCheck;
using TenderKit.Sizing.Wiring;
using Xunit;

namespace TenderKit.Sizing.Tests.Wiring;

public class CircuitScreenTests
{
    private static readonly double[] SectionsMm2 = [1.5, 2.5, 4, 6, 10, 16, 25];

    // By hand: 4.61 Ohm/km (IEC 60228, read) at 60 degC x 8 m; 2 L I R.
    [Fact]
    public void A_circuit_by_hand()
    {
        var result = CircuitScreen.Run(Circuit(10, 8, 4, 12));
        Assert.Equal(4.61 * 294.5 / 254.5 * 8 / 1000, result.ResistanceOhm, 1e-9);
        Assert.Equal(20 * result.ResistanceOhm, result.DropV, 1e-9);
        Assert.Equal(result.DropV / 12, result.DropFraction, 1e-12);
        Assert.Equal(16, result.FuseA);
    }

    // Ohm's law: two pairs, both poles, 5 mOhm, 10 A.
    [Fact]
    public void Connectors() => Assert.Equal(0.2, CircuitScreen.ConnectorsV(2, 0.005, 10), 1e-12);

    // Relation: whatever the circuit, a fuse is never above its cable's capacity nor below the current with its factor.
    [Fact]
    public void A_fuse_is_never_above_its_cable() =>
        Gen.Select(Gen.Double[0.1, 120], Gen.Int[0, 6].Select(i => SectionsMm2[i]), Gen.Double[10, 80]).Sample((currentA, mm2, ambientC) =>
        {
            var result = CircuitScreen.Run(Circuit(currentA, 5, mm2, 12) with { AmbientC = ambientC });
            return result.FuseA is not { } fuse || (fuse <= result.CapacityA && fuse >= 1.25 * currentA);
        });

    private static CircuitScreenInputs Circuit(double currentA, double lengthM, double mm2, double voltageV) => new(
        currentA, lengthM, Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, mm2), mm2, voltageV, 60, CableRun.EnclosedB2, CableInsulation.Pvc70, 50, 1.25);
}

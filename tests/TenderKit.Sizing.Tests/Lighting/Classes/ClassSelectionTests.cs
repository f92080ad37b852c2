using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Sizing.Tests.Lighting.Classes;

public class ClassSelectionTests
{
    [Fact]
    public void Worked_example()
    {
        // CEN/TR 13201-1:2014, read: low speed, quiet, pedestrians and cyclists, nothing parked, ambient low: sum 0, class P6
        var found = ClassSelection.P(FootSpeed.Low, UseIntensity.Quiet, FootMix.PedestriansAndCyclists, false, AmbientLuminosity.Low);
        Assert.Equal(("P6", 0, false), (found.ClassName, found.WeightSum, found.Bounded));
        Assert.Equal([1, -1, 1, 0, -1], found.Weights.Select(w => w.Weight));
        Assert.Equal(found.WeightSum, found.Weights.Sum(w => w.Weight));
        Assert.Equal("pedestrians and cyclists", found.Weights[2].Option);
    }

    [Theory]
    [InlineData(FootSpeed.Low, UseIntensity.Busy, FootMix.PedestriansCyclistsAndMotor, true, AmbientLuminosity.High, "P1", 6, true)] // weights read
    [InlineData(FootSpeed.Walking, UseIntensity.Quiet, FootMix.OneKindOnly, false, AmbientLuminosity.Low, "P6", -2, true)]
    [InlineData(FootSpeed.Low, UseIntensity.Normal, FootMix.PedestriansAndMotor, true, AmbientLuminosity.Moderate, "P3", 3, false)]
    public void P_classes(
        FootSpeed speed, UseIntensity use, FootMix mix, bool parked, AmbientLuminosity ambient, string expected, int sum, bool bounded)
    {
        var found = ClassSelection.P(speed, use, mix, parked, ambient);
        Assert.Equal((expected, sum, bounded), (found.ClassName, found.WeightSum, found.Bounded));
    }

    [Fact]
    public void M_class()
    {
        // weights from memory: moderate speed -1, moderate volume 0, mixed 1, not separated 1, junctions 0, parked 1, ambient moderate 0, easy 0
        var found = ClassSelection.M(
            TrafficSpeed.Moderate, TrafficVolume.Moderate, TrafficMix.Mixed, false, false, true, AmbientLuminosity.Moderate, NavigationalTask.Easy);
        Assert.Equal(("M4", 2, false), (found.ClassName, found.WeightSum, found.Bounded));
        Assert.Equal(8, found.Weights.Length);
        Assert.Contains("from memory", found.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void C_class()
    {
        // weights from memory: high speed 2, high volume 1, motor only 0, separated 0, nothing parked 0, ambient low -1, difficult 1
        var found = ClassSelection.C(
            TrafficSpeed.High, TrafficVolume.High, TrafficMix.MotorisedOnly, true, false, AmbientLuminosity.Low, NavigationalTask.Difficult);
        Assert.Equal(("C3", 3), (found.ClassName, found.WeightSum));
        var least = ClassSelection.C(
            TrafficSpeed.Low, TrafficVolume.Low, TrafficMix.MotorisedOnly, true, false, AmbientLuminosity.Low, NavigationalTask.Easy);
        Assert.Equal(("C5", -3, true), (least.ClassName, least.WeightSum, least.Bounded));
    }
}

using System.Text;
using TenderKit.Intake.Photometry;
using Xunit;

namespace TenderKit.Intake.Tests.Photometry;

public class BothFormatsTests
{
    public static TheoryData<string> Names => [.. FormulaLight.All.Select(f => f.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void One_light_in_two_formats_reads_the_same(string name)
    {
        var formula = FormulaLight.All.Single(f => f.Name == name);
        var lm63 = PhotometryReader.Read("f.ies", Encoding.ASCII.GetBytes(formula.Lm63()));
        var eulumdat = PhotometryReader.Read("f.ldt", Encoding.ASCII.GetBytes(formula.Eulumdat()));
        Assert.False(lm63.HasErrors);
        Assert.False(eulumdat.HasErrors);
        var (expected, a, b) = (formula.Distribution, lm63.Value!.Distribution, eulumdat.Value!.Distribution);
        for (var c = 0.0; c < 360; c += 2.5)
        {
            for (var g = 0.0; g <= formula.Gammas[^1]; g += 2.5)
            {
                var cd = expected.IntensityCd(c, g);
                Assert.Equal(cd, a.IntensityCd(c, g), 1e-9 * expected.PeakIntensityCd);
                Assert.Equal(cd, b.IntensityCd(c, g), 1e-9 * expected.PeakIntensityCd);
            }
        }

        Assert.Equal(expected.FluxLm, a.FluxLm, 1e-9 * expected.FluxLm);
        Assert.Equal(expected.FluxLm, b.FluxLm, 1e-9 * expected.FluxLm);
        Assert.Equal((25.0, 25.0), (a.StatedPowerW, b.StatedPowerW));
    }
}

using TenderKit.Intake.Photometry;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using Xunit;

namespace TenderKit.Intake.Tests.Photometry;

/// <summary>Whatever the file, the reader answers soon: with a light that can be used, or with an error that says why not.</summary>
public class BrokenFilesTests
{
    private const int PerFormulaAndFormat = 84; // four of every kind of damage
    private static readonly TimeSpan LongEnough = TimeSpan.FromSeconds(10);

    public static TheoryData<string, bool> Files
    {
        get
        {
            var data = new TheoryData<string, bool>();
            foreach (var formula in FormulaLight.All)
            {
                data.Add(formula.Name, true);
                data.Add(formula.Name, false);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public async Task No_damage_crashes_or_hangs_the_reader(string name, bool isLm63)
    {
        var formula = FormulaLight.All.Single(f => f.Name == name);
        var text = isLm63 ? formula.Lm63() : formula.Eulumdat();
        var (read, refused) = (0, 0);
        for (var seed = 0; seed < PerFormulaAndFormat; seed++)
        {
            var bytes = Mutations.Of(text, seed);
            var outcome = await Task.Run(() => PhotometryReader.Read(isLm63 ? "a.ies" : "a.ldt", bytes)).WaitAsync(LongEnough);
            if (outcome.Value is null)
            {
                Assert.Contains(outcome.Diagnostics, d => d.Severity == Severity.Error && d.Code.StartsWith("TK", StringComparison.Ordinal) && d.Message.Length > 10);
                refused++;
                continue;
            }

            AssertUsable(outcome.Value.Distribution);
            read++;
        }

        Assert.Equal(4 * Mutations.KindCount, read + refused);
        Assert.True(read > 5 && refused > 20, $"{read} read, {refused} refused: the damage does not try both ways");
    }

    private static void AssertUsable(LightDistribution distribution)
    {
        var analysis = PhotometricAnalysis.Of(distribution);
        Assert.True(double.IsFinite(analysis.FluxLm) && analysis.FluxLm > 0);
        Assert.Equal(analysis.FluxLm, analysis.Zones.TotalLm, 1e-6 * analysis.FluxLm);
        var road = Illuminance.OnRoad(distribution, new RoadLayout(6, 25, 6, 0, 5, Arrangement.Staggered), 0.8);
        Assert.All(road.Points, p => Assert.True(double.IsFinite(p.IlluminanceLx) && p.IlluminanceLx >= 0));
    }
}

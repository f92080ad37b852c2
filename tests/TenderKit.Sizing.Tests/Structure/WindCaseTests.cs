using TenderKit.Sizing.Structure;
using Xunit;

namespace TenderKit.Sizing.Tests.Structure;

public class WindCaseTests
{
    // ASCE 7-16 figure C26.5-1 and equation C26.5-2 (from memory), by hand.
    [Theory]
    [InlineData(WindDefinition.Gust50, WindDefinition.TenMinuteMean50, 0.7007)]
    [InlineData(WindDefinition.Gust700, WindDefinition.Gust50, 0.7914)]
    [InlineData(WindDefinition.HourlyMean50, WindDefinition.TenMinuteMean50, 1.065)]
    [InlineData(WindDefinition.TenMinuteMean50, WindDefinition.Gust700, 1.8036)]
    public void Conversion(WindDefinition stated, WindDefinition wanted, double factor)
    {
        var converted = WindSpeeds.Convert(40, stated, wanted);
        Assert.Equal(factor, converted.Factor, 0.0005);
        Assert.Equal(40 * converted.Factor, converted.SpeedMPerS, 1e-9);
    }

    // Relation: there and back is where one began, and a speed of the definition wanted stays as it is.
    [Fact]
    public void There_and_back()
    {
        foreach (var a in Enum.GetValues<WindDefinition>())
        {
            Assert.Equal(1, WindSpeeds.Convert(30, a, a).Factor);
            foreach (var b in Enum.GetValues<WindDefinition>())
                Assert.Equal(30, WindSpeeds.Convert(WindSpeeds.Convert(30, a, b).SpeedMPerS, b, a).SpeedMPerS, 1e-9);
        }
    }

    // Recomputed: EN, 26 m/s, II, 8 m: 934.7 N/m2; ASCE, 45 m/s, C, 8 m, Kd 0.95: 1126 N/m2.
    [Fact]
    public void Pressures_of_both_standards()
    {
        Assert.Equal(934.7, new WindCase(WindStandard.En1991, 26, Terrain.II).PeakPressureNPerM2(8), 0.1);
        Assert.Equal(1126, new WindCase(WindStandard.Asce7, 45, Terrain.II).PeakPressureNPerM2(8), 0.5);
    }

    // Relation: characteristic pressure times the strength factor is the standard's own strength level: 1.5 qp, and qz.
    [Fact]
    public void Levels_agree()
    {
        var en = new WindCase(WindStandard.En1991, 26, Terrain.II);
        var asce = new WindCase(WindStandard.Asce7, 45, Terrain.III);
        Assert.Equal(1.5 * en.PeakPressureNPerM2(6), en.CharacteristicNPerM2(6) * en.StrengthFactor(1.5), 1e-9);
        Assert.Equal(asce.PeakPressureNPerM2(6), asce.CharacteristicNPerM2(6) * asce.StrengthFactor(1.5), 1e-9);
    }

    // One wind told in either definition loads a pole alike under both standards, within the spread of the codes' gust models.
    [Fact]
    public void The_same_wind_is_much_the_same_under_both_standards()
    {
        var en = WindCase.Of(WindStandard.En1991, 26, WindDefinition.TenMinuteMean50, Terrain.II).Wind;
        var asce = WindCase.Of(WindStandard.Asce7, 26, WindDefinition.TenMinuteMean50, Terrain.II).Wind;
        Assert.InRange(asce.CharacteristicNPerM2(8) / en.CharacteristicNPerM2(8), 0.75, 1.25);
    }
}

using System.Collections.Immutable;

namespace TenderKit.Sizing.Lighting;

/// <summary>Speed of motor traffic: 100 km/h or more, over 70, over 40 to 70, 40 km/h or less.</summary>
public enum TrafficSpeed
{
    VeryHigh,
    High,
    Moderate,
    Low,
}

/// <summary>Speed of travel where P classes apply.</summary>
public enum FootSpeed
{
    Low,
    Walking,
}

public enum TrafficVolume
{
    High,
    Moderate,
    Low,
}

/// <summary>How much a place is used on foot or cycle.</summary>
public enum UseIntensity
{
    Busy,
    Normal,
    Quiet,
}

/// <summary>Who uses a carriageway.</summary>
public enum TrafficMix
{
    MixedMostlyNonMotorised,
    Mixed,
    MotorisedOnly,
}

/// <summary>Who uses a place where P classes apply.</summary>
public enum FootMix
{
    PedestriansCyclistsAndMotor,
    PedestriansAndMotor,
    PedestriansAndCyclists,
    OneKindOnly,
}

/// <summary>How bright the surroundings are.</summary>
public enum AmbientLuminosity
{
    High,
    Moderate,
    Low,
}

public enum NavigationalTask
{
    VeryDifficult,
    Difficult,
    Easy,
}

/// <summary>One parameter, the option taken and its weight.</summary>
public readonly record struct ClassWeight(string Parameter, string Option, int Weight);

/// <summary>A class proposed from weights.</summary>
/// <param name="ClassName">Name, e.g. "P4"; the decision stays with the authority of the road.</param>
/// <param name="WeightSum">Sum of the weights.</param>
/// <param name="Bounded">Whether 6 less the sum lay outside the classes there are and the nearest was taken.</param>
/// <param name="Source">Table of the report, and whether it was read.</param>
public sealed record ClassProposal(string ClassName, int WeightSum, bool Bounded, ImmutableArray<ClassWeight> Weights, string Source);

/// <summary>
/// Choice of a class by weights: number of the class = 6 - sum of weights, within the classes there are. Source: CEN/TR 13201-1:2014.
/// Check: low speed, quiet, pedestrians and cyclists, nothing parked, ambient low: sum 0, class P6 (read).
/// </summary>
public static class ClassSelection
{
    private const string Report = "CEN/TR 13201-1:2014";
    private const int Base = 6;

    /// <summary>P class of a footway, cycle track or residential street; weights read.</summary>
    public static ClassProposal P(FootSpeed speed, UseIntensity use, FootMix mix, bool parkedVehicles, AmbientLuminosity ambient) => Proposal(
        "P",
        1,
        $"{Report}, P classes (read)",
        [
            Weight("travel speed", speed, speed == FootSpeed.Low ? 1 : 0),
            Weight("intensity of use", use, 1 - (int)use),
            Weight("traffic composition", mix, mix switch { FootMix.PedestriansCyclistsAndMotor => 2, FootMix.OneKindOnly => 0, _ => 1 }),
            Parked(parkedVehicles),
            Ambient(ambient),
        ]);

    /// <summary>C class of a conflict area; weights from memory.</summary>
    public static ClassProposal C(
        TrafficSpeed speed,
        TrafficVolume volume,
        TrafficMix mix,
        bool separatedCarriageways,
        bool parkedVehicles,
        AmbientLuminosity ambient,
        NavigationalTask task) => Proposal(
        "C",
        0,
        $"{Report}, C classes (weights from memory)",
        [
            Weight("design speed", speed, speed switch { TrafficSpeed.VeryHigh => 3, TrafficSpeed.High => 2, TrafficSpeed.Moderate => 0, _ => -1 }),
            Weight("traffic volume", volume, 1 - (int)volume),
            Weight("traffic composition", mix, 2 - (int)mix),
            Separated(separatedCarriageways),
            Parked(parkedVehicles),
            Ambient(ambient),
            Weight("navigational task", task, 2 - (int)task),
        ]);

    /// <summary>M class of a road for motor traffic; weights from memory.</summary>
    /// <param name="denseJunctions">More than three junctions a km, or interchanges less than 3 km apart (from memory).</param>
    public static ClassProposal M(
        TrafficSpeed speed,
        TrafficVolume volume,
        TrafficMix mix,
        bool separatedCarriageways,
        bool denseJunctions,
        bool parkedVehicles,
        AmbientLuminosity ambient,
        NavigationalTask task) => Proposal(
        "M",
        1,
        $"{Report}, M classes (weights from memory)",
        [
            Weight("design speed", speed, speed switch { TrafficSpeed.VeryHigh => 2, TrafficSpeed.High => 1, TrafficSpeed.Moderate => -1, _ => -2 }),
            Weight("traffic volume", volume, 1 - (int)volume),
            Weight("traffic composition", mix, 2 - (int)mix),
            Separated(separatedCarriageways),
            new ClassWeight("junction density", denseJunctions ? "high" : "moderate", denseJunctions ? 1 : 0),
            Parked(parkedVehicles),
            Ambient(ambient),
            Weight("navigational task", task, 2 - (int)task),
        ]);

    private static ClassProposal Proposal(string family, int least, string source, ImmutableArray<ClassWeight> weights)
    {
        var greatest = family == "C" ? 5 : 6;
        var sum = weights.Sum(w => w.Weight);
        var number = Math.Clamp(Base - sum, least, greatest);
        return new ClassProposal(FormattableString.Invariant($"{family}{number}"), sum, number != Base - sum, weights, source);
    }

    private static ClassWeight Weight<T>(string parameter, T option, int weight)
        where T : struct, Enum => new(parameter, Words(option.ToString()), weight);

    private static ClassWeight Parked(bool present) => new("parked vehicles", present ? "present" : "not present", present ? 1 : 0);

    private static ClassWeight Separated(bool separated) => new("separation of carriageways", separated ? "yes" : "no", separated ? 0 : 1);

    private static ClassWeight Ambient(AmbientLuminosity ambient) => Weight("ambient luminosity", ambient, 1 - (int)ambient);

    /// <summary>"VeryHigh" becomes "very high".</summary>
    private static string Words(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : c.ToString()));
}

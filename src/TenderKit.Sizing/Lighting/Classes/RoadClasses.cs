using System.Collections.Immutable;

namespace TenderKit.Sizing.Lighting;

/// <summary>Named classes with everything they ask: luminance, illuminance, glare, edge ratio, faces.</summary>
public static class RoadClasses
{
    private const string LuminanceTable = "EN 13201-2:2015, table 1";
    private const string HemisphericalTable = "EN 13201-2:2015, table 4 (from memory)";
    private const string SemicylindricalTable = "EN 13201-2:2015, table 5 (from memory)";
    private const string VerticalTable = "EN 13201-2:2015, table 6 (from memory)";

    private static readonly ImmutableArray<RoadClass> Motorised =
    [
        M("M1", 2.00, 0.40, 0.70, 0.10, 0.35), M("M2", 1.50, 0.40, 0.70, 0.10, 0.35), M("M3", 1.00, 0.40, 0.60, 0.15, 0.30),
        M("M4", 0.75, 0.40, 0.60, 0.15, 0.30), M("M5", 0.50, 0.35, 0.40, 0.15, 0.30), M("M6", 0.30, 0.35, 0.40, 0.20, 0.30),
    ];

    private static readonly ImmutableArray<RoadClass> Spatial =
    [
        H("HS1", 5), H("HS2", 2.5), H("HS3", 1),
        .. new[] { 10, 7.5, 5, 3, 2, 1.5, 1, 0.75, 0.5 }.Select((lx, i) => new RoadClass($"SC{i + 1}", SemicylindricalTable) { MinimumSemicylindricalLx = lx }),
        .. new[] { 50, 30, 10, 7.5, 5, 0.5 }.Select((lx, i) => new RoadClass($"EV{i + 1}", VerticalTable) { MinimumVerticalLx = lx }),
    ];

    /// <summary>Greatest fTI of C and P classes, fraction (EN 13201-2:2015, tables 2 and 3; read, two independent reproductions agreeing).</summary>
    private static readonly ImmutableArray<(string Name, double Increment)> Glare =
    [
        ("C0", 0.10), ("C1", 0.10), ("C2", 0.15), ("C3", 0.15), ("C4", 0.15), ("C5", 0.20),
        ("P1", 0.20), ("P2", 0.25), ("P3", 0.25), ("P4", 0.30), ("P5", 0.30), ("P6", 0.35),
    ];

    /// <summary>
    /// What P classes ask besides where faces must be recognised: vertical and semicylindrical minima, lx (EN 13201-2:2015, table 3; from memory).
    /// </summary>
    private static readonly ImmutableArray<(string Name, double VerticalLx, double SemicylindricalLx)> Faces =
    [
        ("P1", 5, 5), ("P2", 3, 2), ("P3", 2.5, 1.5), ("P4", 1.5, 1), ("P5", 1, 0.6), ("P6", 0.6, 0.2),
    ];

    /// <summary>Greatest glare rating GR of outdoor work places (EN 12464-2, from memory).</summary>
    private static readonly ImmutableArray<(string Name, int Rating)> WorkGlare =
    [
        ("walkway", 50), ("slow traffic", 50), ("normal traffic", 45), ("loading point", 50), ("parking light", 55), ("parking medium", 50), ("parking heavy", 50),
    ];

    /// <summary>Names known, in the order of their standards.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Motorised.Select(c => c.Name), .. LightClasses.Names, .. Spatial.Select(c => c.Name)];

    /// <summary>A class by name, spelt as freely as <see cref="LightClasses.Find"/> allows, or null.</summary>
    /// <param name="recogniseFaces">Adds to a P class what it asks where faces must be recognised.</param>
    public static RoadClass? Find(string name, bool recogniseFaces = false)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (Motorised.Concat(Spatial).FirstOrDefault(c => LightClasses.IsWritten(name, c.Name, c.Source)) is { } own) return own;
        if (LightClasses.Find(name) is not { } target) return null;
        var found = RoadClass.Of(target);
        foreach (var limit in Glare.Where(g => g.Name == target.Name)) found = found with { Glare = new GlareLimit(limit.Increment) };
        foreach (var limit in WorkGlare.Where(g => g.Name == target.Name)) found = found with { GreatestGlareRating = limit.Rating };
        if (!recogniseFaces) return found;
        foreach (var faces in Faces.Where(f => f.Name == target.Name))
        {
            found = found with { MinimumVerticalLx = faces.VerticalLx, MinimumSemicylindricalLx = faces.SemicylindricalLx };
        }

        return found;
    }

    private static RoadClass M(string name, double averageCdM2, double overall, double longitudinal, double increment, double edge) =>
        new(name, LuminanceTable) { Luminance = new LuminanceTarget(averageCdM2, overall, longitudinal), Glare = new GlareLimit(increment), EdgeRatio = edge };

    private static RoadClass H(string name, double averageLx) => new(name, HemisphericalTable) { Hemispherical = new HemisphericalTarget(averageLx, 0.15) };
}

using System.Collections.Immutable;

namespace TenderKit.Intake.Photometry;

/// <summary>Symmetry of the planes listed in a file, in the file's own angles.</summary>
internal enum PlaneSymmetry
{
    None,
    Rotational,
    AboutZero,
    AboutNinety,
    Quadrants,
}

/// <summary>Planes of a file, unfolded to C 0 to 360 with both ends present.</summary>
internal sealed record PlaneSet(ImmutableArray<double> PlanesDegrees, ImmutableArray<double> GammasDegrees, ImmutableArray<double> Values)
{
    private const double JustUnderHorizontalDegrees = 90 - 1e-6;

    /// <param name="shiftDegrees">Added to a file's angle to give C.</param>
    public static PlaneSet Unfold(double[] angles, double[] gammas, double[][] rows, PlaneSymmetry symmetry, double shiftDegrees)
    {
        var byPlane = new SortedDictionary<double, double[]>();
        for (var i = 0; i < angles.Length; i++)
        {
            foreach (var image in Images(angles[i], symmetry)) byPlane.TryAdd(Turned(image + shiftDegrees), rows[i]);
        }

        if (!byPlane.ContainsKey(0)) byPlane.Add(0, AtZero(byPlane));
        var planes = byPlane.Keys.Append(360).ToImmutableArray();
        var unfolded = byPlane.Values.Append(byPlane[0]);
        if (gammas[0] == 0) return new PlaneSet(planes, [.. gammas], [.. unfolded.SelectMany(r => r)]);

        // upper half only: nothing below the horizontal
        return new PlaneSet(planes, [0, JustUnderHorizontalDegrees, .. gammas], [.. unfolded.SelectMany(r => (double[])[0, 0, .. r])]);
    }

    private static double[] Images(double angle, PlaneSymmetry symmetry) => symmetry switch
    {
        PlaneSymmetry.Rotational => [0],
        PlaneSymmetry.AboutZero => [angle, -angle],
        PlaneSymmetry.AboutNinety => [angle, 180 - angle],
        PlaneSymmetry.Quadrants => [angle, -angle, 180 - angle, 180 + angle],
        _ => [angle],
    };

    private static double Turned(double degrees)
    {
        var turned = Math.Round(degrees % 360, 6);
        if (turned < 0) turned += 360;
        return turned >= 360 ? 0 : turned;
    }

    private static double[] AtZero(SortedDictionary<double, double[]> byPlane)
    {
        var (after, first) = byPlane.First();
        var (before, last) = byPlane.Last();
        var share = (360 - before) / (after + 360 - before);
        return [.. last.Zip(first, (l, f) => l + (share * (f - l)))];
    }
}

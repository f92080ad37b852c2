using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Places of poles along a line with a pole at each bend: between two bends even bays, at the ends half a bay free, nowhere a bay longer than asked.
/// Common practice, no source.
/// </summary>
/// <param name="PlacesM">Distances along the line, m, ascending.</param>
/// <param name="GreatestM">Longest bay; an end counts as twice its free length, m.</param>
public sealed record LineBays(ImmutableArray<double> PlacesM, double GreatestM)
{
    /// <summary>One pole serves the bends within this, m. Common practice, no source.</summary>
    public const double OnePoleM = 10;

    /// <param name="lengthM">Length of the line, m.</param>
    /// <param name="bendsM">Distances of the bends along it, m, ascending.</param>
    /// <param name="stepM">Longest bay allowed, m.</param>
    public static LineBays Of(double lengthM, ImmutableArray<double> bendsM, double stepM)
    {
        Require.Positive(lengthM, nameof(lengthM));
        Require.Positive(stepM, nameof(stepM));
        var kept = Apart(bendsM.Where(b => b > 0 && b < lengthM));
        if (kept.IsEmpty)
        {
            var bays = Whole(lengthM / stepM);
            return new([.. Enumerable.Range(0, bays).Select(i => (i + 0.5) * lengthM / bays)], lengthM / bays);
        }

        var first = End(kept[0], stepM);
        var last = End(lengthM - kept[^1], stepM);
        var places = first.Select(d => kept[0] - d).Reverse().ToList();
        for (var i = 0; i < kept.Length; i++)
        {
            places.Add(kept[i]);
            if (i + 1 == kept.Length) break;
            var bays = Whole((kept[i + 1] - kept[i]) / stepM);
            places.AddRange(Enumerable.Range(1, bays - 1).Select(n => kept[i] + (n * (kept[i + 1] - kept[i]) / bays)));
        }

        places.AddRange(last.Select(d => kept[^1] + d));
        var bay = places.Zip(places.Skip(1), (a, b) => b - a).Append(2 * places[0]).Append(2 * (lengthM - places[^1])).Max();
        return new([.. places], bay);
    }

    /// <summary>Distances from a bend of the poles between it and an end: n even bays and half a bay free.</summary>
    private static List<double> End(double lengthM, double stepM)
    {
        var bays = Math.Max(0, (int)Math.Ceiling((lengthM / stepM) - 0.5 - 1e-9));
        return [.. Enumerable.Range(1, bays).Select(n => n * lengthM / (bays + 0.5))];
    }

    /// <summary>Of bends nearer to each other than a pole serves, the first.</summary>
    private static ImmutableArray<double> Apart(IEnumerable<double> bends)
    {
        var kept = new List<double>();
        foreach (var bend in bends.Where(b => kept.Count == 0 || b - kept[^1] >= OnePoleM)) kept.Add(bend);
        return [.. kept];
    }

    private static int Whole(double bays) => Math.Max(1, (int)Math.Ceiling(bays - 1e-9));
}

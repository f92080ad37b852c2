using System.Collections.Immutable;
using TenderKit.Tendering.Quotes.Checks;

namespace TenderKit.Tendering.Quotes.Own;

/// <summary>One site lit by one kind of light point.</summary>
/// <param name="Poles">Poles it takes.</param>
/// <param name="FluxLm">Flux each of them then needs.</param>
/// <param name="ReachedFraction">Share of the light asked for that the lamp reaches with any number of poles, at most 1.</param>
internal sealed record Allotted(SiteNeed Site, int Poles, double FluxLm, double ReachedFraction, double Misfit);

/// <summary>
/// Which kind of light point stands at which site, where the tender does not say: the allotment that serves the sites best with the
/// quantities offered. Moves and exchanges from several starts until nothing gets better; the same offer always gives the same one.
/// </summary>
internal static class Allotment
{
    private const double TooDark = 6;
    private const double TooFew = 200;

    /// <summary>Misfit beyond which a site counts no worse: one faulty part must not push a light point off its sites.</summary>
    private const double MostMisfit = 1.5;
    private const int MostSites = 24;
    private const int MostSteps = 300_000;
    private const double Unused = 0.4;

    /// <summary>For each site the index of its light point.</summary>
    public static int[] Find(ImmutableArray<SiteNeed> sites, ImmutableArray<LightPoint> points, Allotted[,] table)
    {
        var best = Array.Empty<int>();
        var least = double.PositiveInfinity;
        foreach (var start in Starts(sites, points, table))
        {
            var (found, cost) = Improve(sites, points, table, start);
            if (cost < least - 1e-9) (best, least) = (found, cost);
        }

        return sites.Length > MostSites ? best : new Tree(sites, points, table, best, least).Search();
    }

    /// <summary>Every allotment that no quantity forbids, largest sites first, until the steps are used up.</summary>
    private sealed class Tree(ImmutableArray<SiteNeed> sites, ImmutableArray<LightPoint> points, Allotted[,] table, int[] best, double least)
    {
        private readonly int[] _order = [.. Enumerable.Range(0, sites.Length).OrderByDescending(s => table[s, best[s]].Poles).ThenBy(s => s)];
        private readonly int[] _now = (int[])best.Clone();
        private readonly int[] _used = new int[points.Length];
        private int _steps;

        public int[] Search()
        {
            Step(0, 0);
            return best;
        }

        private void Step(int depth, double cost)
        {
            if (cost >= least || ++_steps > MostSteps) return;
            if (depth == sites.Length)
            {
                var whole = Cost(sites, points, table, _now);
                if (whole < least - 1e-9) (best, least) = ((int[])_now.Clone(), whole);
                return;
            }

            var s = _order[depth];
            foreach (var p in Enumerable.Range(0, points.Length).OrderBy(p => table[s, p].Misfit))
            {
                if (_used[p] + table[s, p].Poles > points[p].Quantity * 1.02) continue;
                (_now[s], _used[p]) = (p, _used[p] + table[s, p].Poles);
                Step(depth + 1, cost + Math.Min(MostMisfit, table[s, p].Misfit));
                _used[p] -= table[s, p].Poles;
            }
        }
    }

    private static IEnumerable<int[]> Starts(ImmutableArray<SiteNeed> sites, ImmutableArray<LightPoint> points, Allotted[,] table)
    {
        yield return [.. sites.Select((_, s) => Enumerable.Range(0, points.Length).MinBy(p => table[s, p].Misfit))];
        var rising = Enumerable.Range(0, points.Length).OrderBy(p => points[p].FluxLm).ToList();
        foreach (var key in new Func<SiteNeed, double>[] { s => s.Light.Min(n => n.FluxLm * n.Poles) / s.Poles, s => s.Light.Min(n => n.FluxLm), s => s.FullHoursH })
        {
            var (start, used, at) = (new int[sites.Length], 0, 0);
            foreach (var s in Enumerable.Range(0, sites.Length).OrderBy(i => key(sites[i])).ThenBy(i => i))
            {
                var poles = table[s, rising[at]].Poles;
                if (used > 0 && used + poles > points[rising[at]].Quantity * 1.02 && at < rising.Count - 1) (at, used) = (at + 1, 0);
                start[s] = rising[at];
                used += table[s, rising[at]].Poles;
            }

            yield return start;
        }
    }

    private static (int[] Found, double Cost) Improve(ImmutableArray<SiteNeed> sites, ImmutableArray<LightPoint> points, Allotted[,] table, int[] start)
    {
        var (now, cost, better) = ((int[])start.Clone(), Cost(sites, points, table, start), true);
        while (better)
        {
            better = false;
            for (var s = 0; s < sites.Length; s++)
            {
                for (var p = 0; p < points.Length; p++)
                {
                    var old = now[s];
                    if (old == p) continue;
                    now[s] = p;
                    if (!Try() && !Exchange(s, p, old)) now[s] = old;
                }
            }
        }

        return (now, cost);

        bool Exchange(int site, int taken, int given)
        {
            for (var other = 0; other < sites.Length; other++)
            {
                if (other == site || now[other] != taken) continue;
                now[other] = given;
                if (Try()) return true;
                now[other] = taken;
            }

            return false;
        }

        bool Try()
        {
            var next = Cost(sites, points, table, now);
            if (next >= cost - 1e-9) return false;
            (cost, better) = (next, true);
            return true;
        }
    }

    private static double Cost(ImmutableArray<SiteNeed> sites, ImmutableArray<LightPoint> points, Allotted[,] table, int[] allotted)
    {
        var cost = 0.0;
        for (var s = 0; s < sites.Length; s++)
        {
            var (site, point) = (table[s, allotted[s]], points[allotted[s]]);
            cost += Math.Min(MostMisfit, site.Misfit);
            if (!point.Sites.IsEmpty && !point.Sites.Contains(sites[s].Id)) cost += TooDark;
            if (!point.ByLot.ContainsKey("") && !point.ByLot.ContainsKey(sites[s].Lot)) cost += TooDark;
        }

        for (var p = 0; p < points.Length; p++)
        {
            foreach (var (lot, quantity) in points[p].ByLot)
            {
                var used = 0;
                for (var s = 0; s < sites.Length; s++)
                {
                    if (allotted[s] == p && (lot.Length == 0 || sites[s].Lot == lot)) used += table[s, p].Poles;
                }

                cost += used > quantity * 1.02 ? TooFew * Math.Log((double)used / quantity) : Unused * Math.Log(quantity / Math.Max(used, 0.5));
            }
        }

        return cost;
    }

    /// <summary>How badly a light point serves a site: too dark, too little energy for the nights asked, too small an array; a little where it is far too large.</summary>
    public static Allotted Of(SiteNeed site, LightPoint point, OfferedKit parts, Asked asked)
    {
        var (poles, flux, reached) = site.With(point.FluxLm, parts.Pole?.Value("height_m"), asked.Settings.ToleranceFraction);
        var night = (point.InputPowerW * flux / point.FluxLm * site.FullHoursH) + site.OwnUseWh;
        var misfit = reached < 1 ? TooDark * (0.2 - Math.Log(reached)) : 0;
        misfit += Misfit(parts.BatteryWh * asked.FreshOf(parts.Chemistry) / night / asked.AutonomyNights) + Misfit(parts.ArrayWp / (night * site.ArrayWpPerWh));
        if (parts.Pole?.Value("height_m") is { } height && height < site.LeastHeightM - 0.05) misfit += 1;
        return new Allotted(site, poles, flux, reached, misfit);
    }

    private static double Misfit(double? ratio) => ratio is not { } r ? 0 : r < 1 ? -2 * Math.Log(r) : 0.05 * Math.Log(r);
}

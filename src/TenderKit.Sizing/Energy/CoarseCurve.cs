using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Sizing.Energy;

/// <summary>An array and the smallest battery that keeps the target with it.</summary>
/// <param name="ArrayWp">Rated power of all modules, Wp.</param>
/// <param name="BatteryWh">Rated energy, Wh.</param>
public sealed record CurvePoint(double ArrayWp, double BatteryWh);

/// <summary>
/// The curve of equal reliability in a few points, quick enough for a picture: for each array the smallest battery to 2 %, all arrays searched
/// together so that their balances share the lanes of <see cref="EnergyBalance.RunMany"/>.
/// </summary>
/// <remarks>
/// Hysteresis can make a larger battery lose a night more than a smaller one, so nothing is bisected with it. The bracket is grown and halved with
/// hysteresis off, where dark nights do not rise with the battery but for its self-discharge; the size found is then tried with hysteresis as given and
/// enlarged by 3 % until it keeps the target. A point of the curve has therefore been seen to keep it; a smaller battery might too, by luck.
/// </remarks>
public static class CoarseCurve
{
    /// <summary>Arrays of the curve, times the array that just feeds the worst month.</summary>
    private static readonly ImmutableArray<double> Ratios = [0.95, 1.05, 1.2, 1.4, 1.7, 2.1, 2.7];

    /// <summary>An array of the ladder this near to the template's own is left to it, fraction.</summary>
    private const double NearFraction = 0.05;

    /// <summary>The points by growing array; arrays no battery serves are left out.</summary>
    /// <param name="template">System whose array, controller current and battery are scaled; the rest stays. Its own array is one of the points.</param>
    public static ImmutableArray<CurvePoint> Of(PlaneYears years, LampHours lamp, PowerSystem template, DarkNightTarget target)
    {
        var even = EqualReliability.EvenArrayWp(years, lamp, template);
        var nightWh = EqualReliability.OneNightRatedWh(lamp, template);
        var searches = Ratios.Select(r => r * even).Where(wp => Math.Abs(wp / template.Array.ArrayWp - 1) > NearFraction).Append(template.Array.ArrayWp).Order()
            .Select(wp => new BatterySearch(wp, nightWh)).ToList();
        while (searches.Where(s => s.TrialWh is not null).ToList() is { Count: > 0 } open)
        {
            var results = EnergyBalance.RunMany(years, lamp, [.. open.Select(s => SystemOf(template, s))]);
            foreach (var (search, result) in open.Zip(results)) search.Take(target.KeptBy(result));
        }

        return [.. searches.Where(s => s.FoundWh is not null).Select(s => new CurvePoint(s.ArrayWp, s.FoundWh!.Value))];
    }

    private static PowerSystem SystemOf(PowerSystem template, BatterySearch search)
    {
        var sized = EqualReliability.Sized(template, search.ArrayWp, search.TrialWh!.Value);
        return search.WithHysteresis ? sized : sized with { Control = sized.Control with { ReconnectFraction = 0 } };
    }

    /// <summary>Search of one array's battery, one trial after another.</summary>
    private sealed class BatterySearch(double arrayWp, double nightWh)
    {
        private const double StartNights = 2;
        private const double LeastNights = 0.25;
        private const double Growth = 1.6;
        private const double EnoughRatio = 1.02;
        private const double Enlargement = 1.03;

        private double? failedWh;
        private double? keptWh;

        public double ArrayWp => arrayWp;

        /// <summary>Battery to try next, or null when the search is over.</summary>
        public double? TrialWh { get; private set; } = StartNights * nightWh;

        public bool WithHysteresis { get; private set; }

        public double? FoundWh { get; private set; }

        public void Take(bool kept)
        {
            if (WithHysteresis) Confirm(kept);
            else Narrow(kept);
            if (TrialWh > EqualReliability.MostNights * nightWh) TrialWh = null;
        }

        private void Narrow(bool kept)
        {
            if (kept) keptWh = TrialWh;
            else failedWh = TrialWh;
            if (keptWh is not { } high) TrialWh *= Growth;
            else if (failedWh is null && high > LeastNights * nightWh) TrialWh = high / Growth;
            else if (failedWh is { } below && high > below * EnoughRatio) TrialWh = Math.Sqrt(high * below);
            else (TrialWh, WithHysteresis) = (high, true);
        }

        private void Confirm(bool kept)
        {
            FoundWh = kept ? TrialWh : null;
            TrialWh = kept ? null : TrialWh * Enlargement;
        }
    }
}

using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>
/// What sites of one tender have in common and need not be computed twice: the years of hours of a place, the light of a luminaire on a road
/// of the same shape, the energy balance of a power system under the same sky. Safe for several threads. Only the years of the places used last
/// are kept, since they are large; whoever works through sites in order of <see cref="PlaceKey"/> computes each once.
/// </summary>
public sealed class SharedWork
{
    private const int PlacesKept = 12;

    private readonly Lock _lock = new();
    private readonly LinkedList<(string Key, Lazy<SiteWeather> Weather)> _places = new();
    private readonly ConditionalWeakTable<SiteWeather, ConcurrentDictionary<PowerSystem, (EnergyResult? Result, double AtLeastDark)>> _balances = [];
    private readonly ConditionalWeakTable<SiteClimate, ConcurrentDictionary<(RuleSet, double), BankSizes>> _banks = [];
    private readonly ConditionalWeakTable<SiteWeather, ConcurrentDictionary<PlaneOrientation, SiteWeather>> _planes = [];
    private readonly ConcurrentDictionary<LightKey, LitSite> _lights = new();
    private readonly ConcurrentDictionary<(LightDistribution, RoadLayout, LightTarget, double, SpacingBounds), LightSolution> _widest = new();

    /// <summary>The place whose sun and sky a site uses: its position to a hundredth of a degree, within 0.8 km, since no climate is known finer.</summary>
    public static Site AtPlace(Site site) => site with { LatitudeDegrees = Math.Round(site.LatitudeDegrees, 2), LongitudeDegrees = Math.Round(site.LongitudeDegrees, 2) };

    /// <summary>Equal for sites that share years of hours.</summary>
    public static string PlaceKey(Site site)
    {
        var place = AtPlace(site);
        return FormattableString.Invariant($"{place.LatitudeDegrees}|{place.LongitudeDegrees}|{site.ClimateFile}|{site.Schedule.Name}|{site.ShadedFraction}|{site.Horizon}|{site.AzimuthDegrees}");
    }

    /// <summary>The weather of a site from its monthly climate.</summary>
    internal SiteWeather WeatherOf(Site site, MonthlyClimate monthly, DesignInputs inputs)
    {
        var key = PlaceKey(site);
        Lazy<SiteWeather> weather;
        lock (_lock)
        {
            var node = _places.First;
            while (node is not null && node.Value.Key != key) node = node.Next;
            if (node is null) node = new((key, new Lazy<SiteWeather>(() => ClimateStage.Run(AtPlace(site), monthly, inputs))));
            else _places.Remove(node);
            _places.AddFirst(node);
            if (_places.Count > PlacesKept) _places.RemoveLast();
            weather = node.Value.Weather;
        }

        return weather.Value;
    }

    /// <summary>The energy balance of a power system under a weather.</summary>
    internal EnergyResult Balance(SiteWeather weather, PowerSystem system) => Balance(weather, system, double.PositiveInfinity)!;

    /// <summary>The same, or null as soon as it is certain that it has more dark nights a year than allowed.</summary>
    internal EnergyResult? Balance(SiteWeather weather, PowerSystem system, double mostDarkNightsPerYear)
    {
        var known = _balances.GetValue(weather, _ => new());
        if (known.TryGetValue(system, out var before) && (before.Result is not null || before.AtLeastDark > mostDarkNightsPerYear))
            return before.Result?.DarkNightsPerYear > mostDarkNightsPerYear ? null : before.Result;
        var (result, atLeast) = EnergyBalance.RunUnlessDark(weather.Plane, weather.Climate.Lamp, system, mostDarkNightsPerYear);
        known[system] = (result, atLeast);
        return result;
    }

    /// <summary>What banks hold in a climate, for the autonomy asked for.</summary>
    internal BankSizes BanksOf(SiteClimate climate, DesignInputs inputs) =>
        _banks.GetValue(climate, _ => new()).GetOrAdd((inputs.Rules, inputs.Tender.Reliability.AutonomyNights), _ => new BankSizes(climate, inputs));

    /// <summary>A weather on another plane.</summary>
    internal SiteWeather OnPlane(SiteWeather weather, PlaneOrientation plane, Func<SiteWeather> compute)
    {
        var known = _planes.GetValue(weather, _ => new());
        return known.TryGetValue(plane, out var turned) ? turned : known[plane] = compute();
    }

    /// <summary>The light of one luminaire on a site.</summary>
    internal LitSite Light(LightKey key, Func<LitSite> compute) => _lights.TryGetValue(key, out var lit) ? lit : _lights[key] = compute();

    /// <summary>The widest spacing of a road, which does not depend on its length.</summary>
    internal LightSolution Widest(LightDistribution distribution, RoadLayout layout, LightTarget target, double maintenance, SpacingBounds bounds, Func<LightSolution> compute)
    {
        var key = (distribution, layout, target, maintenance, bounds);
        return _widest.TryGetValue(key, out var solution) ? solution : _widest[key] = compute();
    }
}

/// <summary>All that the light of a site depends on.</summary>
internal sealed record LightKey(
    LightDistribution Distribution, SiteKind Kind, double LengthM, double WidthM, LightTarget Target, LightingSchedule Schedule, int? FixedPoles,
    Arrangement Arrangement, PoleShape Shape, double Maintenance, SpacingBounds Bounds)
{
    /// <summary>What is drawn of the site where its light depends on it: its area, or the bends of its line.</summary>
    public SiteGeometry? Drawn { get; init; }
}

/// <summary>Light of a site with its checks.</summary>
internal sealed record LitSite(LightSolution Light, System.Collections.Immutable.ImmutableArray<TenderKit.Sizing.Basics.Check> Checks);

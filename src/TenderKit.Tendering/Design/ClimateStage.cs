using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Climate, night and module plane of a site, with the hours the energy balance runs over.</summary>
/// <param name="Climate">As printed.</param>
/// <param name="HoursOf">Makes the years of hours on the module plane.</param>
public sealed record SiteWeather(SiteClimate Climate, Func<PlaneYears> HoursOf)
{
    private readonly WeakReference<PlaneYears?> _hours = new(null);

    /// <param name="plane">Years of hours on the module plane, kept.</param>
    public SiteWeather(SiteClimate climate, PlaneYears plane)
        : this(climate, () => plane)
    {
    }

    /// <summary>A copy makes hours of its own.</summary>
    private SiteWeather(SiteWeather other)
    {
        (Climate, HoursOf, Own, OwnSeries, _hours) = (other.Climate, other.HoursOf, other.Own, other.OwnSeries, new(null));
    }

    /// <summary>Years of hours on the module plane, caution and shading included. Hours turned to other planes are many and large, so they are made again when memory was short.</summary>
    public PlaneYears Plane
    {
        get
        {
            lock (_hours)
            {
                if (_hours.TryGetTarget(out var hours)) return hours;
                hours = HoursOf();
                _hours.SetTarget(hours);
                return hours;
            }
        }
    }

    /// <summary>The user's own hours on the module plane in solar time, caution and shading included; null where the climate holds no hours.</summary>
    public PlaneYears? Own { get; init; }

    /// <summary>The series those hours are of.</summary>
    public HourlySeries? OwnSeries { get; init; }

    /// <summary>The energy balance of a system on the user's own hours, or null where there are none.</summary>
    public SeriesProof? ProofOf(PowerSystem system) => Own is { } own && OwnSeries is { } series ? SeriesProof.Of(series, own, Climate.Lamp, system) : null;
}

/// <summary>First step of a site's design.</summary>
public static class ClimateStage
{
    /// <summary>Temperatures of a station farther than this give way to the tender's own, km.</summary>
    private const double FarTemperatureKm = 300;

    /// <summary>Shading above this share is designed with a warning, fraction.</summary>
    private const double DoubtfulShadingFraction = 0.25;

    /// <summary>The climate the site uses: its own file, the tender's file, or the built-in estimate.</summary>
    public static MonthlyClimate ClimateOf(Site site, DesignInputs inputs)
    {
        if (inputs.Tender.Climates.NameOf(site.ClimateFile) is not { } name) return EstimateOf(site, inputs);
        return inputs.Climates[name].Monthly with { LatitudeDegrees = site.LatitudeDegrees, LongitudeDegrees = site.LongitudeDegrees };
    }

    /// <summary>The built-in estimate; its temperatures give way to those of the tender's own climate file where their station is far away.</summary>
    private static MonthlyClimate EstimateOf(Site site, DesignInputs inputs)
    {
        var estimate = ReferenceClimate.Estimate(site.LatitudeDegrees, site.LongitudeDegrees, inputs.Stations);
        if (estimate.TemperatureStationKm is not > FarTemperatureKm) return estimate;
        if (inputs.Tender.Climates.NameOf(null) is not { } name || !inputs.Climates.TryGetValue(name, out var reading)) return estimate;
        var own = reading.Monthly;
        return estimate with
        {
            MeanC = own.MeanC,
            DailyMaxC = own.DailyMaxC,
            DailyMinC = own.DailyMinC,
            RecordLowC = own.RecordLowC,
            RecordHighC = own.RecordHighC,
            TemperatureStationKm = own.TemperatureStationKm,
            Source = $"{estimate.Source.Split("; air temperature")[0]}; air temperatures as in {name}",
        };
    }

    /// <summary>Factor on irradiation for a grade, fraction.</summary>
    public static double CautiousFactor(ClimateGrade grade, RuleSet rules) => rules[ClimateGrades.RuleId(grade)];

    /// <summary>Nights, module plane and hours of a site.</summary>
    /// <param name="monthly">Its climate, examined and without errors.</param>
    public static SiteWeather Run(Site site, MonthlyClimate monthly, DesignInputs inputs)
    {
        var rules = inputs.Rules;
        var nights = NightCalendar.ForLatitude(site.LatitudeDegrees, rules["night.switching_elevation"]);
        var lamp = ScheduleHours.For(site.Schedule, nights);
        var albedo = rules["climate.albedo"];
        var plane = PlaneOf(site, monthly, lamp, rules);
        var factor = CautiousFactor(monthly.Grade, rules);
        var planeMonths = TiltedPlane.MonthlyKWhPerM2(monthly, plane, albedo, site.Horizon);
        ImmutableArray<double> usable = [.. planeMonths.Select(h => h * factor * (1 - site.ShadedFraction))];
        var years = SyntheticYears.Generate(monthly, SequenceRules.Of(rules, monthly.YearSpreadFraction), factor);
        var series = SeriesOf(site, inputs);
        return new SiteWeather(
            new SiteClimate(monthly, factor, plane, usable, NightCalendar.MonthlyMeanDarkH(nights), lamp),
            TiltedPlane.Hourly(years, plane, albedo, site.ShadedFraction, horizon: site.Horizon))
        {
            OwnSeries = series,
            Own = series is null ? null : TiltedPlane.Hourly(Lowered(series.ToYears(), factor), plane, albedo, site.ShadedFraction, DiffuseSplit.Hourly, site.Horizon),
        };
    }

    /// <summary>The hours behind the climate of a site, or null.</summary>
    public static HourlySeries? SeriesOf(Site site, DesignInputs inputs) =>
        inputs.Tender.Climates.NameOf(site.ClimateFile) is { } name ? inputs.Climates.GetValueOrDefault(name)?.Series : null;

    /// <summary>Hours with the cautious factor of their grade, as the synthetic years have it.</summary>
    private static HourlyYears Lowered(HourlyYears hours, double factor) => hours with { GlobalWhPerM2 = [.. hours.GlobalWhPerM2.Select(wh => wh * factor)] };

    /// <summary>What is doubtful about the climate and the nights of a site; with an error among it the site cannot be designed.</summary>
    public static ImmutableArray<Diagnostic> Examine(Site site, MonthlyClimate monthly, DesignInputs inputs)
    {
        var place = new Place(Site: site.Id);
        var nights = NightCalendar.ForLatitude(site.LatitudeDegrees, inputs.Rules["night.switching_elevation"]);
        return [.. ReferenceClimate.Examine(monthly, place), .. ScheduleHours.Examine(site.Schedule, nights, place), .. GradeNotes(site, monthly, inputs.Rules), .. ShadingNotes(site), .. FarNotes(site, inputs)];
    }

    /// <summary>The tilt that serves the worst month best behind the site's horizon, facing the equator or where the site list says.</summary>
    private static PlaneOrientation PlaneOf(Site site, MonthlyClimate monthly, LampHours lamp, RuleSet rules) => TiltedPlane.BestForWorstMonth(
        monthly, lamp.MonthlyFullHours, rules["energy.least_tilt"], rules["climate.albedo"], site.Horizon, site.AzimuthDegrees);

    /// <summary>A climate file that says where it is from, used far from there.</summary>
    private static IEnumerable<Diagnostic> FarNotes(Site site, DesignInputs inputs)
    {
        if (inputs.Tender.Climates.NameOf(site.ClimateFile) is not { } name || !inputs.Climates.TryGetValue(name, out var reading)) yield break;
        var climate = reading.Monthly;
        if (climate is { LatitudeDegrees: 0, LongitudeDegrees: 0 }) yield break;
        var km = GreatCircle.DistanceKm(site.LatitudeDegrees, site.LongitudeDegrees, climate.LatitudeDegrees, climate.LongitudeDegrees);
        if (km <= inputs.Rules["climate.far_km"]) yield break;
        yield return Diagnostic.Warning(
            "TK326",
            FormattableString.Invariant($"its climate {name} is for a place {km:0} km away, more than {inputs.Rules["climate.far_km"]:0} km; get the data of this place, or check both positions"),
            new Place(Site: site.Id));
    }

    private static IEnumerable<Diagnostic> ShadingNotes(Site site)
    {
        if (site.ShadedFraction <= DoubtfulShadingFraction) yield break;
        yield return Diagnostic.Warning(
            "TK325",
            FormattableString.Invariant($"{site.ShadedFraction * 100:0} % shading is taken as so much less sun at every hour; a shadow across part of a module costs more: measure the obstacles on the ground, move the pole or cut back"),
            new Place(Site: site.Id));
    }

    private static IEnumerable<Diagnostic> GradeNotes(Site site, MonthlyClimate monthly, RuleSet rules)
    {
        if (!ClimateGrades.IsEstimate(monthly.Grade)) yield break;
        yield return Diagnostic.Warning(
            "TK320",
            FormattableString.Invariant($"irradiation is an estimate from the built-in reference table (nearest station {monthly.NearestStationKm ?? 0:0} km away), lowered by the factor {CautiousFactor(monthly.Grade, rules):0.00}; fetch monthly means for this place and name the file in the tender"),
            new Place(Site: site.Id));
    }
}

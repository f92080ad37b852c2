using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Upkeep;

/// <summary>A task that comes again.</summary>
/// <param name="Interval">How often, in words.</param>
/// <param name="Skill">Who may do it.</param>
/// <param name="Spares">What it uses up, or empty.</param>
public sealed record MaintenanceTask(string What, string Interval, string Skill, string Spares);

/// <summary>When a kit's worn parts are due, in whole years from taking over; the worst site of the kit counts.</summary>
/// <param name="BatteryYear">Year in which the batteries are replaced: the last whole year of their expected life.</param>
/// <param name="LuminaireYear">Last whole year before the flux may be down to 80 %, the lamp burning every dark hour.</param>
public sealed record KitDue(string KitId, int Poles, int BatteryCount, int BatteryYear, int LuminaireYear);

/// <summary>What must be done when, by whom, with which spares.</summary>
/// <param name="Years">Years the calendar covers.</param>
public sealed record MaintenancePlan(ImmutableArray<MaintenanceTask> Tasks, ImmutableArray<KitDue> Due, double CleaningYears, int Years)
{
    private const int LeastYears = 10;
    private const int MostYears = 20;
    private const double DaysPerMonth = 365.25 / 12;

    public static MaintenancePlan Of(TenderDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var due = design.Kits.Select(k => DueOf(design, k)).ToImmutableArray();
        var cleaning = design.Rules.FirstOrDefault(r => r.Id == "light.cleaning_years")?.Value ?? 1;
        var years = Math.Clamp(due.Select(d => d.BatteryYear).DefaultIfEmpty(0).Max() + 1, LeastYears, MostYears);
        return new MaintenancePlan([.. TasksOf(design, cleaning)], due, cleaning, years);
    }

    /// <summary>Whether luminaires are cleaned in a year, counted from 1.</summary>
    public bool IsCleaned(int year) => Math.Floor(year / CleaningYears) > Math.Floor((year - 1) / CleaningYears);

    /// <summary>Whether batteries of a kit are replaced in a year: after each life.</summary>
    public static bool IsReplaced(KitDue due, int year) => due.BatteryYear > 0 && year % due.BatteryYear == 0;

    /// <summary>
    /// Due years of a kit. Luminaire: L80 hours over the dark hours of a year, floor; on the safe side, since dimmed hours count whole.
    /// Check value: 50,000 h and 12 h a night (4,383 h a year) give year 11.
    /// </summary>
    private static KitDue DueOf(TenderDesign design, Kit kit)
    {
        var sites = design.Sites.Where(s => s.KitId == kit.Id).ToImmutableArray();
        var life = sites.Select(s => s.Energy.BatteryLifeYears).DefaultIfEmpty(0).Min();
        var hours = sites.Select(s => s.Climate.DarkHours.Sum() * DaysPerMonth).DefaultIfEmpty(0).Max();
        return new KitDue(kit.Id, kit.Poles, kit.Parts.BatteryCount * kit.Poles, Whole(life), hours > 0 ? Whole(kit.Parts.Luminaire.LifeL80H / hours) : 0);
    }

    private static int Whole(double years) => double.IsFinite(years) ? (int)Math.Clamp(Math.Floor(years), 0, 100) : 0;

    private static IEnumerable<MaintenanceTask> TasksOf(TenderDesign design, double cleaning)
    {
        const string Caretaker = "trained caretaker, from the ground";
        const string Electrician = "licensed electrician";
        const string AtHeight = "licensed electrician, trained for work at height";
        yield return new("Walk past every light after dark; note those dark, dim or burning by day", "every month", Caretaker, "");
        yield return new("Cut branches that shade a module; clear plants from the foot of the pole", "every 3 months, and when seen", "caretaker, from the ground; a trained crew above that", "");
        yield return new("Clean the modules with water and a soft brush, early in the day", "when dust or droppings show, and at the end of the dry season", "caretaker with a pole brush, from the ground", "");
        yield return new("Tighten anchor bolts, bracket and arm to the maker's torque; check the pole stands upright", "one month after erection, then every year", "trained fitter", "bolts, nuts, washers");
        yield return new("Battery: voltage at rest, tightness and corrosion of terminals, signs of heat or swelling", "every 6 months", Electrician, "terminals, grease");
        if (design.Kits.Any(k => k.Parts.Battery.Chemistry is BatteryChemistry.FloodedLeadAcid or BatteryChemistry.TubularLeadAcid))
            yield return new("Open lead-acid cells: level and density of the acid; fill up with distilled water", "every 2 months, more often when hot", Electrician, "distilled water; goggles, gloves");
        yield return new("Controller: read faults and counters, compare set-points with the settings sheet", "every year", Electrician, "fuses");
        yield return new("Earth electrode: measure; cables, glands and fuses: look for wear, water, insects", "every year, at the end of the dry season", Electrician, "fuses, glands, surge arresters");
        yield return new("Zinc and paint: look at welds, door and foot; repair bare places with zinc-rich paint", "every year", "trained fitter", "zinc-rich paint");
        yield return new("Clean the luminaires; check seals and the light on the ground at the test points", $"every {Span(cleaning)}", AtHeight, "seals");
        yield return new("Replace the batteries; take the old ones to a licensed recycler", "by kit, see the years", AtHeight, "batteries");
        yield return new("Replace luminaires when the light is below what is asked", "by kit, see the years", AtHeight, "luminaires");
        yield return new("After storm, flood, collision or earthquake: look at every pole before people pass", "at once", "trained fitter; licensed structural engineer where bent or loose", "");
    }

    private static string Span(double years) => years == 1 ? "year" : string.Create(CultureInfo.InvariantCulture, $"{years:0.##} years");
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Finds the least direct cost among all candidates of a site that pass every check and the hourly energy balance. Candidates leave a
/// queue in order of a cost that never exceeds their true cost, so the first whole candidate that passes is the cheapest; ties fall to
/// the order in which candidates were made, which is the order of the catalogue.
/// </summary>
public sealed class LeastCostSearch(Site site, SiteWeather weather, DesignInputs inputs)
{
    /// <summary>Simulations after which the search gives up and says so.</summary>
    public const int MostSimulations = 600;

    private readonly Rejections _bankRejections = new();
    private readonly Rejections _arrayRejections = new();
    private readonly Rejections _supportRejections = new();
    private readonly Rejections _wiringRejections = new();
    private readonly Rejections _energyRejections = new();
    private readonly Dictionary<PowerSystem, EnergyResult> _simulated = [];
    private int _bankCount;
    private int _powerCount;
    private int _wholeCount;

    /// <summary>Why nothing was found, naming the step that let nothing through and its nearest miss.</summary>
    public string WhyNothing =>
        _bankCount == 0 ? "no battery and controller fit the load: " + _bankRejections.NearestMiss
        : _powerCount == 0 ? "no module fits: " + _arrayRejections.NearestMiss
        : _wholeCount == 0 ? "no pole, foundation or cable fits: " + (_supportRejections.HasAny ? _supportRejections : _wiringRejections).NearestMiss
        : $"no power system keeps the nights lit within {MostSimulations} tried: " + _energyRejections.NearestMiss;

    /// <summary>The cheapest candidate that passes, or null.</summary>
    public ProvenCandidate? Find(ImmutableArray<LightOption> lights)
    {
        var costs = new Costs(inputs.Tender);
        var civil = new CivilCosts(inputs.Catalog, costs, inputs.Tender.Prices.MaintenanceYears);
        var support = new SupportStage(site, weather.Climate, inputs, costs, _supportRejections);
        var wiring = new WiringStage(inputs, costs, _wiringRejections);
        var queue = new PriorityQueue<Candidate, (decimal Cost, int Order)>();
        var order = 0;
        foreach (var candidate in Starts(lights)) queue.Enqueue(candidate, (candidate.SiteCost(costs, civil), order++));
        while (queue.TryDequeue(out var candidate, out var priority))
        {
            if (candidate.IsWhole)
            {
                if (Prove(candidate) is { } proven) return proven;
                if (_simulated.Count >= MostSimulations) return null;
            }
            else if (Complete(candidate, support, wiring) is { } whole)
            {
                queue.Enqueue(whole, (whole.SiteCost(costs, civil), priority.Order));
            }
        }

        return null;
    }

    private IEnumerable<Candidate> Starts(ImmutableArray<LightOption> lights)
    {
        foreach (var light in lights)
        {
            foreach (var bank in BankStage.Options(light, site, weather.Climate, inputs, _bankRejections))
            {
                _bankCount++;
                foreach (var power in ArrayStage.Options(bank, weather.Climate, inputs, _arrayRejections))
                {
                    _powerCount++;
                    yield return new Candidate(light, power, null, null);
                }
            }
        }
    }

    private Candidate? Complete(Candidate candidate, SupportStage support, WiringStage wiring)
    {
        if (support.Find(candidate.Light, candidate.Power) is not { } carried) return null;
        if (wiring.Find(candidate.Light, candidate.Power) is not { } wired) return null;
        _wholeCount++;
        return candidate with { Support = carried, Wiring = wired };
    }

    private ProvenCandidate? Prove(Candidate candidate)
    {
        var energy = EnergyOf(candidate);
        var name = FormattableString.Invariant($"{candidate.Power.Module.Code} x {candidate.Power.ModuleCount} with {candidate.Power.Bank.Battery.Code} x {candidate.Power.Bank.InSeries * candidate.Power.Bank.Strings}");
        return _energyRejections.Accept(name, EnergyChecks(energy, inputs)) ? new ProvenCandidate(candidate, energy) : null;
    }

    private EnergyDesign EnergyOf(Candidate candidate)
    {
        var power = candidate.Power;
        var bank = power.Bank;
        if (!_simulated.TryGetValue(power.System, out var result))
            _simulated[power.System] = result = EnergyBalance.Run(weather.Plane, weather.Climate.Lamp, power.System);
        var meanBatteryC = weather.Climate.Monthly.MeanC.Average() + bank.Model.EnclosureRiseK;
        var life = BatteryCapacity.LifeYears(bank.Battery.CalendarYearsAt25C, bank.Battery.CyclesAtDepth, bank.Battery.CycleDepthFraction, result.EquivalentFullCyclesPerYear, meanBatteryC);
        return new EnergyDesign(bank.LampInputW, bank.NightlyWh, bank.UsableWh, bank.AutonomyNights, life, power.HandInputs, power.Hand, power.System, result);
    }

    /// <summary>Checks that need the simulation.</summary>
    public static IEnumerable<Check> EnergyChecks(EnergyDesign energy, DesignInputs inputs)
    {
        yield return new Check("energy.dark_nights", "Energy", "dark nights a year, upper 90 % bound of the mean", Comparison.AtMost, inputs.Tender.Reliability.DarkNightsPerYear, energy.Simulated.DarkNightsUpperBound, "nights", "tender, reliability; hourly energy balance");
        yield return new Check("battery.life", "Battery", "expected life", Comparison.AtLeast, inputs.Rules["battery.life_years"], energy.BatteryLifeYears, "years", "design rule battery.life_years", 1);
    }
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Finds the least direct cost among all candidates of a site that pass every check and the hourly energy balance: best first over
/// light, then battery and controller, then modules, then pole and wiring. Each step leaves the queue in order of a cost that never
/// exceeds what can come of it (<see cref="CostBounds"/>), so the first whole candidate that passes is the cheapest; ties fall to the order
/// in which they were found, which follows the catalogue.
/// </summary>
public sealed class LeastCostSearch(Site site, SiteWeather weather, DesignInputs inputs)
{
    /// <summary>Energy balances after which the search gives up and says so.</summary>
    public const int MostSimulations = 600;

    private readonly Rejections _bankRejections = new();
    private readonly Rejections _arrayRejections = new();
    private readonly Rejections _supportRejections = new();
    private readonly Rejections _wiringRejections = new();
    private readonly Rejections _energyRejections = new();
    private readonly Dictionary<PowerSystem, EnergyResult> _simulated = [];
    private readonly PriorityQueue<object, (decimal Cost, int Order)> _queue = new();
    private int _order;
    private int _bankCount;
    private int _powerCount;
    private int _wholeCount;

    /// <summary>Light with a bank, modules not yet chosen.</summary>
    private sealed record Banked(LightOption Light, BankOption Bank);

    /// <summary>Light with bank and modules, pole and wiring not yet chosen.</summary>
    private sealed record Powered(LightOption Light, PowerOption Power);

    /// <summary>Why nothing was found, naming the step that let nothing through and its nearest miss.</summary>
    public string WhyNothing =>
        _bankCount == 0 ? "no battery and controller fit the load: " + _bankRejections.NearestMiss
        : _powerCount == 0 ? "no module fits: " + _arrayRejections.NearestMiss
        : _wholeCount == 0 ? "no pole, foundation or cable fits: " + (_supportRejections.HasAny ? _supportRejections : _wiringRejections).NearestMiss
        : $"no power system keeps the nights lit, {_simulated.Count} tried: " + _energyRejections.NearestMiss;

    /// <summary>The cheapest candidate that passes, or null.</summary>
    public ProvenCandidate? Find(ImmutableArray<LightOption> lights)
    {
        var costs = new Costs(inputs.Tender);
        var bounds = new CostBounds(weather.Climate, inputs, costs);
        var support = new SupportStage(site, weather.Climate, inputs, costs, _supportRejections);
        var wiring = new WiringStage(inputs, costs, _wiringRejections);
        foreach (var light in lights) Enqueue(light, bounds.Of(light));
        while (_queue.TryDequeue(out var node, out _))
        {
            switch (node)
            {
                case LightOption light:
                    foreach (var bank in BankStage.Options(light, site, weather.Climate, inputs, _bankRejections)) Enqueue(new Banked(light, bank), bounds.Of(light, bank), ref _bankCount);
                    break;
                case Banked(var light, var bank):
                    foreach (var power in ArrayStage.Options(bank, weather.Climate, inputs, _arrayRejections)) Enqueue(new Powered(light, power), bounds.Of(light, power), ref _powerCount);
                    break;
                case Powered(var light, var power):
                    if (support.Find(light, power) is { } carried && wiring.Find(light, power) is { } wired)
                    {
                        var whole = new Candidate(light, power, carried, wired);
                        Enqueue(whole, bounds.Of(whole), ref _wholeCount);
                    }

                    break;
                case Candidate candidate:
                    if (Prove(candidate) is { } proven) return proven;
                    if (_simulated.Count >= MostSimulations) return null;
                    break;
            }
        }

        return null;
    }

    private void Enqueue(object node, decimal cost) => _queue.Enqueue(node, (cost, _order++));

    private void Enqueue(object node, decimal cost, ref int count)
    {
        count++;
        Enqueue(node, cost);
    }

    /// <summary>Runs the energy balance of a candidate; null when it does not keep the lamps lit or the battery does not last.</summary>
    public ProvenCandidate? Prove(Candidate candidate)
    {
        var energy = EnergyOf(candidate);
        var power = candidate.Power;
        string Name() => FormattableString.Invariant($"{power.Module.Code} x {power.ModuleCount} with {power.Bank.Battery.Code} x {power.Bank.InSeries * power.Bank.Strings}");
        return _energyRejections.Accept(Name, [.. EnergyChecks(energy, inputs)]) ? new ProvenCandidate(candidate, energy) : null;
    }

    private EnergyDesign EnergyOf(Candidate candidate)
    {
        var power = candidate.Power;
        var bank = power.Bank;
        if (!_simulated.TryGetValue(power.System, out var result))
            _simulated[power.System] = result = EnergyBalance.Run(weather.Plane, weather.Climate.Lamp, power.System);
        var meanBatteryC = weather.Climate.Monthly.MeanC.Average() + bank.Model.EnclosureRiseK;
        var life = BatteryCapacity.LifeYears(bank.Battery.CalendarYearsAt25C, bank.Battery.CyclesAtDepth, bank.Battery.CycleDepthFraction, result.EquivalentFullCyclesPerYear, meanBatteryC);
        return new EnergyDesign(bank.LampInputW, bank.NightlyWh, bank.UsableWh, bank.AutonomyNights, life, power.HandInputs, power.Hand, power.System, result)
        {
            // hours of the user's own cost a second balance, so only what passes on the synthetic years is run on them
            OnOwnSeries = result.DarkNightsUpperBound <= inputs.Tender.Reliability.DarkNightsPerYear ? weather.ProofOf(power.System) : null,
        };
    }

    /// <summary>Checks that need the energy balance.</summary>
    public static IEnumerable<Check> EnergyChecks(EnergyDesign energy, DesignInputs inputs)
    {
        yield return new Check(
            "energy.dark_nights", "Energy", "dark nights a year, upper 90 % bound of the mean", Comparison.AtMost,
            inputs.Tender.Reliability.DarkNightsPerYear, energy.Simulated.DarkNightsUpperBound, "nights", "tender, reliability; hourly energy balance");
        if (OwnSeriesCheck.Of(energy, inputs.Tender.Reliability) is { } own) yield return own;
        yield return new Check(
            "battery.life", "Battery", "expected life", Comparison.AtLeast,
            inputs.Rules["battery.life_years"], energy.BatteryLifeYears, "years", "design rule battery.life_years", 1);
    }
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Finds the least direct cost among all candidates of a site that pass every check and the hourly energy balance: best first over
/// light, then battery and controller, then modules, then pole and wiring. Each step leaves the queue in order of a cost that never
/// exceeds what can come of it (<see cref="CostBounds"/>), so the first whole candidate that passes is the cheapest; ties fall to the order
/// in which they were found, which follows the catalogue. Where the tender chooses by present value, the bound is the first cost with the least that
/// can follow (<see cref="LaterCosts"/>); a candidate that passes goes back into the queue at its present value and is the answer once nothing
/// before it is left.
/// </summary>
public sealed class LeastCostSearch
{
    /// <summary>Energy balances after which the search gives up and says so.</summary>
    public const int MostSimulations = 600;

    private readonly Rejections _bankRejections = new();
    private readonly Rejections _arrayRejections = new();
    private readonly Rejections _supportRejections = new();
    private readonly Rejections _wiringRejections = new();
    private readonly Rejections _energyRejections = new();
    private readonly List<Candidate> _tooDark = [];
    private readonly HashSet<PowerSystem> _simulated = [];
    private readonly PriorityQueue<object, (decimal Cost, int Order)> _queue = new();
    private readonly Dictionary<(string Battery, int Count, string Controller, int Controllers), Enclosure?> _enclosures = [];
    private readonly Dictionary<(string Battery, int Count), decimal?> _leastBoxes = [];
    private readonly Dictionary<(string Module, int Count), Bracket?> _brackets = [];
    private readonly Dictionary<(PoleShape Shape, double LampW, string Module, int Count, int InSeries, double BankV, double ChargeA, int Controllers), WiringOption?> _wirings = [];
    private readonly Dictionary<LightOption, Dictionary<double, ImmutableArray<Controller>>> _controllers = new(ReferenceEqualityComparer.Instance);
    private readonly Site site;
    private readonly SiteWeather weather;
    private readonly DesignInputs inputs;
    private readonly Costs _costs;
    private readonly SupportStage _support;
    private readonly WiringStage _wiring;
    private readonly LaterCosts _later;
    private int _order;
    private int _bankCount;
    private int _powerCount;
    private int _wholeCount;

    public LeastCostSearch(Site site, SiteWeather weather, DesignInputs inputs)
    {
        (this.site, this.weather, this.inputs) = (site, weather, inputs);
        _costs = new Costs(inputs.Tender);
        _support = new SupportStage(site, weather.Climate, inputs, _costs, _supportRejections);
        _wiring = new WiringStage(inputs, _costs, _wiringRejections);
        _later = new LaterCosts(weather.Climate, inputs, _costs);
    }

    /// <summary>Light with a kind of battery, its controller and number of strings not yet chosen.</summary>
    private sealed record Stored(LightOption Light, Battery Battery, int InSeries);

    /// <summary>Light with a bank, modules not yet chosen.</summary>
    private sealed record Banked(LightOption Light, BankOption Bank, Enclosure Enclosure);

    /// <summary>Light with a bank and a kind of module, their number not yet chosen.</summary>
    private sealed record Moduled(LightOption Light, BankOption Bank, Enclosure Enclosure, Module Module, int InSeries);

    /// <summary>Light with bank, modules and wiring, pole and foundation not yet chosen.</summary>
    private sealed record Powered(LightOption Light, PowerOption Power, WiringOption Wiring);

    /// <summary>Energy balances run, each power system once.</summary>
    public int Simulations => _simulated.Count;

    /// <summary>Whether the energy balance has refused a candidate so far.</summary>
    public bool HasRefusedEnergy => _energyRejections.HasAny || _tooDark.Count > 0;

    /// <summary>Why nothing was found, naming the step that let nothing through and its nearest miss.</summary>
    public string WhyNothing =>
        _bankCount == 0 ? "no battery and controller fit the load: " + _bankRejections.NearestMiss
        : _powerCount == 0 ? "no module fits: " + _arrayRejections.NearestMiss
        : _wholeCount == 0 ? "no pole, foundation or cable fits: " + (_supportRejections.HasAny ? _supportRejections : _wiringRejections).NearestMiss
        : $"no power system keeps the nights lit, {_simulated.Count} tried: " + NearestDark();

    /// <summary>The cheapest candidate that passes, or null.</summary>
    public ProvenCandidate? Find(ImmutableArray<LightOption> lights) => InOrder(lights).Select(v => v.Proven).FirstOrDefault();

    /// <summary>
    /// Candidates that pass, cheapest first, found as they are asked for. Ends early once so many balances are run; a candidate that then waits
    /// at its present value is still given, the cheapest of those that wait first, though something cheaper may not have been tried.
    /// </summary>
    /// <param name="lights">Ways to light the site.</param>
    /// <param name="mostSimulations">Energy balances after which it ends.</param>
    public IEnumerable<ValuedCandidate> InOrder(ImmutableArray<LightOption> lights, int mostSimulations = MostSimulations)
    {
        var bounds = new CostBounds(weather.Climate, inputs, _costs, _support);
        foreach (var light in lights) Enqueue(light, bounds.Of(light) + _later.LeastOf(light));
        while (_queue.TryDequeue(out var node, out var rank))
        {
            switch (node)
            {
                case LightOption { Integrated: { } unit } light:
                    if (WholeOf(light, unit) is { } complete)
                    {
                        _wholeCount++;
                        Enqueue(complete, bounds.Of(complete) + _later.LeastOf(complete));
                    }

                    break;
                case LightOption light:
                    foreach (var (battery, inSeries, strings) in BankStage.Batteries(light, weather.Climate, inputs, _bankRejections))
                    {
                        if (LeastController(battery, inSeries, light) is { } controller)
                            Enqueue(new Stored(light, battery, inSeries), bounds.Of(light, battery, inSeries, strings, controller, LeastBox(battery, inSeries * strings)) + _later.LeastOf(light, battery, inSeries * strings));
                    }

                    break;
                case Stored(var light, var battery, var inSeries):
                    foreach (var bank in BankStage.Options(battery, inSeries, ControllersOf(battery, inSeries, light), light, site, weather.Climate, inputs, _bankRejections))
                    {
                        _bankCount++;
                        if (EnclosureOf(bank) is { } box) Enqueue(new Banked(light, bank, box), bounds.Of(light, bank, box) + LeastLater(light, bank));
                    }

                    break;
                case Banked(var light, var bank, var box):
                    foreach (var (module, inSeries, count) in ArrayStage.Modules(bank, weather.Climate, inputs))
                        Enqueue(new Moduled(light, bank, box, module, inSeries), bounds.Of(light, bank, box, module, count) + LeastLater(light, bank));
                    break;
                case Moduled(var light, var bank, var box, var module, var inSeries):
                    foreach (var power in ArrayStage.Options(bank, module, inSeries, weather.Climate, inputs, _arrayRejections))
                    {
                        _powerCount++;
                        if (BracketOf(power) is { } bracket && WiringOf(light, power) is { } wired)
                            Enqueue(new Powered(light, power, wired), bounds.Of(light, power, box, bracket, wired) + LeastLater(light, bank));
                    }

                    break;
                case Powered(var light, var power, var wired):
                    if (_support.Find(light, power) is { } carried)
                    {
                        var whole = new Candidate(light, power, carried, wired);
                        _wholeCount++;
                        Enqueue(whole, bounds.Of(whole) + _later.LeastOf(whole));
                    }

                    break;
                case Candidate candidate:
                    if (Prove(candidate) is { } proven)
                    {
                        var value = bounds.Of(candidate) + _later.Of(candidate, proven.Energy.BatteryLifeYears);
                        if (value <= rank.Cost) yield return new ValuedCandidate(proven, bounds.Of(candidate), value);
                        else Enqueue(new ValuedCandidate(proven, bounds.Of(candidate), value), value);
                    }

                    break;
                case ValuedCandidate valued:
                    yield return valued;
                    break;
            }

            if (_simulated.Count < mostSimulations) continue;
            foreach (var waiting in _queue.UnorderedItems.OrderBy(i => i.Priority).Select(i => i.Element).OfType<ValuedCandidate>().ToArray()) yield return waiting;
            yield break;
        }
    }

    private decimal LeastLater(LightOption light, BankOption bank) => _later.LeastOf(light, bank.Battery, bank.InSeries * bank.Strings);

    private void Enqueue(object node, decimal cost) => _queue.Enqueue(node, (cost, _order++));

    /// <summary>An integrated unit on its pole; null when a check refuses it.</summary>
    public Candidate? WholeOf(LightOption light, IntegratedUnit unit)
    {
        var worst = IntegratedStage.Weathers(unit, light.Shape, site, weather, inputs)[0];
        if (IntegratedStage.Power(light, unit, site, worst.Climate, inputs, _bankRejections, _arrayRejections) is not { } power) return null;
        _bankCount++;
        _powerCount++;
        return _support.Find(light, power) is { } carried ? new Candidate(light, power, carried, IntegratedStage.Wiring(inputs, _costs)) : null;
    }

    private ImmutableArray<Controller> ControllersOf(Battery battery, int inSeries, LightOption light)
    {
        var bankV = SystemVoltage.BankV(battery, inSeries);
        if (!_controllers.TryGetValue(light, out var byVoltage)) _controllers[light] = byVoltage = [];
        return byVoltage.TryGetValue(bankV, out var known) ? known : byVoltage[bankV] = BankStage.Controllers(bankV, light, site, weather.Climate, inputs, _bankRejections);
    }

    /// <summary>Cost of the cheapest controller that suits battery and light; null when none does.</summary>
    private decimal? LeastController(Battery battery, int inSeries, LightOption light)
    {
        decimal? least = null;
        foreach (var controller in ControllersOf(battery, inSeries, light))
        {
            if (controller.Chemistries.Contains(battery.Chemistry) && !(_costs.Of(controller) >= least)) least = _costs.Of(controller);
        }

        return least;
    }

    /// <summary>Cost of the cheapest box with room for so many of a battery, its controller left out; null when there is none.</summary>
    private decimal? LeastBox(Battery battery, int count)
    {
        if (_leastBoxes.TryGetValue((battery.Code, count), out var known)) return known;
        return _leastBoxes[(battery.Code, count)] = _support.BoxCost(battery, count);
    }

    private Enclosure? EnclosureOf(BankOption bank)
    {
        var key = (bank.Battery.Code, bank.InSeries * bank.Strings, bank.Controller.Code, bank.ControllerCount);
        return _enclosures.TryGetValue(key, out var known) ? known : _enclosures[key] = _support.EnclosureFor(bank, out _);
    }

    private Bracket? BracketOf(PowerOption power)
    {
        var key = (power.Module.Code, power.ModuleCount);
        return _brackets.TryGetValue(key, out var known) ? known : _brackets[key] = _support.BracketFor(power.Module, power.ModuleCount, out _);
    }

    /// <summary>The wiring depends on no more of the battery than its voltage.</summary>
    private WiringOption? WiringOf(LightOption light, PowerOption power)
    {
        var key = (light.Shape, light.Luminaire.InputPowerW, power.Module.Code, power.ModuleCount, power.ModulesInSeries, power.Bank.BankV, power.Bank.Controller.RatedChargeA, power.Bank.ControllerCount);
        return _wirings.TryGetValue(key, out var known) ? known : _wirings[key] = _wiring.Find(light, power);
    }

    /// <summary>Runs the energy balance of a candidate; null when it does not keep the lamps lit or the battery does not last.</summary>
    public ProvenCandidate? Prove(Candidate candidate)
    {
        var found = BalanceOf(candidate, inputs.Tender.Reliability.DarkNightsPerYear);
        if (found is null) _tooDark.Add(candidate);
        return found is { } f && Accepted(candidate, f.Energy) ? new ProvenCandidate(candidate, f.Energy, f.Weather) : null;
    }

    private bool Accepted(Candidate candidate, EnergyDesign energy)
    {
        var power = candidate.Power;
        string Name() => FormattableString.Invariant($"{power.Module.Code} x {power.ModuleCount} with {power.Bank.Battery.Code} x {power.Bank.InSeries * power.Bank.Strings}");
        return _energyRejections.Accept(Name, [.. EnergyChecks(energy, inputs)]);
    }

    /// <summary>The nearest miss of the energy balance: balances that were broken off are run to their end, since now their figures are asked for.</summary>
    private string NearestDark()
    {
        foreach (var candidate in _tooDark) Accepted(candidate, BalanceOf(candidate, double.PositiveInfinity)!.Value.Energy);
        return _energyRejections.NearestMiss;
    }

    /// <summary>The balance at the heading that governs; null as soon as some heading has more dark nights than allowed.</summary>
    private (EnergyDesign Energy, SiteWeather Weather)? BalanceOf(Candidate candidate, double mostDarkNights)
    {
        if (candidate.Light.Integrated is not { } unit) return EnergyOf(candidate, weather, mostDarkNights) is { } only ? (only, weather) : null;
        var weathers = IntegratedStage.Weathers(unit, candidate.Light.Shape, site, weather, inputs);
        (EnergyDesign Energy, SiteWeather Weather)? worst = null;
        foreach (var turned in weathers)
        {
            if (EnergyOf(candidate, turned, mostDarkNights) is not { } energy) return null;
            if (worst is null || energy.Simulated.DarkNightsUpperBound > worst.Value.Energy.Simulated.DarkNightsUpperBound) worst = (energy, turned);
        }

        return (worst!.Value.Energy with { HeadingCount = weathers.Length }, worst.Value.Weather);
    }

    private EnergyDesign? EnergyOf(Candidate candidate, SiteWeather weather, double mostDarkNights)
    {
        var power = candidate.Power;
        var bank = power.Bank;
        _simulated.Add(power.System);
        if (inputs.Shared.Balance(weather, power.System, mostDarkNights) is not { } result) return null;
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

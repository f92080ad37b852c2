using System.Collections.Immutable;
using CsCheck;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Design;

/// <summary>The search and the leaving out of beaten parts against plain enumeration of everything there is to try.</summary>
public sealed class LeastCostSearchTests
{
    private static readonly Site _site = StarterTender.Inputs.Sites.First(s => s.Id == "S02") with { LengthM = 120 };

    private static readonly SiteWeather _weather = ClimateStage.Run(_site, ClimateStage.ClimateOf(_site, StarterTender.Inputs), StarterTender.Inputs);

    private static readonly Gen<PartsCatalog> _catalogs = Gen.Int[0, int.MaxValue].Select(seed => Small(new Random(seed)));

    [Fact]
    public void The_search_finds_what_enumeration_finds_on_random_catalogues()
    {
        var (found, none) = (0, 0);
        _catalogs.Sample(
            catalog =>
            {
                var all = StarterTender.Inputs with { Catalog = catalog };
                var plain = Enumerated(all);
                var searched = Searched(all with { Catalog = Dominance.Undominated(catalog, new Costs(all.Tender)) });
                _ = plain is null ? Interlocked.Increment(ref none) : Interlocked.Increment(ref found);
                return plain == searched;
            },
            iter: 8,
            threads: 2);
        Assert.True(found > 0, $"{found} catalogues gave a design, {none} none: too few to prove anything");
    }

    /// <summary>Some parts of each family of the sample catalogue, twice each where alike, at prices of their own.</summary>
    private static PartsCatalog Small(Random random)
    {
        var all = StarterTender.Inputs.Catalog;
        ImmutableArray<T> Some<T>(ImmutableArray<T> parts, int count)
            where T : Part
        {
            var taken = parts.OrderBy(_ => random.Next()).Take(count).ToArray();
            return [.. taken.SelectMany(p => new[] { p, p with { Code = p.Code + "-Z", UnitPrice = 0 } })
                .Select(p => p with { UnitPrice = Math.Round((p.UnitPrice == 0 ? taken[0].UnitPrice : p.UnitPrice) * (decimal)(0.5 + random.NextDouble()), 2) })
                .OrderBy(p => p.Code, StringComparer.Ordinal)];
        }

        var poles = all.Poles.Where(p => p.HeightM is >= 5 and <= 6).ToImmutableArray();
        return new PartsCatalog(
            Some(all.Luminaires, 3), Some(all.Modules, 3), Some(all.Batteries, 4), Some(all.Controllers, 4), Some(poles, 2), Some(all.Foundations, 4),
            Some(all.Cables, 6), all.Protection, Some(all.Enclosures, 3), Some(all.Brackets, 3), all.Services)
        {
            IntegratedUnits = random.Next(3) == 0 ? [StarterTender.Unit with { UnitPrice = random.Next(200, 700) }] : [],
        };
    }

    private static decimal? Searched(DesignInputs inputs)
    {
        var lights = LightStage.Options(_site, _weather.Climate, inputs, new Rejections());
        return new LeastCostSearch(_site, _weather, inputs).Find(lights) is { } proven ? CostOf(proven.Candidate, inputs) : null;
    }

    private static decimal CostOf(Candidate candidate, DesignInputs inputs)
    {
        var costs = new Costs(inputs.Tender);
        return new CostBounds(_weather.Climate, inputs, costs, new SupportStage(_site, _weather.Climate, inputs, costs, new Rejections())).Of(candidate);
    }

    /// <summary>Everything, in no clever order; only the energy balance waits until all costs are known.</summary>
    private static decimal? Enumerated(DesignInputs inputs)
    {
        var costs = new Costs(inputs.Tender);
        var rejections = new Rejections();
        var support = new SupportStage(_site, _weather.Climate, inputs, costs, rejections);
        var wiring = new WiringStage(inputs, costs, rejections);
        var search = new LeastCostSearch(_site, _weather, inputs);
        var whole = new List<Candidate>();
        foreach (var light in LightStage.Options(_site, _weather.Climate, inputs, rejections))
        {
            if (light.Integrated is { } unit)
            {
                if (search.WholeOf(light, unit) is { } complete) whole.Add(complete);
                continue;
            }

            foreach (var power in Powers(light, inputs, rejections))
            {
                if (support.Find(light, power) is { } carried && wiring.Find(light, power) is { } wired) whole.Add(new Candidate(light, power, carried, wired));
            }
        }

        foreach (var candidate in whole.OrderBy(c => CostOf(c, inputs)))
        {
            if (search.Prove(candidate) is not null) return CostOf(candidate, inputs);
        }

        return null;
    }

    private static IEnumerable<PowerOption> Powers(LightOption light, DesignInputs inputs, Rejections rejections) =>
        from battery in inputs.Catalog.Batteries
        from size in BankStage.Sizes
        from controller in inputs.Catalog.Controllers
        let bank = BankStage.Exactly(battery, size.InSeries, size.Strings, controller, light, _site, _weather.Climate, inputs, rejections)
        where bank is not null
        from module in inputs.Catalog.Modules
        from inSeries in controller.Kind == Sizing.Energy.ControlKind.Tracking || controller.SystemVoltagesV.Max() > 12 ? new[] { 1, 2 } : [1]
        from strings in Enumerable.Range(1, 4 / inSeries)
        let power = ArrayStage.Exactly(bank, module, strings * inSeries, inSeries, _weather.Climate, inputs, rejections)
        where power is not null
        select power;
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.Quotes;

/// <summary>What the parts of the catalogue that have a rating cost, at our own rates: so that a price can be held against an estimate whatever our design is made of.</summary>
/// <param name="RateFactor">Our rate over the supply price in the tender's currency, mean of the goods of our own bill.</param>
/// <param name="Exchange">Tender currency for one unit of each currency of the catalogue.</param>
public sealed record EstimateBook(PartsCatalog Catalog, decimal RateFactor, Func<string, decimal?> Exchange)
{
    /// <summary>Behind a family: the middle price of comparable parts; the family alone is the least.</summary>
    public const string High = " high";

    private const double Least = 0.98;
    private const double Most = 2;

    /// <summary>Power of a module for its area, to find the bracket that carries it; common practice, no source.</summary>
    private const double ModuleWPerM2 = 200;

    /// <summary>Smaller controllers are hardly sold; common practice, no source.</summary>
    private const double LeastControllerA = 5;

    /// <summary>Estimate of one pole by family: luminaire, module, battery (lithium and lead apart), controller, pole; small parts at the middle price of their family.</summary>
    public ImmutableSortedDictionary<string, decimal> Of(AskedKit kit)
    {
        var found = ImmutableSortedDictionary.CreateBuilder<string, decimal>(StringComparer.Ordinal);
        void Add(string family, IEnumerable<decimal?> comparable, decimal? otherwise = null)
        {
            var prices = comparable.OfType<decimal>().Where(p => p > 0).Order().ToList();
            if (prices.Count == 0 && otherwise is { } other) prices.Add(other);
            if (prices.Count == 0) return;
            found[family] = decimal.Round(prices[0] * RateFactor, 2);
            found[family + High] = decimal.Round(prices[prices.Count / 2] * RateFactor, 2);
        }

        Add("luminaire", Comparable(Catalog.Luminaires, l => l.FluxLm, kit.FluxLm));
        Add("module", Comparable(Catalog.Modules, m => m.RatedWp, kit.ModuleWp), ByMeasure(Catalog.Modules, m => m.RatedWp, kit.ModuleWp));
        foreach (var (family, lithium) in new[] { ("battery lithium", true), ("battery lead", false) })
        {
            var kind = Catalog.Batteries.Where(b => (b.Chemistry == BatteryChemistry.LithiumIronPhosphate) == lithium).ToList();
            int Series(Battery b) => Math.Max(1, (int)Math.Round(kit.BankV / b.NominalVoltageV));
            Add(family, kind.Where(b => b.RatedWh * Series(b) is var wh && wh >= kit.BatteryWh * Least && wh <= kit.BatteryWh * Most).Select(b => PriceOf(b) * Series(b)), ByMeasure(kind, b => b.RatedWh, kit.BatteryWh));
        }

        Add("controller", Comparable(Catalog.Controllers.Where(c => c.SystemVoltagesV.Any(v => VoltClass(v) == kit.BankV)), c => c.RatedChargeA, Math.Max(kit.ChargeA, LeastControllerA)));
        Add("pole", Catalog.Poles.Where(p => p.HeightM >= kit.HeightM - 0.05 && p.HeightM <= kit.HeightM + 1).Select(PriceOf));
        Add("bracket", Catalog.Brackets.Where(b => b.MaxModuleAreaM2 >= kit.ModuleWp / ModuleWPerM2).Select(PriceOf));
        Add("enclosure", Catalog.Enclosures.Select(PriceOf));
        Add("foundation", Catalog.Foundations.Select(PriceOf));
        Add("fuse", Catalog.Protection.Where(p => p.Kind is ProtectionKind.Fuse).Select(PriceOf));
        Add("surge", Catalog.Protection.Where(p => p.Kind is ProtectionKind.SurgeArrester).Select(PriceOf));
        Add("earth", Catalog.Protection.Where(p => p.Kind is ProtectionKind.EarthElectrode).Select(PriceOf));
        return found.ToImmutable();
    }

    private static double VoltClass(double volts) => Checks.LineMatcher.VoltClass(volts);

    /// <summary>Prices of the parts that have the rating and not more than twice it.</summary>
    private IEnumerable<decimal?> Comparable<T>(IEnumerable<T> parts, Func<T, double> rating, double wanted)
        where T : Part => parts.Where(p => rating(p) >= wanted * Least && rating(p) <= wanted * Most).Select(PriceOf);

    private decimal? ByMeasure<T>(IEnumerable<T> parts, Func<T, double> measure, double wanted)
        where T : Part => parts.Where(p => measure(p) > 0).Select(p => PriceOf(p) / (decimal)measure(p)).Min() * (decimal)wanted;

    private decimal? PriceOf(Part part) => Exchange(part.Currency) is { } rate ? part.UnitPrice * rate : null;
}

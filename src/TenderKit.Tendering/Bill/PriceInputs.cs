using System.Collections.Immutable;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Bill;

/// <summary>Input cells that hold for the whole bill.</summary>
internal sealed class PriceInputs
{
    private readonly List<KeyValuePair<string, CellId>> _all = [];
    private readonly Dictionary<string, CellId> _exchange = [];
    private readonly Dictionary<string, CellId> _spares = [];

    public PriceInputs(TenderHead head, PriceBasis prices, LedgerBuilder ledger)
    {
        CellId Input(string name, string words, decimal value)
        {
            var cell = ledger.Add("in." + name, value);
            _all.Add(new(words, cell));
            return cell;
        }

        _exchange[head.Currency] = Input("exchange." + head.Currency, $"{head.Currency} for one {head.Currency}", 1);
        foreach (var rate in head.Exchange.Where(r => r.Currency != head.Currency).OrderBy(r => r.Currency, StringComparer.Ordinal))
        {
            _exchange[rate.Currency] = Input("exchange." + rate.Currency, $"{head.Currency} for one {rate.Currency}", rate.Rate);
        }

        Freight = Input("freight", "Freight and insurance, of supply price", prices.FreightFraction);
        Duty = Input("duty", "Duty, of supply price and freight", prices.DutyFraction);
        Overhead = Input("overhead", "Overhead, of direct cost", prices.OverheadFraction);
        Finance = Input("finance", "Finance, bonds and insurances, of direct cost and overhead", prices.FinanceFraction);
        Profit = Input("profit", "Profit, of direct cost and overhead", prices.ProfitFraction);
        Waste = Input("waste", "Cable cut to waste, of length", prices.CableWasteFraction);
        foreach (var (family, fraction) in prices.SpareFractions)
        {
            if (fraction > 0) _spares[family] = Input("spares." + family, $"Spares: {family}, of quantity supplied", fraction);
        }

        Years = Input("years", "Maintenance, years", prices.MaintenanceYears);
        Contingency = Input("contingency", "Contingency, of the parts before it", prices.ContingencyFraction);
        Tax = Input("tax", "Tax, of the sum with contingency", prices.TaxFraction);
    }

    public CellId Freight { get; }

    public CellId Duty { get; }

    public CellId Overhead { get; }

    public CellId Finance { get; }

    public CellId Profit { get; }

    public CellId Waste { get; }

    public CellId Years { get; }

    public CellId Contingency { get; }

    public CellId Tax { get; }

    public ImmutableArray<KeyValuePair<string, CellId>> All => [.. _all];

    public CellId? Exchange(string currency) => _exchange.TryGetValue(currency, out var cell) ? cell : null;

    /// <summary>The spares fraction of a family, under its singular or plural name, or null when none are asked for.</summary>
    public CellId? Spares((string One, string Many) family) =>
        _spares.TryGetValue(Known(family.One) ?? Known(family.Many) ?? "", out var cell) ? cell : null;

    private string? Known(string name) => _spares.Keys.FirstOrDefault(k => string.Equals(k.Trim(), name, StringComparison.OrdinalIgnoreCase));
}

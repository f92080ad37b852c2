using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Programme;

namespace TenderKit.Tendering.Bill;

/// <summary>
/// Turns a designed tender into a priced bill of quantities. Parts and their order follow the usual conventions of a civil
/// engineering bill: items in numbered parts, each part closed by a collection, contingency as a percentage, tax last.
/// </summary>
public static class BillBuilder
{
    /// <summary>The bill, or none when a rate is missing: a bill that leaves out an item would be a wrong price.</summary>
    public static Outcome<BillOfQuantities> Build(TenderDesign design)
    {
        if (design.Sites.IsEmpty) return Outcome.None<BillOfQuantities>(BillNotices.NothingToBill());
        var diagnostics = new List<Diagnostic>();
        var bill = new Work(design, diagnostics).Bill();
        var sorted = diagnostics.OrderByDescending(d => d.Severity).ThenBy(d => d.Code, StringComparer.Ordinal).ThenBy(d => d.Message, StringComparer.Ordinal).Distinct().ToArray();
        return sorted.Any(d => d.Severity == Severity.Error) ? Outcome.None<BillOfQuantities>(sorted) : Outcome.Of(bill, sorted);
    }

    private sealed class Work
    {
        private readonly TenderDesign _design;
        private readonly LedgerBuilder _ledger = new();
        private readonly PriceInputs _inputs;
        private readonly ServicePick _services;
        private readonly RateBuilder _rates;
        private readonly List<Diagnostic> _diagnostics;

        public Work(TenderDesign design, List<Diagnostic> diagnostics)
        {
            _design = design;
            _diagnostics = diagnostics;
            var (head, prices) = (design.Tender.Head, design.Tender.Prices);
            _inputs = new PriceInputs(head, prices, _ledger);
            _services = new ServicePick(design.Catalog, diagnostics);
            _rates = new RateBuilder(head, prices, _inputs, _ledger, diagnostics);
            diagnostics.AddRange(prices.SpareFractions.Keys.Where(k => !IsFamily(k)).Select(BillNotices.UnknownFamily));
        }

        public BillOfQuantities Bill()
        {
            var schedule = TakeOff.Schedule(_design, _ledger);
            var kitPoles = TakeOff.PolesByKit(schedule, _ledger);
            var needs = _design.Kits.Where(k => kitPoles.Any(p => p.KitId == k.Id)).Select(k => (Kit: k, Needs: TakeOff.MakeUp(_design, k, _services))).ToArray();
            var makeUp = needs.SelectMany(n => n.Needs.Select(need => (Rank: Rank(need.Part), Item: Item(n.Kit, need)))).OrderBy(m => m.Rank).Select(m => m.Item).ToImmutableArray();
            var parts = Ordered(needs.SelectMany(n => n.Needs).Select(n => n.Part));
            var lots = schedule.Select(s => s.Lot).Distinct().ToArray();
            var bills = lots.Select(lot => LotOf(lot, lots.Length == 1, schedule, kitPoles, makeUp, parts).Build()).ToImmutableArray();
            _diagnostics.AddRange(BillNotices.OfPrices(_rates.Used, _design.Tender.Head));
            var bill = Close(schedule, kitPoles, makeUp, bills);
            var families = parts.ToDictionary(p => p.Code, PartWords.Family, StringComparer.Ordinal);
            _diagnostics.AddRange(ProgrammeNotices.Of(bill));
            var buying = OrderBuilder.Remarks(bill.Orders, bill.Ledger, bill.Currency, _design.Tender.Prices.Buying.ExcessInRates);
            return bill with { Remarks = [.. Choice(), .. buying, .. SmallSpares.Of(bill, code => _inputs.Spares(families[code]))] };
        }

        private string[] Choice() => _design.Tender.Choice is { ByPresentValue: true } basis
            ? [$"the parts were chosen by {basis.InWords}, first cost with what is replaced; the bill holds the first cost alone"]
            : [];

        private bool SoilStated(string siteId) => _design.Sites.First(s => s.Site.Id == siteId).Site.SoilStated;

        private LotBill LotOf(
            string lot, bool only, ImmutableArray<ScheduleLine> schedule, ImmutableArray<KitPoles> kitPoles, ImmutableArray<KitItem> makeUp, ImmutableArray<Part> parts)
        {
            var perPole = makeUp.ToImmutableDictionary(m => (m.KitId, m.PartCode), m => m.PerPole);
            var ground = schedule.Where(s => s.Lot == lot).Select(s => new GroundPoles(s.SiteId, s.KitId, SoilStated(s.SiteId), s.Poles)).ToImmutableArray();
            var input = new LotInput(lot, only, ground.Length, ground, [.. kitPoles.Where(k => k.Lot == lot)], perPole, parts)
            {
                ProvisionalSums = [.. _design.Tender.Prices.ProvisionalSums.Where(p => p.Lot == lot || (p.Lot.Length == 0 && (only || lot == schedule[0].Lot)))],
                Daywork = _design.Tender.Prices.Daywork,
            };
            return new LotBill(input, _services, _rates, _inputs, _ledger);
        }

        private BillOfQuantities Close(
            ImmutableArray<ScheduleLine> schedule,
            ImmutableArray<KitPoles> kitPoles,
            ImmutableArray<KitItem> makeUp,
            ImmutableArray<(ImmutableArray<ImmutableArray<BillLine>> Parts, LotSummary Summary)> bills)
        {
            var lots = bills.Select(b => b.Summary).ToImmutableArray();
            CellId Total(string name, Func<LotSummary, CellId> pick) => _ledger.Add("total." + name, Cells.SumOf([.. lots.Select(pick)]));
            ImmutableArray<BillPart> parts =
            [
                .. LotBill.Titles.Select((title, i) => new BillPart(
                    i + 1, i == LotBill.Titles.Length - 1 && bills.Any(b => b.Parts[i].Length > 1) ? LotBill.ClosingTitle : title, [.. bills.SelectMany(b => b.Parts[i])], Total(FormattableString.Invariant($"part.{i + 1}"), l => l.Collections[i]))),
            ];
            var orders = Orders(kitPoles, makeUp, parts);
            var programme = ProgrammeBuilder.Build(_design, schedule, [.. parts.SelectMany(p => p.Lines)], _ledger);
            return new BillOfQuantities(
                _design.Tender.Head.Currency, new Ledger([]), _inputs.All, schedule, BuildUps(), parts,
                Total("parts", l => l.PartsTotal), Total("contingency", l => l.Contingency), Total("tax", l => l.Tax), Total("grand", l => l.Total),
                [.. lots.Select(l => new LotTotal(l.Lot, l.Total))])
            {
                KitPoles = kitPoles, MakeUp = makeUp, LotSummaries = lots, Orders = orders, Programme = programme, Ledger = _ledger.Build(),
            };
        }

        private ImmutableArray<OrderLine> Orders(ImmutableArray<KitPoles> kitPoles, ImmutableArray<KitItem> makeUp, ImmutableArray<BillPart> parts)
        {
            var builder = new OrderBuilder(_design.Tender.Prices.Buying, _ledger);
            var perPole = makeUp.ToLookup(m => m.PartCode, StringComparer.Ordinal);
            var lines = parts.SelectMany(p => p.Lines.Select(l => (Part: p.Number, Line: l))).ToLookup(l => l.Line.PartCode, StringComparer.Ordinal);
            var exchange = _rates.All.ToDictionary(r => r.PartCode, r => r.Exchange, StringComparer.Ordinal);
            Sum Needed(string code) => new([.. from item in perPole[code] from kit in kitPoles where kit.KitId == item.KitId select Cells.Times(kit.Poles, item.PerPole)]);
            return
            [
                .. _rates.Used.Where(p => p is not ServiceRate && exchange.ContainsKey(p.Code)).OrderBy(Rank).ThenBy(p => p.Code, StringComparer.Ordinal)
                    .Select(p => builder.Of(p, Needed(p.Code), [.. lines[p.Code]], exchange[p.Code])),
            ];
        }

        /// <summary>Goods in the order of the bill, then works in the order they were met.</summary>
        private ImmutableArray<RateBuildUp> BuildUps()
        {
            var goods = _rates.Used.Where(p => p is not ServiceRate).ToDictionary(p => p.Code, Rank, StringComparer.Ordinal);
            return
            [
                .. _rates.All.Where(b => goods.ContainsKey(b.PartCode)).OrderBy(b => goods[b.PartCode]).ThenBy(b => b.PartCode, StringComparer.Ordinal),
                .. _rates.All.Where(b => !goods.ContainsKey(b.PartCode)),
            ];
        }

        private KitItem Item(Kit kit, Need need) => new(
            kit.Id, need.Part.Code, PartWords.Describe(need.Part), PartWords.Unit(need.Part), _ledger.Add($"kit.{kit.Id}.{need.Part.Code}.per-pole", need.PerPole));

        private static ImmutableArray<Part> Ordered(IEnumerable<Part> parts) =>
            [.. parts.DistinctBy(p => p.Code).OrderBy(Rank).ThenBy(p => p.Code, StringComparer.Ordinal)];

        private static int Rank(Part part) => part switch
        {
            Module => 0,
            Luminaire or IntegratedUnit => 1,
            Battery => 2,
            Controller => 3,
            Enclosure => 4,
            Bracket => 5,
            Pole => 6,
            FoundationSet => 7,
            Cable => 8,
            ProtectionDevice => 9,
            _ => 10,
        };

        private static bool IsFamily(string name) => PartWords.SpareFamilies.Contains(name.Trim(), StringComparer.OrdinalIgnoreCase) || name.Trim().ToUpperInvariant() is
            "BATTERIES" or "BRACKETS" or "CABLES" or "CONTROLLERS" or "ENCLOSURES" or "FOUNDATIONS" or "LUMINAIRES" or "MODULES" or "POLES" or "INTEGRATED UNITS";
    }
}

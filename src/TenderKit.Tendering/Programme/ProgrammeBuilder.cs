using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Programme;

/// <summary>
/// Plans delivery and works in cells. Goods are ordered on one day and are in store after lead time and shipping. In each lot its gangs make the foundations
/// site after site, then erect in the same order: a site is begun when the one before is done, its foundations have cured and the goods are there.
/// A site takes (poles / poles a gang-day + days of moving) / gangs working days, of 7 calendar days to so many working days.
/// </summary>
internal sealed class ProgrammeBuilder
{
    private const int DaysAWeek = 7;

    /// <summary>Dates are rounded to the sixth decimal of a day before they are rounded up, so that binary fractions cannot lift a whole day to the next.</summary>
    private const int DayDecimals = 6;

    private readonly ProgrammeSettings _settings;
    private readonly LedgerBuilder _ledger;
    private readonly List<ProgrammeInput> _inputs = [];
    private readonly Dictionary<string, CellId> _leads = new(StringComparer.Ordinal);
    private readonly CellId _order;
    private readonly CellId _completion;
    private readonly CellId _mobilise;
    private readonly CellId _shipping;
    private readonly CellId _curing;
    private readonly CellId _week;
    private readonly CellId _foundations;
    private readonly CellId _poles;
    private readonly CellId _moving;

    private ProgrammeBuilder(TenderHead head, ProgrammeSettings settings, LedgerBuilder ledger)
    {
        (_settings, _ledger) = (settings, ledger);
        _order = Asked("order-date", "Order of the goods, day of the contract", ProgrammeUnit.Date, SerialDate.Of(settings.OrderDate ?? head.IssueDate.AddDays(head.ValidityDays)));
        if (settings.CompletionDate is { } wanted)
        {
            _completion = Asked("completion-date", "Completion wanted", ProgrammeUnit.Date, SerialDate.Of(wanted));
        }
        else
        {
            var days = Asked("completion-days", "Days allowed from the contract to completion", ProgrammeUnit.Days, head.DeliveryDays);
            _completion = Add("completion-date", Cells.SumOf(_order, days));
            _inputs.Add(new("Completion wanted", ProgrammeUnit.Date, _completion));
        }

        _mobilise = Asked("mobilisation", "Days from the contract to the first work on site", ProgrammeUnit.Days, settings.MobilisationDays);
        _shipping = Asked("shipping", "Days of shipping to the site store, beyond the lead times", ProgrammeUnit.Days, settings.ShippingDays);
        _curing = Asked("curing", "Days from a foundation to its pole", ProgrammeUnit.Days, settings.CuringDays);
        _week = Asked("working-days", "Working days a week", ProgrammeUnit.Days, settings.WorkingDaysAWeek);
        _foundations = Asked("foundations", "Foundations a gang makes in a working day", ProgrammeUnit.Number, settings.FoundationsPerGangDay);
        _poles = Asked("poles", "Poles a gang erects, fits and commissions in a working day", ProgrammeUnit.Number, settings.PolesPerGangDay);
        _moving = Asked("moving", "Working days a gang takes to move to a site", ProgrammeUnit.Number, settings.MovingDays);
    }

    public static WorksProgramme Build(TenderDesign design, ImmutableArray<ScheduleLine> schedule, IReadOnlyCollection<BillLine> lines, LedgerBuilder ledger)
    {
        var builder = new ProgrammeBuilder(design.Tender.Head, design.Tender.Programme, ledger);
        var parts = design.Catalog.All.GroupBy(p => p.Code).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var only = schedule.Select(s => s.Lot).Distinct().Count() == 1;
        var lots = schedule.GroupBy(s => s.Lot).Select(g => builder.Lot(g.Key, [.. g], GoodsOf(lines.Where(l => only || l.Lot == g.Key), parts))).ToArray();
        return new WorksProgramme([.. builder._inputs], builder._order, [.. lots.SelectMany(l => l.Goods)], [.. lots.SelectMany(l => l.Sites)], [.. lots.Select(l => l.Lot)]);
    }

    private static Part[] GoodsOf(IEnumerable<BillLine> lines, Dictionary<string, Part> parts) =>
        [.. lines.Where(l => !l.Service && l.PartCode.Length > 0).Select(l => l.PartCode).Distinct(StringComparer.Ordinal).Select(code => parts[code]).Where(p => p is not ServiceRate)];

    private (ImmutableArray<GoodsPlan> Goods, ImmutableArray<SitePlan> Sites, LotPlanCells Lot) Lot(string lot, ImmutableArray<ScheduleLine> sites, Part[] goods)
    {
        var own = _settings.Lots.FirstOrDefault(l => l.Lot == lot);
        var gangs = Asked($"lot.{lot}.gangs", lot.Length == 0 ? "Gangs" : $"Gangs, lot {lot}", ProgrammeUnit.Number, own?.Gangs ?? _settings.Gangs);
        var completion = own?.CompletionDate is { } wanted ? Asked($"lot.{lot}.completion-date", $"Completion wanted, lot {lot}", ProgrammeUnit.Date, SerialDate.Of(wanted)) : _completion;
        var stores = goods.ToDictionary(p => p.Code, p => Add($"lot.{lot}.{p.Code}.in-store", new Sum([Cells.Ref(_order), Cells.Ref(LeadOf(p)), Cells.Ref(_shipping)])), StringComparer.Ordinal);
        CellId Arrival(string name, Func<Part, bool> which) => Add($"lot.{lot}.{name}", new Greatest([Cells.Ref(_order), .. goods.Where(which).Select(p => Cells.Ref(stores[p.Code]))]));
        var footing = Arrival("foundation-goods", p => p is FoundationSet);
        var other = Arrival("other-goods", p => p is not FoundationSet);
        var plans = Sites(lot, sites, gangs, footing, other, completion);
        var finish = Add($"lot.{lot}.finish", new Greatest([.. plans.Select(p => Cells.Ref(p.ErectTo))]));
        var late = Add($"lot.{lot}.late", Beyond(finish, completion));
        var poles = Cells.SumOf([.. sites.Select(s => s.Poles)]);
        var oneGang = new Quotient(new Product([new Sum([new Quotient(poles, Cells.Ref(_poles)), new Product([new Literal(sites.Length), Cells.Ref(_moving)])]), new Literal(DaysAWeek)]), Cells.Ref(_week));
        var begin = new Greatest([Cells.Ref(other), new Sum([Cells.Ref(plans[0].FoundationTo), new Literal(1), Cells.Ref(_curing)])]);
        var window = new Difference(new Sum([Cells.Ref(completion), new Literal(1)]), begin);
        var needed = Add($"lot.{lot}.gangs-needed", Up(new Quotient(oneGang, new Greatest([new Literal(0.001m), window]))));
        var latest = Add($"lot.{lot}.latest-goods", new Difference(new Sum([Cells.Ref(completion), new Literal(1)]), Up(new Quotient(oneGang, Cells.Ref(gangs)))));
        var before = new Sum([Cells.Ref(plans[0].FoundationTo), new Literal(1), Cells.Ref(_curing)]);
        var latestFooting = Add($"lot.{lot}.latest-foundation-goods", new Difference(Cells.Ref(latest), new Difference(before, Cells.Ref(plans[0].FoundationFrom))));
        var rows = goods.Select(p => Goods(lot, p, stores[p.Code], p is FoundationSet ? latestFooting : latest));
        var dated = own?.CompletionDate is not null || _settings.CompletionDate is not null;
        return ([.. rows], plans, new LotPlanCells(lot, gangs, footing, other, completion, finish, late, needed, dated));
    }

    private GoodsPlan Goods(string lot, Part part, CellId store, CellId latest) =>
        new(lot, part.Code, LeadOf(part), store, latest, Add($"lot.{lot}.{part.Code}.late", Beyond(store, latest)));

    private ImmutableArray<SitePlan> Sites(string lot, ImmutableArray<ScheduleLine> sites, CellId gangs, CellId footing, CellId other, CellId completion)
    {
        var plans = ImmutableArray.CreateBuilder<SitePlan>();
        (Expression Footing, Expression Erection) done = (new Greatest([new Sum([Cells.Ref(_order), Cells.Ref(_mobilise)]), Cells.Ref(footing)]), Cells.Ref(other));
        for (var i = 0; i < sites.Length; i++)
        {
            var site = sites[i];
            CellId Cell(string name, Expression expression) => Add(FormattableString.Invariant($"lot.{lot}.{i + 1}.{name}"), expression);
            var from = Cell("foundation-from", done.Footing);
            var afterFooting = new Sum([Cells.Ref(from), Takes(site.Poles, _foundations, gangs)]);
            var to = Cell("foundation-to", LastDay(afterFooting));
            var erect = Cell("erect-from", new Greatest([done.Erection, new Sum([Cells.Ref(to), new Literal(1), Cells.Ref(_curing)])]));
            var afterErection = new Sum([Cells.Ref(erect), Takes(site.Poles, _poles, gangs)]);
            var erected = Cell("erect-to", LastDay(afterErection));
            plans.Add(new SitePlan(site.SiteId, site.Name, lot, site.Poles, from, to, erect, erected, Cell("late", Beyond(erected, completion))));
            done = (afterFooting, afterErection);
        }

        return plans.ToImmutable();
    }

    /// <summary>Calendar days a site takes, with fractions.</summary>
    private Quotient Takes(CellId poles, CellId perGangDay, CellId gangs) =>
        new(new Product([new Sum([new Quotient(Cells.Ref(poles), Cells.Ref(perGangDay)), Cells.Ref(_moving)]), new Literal(DaysAWeek)]), new Product([Cells.Ref(gangs), Cells.Ref(_week)]));

    private CellId LeadOf(Part part)
    {
        if (!_leads.TryGetValue(part.Code, out var lead)) _leads[part.Code] = lead = Add("lead." + part.Code, new Literal(part.LeadTimeDays));
        return lead;
    }

    private static RoundedUp Up(Expression days) => new(new Rounded(days, DayDecimals));

    private static Difference LastDay(Expression after) => new(Up(after), new Literal(1));

    private static Greatest Beyond(CellId day, CellId limit) => new([new Literal(0), new Difference(Cells.Ref(day), Cells.Ref(limit))]);

    private CellId Asked(string name, string words, ProgrammeUnit unit, decimal value)
    {
        var cell = Add(name, new Literal(value));
        _inputs.Add(new(words, unit, cell));
        return cell;
    }

    private CellId Add(string name, Expression expression) => _ledger.Add("plan." + name, expression);
}

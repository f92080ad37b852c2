using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Bill;

/// <summary>A line before it has its cells.</summary>
internal sealed record Draft(Part Part, string Description, Expression Quantity, bool Service);

/// <summary>What a lot's bill is made from.</summary>
/// <param name="Ground">Poles of each site of this lot; where the soil was not stated, civil quantities are provisional.</param>
/// <param name="KitPoles">Poles of each kit in this lot.</param>
/// <param name="PerPole">Cell of each kit's need of each part: (kit, part code).</param>
internal sealed record LotInput(
    string Lot, bool OnlyLot, int SiteCount, ImmutableArray<GroundPoles> Ground, ImmutableArray<KitPoles> KitPoles, ImmutableDictionary<(string Kit, string Code), CellId> PerPole, ImmutableArray<Part> Parts)
{
    public ImmutableArray<ProvisionalSum> ProvisionalSums { get; init; } = [];

    public Daywork Daywork { get; init; } = new(0, 0, 0);
}

/// <summary>Poles of one site and whether its soil was stated.</summary>
internal sealed record GroundPoles(string SiteId, string KitId, bool SoilStated, CellId Poles);

/// <summary>Writes the numbered parts of one lot's bill.</summary>
internal sealed class LotBill(LotInput input, ServicePick services, RateBuilder rates, PriceInputs inputs, LedgerBuilder ledger)
{
    private static readonly ServiceUse[] Civil = [ServiceUse.Excavate, ServiceUse.Concrete, ServiceUse.Reinforcement, ServiceUse.Backfill];
    private static readonly ServiceUse[] Erection = [ServiceUse.ErectPole, ServiceUse.FitKit, ServiceUse.LayCable, ServiceUse.Commission];

    /// <summary>Titles of the parts, in order.</summary>
    public static readonly ImmutableArray<string> Titles =
    [
        "Preliminaries", "Supply", "Civil works", "Erection and commissioning", "Spares", "Training and documentation", "Maintenance",
        "Contingency",
    ];

    /// <summary>Title of the last part where it holds more than the contingency.</summary>
    public const string ClosingTitle = "Provisional sums, daywork and contingency";

    private const int ContingencyPart = 8;

    private readonly Dictionary<string, CellId> _rateOf = new(StringComparer.Ordinal);

    /// <summary>Lines part by part, and the closing of the lot.</summary>
    public (ImmutableArray<ImmutableArray<BillLine>> Parts, LotSummary Summary) Build()
    {
        var supply = Priced(2, Supply());
        ImmutableArray<ImmutableArray<BillLine>> before =
        [
            Priced(1, Preliminaries()), supply, Priced(3, CivilWorks()), Priced(4, Measured(Erection)), Priced(5, Spares(supply)),
            Priced(6, Once(ServiceUse.Train, ServiceUse.Documents)), Priced(7, Maintenance()),
        ];
        var collections = before.Select((lines, i) => Collection(i + 1, lines)).ToImmutableArray();
        var partsTotal = ledger.Add(Name("parts"), Cells.SumOf([.. collections]));
        var stated = Stated();
        var contingency = ContingencyLine(partsTotal, stated.Length + 1);
        var closing = Collection(ContingencyPart, [.. stated, contingency]);
        var with = ledger.Add(Name("with-contingency"), Cells.SumOf(partsTotal, closing));
        var tax = ledger.Add(Name("tax"), new Rounded(Cells.Times(with, inputs.Tax), 2));
        var total = ledger.Add(Name("total"), Cells.SumOf(with, tax));
        return ([.. before, [.. stated, contingency]], new LotSummary(input.Lot, [.. collections, closing], partsTotal, contingency.Amount, with, tax, total));
    }

    /// <summary>Set-up once a lot or for every site, as its unit says; survey for every pole position.</summary>
    private IEnumerable<Draft> Preliminaries() =>
    [
        .. Services(ServiceUse.SetUpSite).Select(s => new Draft(s, s.Description, new Literal(s.Unit == "sum" ? 1 : input.SiteCount), true)),
        .. Services(ServiceUse.Survey).Select(s => new Draft(s, s.Description, Poles(), true)),
    ];

    private IEnumerable<Draft> Supply() =>
        input.Parts.Where(IsSupply).Where(Needed).Select(p => new Draft(p, PartWords.Describe(p), p is Cable ? WithWaste(Quantity(p)) : Quantity(p), false));

    private IEnumerable<Draft> Measured(ServiceUse[] uses) =>
        Services(uses).Where(Needed).Select(s => new Draft(s, s.Description, s.Unit is "No." or "set" ? Quantity(s) : new Rounded(Quantity(s), 2), true));

    /// <summary>Quantities on stated soil first, then those of sites still to be surveyed, as items of their own.</summary>
    private IEnumerable<Draft> CivilWorks()
    {
        var unsurveyed = input.Ground.Where(g => !g.SoilStated).ToArray();
        if (unsurveyed.Length == 0) return Measured(Civil);
        var words = " (provisional quantity: soil not stated on " + Listed([.. unsurveyed.Select(g => g.SiteId).Order(StringComparer.Ordinal)]) + ")";
        if (unsurveyed.Length == input.Ground.Length) return Measured(Civil).Select(d => d with { Description = d.Description + words });
        return OnGround(stated: true).Concat(OnGround(stated: false).Select(d => d with { Description = d.Description + words }));
    }

    private IEnumerable<Draft> OnGround(bool stated) =>
        from service in Services(Civil)
        let quantity = Quantity(service, stated)
        where !quantity.Terms.IsEmpty
        select new Draft(service, service.Description, new Rounded(quantity, 2), true);

    private static string Listed(string[] siteIds) =>
        siteIds.Length <= 6 ? string.Join(", ", siteIds) : string.Create(CultureInfo.InvariantCulture, $"{siteIds.Length} sites, see the site schedule");

    private IEnumerable<Draft> Spares(ImmutableArray<BillLine> supply) =>
        from line in supply
        let part = input.Parts.First(p => p.Code == line.PartCode)
        where part is not ProtectionDevice { Kind: ProtectionKind.EarthElectrode }
        let fraction = part is ServiceRate ? null : inputs.Spares(PartWords.Family(part))
        where fraction is not null
        select new Draft(part, $"Spare for item {line.Code}: {PartWords.Short(part)}", WholeUnits(Cells.Times(line.Quantity, fraction.Value)), false);

    private IEnumerable<Draft> Maintenance() =>
        Services(ServiceUse.MaintainYear).Select(s => new Draft(s, s.Description + " (quantity: poles x years)", new Product([Poles(), Cells.Ref(inputs.Years)]), true));

    private IEnumerable<Draft> Once(params ServiceUse[] uses) => Services(uses).Select(s => new Draft(s, s.Description, new Literal(1), true));

    private IEnumerable<ServiceRate> Services(params ServiceUse[] uses) => uses.Select(services.For).OfType<ServiceRate>();

    private static bool IsSupply(Part part) => part is not ServiceRate || part is ServiceRate { Use: ServiceUse.FixingsPerPole };

    private bool Needed(Part part) => input.KitPoles.Any(k => input.PerPole.ContainsKey((k.KitId, part.Code)));

    private Sum Poles() => Cells.SumOf([.. input.KitPoles.Select(k => k.Poles)]);

    private Sum Quantity(Part part) => new(
    [
        .. from kit in input.KitPoles
           where input.PerPole.ContainsKey((kit.KitId, part.Code))
           select (Expression)Cells.Times(kit.Poles, input.PerPole[(kit.KitId, part.Code)]),
    ]);

    /// <summary>Need of the sites whose soil was stated, or of the others.</summary>
    private Sum Quantity(Part part, bool stated) => new(
    [
        .. from kit in input.KitPoles
           where input.PerPole.ContainsKey((kit.KitId, part.Code))
           let sites = input.Ground.Where(g => g.KitId == kit.KitId && g.SoilStated == stated).Select(g => g.Poles).ToArray()
           where sites.Length > 0
           select (Expression)new Product([Cells.SumOf(sites), Cells.Ref(input.PerPole[(kit.KitId, part.Code)])]),
    ]);

    private RoundedUp WithWaste(Expression lengthM) => WholeUnits(new Product([lengthM, new Sum([new Literal(1), Cells.Ref(inputs.Waste)])]));

    /// <summary>Rounded to the sixth decimal first, so that a spreadsheet's binary fractions cannot lift a whole number to the next.</summary>
    private static RoundedUp WholeUnits(Expression inner) => new(new Rounded(inner, 6));

    private ImmutableArray<BillLine> Priced(int part, IEnumerable<Draft> drafts, int before = 0)
    {
        var lines = ImmutableArray.CreateBuilder<BillLine>();
        foreach (var draft in drafts)
        {
            if (rates.For(draft.Part) is { } buildUp) lines.Add(Line(part, before + lines.Count + 1, draft, buildUp));
        }

        return lines.ToImmutable();
    }

    /// <summary>A part has one rate in a lot: a spare or a provisional quantity takes the rate of the item before it.</summary>
    private BillLine Line(int part, int number, Draft draft, RateBuildUp buildUp)
    {
        var key = Key(part, number);
        var quantity = ledger.Add(key + ".qty", draft.Quantity);
        var rate = ledger.Add(key + ".rate", Cells.Ref(_rateOf.GetValueOrDefault(draft.Part.Code, buildUp.Rate)));
        _rateOf.TryAdd(draft.Part.Code, rate);
        var amount = ledger.Add(key + ".amount", new Rounded(Cells.Times(quantity, rate), 2));
        return new BillLine(Code(part, number), draft.Part.Code, draft.Description, PartWords.Unit(draft.Part), LotOfLine, quantity, rate, amount, draft.Service);
    }

    /// <summary>Provisional sums, then daywork: what the employer states and every bidder carries.</summary>
    private ImmutableArray<BillLine> Stated()
    {
        var sums = input.ProvisionalSums.Select((sum, i) => ProvisionalLine(i + 1, sum)).ToImmutableArray();
        return [.. sums, .. Priced(ContingencyPart, Dayworks(), sums.Length)];
    }

    private BillLine ProvisionalLine(int number, ProvisionalSum sum)
    {
        var key = Key(ContingencyPart, number);
        var quantity = ledger.Add(key + ".qty", new Literal(1));
        var rate = ledger.Add(key + ".rate", new Literal(sum.Amount));
        var amount = ledger.Add(key + ".amount", new Rounded(Cells.Times(quantity, rate), 2));
        return new BillLine(Code(ContingencyPart, number), "", "Provisional sum: " + sum.Text, "sum", LotOfLine, quantity, rate, amount, true);
    }

    private IEnumerable<Draft> Dayworks() =>
        from work in new (ServiceUse Use, decimal Quantity)[]
        {
            (ServiceUse.DayworkLabour, input.Daywork.LabourDays), (ServiceUse.DayworkSkilled, input.Daywork.SkilledDays), (ServiceUse.DayworkPlant, input.Daywork.PlantH),
        }
        where work.Quantity > 0
        from service in services.Every(work.Use)
        select new Draft(service, "Daywork: " + service.Description, new Literal(work.Quantity), true);

    private BillLine ContingencyLine(CellId partsTotal, int number)
    {
        var key = Key(ContingencyPart, number);
        var quantity = ledger.Add(key + ".qty", Cells.Ref(inputs.Contingency));
        var rate = ledger.Add(key + ".rate", Cells.Ref(partsTotal));
        var amount = ledger.Add(key + ".amount", new Rounded(Cells.Times(quantity, rate), 2));
        return new BillLine(Code(ContingencyPart, number), "", "Contingency, on the sum of parts 1 to 7", "%", LotOfLine, quantity, rate, amount, true);
    }

    private CellId Collection(int part, ImmutableArray<BillLine> lines) =>
        ledger.Add(Name("part", part), Cells.SumOf([.. lines.Select(l => l.Amount)]));

    private string LotOfLine => input.OnlyLot ? "" : input.Lot;

    private string Code(int part, int number)
    {
        var code = string.Create(CultureInfo.InvariantCulture, $"{part}.{number:00}");
        return input.OnlyLot ? code : input.Lot + "." + code;
    }

    private string Key(int part, int number) => string.Create(CultureInfo.InvariantCulture, $"lot.{input.Lot}.{part}.{number:00}");

    private string Name(params object[] words) => TakeOff.Name(["lot", input.Lot, .. words]);
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>Checks one offer against what is asked. It says what the rules say and who decides; it rejects nobody.</summary>
public static class OfferChecker
{
    public const string AsAsked = "as asked";
    public const string AskBidder = "ask the bidder";
    public const string BelowAsked = "below what is asked";
    public const string CannotBeTrue = "cannot be true as stated";
    public const string NotPartOfIt = "not part of the tender";
    public const string Ready = "ready to evaluate";
    public const string AskFirst = "ask before evaluating";
    public const string RulesSayNo = "rules say not responsive: the committee decides";

    /// <summary>Every check that needs the offer and the design only.</summary>
    /// <param name="extra">Findings of checks that need more, such as the run of the offered parts at every site.</param>
    public static CheckedOffer Check(Offer offer, Asked asked, Func<ImmutableArray<OfferedKit>, IEnumerable<QuoteFinding>>? extra = null)
    {
        var lots = LotsOf(offer, asked);
        if (!asked.IsStated) asked = Own.OfferShape.For(offer, asked, lots);
        var matches = LineMatcher.Match([.. offer.Items], asked, lots);
        var kits = KitsOf(matches, asked, lots);
        var amounts = offer.Items.ToDictionary(l => l, ArithmeticChecks.Line, (IEqualityComparer<OfferLine>)ReferenceEqualityComparer.Instance);
        var findings = new List<QuoteFinding>(amounts.Values.Select(a => a.Finding).OfType<QuoteFinding>());
        findings.AddRange(ArithmeticChecks.Sums(offer));
        findings.AddRange(ItemChecks.Missing(matches, offer, asked, lots));
        findings.AddRange(ItemChecks.Lines(matches, offer, asked));
        findings.AddRange(matches.Where(m => !m.IsLeft).SelectMany(m => RatingChecks.Required(m, asked)));
        findings.AddRange(offer.Items.Where(l => l.Family != "service").SelectMany(l => RatingChecks.Believable(l, asked)));
        var cables = offer.Items.Where(l => l.Family == "cable").ToList();
        findings.AddRange(offer.Items.SelectMany(l => RatingChecks.Wiring(matches.FirstOrDefault(m => ReferenceEquals(m.Line, l)), l, matches, cables, asked)));
        findings.AddRange(kits.SelectMany(k => PowerChecks.Of(k, asked)));
        findings.AddRange(PriceChecks.Of(offer, matches, asked));
        findings.AddRange(TermChecks.Of(offer, asked));
        if (extra is not null) findings.AddRange(extra(kits));
        if (!asked.IsStated) findings = [.. findings.Select(f => ByPerformance(f, findings, kits, asked, extra is not null))];
        ImmutableArray<QuoteFinding> all = [.. findings.DistinctBy(f => (f.Code, f.Where, f.Code is "TK805" or "TK826" or "TK809" or "TK810" or "TK823" or "TK833" ? f.Message : "")).OrderBy(f => SheetOrder(offer, f)).ThenBy(f => f.Where.Row).ThenBy(f => f.Code, StringComparer.Ordinal)];
        ImmutableArray<JudgedLine> lines = [.. offer.Items.Select(l => Judge(l, matches.FirstOrDefault(m => ReferenceEquals(m.Line, l)), amounts[l].Amount, all))];
        return new CheckedOffer(offer, [.. lots], lines, all, ArithmeticChecks.Price(offer, lines.Select(l => l.CorrectedAmount)), OverallOf(all), kits);
    }

    /// <summary>Our own parts and quantities are no demand: a smaller part is a note when its kits, run whole, keep the tender's demand.</summary>
    private static QuoteFinding ByPerformance(QuoteFinding finding, List<QuoteFinding> all, ImmutableArray<OfferedKit> kits, Asked asked, bool wasRun)
    {
        if (!finding.OwnPart || (asked.IsShaped && finding.Code == "TK830")) return finding;
        if (finding.Code == "TK830" && !asked.IsShaped) return finding with { Severity = Severity.Note, Message = finding.Message + " by our own design; the tender states no quantities", Question = null };
        if (!wasRun || !finding.KitIds.All(k => Passes(k, all, kits, asked))) return finding;
        return finding with { Severity = Severity.Note, Message = finding.Message + "; differs from our own design, passes the tender's demand", Question = null };
    }

    private static bool Passes(string kitId, List<QuoteFinding> all, ImmutableArray<OfferedKit> kits, Asked asked)
    {
        var own = kits.Where(k => k.Asked.Id == kitId).ToList();
        return own.Count > 0 && own.TrueForAll(k => k is { FluxLm: > 0, InputPowerW: > 0, ArrayWp: > 0, BatteryWh: > 0 } && PowerChecks.Nights(k) >= asked.AutonomyNights * (1 - asked.Settings.ToleranceFraction))
            && !all.Exists(f => f.Code is "TK819" or "TK820" && f.KitIds.Contains(kitId));
    }

    private static int SheetOrder(Offer offer, QuoteFinding finding) => finding.Where.Sheet is null ? -1 : offer.Lines.Select(l => l.Place.Sheet).Distinct().ToList().IndexOf(finding.Where.Sheet);

    /// <summary>Lots offered: those the rows stand in, else those named, else those whose poles come nearest to the luminaires offered.</summary>
    private static List<string> LotsOf(Offer offer, Asked asked)
    {
        var known = asked.Lots;
        var inRows = offer.Items.Select(l => l.Lot).Where(known.Contains).Distinct().Order(StringComparer.Ordinal).ToList();
        var lamps = (int)offer.Items.Where(l => !l.Spare && l.Is("luminaire", "kit", "integrated")).Sum(l => l.Quantity ?? 0);
        var sets = Subsets(known).Where(s => inRows.All(s.Contains)).ToList();
        var named = offer.Terms.LotsNamed.Where(known.Contains).ToList();
        return sets.OrderBy(s => Math.Abs(s.Sum(l => asked.Kits.Sum(k => k.PolesOf(l))) - lamps))
            .ThenBy(s => named.Count > 0 && s.SequenceEqual(named) ? 0 : 1).ThenByDescending(s => s.Count).First() is var nearest && named.Count > 0 && inRows.All(named.Contains) && !Clear(nearest, named, lamps, asked) ? named : nearest;
    }

    /// <summary>Whether the quantities contradict the lots named beyond a mere slip in one line.</summary>
    private static bool Clear(List<string> nearest, List<string> named, int lamps, Asked asked)
    {
        int Poles(List<string> lots) => lots.Sum(l => asked.Kits.Sum(k => k.PolesOf(l)));
        return Math.Abs(Poles(nearest) - lamps) * 3 < Math.Abs(Poles(named) - lamps);
    }

    private static IEnumerable<List<string>> Subsets(ImmutableSortedSet<string> lots)
    {
        for (var set = 1; set < 1 << Math.Min(lots.Count, 8); set++) yield return [.. lots.Where((_, i) => (set & (1 << i)) != 0)];
    }

    internal static ImmutableArray<OfferedKit> KitsOf(ImmutableArray<LineMatch> matches, Asked asked, List<string> lots)
    {
        var offered = ImmutableArray.CreateBuilder<OfferedKit>();
        foreach (var kit in asked.Kits.Where(k => lots.Sum(k.PolesOf) > 0))
        {
            foreach (var lot in matches.Select(m => m.Line.Lot).Where(lots.Contains).Distinct().DefaultIfEmpty("").ToList())
            {
                OfferLine? Part(string family) => matches.FirstOrDefault(m => (m.Family == family || m.Family == "unit") && m.Kits.Contains(kit) && (lot.Length == 0 || m.Line.Lot == lot || !lots.Contains(m.Line.Lot)))?.Line;
                var one = new OfferedKit(kit, Part("luminaire"), Part("module"), Part("battery"), Part("controller"), Part("pole"));
                if (one is not { Luminaire: null, Module: null, Battery: null }) offered.Add(one);
            }
        }

        return offered.ToImmutable();
    }

    private static JudgedLine Judge(OfferLine line, LineMatch? match, decimal? amount, ImmutableArray<QuoteFinding> all)
    {
        ImmutableArray<QuoteFinding> own = [.. all.Where(f => f.Where.Row == line.Place.Row && f.Where.Sheet == line.Place.Sheet)];
        return new JudgedLine(line, match is null ? [] : [.. match.Kits.Select(k => k.Id)], match?.Asked, amount, VerdictOf(own), own);
    }

    private static string VerdictOf(ImmutableArray<QuoteFinding> own)
    {
        if (own.Any(f => f.Untrue)) return CannotBeTrue;
        if (own.Any(f => f.Severity == Severity.Error)) return BelowAsked;
        if (own.Any(f => f.Code is "TK806" or "TK807" && f.Severity != Severity.Note)) return NotPartOfIt;
        return own.Any(f => f.Severity == Severity.Warning) ? AskBidder : AsAsked;
    }

    private static string OverallOf(ImmutableArray<QuoteFinding> all) =>
        all.Any(f => f.Severity == Severity.Error || f.Code == "TK827") ? RulesSayNo : all.Any(f => f.Severity == Severity.Warning) ? AskFirst : Ready;
}

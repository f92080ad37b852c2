using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Conditions of an offer out of its rows of text: currency, incoterm, validity, delivery, warranties, certificates, reservations.</summary>
internal static partial class TermsReader
{
    private static readonly ImmutableArray<string> Incoterms = ["EXW", "FCA", "FAS", "FOB", "CFR", "CIF", "CPT", "CIP", "DAP", "DPU", "DDP"];

    /// <param name="lines">Lines as read.</param>
    /// <param name="all">Every text of the file, cells one by one.</param>
    public static OfferTerms Read(ImmutableArray<OfferLine> lines, string all)
    {
        var texts = lines.Where(l => l.Kind == LineKind.Text).ToList();
        var prose = texts.Where(t => t.Text.Length > 3).ToList();
        return new OfferTerms(
            CurrencyOf(all),
            Incoterm().Matches(all).Select(m => m.Value).FirstOrDefault(Incoterms.Contains),
            DaysOf(prose, Validity(), Delivery()),
            DeliveryOf(prose),
            [.. prose.SelectMany(t => WarrantyReader.Read(t.Text, t.Place))],
            [.. Certificates.In(all)],
            [.. prose.SelectMany(ReservationsOf)],
            [.. prose.Select(t => AmountWords.Find(t.Text) is { } amount and >= 100 ? new WordedTotal(amount, t.Text, t.Place) : null).OfType<WordedTotal>()],
            [.. prose.Where(t => Discount().IsMatch(PlainText.Fold(t.Text))).Select(DiscountOf).OfType<ConditionalDiscount>()],
            [.. lines.Where(l => l.Kind is LineKind.Text).SelectMany(l => RowKind.LotsIn(l.Text))]);
    }

    private static string? CurrencyOf(string all)
    {
        var codes = CurrencyCode().Matches(all).Select(m => m.Value.ToUpperInvariant()).GroupBy(c => c).OrderByDescending(g => g.Count()).Select(g => g.Key).FirstOrDefault();
        if (codes is not null) return codes is "FCFA" or "CFA" ? "XOF" : codes;
        var folded = PlainText.Fold(all);
        if (folded.Contains('€', StringComparison.Ordinal) || Euro().IsMatch(folded)) return "EUR";
        if (UsDollar().IsMatch(folded)) return "USD";
        return FrancCfa().IsMatch(folded) ? "XOF" : null;
    }

    /// <summary>Sentences and clauses of a text, each with its first words.</summary>
    private static IEnumerable<string> Clauses(string text) => Clause().Split(text).Select(c => c.Trim()).Where(c => c.Length > 0);

    private static StatedDays? DaysOf(List<OfferLine> texts, Regex about, Regex notAbout)
    {
        foreach (var text in texts)
        {
            foreach (var clause in Clauses(text.Text))
            {
                var folded = PlainText.Fold(clause);
                if (!about.IsMatch(folded)) continue;
                var span = Span().Matches(folded).FirstOrDefault(s => IsAbout(folded, s, about, notAbout));
                if (span is not null) return new StatedDays(Days(span), clause, text.Place);
            }
        }

        return null;
    }

    /// <summary>A number of days belongs to the last word before it, or else to the first after it.</summary>
    private static bool IsAbout(string folded, Match span, Regex about, Regex notAbout)
    {
        int Before(Regex word) => word.Matches(folded).Where(m => m.Index < span.Index).Select(m => m.Index).DefaultIfEmpty(-1).Max();
        int After(Regex word) => word.Matches(folded).Where(m => m.Index > span.Index).Select(m => m.Index).DefaultIfEmpty(int.MaxValue).Min();
        var (own, other) = (Before(about), Before(notAbout));
        return own >= 0 || other >= 0 ? own > other : After(about) < After(notAbout);
    }

    /// <summary>Delivery: the whole time where it is named, else the longest.</summary>
    private static StatedDays? DeliveryOf(List<OfferLine> texts)
    {
        StatedDays? best = null;
        foreach (var text in texts)
        {
            foreach (var clause in Clauses(text.Text))
            {
                var folded = PlainText.Fold(clause);
                if (!Delivery().IsMatch(folded) || (Payment().Match(folded) is { Success: true } pay && pay.Index < Delivery().Match(folded).Index) || Warranty().IsMatch(folded)) continue;
                foreach (var span in Span().Matches(folded).Where(s => IsAbout(folded, s, Delivery(), Validity())))
                {
                    if (best is null || Days(span) > best.Days) best = new StatedDays(Days(span), clause, text.Place);
                }
            }
        }

        return best;
    }

    private static int Days(Match span)
    {
        var count = PlainText.Number(span.Groups["n"].Value, false) ?? 0;
        var factor = span.Groups["u"].Value switch { ['w' or 's', ..] => 7, ['m', ..] => 30, ['y', ..] or "an" or "ans" or "ano" or "anos" => 365, _ => 1 };
        return (int)Math.Round(count * factor);
    }

    private static IEnumerable<Reservation> ReservationsOf(OfferLine line)
    {
        var folded = PlainText.Fold(line.Text);
        if (Standing().IsMatch(folded)) yield break;
        if (Reserve().Match(folded) is not { Success: true } match) yield break;
        if (Discount().IsMatch(folded) && !Strong().IsMatch(folded)) yield break;
        yield return new Reservation(line.Text, line.Text.Substring(match.Index, match.Length), line.Place);
    }

    private static ConditionalDiscount? DiscountOf(OfferLine line) =>
        Percent().Match(PlainText.Fold(line.Text)) is { Success: true } match && PlainText.Number(match.Groups["n"].Value, false) is { } share and > 0 and < 60
            ? new ConditionalDiscount((decimal)share / 100, line.Text, line.Place) : null;

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"\b[A-Z]{3}\b", Options)]
    private static partial Regex Incoterm();

    [GeneratedRegex(@"\b(?:USD|EUR|XOF|XAF|FCFA|GBP|KES|TZS|UGX|RWF|ZMW|MWK|MZN|ZAR|NGN|GHS|INR|CHF|ETB|BRL|MXN|BOB|PEN|AOA|CVE)\b", Options)]
    private static partial Regex CurrencyCode();

    [GeneratedRegex(@"\beuros?\b", Options)]
    private static partial Regex Euro();

    [GeneratedRegex(@"\bus ?\$|\bus dollars?|\bu\.?s\.? dollars?|dollars? (?:us|des etats|of the united states|americains)|dolar\w* (?:de los estados unidos|dos estados unidos|americanos?|estadounidenses|dos eua)", Options)]
    private static partial Regex UsDollar();

    [GeneratedRegex(@"\bf\.? ?cfa\b|francs? cfa", Options)]
    private static partial Regex FrancCfa();

    [GeneratedRegex(@"(?<=[a-z0-9)])[.;]\s+|;|\s+[-–—|]\s+|\n", Options | RegexOptions.IgnoreCase)]
    private static partial Regex Clause();

    [GeneratedRegex(@"\bvali[dt]\w*|\bvalable|\bvigen\w+|open for acceptance|\bopen for\b|\bhold\w* (?:good|firm)|\bfirm for\b|\bferme pendant|\bmainten\w* pendant|\bmantien\w+|\bmantem\w*|\bmantid\w+", Options)]
    private static partial Regex Validity();

    [GeneratedRegex(@"\bdeliver\w*|\blivr\w+|\bdelai\w*|\bentreg\w+|\bplazo\b|\bprazo\b|\bcomplet\w+|\bexecution|\bejecucion|\bexecucao|\blead[- ]?time|\bship\w+|\bexpedition|\bex[- ]?works in|\bfabrica\w+ y entrega|\bready in|\bmise a disposition|\btermin\w+", Options)]
    private static partial Regex Delivery();

    [GeneratedRegex(@"(?<!\d)(?<n>\d{1,3}(?:[.,]5)?)(?:\s*\(\w+\))?\s*-?\s*(?:calendar |working |business )?(?<u>days?|jours?|j\b|dias?|weeks?|wks?|semaines?|sem\b|semanas?|months?|mois|mes(?:es)?|years?|ans?|anos?)\b", Options)]
    private static partial Regex Span();

    [GeneratedRegex(@"\bpay\w*|\bpag\w+|\bpaiement|\breglement|\binvoice|\bfactur\w+|\bfatur\w+", Options)]
    private static partial Regex Payment();

    [GeneratedRegex(@"warrant|guarant|garant", Options)]
    private static partial Regex Warranty();

    [GeneratedRegex(@"\bdiscount|\brebate|\bremise\b|\brabais|\bdescuento|\bdesconto|\bristourne", Options)]
    private static partial Regex Discount();

    [GeneratedRegex(@"(?<n>\d{1,2}(?:[.,]\d{1,2})?)\s*(?:%|per ?cent|pour cent|por ciento|por cento)", Options)]
    private static partial Regex Percent();

    /// <summary>Sentences every offer holds, such as what payment is asked for; they are not judged.</summary>
    [GeneratedRegex(@"^(?:payment|terms of payment|paiement|conditions de paiement|modalites de paiement|forma de pago|condiciones de pago|pago|pagamento|condicoes de pagamento|forma de pagamento|formas de pagamento)\b", Options)]
    private static partial Regex Standing();

    [GeneratedRegex(@"\bsubject to\b|\bprovided (?:that|the)|\bdeviat\w+|\bexcept(?:ion|ions|ing)?\b|\breservat\w+|\bconditional\w* (?:on|upon)|\brevis(?:ed|ion|able|ions?|ables?|ibles?|ado|ada|ados|adas|iveis|avel|es|e|ees|ees|ion de precios|ao|oes)\b|\bescalat\w+|\badjust(?:ed|ment|able)\b|\bvariants?\b|\bvariantes?\b|\balternativ\w+|\binstead of\b|\bin place of\b|\bsubstitut\w+|\bsustitu\w+|\bau lieu d\w*|\ben lugar de\b|\bem vez d\w+|\bem lugar de\b|\ben remplacement|\bnot included\b|\bexclud\w+|\bexclus\w*|\bnon compris\w*|\bnon inclus\w*|\bno incluy?\w*|\bnao inclu\w+|\bexcluid\w+|\bexcept\w*|\bexcepto\b|\bsauf\b|\bhormis\b|\bsalvo\b|\bsous reserve|\breserves?\b|\bsujet[oa]s?\b|\bsujeit[oa]s?\b|\bsiempre que\b|\bsiempre y cuando\b|\bdesde que\b|\ba condition\b|\ba condicion\b|\bcondicionad\w+|\bsuppos\w+|\bsupone\w*|\bsupoe\w*|\bassum\w+|\bpressup\w+|\ba la charge d\w+ (?:l'acheteur|client|maitre)|\ba cargo del (?:comprador|cliente|contratante)|\ba cargo do (?:comprador|cliente)|\bpor conta do (?:comprador|cliente)|\bby the (?:buyer|client|purchaser|employer)\b|\breajust\w+|\bindex(?:ed|es|ation|ees?|ados?)\b|\bwe (?:do|can) ?not\b|\bcannot (?:accept|offer)|\bn'acceptons pas|\bno aceptamos|\bnao aceitamos|\bprices? may\b|\bpourr\w+ (?:etre )?(?:modif|revu|change)|\bpodran? (?:cambiar|variar|ser)|\bpoder(?:a|ao) (?:ser|mudar|variar)", Options)]
    private static partial Regex Reserve();

    [GeneratedRegex(@"\bsubject to price|\brevis\w+|\bdeviat\w+|\bexclud\w+|\bsous reserve de (?!l'attribution)", Options)]
    private static partial Regex Strong();
}

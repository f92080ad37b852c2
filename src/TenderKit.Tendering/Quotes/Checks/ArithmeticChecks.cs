using System.Text.RegularExpressions;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>
/// Extensions, sums, words against figures. Corrections: the unit price prevails over the amount, unless its decimal point is obviously
/// misplaced, then the amount; subtotals over the sum; words over figures unless the words carry the arithmetic error
/// (United Nations instructions to bidders, read; the exception and the subtotals from memory, development-bank standard documents).
/// </summary>
public static partial class ArithmeticChecks
{
    private const string Rule = "correction rules: unit price over amount, except an obviously misplaced decimal point (UN instructions to bidders, read; exception from memory)";
    private const string SumRule = "sum of the rows above it; subtotals prevail over the total (development-bank standard documents, from memory)";
    private static readonly decimal[] Powers = [10m, 100m, 1000m, 0.1m, 0.01m, 0.001m];
    private const decimal Cent = 0.011m;

    /// <summary>Amount of a line after correction, and what was wrong.</summary>
    public static (decimal? Amount, QuoteFinding? Finding) Line(OfferLine line)
    {
        if (line is not { Quantity: { } quantity, Rate: { } rate }) return (line.Amount, null);
        var product = decimal.Round(quantity * rate, 2, MidpointRounding.AwayFromZero);
        if (line.Amount is not { } amount) return (product, null);
        if (Math.Abs(product - amount) <= Cent + (quantity * 0.005m > 1 ? 0.01m : 0)) return (product, null);
        if (amount != 0 && IsPowerOfTen(product / amount))
        {
            return (amount, new QuoteFinding(
                "TK829", Severity.Warning, line.Place,
                $"decimal point misplaced: {Say.Money(quantity)} x {Say.Money(rate)} = {Say.Money(product)}, but {Say.Money(amount)} is stated; the amount is taken", Rule,
                $"Line {line.Place.Row} ({Say.Short(line.Text)}): the unit price {Say.Money(rate)} and the amount {Say.Money(amount)} differ by a factor of ten or a power of it. Please confirm the unit price."));
        }

        return (product, new QuoteFinding(
            "TK802", Severity.Warning, line.Place,
            $"quantity x rate differs from the amount: {Say.Number((double)quantity)} x {Say.Money(rate)} = {Say.Money(product)}, stated {Say.Money(amount)}; corrected to {Say.Money(product)}", Rule,
            $"Line {line.Place.Row} ({Say.Short(line.Text)}): {Say.Number((double)quantity)} x {Say.Money(rate)} gives {Say.Money(product)}, the offer states {Say.Money(amount)}. Please confirm the corrected amount."));
    }

    private static bool IsPowerOfTen(decimal ratio) => Powers.Any(p => Math.Abs((ratio / p) - 1) < 0.002m);

    /// <summary>Sums, subtotals, taxes and totals.</summary>
    public static IEnumerable<QuoteFinding> Sums(Offer offer)
    {
        var run = new SumRun();
        foreach (var line in offer.Lines)
        {
            if (run.Next(line) is { } finding) yield return finding;
        }

        foreach (var finding in Words(offer)) yield return finding;
    }

    private static IEnumerable<QuoteFinding> Words(Offer offer)
    {
        var totals = offer.Lines.Where(l => l.Kind is LineKind.Total or LineKind.Subtotal && l.Amount is not null).Select(l => l.Amount!.Value).ToList();
        if (totals.Count == 0) yield break;
        foreach (var words in offer.Terms.WordedTotals.Where(w => !totals.Exists(t => Math.Abs(t - w.Amount) < 0.02m || (decimal.Truncate(t) == w.Amount && w.Amount % 1 == 0))))
        {
            yield return new QuoteFinding(
                "TK804", Severity.Warning, words.Place, $"the amount in words is {Say.Money(words.Amount)}, the total in figures {Say.Money(totals[^1])}",
                "words prevail over figures, unless the words carry an arithmetic error (UN instructions to bidders, read)",
                $"The total in words ({Say.Money(words.Amount)}) differs from the total in figures ({Say.Money(totals[^1])}). Which amount do you confirm?");
        }
    }

    /// <summary>Walks down the rows and keeps every sum a total may mean.</summary>
    private sealed class SumRun
    {
        private readonly List<OfferLine> _items = [];
        private readonly List<OfferLine> _leaves = [];
        private readonly List<OfferLine> _since = [];
        private readonly List<OfferLine> _adjustments = [];
        private readonly List<OfferLine> _adjustmentsSince = [];
        private decimal? _last;

        public QuoteFinding? Next(OfferLine line)
        {
            switch (line.Kind)
            {
                case LineKind.Item:
                    _items.Add(line);
                    _since.Add(line);
                    return null;
                case LineKind.Tax or LineKind.Discount or LineKind.Transport:
                    _adjustments.Add(line);
                    _adjustmentsSince.Add(line);
                    return Share(line);
                case LineKind.Subtotal or LineKind.Total when line.Amount is { } amount:
                    var found = Total(line, amount);
                    if (line.Kind == LineKind.Subtotal && _since.Count > 0) _leaves.Add(line);
                    _since.Clear();
                    _adjustmentsSince.Clear();
                    _last = amount;
                    return found;
                default:
                    return null;
            }
        }

        private QuoteFinding? Share(OfferLine line)
        {
            if (line.Kind == LineKind.Transport || line.Amount is not { } amount || Percent().Match(line.Text) is not { Success: true } match || PlainText.Number(match.Groups["n"].Value, false) is not { } percent) return null;
            var bases = new List<decimal> { Sum(_items), Sum(_leaves), Sum(_since) };
            if (_last is { } last) bases.AddRange([last, last + Sum(_adjustmentsSince.SkipLast(1))]);
            var allowed = bases.Select(b => Math.Abs(b * (decimal)percent / 100)).ToList();
            if (allowed.Exists(a => Math.Abs(a - Math.Abs(amount)) <= 0.02m + (a * 0.0001m))) return null;
            return new QuoteFinding(
                "TK803", Severity.Warning, line.Place, $"{Say.Number(percent)} % gives {Say.Money(allowed.MinBy(a => Math.Abs(a - Math.Abs(amount))))}, stated {Say.Money(Math.Abs(amount))}", SumRule,
                $"Row {line.Place.Row} ({Say.Short(line.Text)}): the amount stated does not follow from the percentage. Please confirm.");
        }

        private QuoteFinding? Total(OfferLine line, decimal amount)
        {
            var adjusted = Sum(_adjustments);
            var since = Sum(_adjustmentsSince);
            var lotItems = _items.Where(i => line.Lot.Length > 0 && i.Lot == line.Lot).ToList();
            var lotLeaves = _leaves.Where(l => line.Lot.Length > 0 && l.Lot == line.Lot).ToList();
            var sheetItems = _items.Where(i => i.Place.Sheet == line.Place.Sheet).ToList();
            var candidates = new List<decimal>();
            void Add(decimal sum)
            {
                if (sum != 0) candidates.AddRange([sum, sum + since, sum + adjusted]);
            }

            if (_since.Count > 0) Add(Sum(_since));
            if (_since.Count > 0) Add(Product(_since));
            Add(Sum(_leaves) + Sum(_since));
            Add(Sum(_items));
            Add(Product(_items));
            if (lotItems.Count > 0) Add(Sum(lotItems));
            if (lotLeaves.Count > 0) Add(Sum(lotLeaves));
            if (sheetItems.Count > 0) Add(Sum(sheetItems));
            if (_last is { } last && _since.Count == 0) Add(last);
            var isGrand = line.Kind == LineKind.Total || (line.Lot.Length == 0 && _leaves.Count > 1 && _since.Count == 0);
            var whole = Sum(_leaves) + Sum(_since);
            var others = _leaves.Where(l => l.Lot.Length > 0).Select(l => l.Lot).Distinct().Count();
            if (isGrand && others > 1 && _since.Count == 0) candidates.RemoveAll(c => _leaves.Exists(l => Math.Abs(l.Amount!.Value - c) < 0.01m));
            if (isGrand && others > 1 && !candidates.Exists(c => Near(c, amount)) && _leaves.Exists(l => Near(l.Amount!.Value, amount)))
            {
                return new QuoteFinding(
                    "TK832", Severity.Warning, line.Place, $"the total of {Say.Money(amount)} carries one lot only; the lots together are {Say.Money(whole + adjusted)}", SumRule,
                    $"The total of {Say.Money(amount)} leaves out a lot: your lots add up to {Say.Money(whole + adjusted)}. Please confirm the total.");
            }

            if (candidates.Count == 0 || candidates.Exists(c => Near(c, amount))) return null;
            var nearest = candidates.MinBy(c => Math.Abs(c - amount));
            return new QuoteFinding(
                "TK803", Severity.Warning, line.Place, $"the rows add up to {Say.Money(nearest)}, stated {Say.Money(amount)}, a difference of {Say.Money(amount - nearest)}", SumRule,
                $"Row {line.Place.Row} ({Say.Short(line.Text)}): the rows add up to {Say.Money(nearest)}, the offer states {Say.Money(amount)}. Please confirm the corrected sum.");
        }

        private static bool Near(decimal sum, decimal stated) => Math.Abs(sum - stated) <= 0.02m + (Math.Abs(sum) * 0.000002m);

        private static decimal Sum(IEnumerable<OfferLine> lines) => lines.Sum(l => Signed(l) ?? (l.Quantity is { } q && l.Rate is { } r ? decimal.Round(q * r, 2) : 0));

        private static decimal? Signed(OfferLine line) => line.Kind == LineKind.Discount && line.Amount is { } a ? -Math.Abs(a) : line.Amount;

        private static decimal Product(IEnumerable<OfferLine> lines) => lines.Sum(l => l.Quantity is { } q && l.Rate is { } r ? decimal.Round(q * r, 2) : l.Amount ?? 0);
    }

    /// <summary>Price after corrections: items as corrected, transport, discount and tax as stated or by their percentages.</summary>
    public static OfferPrice Price(Offer offer, IEnumerable<decimal?> correctedItems)
    {
        var items = correctedItems.Sum(a => a ?? 0);
        var transport = offer.Lines.Where(l => l.Kind == LineKind.Transport).Sum(l => l.Amount ?? 0);
        var discount = offer.Lines.Where(l => l.Kind == LineKind.Discount).Sum(l => PercentOf(l) is { } p ? -decimal.Round(items * p, 2, MidpointRounding.AwayFromZero) : -Math.Abs(l.Amount ?? 0));
        var taxed = items + transport + discount;
        var tax = offer.Lines.Where(l => l.Kind == LineKind.Tax).Sum(l => PercentOf(l) is { } p ? decimal.Round(taxed * p, 2, MidpointRounding.AwayFromZero) : l.Amount ?? 0);
        return new OfferPrice(offer.Lines.LastOrDefault(l => l.Kind == LineKind.Total)?.Amount, items, transport, discount, tax, taxed + tax);
    }

    private static decimal? PercentOf(OfferLine line) =>
        Percent().Match(line.Text) is { Success: true } match && PlainText.Number(match.Groups["n"].Value, false) is { } value ? (decimal)value / 100 : null;

    [GeneratedRegex(@"(?<n>\d{1,2}(?:[.,]\d{1,2})?)\s*%", RegexOptions.CultureInvariant)]
    private static partial Regex Percent();
}

using System.Collections.Immutable;
using TenderKit.Tendering.Bill;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Forms;

/// <summary>
/// Puts our rates into the employer's form. A line takes the items of our bill that its words, ratings and quantity name; a line for a whole light takes every
/// item of supply, civil works and erection that has no line of its own. Quantities stay the employer's. What has no line is spread over the rates
/// in proportion to their amounts, where the tender says so. Tax is never spread.
/// </summary>
public static class FormPricing
{
    private const int SparesPart = 5;

    /// <param name="design">The design behind the bill.</param>
    /// <param name="bill">Our bill.</param>
    /// <param name="form">The form as read.</param>
    public static PricedForm Of(TenderDesign design, BillOfQuantities bill, PriceForm form)
    {
        var items = OurItems.Of(design, bill);
        var answered = new Dictionary<FormLine, ImmutableArray<OurItem>>();
        foreach (var group in form.Lines.GroupBy(l => l.Lot, StringComparer.Ordinal))
        {
            var open = items.Where(i => group.Key.Length == 0 || i.Lot == group.Key || i.Lot.Length == 0).ToList();
            Answer([.. group], open, form, answered);
        }

        return Price(design, form, items, answered);
    }

    private static void Answer(ImmutableArray<FormLine> lines, List<OurItem> open, PriceForm form, Dictionary<FormLine, ImmutableArray<OurItem>> answered)
    {
        foreach (var line in lines.Where(l => form.Given.ContainsKey((l.Sheet, l.Row)))) Take(line, [.. open.Where(i => form.Given[(line.Sheet, line.Row)].Contains(i.Code))]);
        var read = lines.Where(l => !answered.ContainsKey(l)).Select(l => (Line: l, Reading: ItemWords.Read(l.Description))).ToArray();
        foreach (var group in read.Where(r => r.Reading.Kind is not (ItemKind.Unknown or ItemKind.CompleteLight or ItemKind.Contingency or ItemKind.Tax or ItemKind.ProvisionalSum or ItemKind.Daywork)).GroupBy(r => (r.Reading.Kind, r.Reading.Spare)))
        {
            var own = open.Where(i => i.Kind == group.Key.Kind && (i.Part == SparesPart) == group.Key.Spare).ToList();
            foreach (var (line, found) in FormMatch.Of([.. group.Select(g => g.Line)], own)) Take(line, found);
        }

        foreach (var line in read.Where(r => r.Reading.Kind == ItemKind.CompleteLight).Select(r => r.Line).Take(1)) Take(line, [.. open.Where(i => i.Part is >= 2 and <= 4)]);

        void Take(FormLine line, ImmutableArray<OurItem> found)
        {
            if (found.IsEmpty) return;
            answered[line] = found;
            foreach (var item in found) open.Remove(item);
        }
    }

    private static PricedForm Price(TenderDesign design, PriceForm form, ImmutableArray<OurItem> items, Dictionary<FormLine, ImmutableArray<OurItem>> answered)
    {
        var settings = form.Settings;
        var asksContingency = form.Lines.Any(l => ItemWords.Read(l.Description).Kind == ItemKind.Contingency);
        var placed = answered.Values.SelectMany(v => v).ToHashSet();
        var unplaced = items.Where(i => !placed.Contains(i))
            .Select(i => new UnplacedItem(i.Code, i.Description, i.Amount, settings.SpreadRest && (i.Kind != ItemKind.Contingency || (settings.SpreadContingency && !asksContingency))))
            .ToImmutableArray();
        var bases = answered.ToDictionary(a => a.Key, a => Base(a.Key, a.Value, design));
        var carried = bases.Sum(b => b.Key.Quantity * b.Value.Rate);
        var factor = carried > 0 ? 1 + (unplaced.Where(u => u.Spread).Sum(u => u.Amount) / carried) : 1;
        var answers = form.Lines.Select(l => bases.TryGetValue(l, out var b) ? Written(l, answered[l], b, factor, design) : Left(l, unplaced, items)).ToImmutableArray();
        return new PricedForm(answers, unplaced, factor, answers.Sum(a => a.Amount), items.Sum(i => i.Amount));
    }

    /// <summary>Rate before spreading and our quantity of what the line counts.</summary>
    private static (decimal Rate, decimal? Ours) Base(FormLine line, ImmutableArray<OurItem> items, TenderDesign design)
    {
        var amount = items.Sum(i => i.Amount);
        if (FormUnits.IsSum(line.Unit)) return (line.Quantity > 0 ? amount / line.Quantity : 0, null);
        var ours = ItemWords.Read(line.Description).Kind == ItemKind.CompleteLight
            ? design.Sites.Where(s => line.Lot.Length == 0 || s.Site.Lot == line.Lot).Sum(s => s.Poles)
            : items.Sum(i => i.Quantity);
        if (ours <= 0) return (0, ours);
        return (items.Length == 1 ? items[0].Rate : amount / ours, ours);
    }

    private static FormAnswer Written(FormLine line, ImmutableArray<OurItem> items, (decimal Rate, decimal? Ours) own, decimal factor, TenderDesign design)
    {
        var rate = Math.Round(own.Rate * factor, design.Tender.Prices.RateDecimals, MidpointRounding.AwayFromZero);
        var remark = own.Ours is { } ours && ours != line.Quantity
            ? FormattableString.Invariant($"the form asks for {line.Quantity:0.###} {line.Unit}, our design needs {ours:0.###}: ask the employer which holds")
            : "";
        return new FormAnswer(line, [.. items.Select(i => i.Code)], own.Ours, rate, remark);
    }

    private static FormAnswer Left(FormLine line, ImmutableArray<UnplacedItem> unplaced, ImmutableArray<OurItem> items)
    {
        var reading = ItemWords.Read(line.Description);
        var codes = unplaced.Select(u => u.BillCode).ToHashSet(StringComparer.Ordinal);
        string[] near = [.. items.Where(i => i.Kind == reading.Kind && (i.Part == SparesPart) == reading.Spare && codes.Contains(i.Code)).Select(i => i.Code)];
        return new(line, [], null, null, near.Length > 0 && reading.Kind is not (ItemKind.Contingency or ItemKind.Unknown)
            ? $"{string.Join(", ", near.Take(6))} could be meant, and other lines fit them as well: say in the list of lines which it is"
            : Why(reading.Kind));
    }

    private static string Why(ItemKind kind) => kind switch
    {
        ItemKind.Contingency => "left as it is: the contingency is the employer's to state",
        ItemKind.Tax => "left as it is: tax is not spread over rates",
        ItemKind.ProvisionalSum => "left as it is: a provisional sum is the employer's to state",
        ItemKind.Daywork => "left as it is: enter the daywork rate",
        ItemKind.Unknown => "not understood: say in the list of lines which of our items it is",
        _ => "none of our items is of this kind: say in the list of lines which it is, or tell the employer that it is not offered",
    };
}

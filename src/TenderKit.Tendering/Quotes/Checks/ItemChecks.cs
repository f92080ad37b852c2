using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>Items missing, doubled, not asked for or without a price; quantities.</summary>
internal static class ItemChecks
{
    private const string Schedule = "tender: quantities of the design, poles by kit and lot";

    public static IEnumerable<QuoteFinding> Missing(ImmutableArray<LineMatch> matches, Offer offer, Asked asked, IReadOnlyCollection<string> lots)
    {
        var place = new Place(offer.File, Row: 0);
        foreach (var kit in asked.Kits.Where(k => asked.IsShaped && k.PolesNeeded > k.PolesOf(null) * (1 + asked.Settings.ToleranceFraction)))
        {
            var message = $"light points missing: {k(kit.PolesNeeded)} poles with this lamp are needed at sites {string.Join(", ", kit.PolesBySite.Keys)}, {k(kit.PolesOf(null))} are offered ({kit.Id})";
            yield return new QuoteFinding("TK805", Severity.Error, place, message, "our light calculation with the offered flux and height", $"Sites {string.Join(", ", kit.PolesBySite.Keys)} need {k(kit.PolesNeeded)} poles with your lamp of {k(kit.FluxLm)} lm; {k(kit.PolesOf(null))} are offered. Which sites do you leave out?") { KitIds = [kit.Id] };
            static string k(double value) => Say.Number(Math.Round(value));
        }

        var items = offer.Items.Where(l => !l.Spare).ToList();
        foreach (var family in LineMatcher.Matched.Where(f => f != "unit"))
        {
            var own = matches.Where(m => m.Family == family).ToList();
            var needed = asked.Kits.Where(k => lots.Sum(k.PolesOf) > 0 && !Covered(k, family, matches)).ToList();
            var open = needed.Where(k => lots.Where(l => k.PolesOf(l) > 0).Any(l => !own.Exists(m => m.Kits.Contains(k) && (m.Line.Lot == l || !lots.Contains(m.Line.Lot))))).ToList();
            if (open.Count == 0 || (own.Count == 0 && OtherForm(family, items))) continue;
            if (own.Count > 0 && family is "surge" or "earth" && own.Sum(m => m.Line.Quantity ?? 0) > 0 && matches.Any(m => m.Family == "unit")) continue;
            var word = family.Replace(" set", "s", StringComparison.Ordinal);
            var whom = own.Count == 0 ? $"no {word} at all, asked for {string.Join(", ", open.Select(k => k.Id))}" : $"no {word} for {string.Join(", ", open.Select(k => k.Id))} ({open.Sum(k => lots.Sum(k.PolesOf))} poles)";
            yield return new QuoteFinding("TK805", Severity.Error, place, $"item missing: {whom}", Schedule, $"Your offer holds {whom}. Is it left out, or included in another price? If so, in which line?");
        }
    }

    /// <summary>Whether a whole light point or an integrated unit of the kit brings this family along.</summary>
    private static bool Covered(AskedKit kit, string family, ImmutableArray<LineMatch> matches) =>
        matches.Any(m => m.Family == "unit" && m.Kits.Contains(kit) && (m.Line.Family == "kit" || LineMatcher.InsideUnit.Contains(family)));

    /// <summary>Cables by the metre and fuses by the piece answer a set; a set answers arresters and electrodes.</summary>
    private static bool OtherForm(string family, List<OfferLine> items) => family switch
    {
        "cable set" => items.Exists(l => l.Family == "cable"),
        "protection set" => items.Exists(l => l.Family == "protection" && RatingReader.FuseWord().IsMatch(PlainText.Fold(l.Text))),
        "surge" => items.Exists(l => RatingReader.SurgeWord().IsMatch(PlainText.Fold(l.Text))),
        "earth" => items.Exists(l => EarthIn(PlainText.Fold(l.Text))),
        "enclosure" or "bracket" => false,
        _ => false,
    };

    private static bool EarthIn(string folded) => folded.Contains("earth", StringComparison.Ordinal) || folded.Contains("terre", StringComparison.Ordinal) || folded.Contains("tierra", StringComparison.Ordinal) || folded.Contains("terra", StringComparison.Ordinal) || folded.Contains("ground", StringComparison.Ordinal);

    public static IEnumerable<QuoteFinding> Lines(ImmutableArray<LineMatch> matches, Offer offer, Asked asked)
    {
        foreach (var match in matches)
        {
            if (match.IsLeft)
            {
                var left = LeftOver(match, matches);
                yield return left.Code == "TK807" && !asked.IsStated ? left with { Severity = Severity.Note, Message = left.Message + "; our own design has no kit left for it, the tender states no kits", Question = null } : left;
                continue;
            }

            if (match.Asked is { } quantity && match.Line.Quantity is { } offered && offered != quantity)
            {
                yield return new QuoteFinding(
                    "TK830", Severity.Warning, match.Line.Place, asked.IsShaped
                        ? $"quantity {Say.Number((double)offered)} {match.Line.Unit} offered, {Say.Number((double)quantity)} needed for {string.Join(", ", match.Kits.Select(k => k.Id))}"
                        : $"quantity {Say.Number((double)offered)} {match.Line.Unit} offered, {Say.Number((double)quantity)} asked for {string.Join(", ", match.Kits.Select(k => k.Id))}",
                    asked.IsShaped ? "the light points of the offer itself" : Schedule,
                    asked.IsShaped ? $"Line {match.Line.Place.Row} ({Say.Short(match.Line.Text)}): {Say.Number((double)offered)} are offered, your own light points need {Say.Number((double)quantity)}. Which quantity do you confirm?" : $"Line {match.Line.Place.Row} ({Say.Short(match.Line.Text)}): {Say.Number((double)offered)} are offered, {Say.Number((double)quantity)} are asked. Please offer the quantity of the tender at your unit price.")
                { OwnPart = !asked.IsStated };
            }
        }

        foreach (var finding in Unmatched(matches, offer, asked)) yield return finding;
    }

    private static IEnumerable<QuoteFinding> Unmatched(ImmutableArray<LineMatch> matches, Offer offer, Asked asked)
    {
        var seen = new List<OfferLine>();
        foreach (var line in offer.Items)
        {
            if (Unpriced(line) is { } unpriced) yield return unpriced;
            if (line.Spare || matches.Any(m => ReferenceEquals(m.Line, line))) continue;
            if (line.Family == "other" && !Welcome(line)) yield return NotAsked(line);
            if (line.Family == "service" && !asked.Settings.Works) continue;
            if (seen.Exists(s => Same(s, line) && s.Lot == line.Lot)) yield return Double(line);
            seen.Add(line);
        }
    }

    private static bool Welcome(OfferLine line) => line.Item is Items.ItemKind.Fixings or Items.ItemKind.Transport or Items.ItemKind.Contingency or Items.ItemKind.ProvisionalSum || FixingWord(PlainText.Fold(line.Text));

    private static bool FixingWord(string folded) => folded.Contains("fix", StringComparison.Ordinal) || folded.Contains("fijac", StringComparison.Ordinal) || folded.Contains("tool", StringComparison.Ordinal) || folded.Contains("outil", StringComparison.Ordinal) || folded.Contains("herramient", StringComparison.Ordinal) || folded.Contains("ferrament", StringComparison.Ordinal) || folded.Contains("spare", StringComparison.Ordinal);

    private static QuoteFinding LeftOver(LineMatch match, ImmutableArray<LineMatch> matches) =>
        matches.Any(m => !ReferenceEquals(m.Line, match.Line) && m.Family == match.Family && Same(m.Line, match.Line)) ? Double(match.Line) : NotAsked(match.Line);

    private static bool Same(OfferLine one, OfferLine other) =>
        PlainText.Fold(one.Text) == PlainText.Fold(other.Text) || (one.Family == other.Family && one.Quantity == other.Quantity && one.Family is not ("protection" or "cable" or "service" or "other") && one.Ratings.Length > 1 && RatingKey(one) == RatingKey(other));

    private static string RatingKey(OfferLine line) => string.Join(';', line.Ratings.Where(r => r.Name is not ("warranty_years" or "certificates")).OrderBy(r => r.Name, StringComparer.Ordinal).Select(r => r.Name + r.Text));

    private static QuoteFinding Double(OfferLine line) => new(
        "TK806", Severity.Warning, line.Place, $"stands a second time: {Say.Number((double)(line.Quantity ?? 0))} {line.Unit} of the same", Schedule,
        $"Line {line.Place.Row} ({Say.Short(line.Text)}) stands twice in your offer. Please confirm that it is offered once only.");

    private static QuoteFinding NotAsked(OfferLine line) => new(
        "TK807", Severity.Warning, line.Place, $"nobody asked for this: {Say.Short(line.Text)}", Schedule,
        $"Line {line.Place.Row} ({Say.Short(line.Text)}) is not part of the tender. Please confirm that it can be left out, and the price without it.");

    private static QuoteFinding? Unpriced(OfferLine line)
    {
        if (line.Rate is not null and not 0 || line.Amount is not null and not 0) return null;
        if (line.Included) return new QuoteFinding("TK808", Severity.Note, line.Place, $"no price; '{Say.Short(line.Remark)}' puts it into another item", "an item without a price is deemed included in the others (from memory)", $"Line {line.Place.Row} ({Say.Short(line.Text)}) has no price. Please confirm that it is included in the other prices.");
        return new QuoteFinding(
            "TK808", Severity.Warning, line.Place, "no price; it counts as included in the other items, at 0", "an item listed without a price is deemed included in the others (development-bank standard documents, from memory)",
            $"Line {line.Place.Row} ({Say.Short(line.Text)}) has no price. Please confirm that it is included in the other prices, or state the price.");
    }
}

using TenderKit.Catalog.Families;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Bill;

/// <summary>What the bill has to say about its data.</summary>
internal static class BillNotices
{
    public static Diagnostic NothingToBill() => Diagnostic.Error("TK700", "no site has a design, so there is nothing to bill; see the sites that could not be met");

    public static Diagnostic NoExchange(Part part, string currency) => Diagnostic.Error(
        "TK701", $"{part.Code} is priced in {part.Currency} and the tender states no exchange rate from {part.Currency} to {currency}; add it under tender, exchange");

    public static Diagnostic NoService(ServiceUse use) => Diagnostic.Error(
        "TK702", $"the catalogue has no service rate for {use}, so the bill would leave that work unpriced; add one to the services");

    public static Diagnostic SeveralServices(ServiceUse use, IReadOnlyList<ServiceRate> rates) => Diagnostic.Warning(
        "TK703", $"{rates.Count} service rates for {use} ({string.Join(", ", rates.Select(r => r.Code))}); {rates[0].Code}, the lowest figure, is used; leave one");

    /// <summary>Prices out of date, one message for each day on which prices end.</summary>
    public static IEnumerable<Diagnostic> OfPrices(IEnumerable<Part> used, TenderHead head)
    {
        var bidUntil = head.IssueDate.AddDays(head.ValidityDays);
        foreach (var group in used.Where(p => p.PriceValidUntil < bidUntil).GroupBy(p => p.PriceValidUntil!.Value).OrderBy(g => g.Key))
        {
            string[] codes = [.. group.Select(p => p.Code).Order(StringComparer.Ordinal)];
            yield return group.Key < head.IssueDate ? Expired(codes, group.Key, head.IssueDate) : ExpiresWithin(codes, group.Key, bidUntil);
        }
    }

    private static Diagnostic Expired(string[] codes, DateOnly held, DateOnly issue) => Diagnostic.Warning(
        "TK704", FormattableString.Invariant($"{Prices(codes)} held until {held:yyyy-MM-dd}, before the issue date {issue:yyyy-MM-dd}; ask for new ones: {string.Join(", ", codes)}"));

    private static Diagnostic ExpiresWithin(string[] codes, DateOnly held, DateOnly until) => Diagnostic.Note(
        "TK705", FormattableString.Invariant($"{Prices(codes)} hold until {held:yyyy-MM-dd}, the bid until {until:yyyy-MM-dd}; have them extended: {string.Join(", ", codes)}"));

    private static string Prices(string[] codes) => FormattableString.Invariant($"{codes.Length} price{(codes.Length == 1 ? "" : "s")} of the catalogue");

    public static Diagnostic NoPrice(Part part) => Diagnostic.Warning("TK706", FormattableString.Invariant($"{part.Code} has a price of {part.UnitPrice} {part.Currency}; an item without a price is taken as included in the others"));

    public static Diagnostic UnknownFamily(string family) => Diagnostic.Warning(
        "TK707", $"spares are stated for '{family}', which is no family of the catalogue, and are left out; families: {string.Join(", ", PartWords.SpareFamilies)}");

    public static Diagnostic SlowDelivery(Part part, int deliveryDays) => Diagnostic.Warning(
        "TK708", FormattableString.Invariant($"{part.Code} takes {part.LeadTimeDays} days to come, the tender allows {deliveryDays} days to complete; find a quicker source or ask for more time"));

    public static Diagnostic WrongUnit(ServiceRate rate, string[] units) => Diagnostic.Error(
        "TK709", $"{rate.Code} prices {rate.Use} by '{rate.Unit}', but the bill measures that work in {string.Join(" or ", units)}; give its rate in that unit");

    /// <summary>What is worth saying about one part that the bill uses.</summary>
    public static IEnumerable<Diagnostic> OfPart(Part part, TenderHead head)
    {
        if (part.UnitPrice <= 0) yield return NoPrice(part);
        if (head.DeliveryDays > 0 && part.LeadTimeDays > head.DeliveryDays) yield return SlowDelivery(part, head.DeliveryDays);
    }
}

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>Conditions of an offer against the tender: validity, delivery, currency, incoterm, warranties, certificates, reservations.</summary>
internal static class TermChecks
{
    private static readonly ImmutableArray<string> Families = ["luminaire", "module", "battery", "controller", "pole"];

    private static readonly ImmutableArray<string> BatteryKeys = ["battery lithium", "battery lead"];

    public static IEnumerable<QuoteFinding> Of(Offer offer, Asked asked) =>
        Conditions(offer, asked).Concat(Reservations(offer)).Concat(WarrantiesOf(offer, asked)).Concat(CertificatesOf(offer, asked));

    private static IEnumerable<QuoteFinding> Conditions(Offer offer, Asked asked)
    {
        var nowhere = new Place(offer.File, Row: 0);
        var terms = offer.Terms;
        if (terms.Validity is not { } validity)
            yield return new("TK824", Severity.Warning, nowhere, $"no validity stated; asked: {asked.ValidityDays} days", "tender: validity_days", $"Please confirm that your offer is valid for {asked.ValidityDays} days.");
        else if (validity.Days < asked.ValidityDays)
            yield return new("TK824", Severity.Error, validity.Place, $"valid for {validity.Days} days; asked: {asked.ValidityDays} days", "tender: validity_days", $"Your offer is valid for {validity.Days} days; {asked.ValidityDays} days are asked. Do you extend it?");
        if (terms.Delivery is not { } delivery)
            yield return new("TK825", Severity.Warning, nowhere, $"no delivery time stated; asked: at most {asked.DeliveryDays} days", "tender: delivery_days", $"Please state your delivery time; at most {asked.DeliveryDays} days are asked.");
        else if (delivery.Days > asked.DeliveryDays)
            yield return new("TK825", Severity.Error, delivery.Place, $"delivery in {delivery.Days} days ('{Say.Short(delivery.Words)}'); asked: at most {asked.DeliveryDays} days", "tender: delivery_days", $"Your delivery time is {delivery.Days} days; at most {asked.DeliveryDays} days are asked. Can you keep it?");
        if (terms.Currency is null)
            yield return new("TK826", Severity.Warning, nowhere, "no currency is stated", "tender: currency of the offer", "In which currency are your prices?");
        else if (asked.RateOf(terms.Currency) is null)
            yield return new("TK826", Severity.Warning, nowhere, $"the offer is in {terms.Currency}; the tender holds no exchange rate for it", "tender: exchange", null);
        if (terms.Incoterm is null)
            yield return new("TK826", Severity.Warning, nowhere, "no incoterm is stated, so it is open who bears carriage, insurance and duty", "Incoterms 2020", "Under which incoterm and to which place are your prices?");
        else if (asked.Settings.Incoterm is { } wanted && !string.Equals(wanted, terms.Incoterm, StringComparison.Ordinal))
            yield return new("TK828", Severity.Warning, nowhere, $"prices are {terms.Incoterm}; asked: {wanted}", "tender: quotes.incoterm", $"Your prices are {terms.Incoterm}; {wanted} is asked. What do they become?");
    }

    private static IEnumerable<QuoteFinding> Reservations(Offer offer) => offer.Terms.Reservations.Select(r => new QuoteFinding(
        "TK827", Severity.Warning, r.Place, $"a condition or deviation ('{r.Trigger}'): {r.Words}", "a material deviation, reservation or omission makes an offer not responsive; whether it is material the committee decides",
        $"You write: \"{r.Words}\" Do you withdraw this condition?"));

    private static IEnumerable<QuoteFinding> WarrantiesOf(Offer offer, Asked asked)
    {
        foreach (var key in Families.SelectMany(f => Keys(f, offer)))
        {
            var stated = Stated(offer, key).ToList();
            if (asked.Settings.WarrantyYears.TryGetValue(key, out var least) || asked.Settings.WarrantyYears.TryGetValue(key.Split(' ')[0], out least))
            {
                if (stated.Count == 0 && Offered(offer, key))
                    yield return new("TK833", Severity.Warning, new Place(offer.File, Row: 0), $"no warranty is stated for {key}; asked: {Say.Number(least)} years", "tender: quotes.warranty_years", $"Please state the warranty on {key}; {Say.Number(least)} years are asked.");
                foreach (var (years, place) in stated.Where(s => s.Years < least - 0.01).Take(1))
                    yield return new("TK809", Severity.Error, place, $"warranty on {key} {Say.Number(years)} years; asked: {Say.Number(least)} years", "tender: quotes.warranty_years", $"The warranty on {key} is {Say.Number(years)} years; {Say.Number(least)} years are asked. Do you extend it?");
            }

            if (!key.StartsWith("battery", StringComparison.Ordinal) || !asked.LifeYears.TryGetValue(key.EndsWith("lead", StringComparison.Ordinal) ? "lead" : "lithium", out var life)) continue;
            foreach (var (years, place) in stated.Where(s => s.Years > life * asked.Settings.WarrantyOverLifeRatio).DistinctBy(s => s.Place.Row).Take(1))
                yield return new("TK821", Severity.Warning, place, $"{Say.Number(years)} years are promised on a {key}; the energy balance gives it about {Say.Number(life)} years at this heat and use", "battery life by cycles, calendar and temperature; quotes.warranty_over_life", $"You promise {Say.Number(years)} years on the {key}. Which cells, at which depth of discharge and temperature, and who stands behind it?");
        }
    }

    /// <summary>Batteries of both kinds are looked at apart.</summary>
    private static IEnumerable<string> Keys(string family, Offer offer)
    {
        if (family != "battery") return offer.Items.Any(l => Has(l, family)) ? [family] : [];
        return BatteryKeys.Where(k => Offered(offer, k));
    }

    private static bool Has(OfferLine line, string family) => line.Family == family || line.Family == "kit" || (line.Family == "integrated" && family != "pole");

    private static bool Offered(Offer offer, string key)
    {
        if (!key.StartsWith("battery", StringComparison.Ordinal)) return offer.Items.Any(l => Has(l, key));
        var lithium = key == "battery lithium";
        return offer.Items.Any(l => l.Is("battery", "kit", "integrated") && l.Find("chemistry") is { } c && Chemistry.IsLithium(c.Text) == lithium);
    }

    private static IEnumerable<(double Years, Place Place)> Stated(Offer offer, string key)
    {
        var family = key.Split(' ')[0];
        foreach (var line in offer.Items.Where(l => l.Family == family || (l.Family is "kit" or "integrated" && family == "battery")))
        {
            if (line.Value("warranty_years") is not { } years) continue;
            if (family == "battery" && Chemistry.IsLithium(line.Find("chemistry")?.Text) != (key == "battery lithium")) continue;
            yield return (years, line.Place);
        }

        foreach (var w in offer.Terms.Warranties.Where(w => w.Family == key || w.Family == family || w.Family == "all")) yield return (w.Years, w.Place);
    }

    private static IEnumerable<QuoteFinding> CertificatesOf(Offer offer, Asked asked)
    {
        foreach (var key in Families.SelectMany(f => Keys(f, offer)))
        {
            if (!asked.Settings.Certificates.TryGetValue(key, out var wanted) && !asked.Settings.Certificates.TryGetValue(key.Split(' ')[0], out wanted)) continue;
            var missing = wanted.Where(w => !Certificates.Names(offer.Terms.Certificates, w)).ToList();
            if (missing.Count > 0)
            {
                yield return NotNamed(CertificateRow(offer), key, missing);
                continue;
            }

            foreach (var line in offer.Items.Where(l => l.Family == key.Split(' ')[0] && l.Certificates is not null && !l.Spare && MatchesKind(l, key)))
            {
                var here = Certificates.In(line.Certificates + " " + line.Text).ToList();
                var absent = wanted.Where(w => !Certificates.Names(here, w)).ToList();
                if (absent.Count > 0) yield return NotNamed(line.Place, key, absent);
            }
        }
    }

    private static bool MatchesKind(OfferLine line, string key) =>
        !key.StartsWith("battery ", StringComparison.Ordinal) || Chemistry.IsLithium(line.Find("chemistry")?.Text) == (key == "battery lithium");

    private static QuoteFinding NotNamed(Place place, string key, List<string> missing) => new(
        "TK823", Severity.Warning, place, $"certificates asked for {key} and not named: {string.Join(", ", missing)}", "tender: quotes.certificates", $"Please send the certificates for {key}: {string.Join(", ", missing)}.");

    /// <summary>The row of text that names most standards, or the whole offer.</summary>
    private static Place CertificateRow(Offer offer) =>
        offer.Lines.Where(l => l.Kind == LineKind.Text).Select(l => (l.Place, Count: Certificates.In(l.Text).Count())).Where(l => l.Count > 1).OrderByDescending(l => l.Count).Select(l => l.Place).FirstOrDefault() ?? new Place(offer.File, Row: 0);
}

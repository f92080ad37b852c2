using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Quotes;

/// <summary>What is asked of offers beside the kits, and the limits offers are judged by.</summary>
/// <param name="Works">Whether works are asked for; else supply only.</param>
/// <param name="Incoterm">Incoterm asked for, or null when any will do.</param>
/// <param name="ToleranceFraction">What a rating may fall short by before it counts, fraction.</param>
/// <param name="Certificates">Standards asked for by family; <c>battery lithium</c> and <c>battery lead</c> apart.</param>
/// <param name="WarrantyYears">Least warranty by family, years.</param>
/// <param name="PriceLowRatio">Rate over own estimate below which a price is asked about.</param>
/// <param name="PriceHighRatio">Rate over own estimate above which a price is asked about.</param>
/// <param name="LithiumWhPerL">Greatest believable energy of a lithium pack for its volume, Wh/l.</param>
/// <param name="LeadWhPerL">Greatest believable energy of a lead-acid battery for its volume, Wh/l.</param>
/// <param name="WarrantyOverLifeRatio">Warranty over expected battery life above which it is asked about.</param>
/// <param name="MissingAtHighest">A missing item is added at the highest price of the other responsive offers, else at their average.</param>
/// <param name="PreferenceFraction">Margin of preference for domestic offers, fraction; 0 for none.</param>
/// <param name="LowBelowEstimateFraction">Share below the estimate from which an offer is screened as abnormally low.</param>
/// <param name="LowDeviations">Standard deviations below the mean from which it is.</param>
/// <param name="LowLeastOffers">Offers from which the deviations are looked at.</param>
/// <param name="PriceWeight">Weight of the price in the score, fraction; 1 ranks by price alone.</param>
/// <param name="ExchangeDate">Date of the exchange rates, as stated.</param>
/// <param name="Years">Years costs are compared over.</param>
/// <param name="DiscountRate">Rate later costs are discounted at, fraction a year.</param>
public sealed record QuoteSettings(
    bool Works,
    string? Incoterm,
    double ToleranceFraction,
    ImmutableSortedDictionary<string, ImmutableArray<string>> Certificates,
    ImmutableSortedDictionary<string, double> WarrantyYears,
    double PriceLowRatio,
    double PriceHighRatio,
    double LithiumWhPerL,
    double LeadWhPerL,
    double WarrantyOverLifeRatio,
    bool MissingAtHighest,
    decimal PreferenceFraction,
    decimal LowBelowEstimateFraction,
    double LowDeviations,
    int LowLeastOffers,
    decimal PriceWeight,
    string? ExchangeDate,
    int Years,
    double DiscountRate)
{
    /// <summary>File of the kits the tender asks for, or null: our own design is the measure.</summary>
    public string? AskedFile { get; init; }

    /// <summary>No certificate and no warranty asked for; screens as commonly used (from memory).</summary>
    public static QuoteSettings Usual { get; } = new(
        false, null, 0.02, ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty, ImmutableSortedDictionary<string, double>.Empty, 0.5, 2, 400, 120, 1.5, true, 0, 0.20m, 1, 5, 1, null, 10, 0.05);
}

/// <summary>Reads <c>quotes</c> of the tender file.</summary>
internal static class QuoteSection
{
    public static QuoteSettings Read(YamlSection? section)
    {
        var usual = QuoteSettings.Usual;
        if (section is null) return usual;
        var price = section.Section("price");
        var low = section.Section("abnormally_low");
        var read = usual with
        {
            AskedFile = section.Text("asked"),
            Works = Choice(section, "scope", "supply and works", "supply only", usual.Works),
            Incoterm = section.Text("incoterm")?.ToUpperInvariant(),
            ToleranceFraction = Fraction(section, "tolerance", usual.ToleranceFraction),
            Certificates = CertificatesOf(section.Section("certificates")),
            WarrantyYears = YearsOf(section.Section("warranty_years")),
            PriceLowRatio = price is null ? usual.PriceLowRatio : price.Number("low", QuantityKind.Number, usual.PriceLowRatio),
            PriceHighRatio = price is null ? usual.PriceHighRatio : price.Number("high", QuantityKind.Number, usual.PriceHighRatio),
            LithiumWhPerL = section.Number("plausible_lithium_wh_per_l", QuantityKind.Number, usual.LithiumWhPerL),
            LeadWhPerL = section.Number("plausible_lead_wh_per_l", QuantityKind.Number, usual.LeadWhPerL),
            WarrantyOverLifeRatio = section.Number("warranty_over_life", QuantityKind.Number, usual.WarrantyOverLifeRatio),
            MissingAtHighest = Choice(section, "missing_item", "highest", "average", usual.MissingAtHighest),
            PreferenceFraction = section.Has("preference") ? section.Share("preference") : 0,
            LowBelowEstimateFraction = low?.Has("below_estimate") == true ? low.Share("below_estimate") : usual.LowBelowEstimateFraction,
            LowDeviations = low is null ? usual.LowDeviations : low.Number("deviations", QuantityKind.Number, usual.LowDeviations),
            LowLeastOffers = low is null ? usual.LowLeastOffers : low.Whole("least_offers", 3, 100, usual.LowLeastOffers),
            PriceWeight = section.Has("price_weight") ? section.Share("price_weight") : usual.PriceWeight,
            ExchangeDate = section.Text("exchange_date"),
            Years = section.Whole("years", 1, 30, usual.Years),
            DiscountRate = Fraction(section, "discount_rate", usual.DiscountRate),
        };
        price?.ReportUnknownKeys();
        low?.ReportUnknownKeys();
        section.ReportUnknownKeys();
        return read;
    }

    private static double Fraction(YamlSection section, string key, double fallback) => section.Has(key) ? (double)section.Share(key) : fallback;

    private static bool Choice(YamlSection section, string key, string yes, string no, bool usual)
    {
        if (section.Scalar(key) is not { } scalar) return usual;
        if (scalar.Text == yes) return true;
        if (scalar.Text != no) section.AddError("TK117", $"'{scalar.Path}' is '{scalar.Text}'; use {yes} or {no}", scalar.Line);
        return false;
    }

    /// <summary>Families are written battery_lithium in the file.</summary>
    private static string Family(string key) => key.Replace('_', ' ').ToLower(CultureInfo.InvariantCulture);

    private static ImmutableSortedDictionary<string, ImmutableArray<string>> CertificatesOf(YamlSection? section) =>
        section is null ? QuoteSettings.Usual.Certificates : section.Keys.ToImmutableSortedDictionary(Family, k => section.Scalars(k).Select(s => s.Text).ToImmutableArray(), StringComparer.Ordinal);

    private static ImmutableSortedDictionary<string, double> YearsOf(YamlSection? section) =>
        section is null ? QuoteSettings.Usual.WarrantyYears : section.Keys.ToImmutableSortedDictionary(Family, k => section.Number(k, QuantityKind.Number, 0), StringComparer.Ordinal);
}

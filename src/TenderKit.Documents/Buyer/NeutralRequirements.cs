using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Buyer;

/// <summary>The required side of the checks, as far as it follows from the requirement, the place and the rules and not from the parts of one design.</summary>
internal static class NeutralRequirements
{
    /// <summary>Checks whose required value would be the same whatever is offered.</summary>
    private static readonly ImmutableHashSet<string> _neutral =
    [
        "luminaire.ingress", "luminaire.ambient", "luminaire.dimming", "light.threshold-increment", "battery.hot", "battery.cold_charge", "battery.autonomy", "battery.life",
        "controller.schedule_parts", "controller.ambient", "energy.dark_nights", "pole.zinc", "foundation.overturning", "wiring.array.drop", "wiring.battery.drop", "wiring.lamp.drop",
    ];

    /// <summary>Words where those of the check speak of the way it was worked out.</summary>
    private static readonly ImmutableDictionary<string, string> _words = ImmutableDictionary<string, string>.Empty
        .Add("battery.hot", "highest temperature it may work at")
        .Add("battery.cold_charge", "lowest temperature it may be charged at, or charging stopped by itself below")
        .Add("luminaire.dimming", "lowest level it can be dimmed to, fraction of full")
        .Add("light.threshold-increment", "threshold increment on roads, hardest of the classes")
        .Add("controller.schedule_parts", "parts of the night it can hold, or does the same by other means")
        .Add("energy.dark_nights", "nights a year with an hour of less light than asked, mean of many years")
        .Add("pole.zinc", "life of the protection against corrosion");

    /// <summary>Values that are rules of the calculation, by rule, for which the check needs the bidder's own loads.</summary>
    private static readonly ImmutableArray<(string Rule, string Item, string Property, string Sign, string Unit, double Factor, int Decimals)> _rules =
    [
        ("energy.array_to_load", "Array", "energy of the dullest month over the energy used", "≥", "", 1, 2),
        ("energy.recovery_days", "Array", "days to fill an empty battery while the lamp burns as asked", "≤", "days", 1, 0),
        ("structure.deflection", "Pole", "deflection of the head over its height", "≤", "%", 100, 1),
        ("wiring.earth_ohm", "Earth electrode", "resistance", "≤", "Ω", 1, 0),
    ];

    private static readonly ImmutableArray<string> _order = ["Light", "Energy", "Array", "Battery", "Control", "Luminaire", "Cable", "Pole", "Foundation", "Earth electrode"];

    /// <summary>Item, property, required value; the hardest of all the sites given.</summary>
    public static ImmutableArray<(string Item, string Property, string Required)> Of(TenderDesign design, IReadOnlyList<SiteDesign> sites)
    {
        var checks = sites.SelectMany(s => s.Checks).Where(c => _neutral.Contains(c.Id)).GroupBy(c => c.Id).Select(Hardest);
        var rules = _rules.Select(r => (Row: r, Rule: design.Rules.FirstOrDefault(d => d.Id == r.Rule))).Where(r => r.Rule is not null)
            .Select(r => (r.Row.Item, r.Row.Property, $"{r.Row.Sign} {Layout.Figures.Number(r.Rule!.Value * r.Row.Factor, r.Row.Decimals)} {r.Row.Unit}".TrimEnd()));
        return [.. checks.Select(c => (c.Item == "Controller" ? "Control" : c.Item, _words.GetValueOrDefault(c.Id, c.Property), Schedule.CheckText.Required(c))).Concat(rules).OrderBy(r => Order(r.Item1))];
    }

    private static Check Hardest(IEnumerable<Check> checks) => checks.Aggregate((a, b) => (a.Comparison == Comparison.AtLeast) == (b.Required > a.Required) ? b : a);

    private static int Order(string item) => _order.IndexOf(item);
}

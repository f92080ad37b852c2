using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Catalog.Families;

namespace TenderKit.Catalog.Explain;

/// <summary>A property of a part for people: its name in words, its value, its unit.</summary>
/// <param name="Column">Column of the csv file, such as <c>rated_wp</c>.</param>
/// <param name="Words">Such as rated power.</param>
/// <param name="Value">As written in a csv file; empty when not known.</param>
/// <param name="Unit">Such as W; empty for none.</param>
public sealed partial record PropertyWords(string Column, string Words, string Value, string Unit)
{
    /// <summary>Units by the ending of the property's name, longest first.</summary>
    private static readonly (string Ending, string Unit)[] Units =
    [
        .. new (string, string)[]
        {
            ("MvPerK", "mV/K for a cell of 2 V"), ("WpPerV", "Wp/V"), ("PerK", "1/K"), ("Mm2", "mm2"), ("M2", "m2"), ("M3", "m3"), ("MPa", "MPa"), ("Degrees", "degrees"),
            ("Years", "years"), ("Hours", "h"), ("Days", "days"), ("Mm", "mm"), ("Um", "um"), ("Kg", "kg"), ("Nm", "Nm"), ("Wp", "Wp"), ("Wh", "Wh"), ("Ah", "Ah"),
            ("Lm", "lm"), ("M", "m"), ("L", "l"), ("H", "h"), ("W", "W"), ("V", "V"), ("A", "A"), ("C", "degC"), ("K", "K"),
        }.OrderByDescending(u => u.Item1.Length),
    ];

    /// <summary>Names that say too little, or mislead, without their unit.</summary>
    private static readonly FrozenDictionary<string, (string Words, string Unit)> Own = new Dictionary<string, (string, string)>
    {
        [nameof(Module.RatedWp)] = ("rated power", "Wp"),
        [nameof(Module.OpenCircuitV)] = ("open-circuit voltage", "V"),
        [nameof(Module.ShortCircuitA)] = ("short-circuit current", "A"),
        [nameof(Module.MaximumPowerV)] = ("voltage at maximum power", "V"),
        [nameof(Module.MaximumPowerA)] = ("current at maximum power", "A"),
        [nameof(Battery.RatedAh)] = ("rated capacity", "Ah"),
        [nameof(Battery.RatedHours)] = ("discharge time of the rating", "h"),
        [nameof(Luminaire.FluxLm)] = ("luminous flux", "lm"),
        [nameof(Luminaire.LifeL80H)] = ("life to 80 % of the flux", "h"),
        [nameof(Battery.CalendarYearsAt25C)] = ("calendar life at 25 degC", "years"),
        [nameof(ProtectionDevice.RatedA)] = ("rated current", "A"),
        [nameof(ProtectionDevice.RatedV)] = ("rated voltage", "V"),
        [nameof(Module.NoctC)] = ("nominal operating cell temperature", "degC"),
        [nameof(Pole.ZincUm)] = ("zinc coating", "um"),
        [nameof(Pole.YieldMPa)] = ("yield strength", "MPa"),
        [nameof(Pole.WallMm)] = ("wall thickness", "mm"),
        [nameof(FoundationSet.AnchorBoltMm)] = ("anchor bolt diameter", "mm"),
        [nameof(FoundationSet.ReinforcementKg)] = ("reinforcement in one block", "kg"),
        [nameof(Controller.OwnUseW)] = ("own use", "W"),
        [nameof(Luminaire.IpCode)] = ("ingress protection, IP", ""),
        [nameof(Luminaire.IkCode)] = ("impact protection, IK", ""),
        [nameof(Part.VolumeM3)] = ("shipping volume", "m3"),
        [nameof(Part.WeightKg)] = ("weight", "kg"),
    }.ToFrozenDictionary();

    /// <summary>Every property of a part that has a value, in the order of its family.</summary>
    public static IEnumerable<PropertyWords> Of(Part part) =>
        from column in PartFamily.Of(part).Columns
        let text = column.Text(column.Of(part))
        where text.Length > 0
        select Of(column, text);

    private static PropertyWords Of(PartColumn column, string text)
    {
        if (Own.TryGetValue(column.PropertyName, out var own)) return new(column.Name, own.Words, text, own.Unit);
        var (ending, unit) = Array.Find(Units, u => column.IsNumeric && column.PropertyName.EndsWith(u.Ending, StringComparison.Ordinal));
        var bare = column.PropertyName[..^(ending?.Length ?? 0)];
        return new(column.Name, Capital().Replace(bare, " $1").TrimStart().ToLower(CultureInfo.InvariantCulture), text, unit ?? "");
    }

    [GeneratedRegex("([A-Z][a-z]*)")]
    private static partial Regex Capital();
}

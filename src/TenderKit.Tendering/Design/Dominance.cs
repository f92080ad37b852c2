using System.Collections.Immutable;
using System.Reflection;
using TenderKit.Catalog.Families;

namespace TenderKit.Tendering.Design;

/// <summary>
/// Leaves out parts that another part beats: no dearer, no worse in any property a check or the choice looks at, and equal in all that cannot be
/// called better or worse. Whatever could be built with the part left out can be built with the other, at no more cost, so the least cost stays
/// what it was. A property not named here must be equal: a column added later is safe until someone says which way it is better.
/// </summary>
public static class Dominance
{
    /// <summary>Properties no check of the design looks at; what the employer's clauses ask of them is settled before.</summary>
    private static readonly ImmutableHashSet<string> _ignored =
    [
        nameof(Part.Code), nameof(Part.Description), nameof(Part.UnitPrice), nameof(Part.Currency), nameof(Part.PriceValidUntil), nameof(Part.LeadTimeDays),
        nameof(Part.WarrantyYears), nameof(Part.CustomsCode), nameof(Part.Certificates), nameof(Luminaire.ColourTemperatureK), nameof(Luminaire.IkCode),
        "DataSheetFile", "DataSheetPage",
    ];

    /// <summary>By family: +1 where more is better, -1 where less is.</summary>
    private static readonly Dictionary<Type, Dictionary<string, int>> _better = new()
    {
        [typeof(Luminaire)] = Of(-1, nameof(Luminaire.MinVoltageV), nameof(Luminaire.WindAreaM2), nameof(Part.VolumeM3)).And(1, nameof(Luminaire.MaxVoltageV), nameof(Luminaire.MaxAmbientC)),
        [typeof(Catalog.Families.Module)] = Of(-1, nameof(Part.VolumeM3)),
        [typeof(Battery)] = Of(-1, nameof(Part.VolumeM3)).And(1, nameof(Battery.CyclesAtDepth), nameof(Battery.CalendarYearsAt25C), nameof(Battery.MaxOperatingC), nameof(Battery.MaxChargeA)),
        [typeof(Controller)] = Of(-1, nameof(Part.VolumeM3)).And(
            1, nameof(Controller.RatedLoadA), nameof(Controller.MaxArrayV), nameof(Controller.MaxArrayShortCircuitA), nameof(Controller.ScheduleParts),
            nameof(Controller.Dimming), nameof(Controller.AdjustableDisconnect), nameof(Controller.MaxAmbientC)),
        [typeof(Pole)] = Of(-1, nameof(Part.VolumeM3)).And(1, nameof(Pole.YieldMPa), nameof(Pole.ZincUm)),
        [typeof(FoundationSet)] = Of(-1, nameof(Part.VolumeM3), nameof(Part.WeightKg)),
        [typeof(Cable)] = Of(-1, nameof(Part.VolumeM3), nameof(Part.WeightKg)).And(1, nameof(Cable.Outdoor)),
        // more volts help an arrester or a holder, but ask for a better holder round a fuse: equal
        [typeof(ProtectionDevice)] = Of(-1, nameof(Part.VolumeM3), nameof(Part.WeightKg)),
        [typeof(Enclosure)] = Of(-1, nameof(Part.VolumeM3), nameof(Enclosure.WindAreaM2)).And(1, nameof(Enclosure.UsableVolumeL), nameof(Enclosure.MaxContentKg), nameof(Enclosure.IpCode)),
        [typeof(Bracket)] = Of(-1, nameof(Part.VolumeM3), nameof(Bracket.MinTiltDegrees)).And(1, nameof(Bracket.MaxModuleAreaM2), nameof(Bracket.MaxTiltDegrees)),
        [typeof(IntegratedUnit)] = Of(-1, nameof(Part.VolumeM3)).And(
            1, nameof(IntegratedUnit.CyclesAtDepth), nameof(IntegratedUnit.CalendarYearsAt25C), nameof(IntegratedUnit.MaxOperatingC), nameof(IntegratedUnit.ScheduleParts)),
    };

    /// <summary>The catalogue without the parts that another beats; services stay.</summary>
    public static PartsCatalog Undominated(PartsCatalog all, Costs costs) => new(
        Of(all.Luminaires, costs), Of(all.Modules, costs), Of(all.Batteries, costs), Of(all.Controllers, costs), Of(all.Poles, costs), Of(all.Foundations, costs),
        Of(all.Cables, costs), Of(all.Protection, costs), Of(all.Enclosures, costs), Of(all.Brackets, costs), all.Services)
    {
        IntegratedUnits = Of(all.IntegratedUnits, costs),
    };

    /// <summary>The parts of one family that no other beats, in their order; of two that are alike the first stays.</summary>
    public static ImmutableArray<T> Of<T>(ImmutableArray<T> parts, Costs costs)
        where T : Part
    {
        var better = _better[typeof(T)];
        var properties = typeof(T).GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.CanWrite && !_ignored.Contains(p.Name)).OrderBy(p => p.Name, StringComparer.Ordinal).ToArray();
        var equal = properties.Where(p => !better.ContainsKey(p.Name)).ToArray();
        var ranked = properties.Where(p => better.ContainsKey(p.Name)).Select(p => (Property: p, Sign: better[p.Name])).ToArray();
        var stay = new HashSet<string>(StringComparer.Ordinal);
        foreach (var alike in parts.GroupBy(p => string.Join('|', equal.Select(e => Text(e.GetValue(p)))), StringComparer.Ordinal))
        {
            var kept = new List<double[]>();
            foreach (var part in alike.OrderBy(costs.Of).ThenBy(p => p.Code, StringComparer.Ordinal))
            {
                var worth = ranked.Select(r => r.Sign * Number(r.Property.GetValue(part))).ToArray();
                if (kept.Exists(k => k.Zip(worth).All(p => p.First >= p.Second))) continue;
                kept.Add(worth);
                stay.Add(part.Code);
            }
        }

        return [.. parts.Where(p => stay.Contains(p.Code))];
    }

    private static string Text(object? value) => value is System.Collections.IEnumerable many and not string
        ? string.Join(';', many.Cast<object>().Select(Text).Order(StringComparer.Ordinal))
        : Convert.ToString(value, System.Globalization.CultureInfo.InvariantCulture) ?? "";

    private static double Number(object? value) => Convert.ToDouble(value ?? double.NaN, System.Globalization.CultureInfo.InvariantCulture);

    private static Dictionary<string, int> Of(int sign, params string[] names) => names.ToDictionary(n => n, _ => sign, StringComparer.Ordinal);

    private static Dictionary<string, int> And(this Dictionary<string, int> first, int sign, params string[] names)
    {
        foreach (var name in names) first[name] = sign;
        return first;
    }
}

using System.Collections.Immutable;
using TenderKit.Catalog.Families;

namespace TenderKit.Catalog.Explain;

/// <summary>
/// Which parts go together by size and rating alone. Whether they serve a site is another question, answered by its design: what fits
/// here may still be refused there. A size that is not known refuses nothing.
/// </summary>
public static class PartFit
{
    /// <summary>A battery's class of voltage: 12.8 V and 12 V are 12 V.</summary>
    private const double CellClassV = 12;

    /// <summary>Codes of the parts of a catalogue that fit a part, by family; families it has nothing to do with are left out.</summary>
    public static ImmutableSortedDictionary<string, ImmutableArray<string>> Of(Part part, PartsCatalog catalog) =>
        (from other in catalog.All
         where other.GetType() != part.GetType() && (Fits(part, other) ?? Fits(other, part)) == true
         group other.Code by PartFamily.Of(other).Name)
        .ToImmutableSortedDictionary(g => g.Key, g => g.Order(StringComparer.Ordinal).ToImmutableArray(), StringComparer.Ordinal);

    private static bool? Fits(Part one, Part other) => (one, other) switch
    {
        (Luminaire l, Pole p) => Within(p.TopDiameterMm, l.SpigotMinMm, l.SpigotMaxMm),
        (IntegratedUnit u, Pole p) => Within(p.TopDiameterMm, u.SpigotMinMm, u.SpigotMaxMm),
        (Module m, Bracket k) => m.LengthM * m.WidthM <= k.MaxModuleAreaM2,
        (Module m, Controller c) => m.OpenCircuitV <= c.MaxArrayV && m.ShortCircuitA <= c.MaxArrayShortCircuitA,
        (Battery b, Controller c) => Charges(b, c),
        (Battery b, Enclosure e) => Holds(b, e),
        (Bracket k, Pole p) => Within(p.TopDiameterMm, k.PoleMinMm, k.PoleMaxMm),
        (Enclosure e, Pole p) => Within(p.BaseDiameterMm, e.PoleMinMm, e.PoleMaxMm),
        (FoundationSet f, Pole p) => p.DirectBuriedLengthM == 0 && !(f.BoltSpacingMm + (2 * f.AnchorBoltMm) > p.BasePlateMm),
        (Battery b, Luminaire l) => b.NominalVoltageV >= l.MinVoltageV && b.NominalVoltageV <= l.MaxVoltageV,
        (Fixing { Kind: FixingKind.Clamp or FixingKind.Strap } x, Pole p) => Within(p.TopDiameterMm, x.LeastMm, x.GreatestMm),
        (Fixing { Kind: FixingKind.Gland } x, Cable w) => w.OuterMm is { } outer && Within(outer, x.LeastMm, x.GreatestMm),
        _ => null,
    };

    private static bool Within(double value, double? least, double? greatest) => !(value < least) && !(value > greatest);

    private static bool Charges(Battery b, Controller c) =>
        c.Chemistries.Contains(b.Chemistry)
        && c.SystemVoltagesV.Contains(Math.Round(b.NominalVoltageV / CellClassV) * CellClassV)
        && (b.AbsorptionV is not { } asked || Within(asked / Math.Round(b.NominalVoltageV / CellClassV), c.LeastAbsorptionV, c.GreatestAbsorptionV));

    private static bool Holds(Battery b, Enclosure e) =>
        b.VolumeM3 * 1000 <= e.UsableVolumeL && b.WeightKg <= e.MaxContentKg && !(b.NeedsVenting && e.Vented == false) && GoesIn(b, e);

    /// <summary>Upright, turned about the vertical as one likes.</summary>
    private static bool GoesIn(Battery b, Enclosure e) =>
        !(b.HeightMm > e.InnerHeightMm)
        && (!(b.WidthMm > e.InnerWidthMm || b.DepthMm > e.InnerDepthMm) || !(b.WidthMm > e.InnerDepthMm || b.DepthMm > e.InnerWidthMm));
}

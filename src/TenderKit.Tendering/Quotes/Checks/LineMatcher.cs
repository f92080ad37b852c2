using System.Collections.Immutable;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>What a line answers.</summary>
/// <param name="Asked">Quantity asked of it, or null where none can be told.</param>
/// <param name="IsLeft">Whether every kit has its part of this family from other lines already.</param>
internal sealed record LineMatch(OfferLine Line, string Family, ImmutableArray<AskedKit> Kits, decimal? Asked, bool IsLeft);

/// <summary>
/// Gives each line of a family the kits it answers: the assignment with the least sum of distances in ratings and quantities. One line may
/// answer several kits, as one size of module serves two kits; a kit is answered once.
/// </summary>
internal static class LineMatcher
{
    private const double LeftOver = 2.5;
    private const double MostDistance = 2.2;
    private const int MostKits = 8;

    /// <summary>Families whose every kit must have a line of its own.</summary>
    public static readonly ImmutableArray<string> Matched = ["unit", "luminaire", "module", "battery", "controller", "pole", "bracket", "enclosure", "foundation", "cable set", "protection set", "surge", "earth"];

    /// <summary>Families an integrated unit brings along.</summary>
    public static readonly ImmutableArray<string> InsideUnit = ["luminaire", "module", "battery", "controller", "bracket", "enclosure", "cable set", "protection set", "surge"];

    public static ImmutableArray<LineMatch> Match(ImmutableArray<OfferLine> items, Asked asked, IReadOnlyCollection<string> lots)
    {
        var byFamily = items.Where(l => !l.Spare).GroupBy(MatchFamily).Where(g => Matched.Contains(g.Key));
        var groups = byFamily.ToDictionary(g => g.Key, g => g.ToImmutableArray(), StringComparer.Ordinal);
        // units and single lamps share the kits between them
        var lamps = groups.GetValueOrDefault("luminaire", []);
        var units = groups.TryGetValue("unit", out var whole) ? InFamily("unit", [.. whole, .. lamps], asked, lots).Where(m => !lamps.Contains(m.Line)).ToList() : [];
        var result = units.ToImmutableArray().ToBuilder();
        foreach (var (family, lines) in groups.Where(g => g.Key != "unit").OrderBy(g => Matched.IndexOf(g.Key)))
        {
            var bare = asked with { Kits = [.. asked.Kits.Where(k => !units.Exists(u => u.Kits.Contains(k) && (u.Line.Family == "kit" || InsideUnit.Contains(family))))] };
            var brought = bare.Kits.Length < asked.Kits.Length;
            result.AddRange(InFamily(family, lines, bare, lots).Select(m => brought && m.IsLeft && (family is "surge" or "earth" || bare.Kits.IsEmpty) ? m with { IsLeft = false } : m));
        }

        return result.ToImmutable();
    }

    /// <summary>Family a line is matched in; empty when it is not matched.</summary>
    public static string MatchFamily(OfferLine line)
    {
        if (line.Is("kit", "integrated")) return "unit";
        var folded = PlainText.Fold(line.Text);
        if (line.Family == "cable") return line.Find("area_2_mm2") is not null || !IsMetre(line.Unit) && line.Rate is >= 3 && folded.Contains("set", StringComparison.Ordinal) | folded.Contains("je", StringComparison.Ordinal) | folded.Contains("jo", StringComparison.Ordinal) | folded.Contains("kit", StringComparison.Ordinal) ? "cable set" : "";
        if (line.Family != "protection") return line.Family;
        var (fuse, surge) = (RatingReader.FuseWord().IsMatch(folded), RatingReader.SurgeWord().IsMatch(folded));
        if (fuse) return surge ? "protection set" : "";
        return surge ? "surge" : "earth";
    }

    private static bool IsMetre(string unit) => PlainText.Fold(unit).Trim('.', ' ') is "m" or "ml" or "metre" or "metro" or "meter" or "mts";

    private static IEnumerable<LineMatch> InFamily(string family, ImmutableArray<OfferLine> lines, Asked asked, IReadOnlyCollection<string> lots)
    {
        var sited = lines.Where(l => SiteKit(l, asked) is not null).ToList();
        foreach (var line in sited)
        {
            var kit = SiteKit(line, asked)!;
            var again = sited.TakeWhile(s => !ReferenceEquals(s, line)).Any(s => s.Site == line.Site);
            yield return new(line, family, [kit], kit.PolesBySite[line.Site], again);
        }

        var rest = lines.Except(sited).ToImmutableArray();
        if (rest.Select(l => l.Lot).Where(lots.Contains).Distinct().Count() > 1 || (rest.Length > 0 && rest.All(l => lots.Contains(l.Lot))))
        {
            foreach (var group in rest.GroupBy(l => lots.Contains(l.Lot) ? l.Lot : ""))
            {
                foreach (var match in Assign(family, [.. group], KitsOf(asked, sited), k => group.Key.Length == 0 ? lots.Sum(k.PolesOf) : k.PolesOf(group.Key))) yield return match;
            }
        }
        else
        {
            foreach (var match in Assign(family, rest, KitsOf(asked, sited), k => lots.Sum(k.PolesOf))) yield return match;
        }
    }

    /// <summary>Kits not yet answered site by site.</summary>
    private static ImmutableArray<AskedKit> KitsOf(Asked asked, List<OfferLine> sited) => sited.Count == 0 ? asked.Kits : [.. asked.Kits.Where(k => !sited.Exists(l => k.PolesBySite.ContainsKey(l.Site)))];

    private static AskedKit? SiteKit(OfferLine line, Asked asked) => line.Site.Length == 0 ? null : asked.Kits.FirstOrDefault(k => k.PolesBySite.ContainsKey(line.Site));

    private static IEnumerable<LineMatch> Assign(string family, ImmutableArray<OfferLine> lines, ImmutableArray<AskedKit> all, Func<AskedKit, int> demand)
    {
        var kits = all.Where(k => demand(k) > 0).Take(MostKits).ToImmutableArray();
        var full = 1 << kits.Length;
        var best = Enumerable.Repeat(double.PositiveInfinity, full).ToArray();
        best[0] = 0;
        var choices = new List<int[]>();
        foreach (var line in lines)
        {
            var next = Enumerable.Repeat(double.PositiveInfinity, full).ToArray();
            var choice = new int[full];
            var costs = Enumerable.Range(0, full).Select(set => Cost(family, line, choices.Count, kits, set, demand)).ToArray();
            for (var mask = 0; mask < full; mask++)
            {
                for (var set = mask; ; set = (set - 1) & mask)
                {
                    var cost = best[mask ^ set] + costs[set];
                    if (cost < next[mask] - 1e-9) (next[mask], choice[mask]) = (cost, set);
                    if (set == 0) break;
                }
            }

            (best, _) = (next, 0);
            choices.Add(choice);
        }

        var end = Enumerable.Range(0, full).MinBy(mask => best[mask] + (LeftOver * System.Numerics.BitOperations.PopCount((uint)(full - 1 ^ mask))));
        var sets = new int[lines.Length];
        for (var i = lines.Length - 1; i >= 0; i--)
        {
            sets[i] = choices[i][end];
            end ^= sets[i];
        }

        for (var i = 0; i < lines.Length; i++)
        {
            var own = kits.Where((_, k) => (sets[i] & (1 << k)) != 0).ToImmutableArray();
            yield return new(lines[i], family, own, own.IsEmpty ? null : own.Sum(demand), own.IsEmpty);
        }
    }

    private static double Cost(string family, OfferLine line, int index, ImmutableArray<AskedKit> kits, int set, Func<AskedKit, int> demand)
    {
        // of two alike the first is kept
        if (set == 0) return LeftOver - 0.1 - (0.001 * index);
        var own = kits.Where((_, k) => (set & (1 << k)) != 0).ToList();
        var distance = own.Max(k => Math.Min(MostDistance, Distance(family, line, k)));
        var wanted = own.Sum(demand);
        var quantity = line.Quantity is { } q and > 0 ? (double)q : wanted;
        var off = Math.Abs(Math.Log(quantity / wanted));
        if (off < 1e-9) return distance;
        // a quantity that fits some of these kits exactly leaves the others out
        for (var sub = (set - 1) & set; sub > 0; sub = (sub - 1) & set)
        {
            if (kits.Where((_, k) => (sub & (1 << k)) != 0).Sum(demand) == quantity) return distance + LeftOver + 0.5;
        }

        return distance + Math.Min(2.2, 0.6 + (2 * off));
    }

    /// <summary>How far a line's ratings are from a kit's: sums of logarithms, 0 for the same.</summary>
    public static double Distance(string family, OfferLine line, AskedKit kit)
    {
        double Off(string rating, double asked) => line.Value(rating) is { } v and > 0 && asked > 0 ? Math.Abs(Math.Log(v / asked)) : 0.2;
        double Volts() => kit.BankV == 0 ? 0 : line.Value("nominal_voltage_v") is { } v ? (VoltClass(v) == kit.BankV ? 0 : 1) : 0.1;
        double BatteryOff()
        {
            var wh = line.Value("rated_wh") ?? (line.Value("rated_ah") is { } ah ? ah * (line.Value("nominal_voltage_v") ?? kit.BatteryWh / kit.BatteryAh) : null);
            return Volts() + (wh is { } e and > 0 ? Math.Abs(Math.Log(e / kit.BatteryWh)) : 0.3);
        }

        var named = line.Text.Contains(kit.Id, StringComparison.OrdinalIgnoreCase) && System.Text.RegularExpressions.Regex.IsMatch(line.Text, $@"\b{System.Text.RegularExpressions.Regex.Escape(kit.Id)}\b") ? -0.8 : 0;
        return family switch
        {
            "luminaire" => (2 * Off("flux_lm", kit.FluxLm)) + Off("input_power_w", kit.InputPowerW),
            "module" => 2 * Off("rated_wp", kit.ModuleWp),
            "battery" => 2 * BatteryOff(),
            "controller" => (0.5 * Off("rated_charge_a", kit.ChargeA)) + (Serves(line, kit.BankV) ? 0 : 1),
            "pole" => 4 * Off("height_m", kit.HeightM),
            "unit" => named + Off("flux_lm", kit.FluxLm) + Off("input_power_w", kit.InputPowerW) + (0.5 * Off("rated_wp", kit.ModuleWp)) + (0.5 * BatteryOff()),
            _ => 0,
        };
    }

    public static double VoltClass(double volts) => volts < 18 ? 12 : volts < 36 ? 24 : 48;

    private static bool Serves(OfferLine line, double volts) => volts == 0 || line.Find("system_voltages_v") is not { } stated || stated.Text.Split('/').Select(t => double.TryParse(t, System.Globalization.CultureInfo.InvariantCulture, out var v) ? VoltClass(v) : 0).Contains(volts);
}

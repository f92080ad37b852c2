using System.Collections.Frozen;
using System.Collections.Immutable;

namespace TenderKit.Tendering.Trace;

/// <summary>Every formula a figure can name: its text and its source.</summary>
public static class TraceFormulas
{
    private const string Definition = "definition";
    private const string Ohm = "Ohm's law";
    private const string Statics = "statics of a rigid body";
    private const string BalanceYears = "mean over the years of the hourly energy balance";
    private const string Hand = "structure of IEEE 1013, IEEE 1562 and SAND87-7023 (from memory)";

    /// <summary>All of them, in the order of the documents.</summary>
    public static ImmutableArray<TraceFormula> All { get; } =
    [
        new("spacing", "S = L / max(1, n / k)", "poles spread evenly, the first half a bay from the end"),
        new("maintenance", "MF = 0.80 ^ (t / T) × s × D", "CIE 154:2003 for the product and the dirt D; decay of LED light as in IES TM-21 (from memory)"),
        new("point", "E = MF × k × sum(I × cos(e) ^ 3) / H ^ 2", "EN 13201-3:2015, 7.1 (from memory of the clause): luminaires within 5 mounting heights of the point of a road, all of a yard"),
        new("least", "Emin = min(E)", "EN 13201-3:2015 (from memory of the clause)"),
        new("mean", "Eav = sum(E) / N", "EN 13201-3:2015 (from memory of the clause)"),
        new("lamp_input", "P = Pl × k / (1 − d)", "energy in is energy out and what the lamp circuit loses at its limit"),
        new("night", "W = P × t + Po × 24", Definition),
        new("plane_month", "ratio of the month on a tilted plane to the horizontal, times the horizontal; behind a horizon beam and sky are cut", "S. A. Klein and J. C. Theilacker, Journal of Solar Energy Engineering 103 (1981), scaled to a whole day", IsArithmetic: false),
        new("plane_taken", "HT = H × f × (1 − s)", "caution for the grade of the climate, common practice"),
        new("array_rated", "A = n × Wp", Definition),
        new("array_ratio", "A = r × W / (HT × f × nc × nd)", Hand),
        new("array_recovery", "A = (W + N × Wn / T) / (HT × f × nc × nd)", Hand),
        new("array_yield", "Y = A × HT × f × nc × nd", Hand),
        new("battery_temperature", "capacity at the temperature over that at 25 °C: table, straight between its rows", "lead-acid: 1 / K of IEEE 485 table 1 (25 to 35 °F from memory); lithium iron phosphate: typical curve at low rate (from memory)", IsArithmetic: false),
        new("battery_rate", "R = min(g, (N × t / H) ^ (1 − 1 / p))", "Peukert, solved for the capacity delivered in the time"),
        new("battery_usable", "U = W × a × T × R × D × nd", "method of IEEE 1013 (from memory)"),
        new("battery_hand", "W = N × Wn / (D × a × T × nd)", Hand),
        new("autonomy", "N = U / W", "IEEE 1013 (from memory)"),
        new("battery_life", "Y = min(C × 2 ^ (−max(0, T − 25) / 10), n × D / c)", "calendar life halved by 10 K (common practice, no source), cycle life by energy"),
        new("dark_nights", "n = sum(y) / Y", BalanceYears),
        new("dark_bound", "the greater of mean + t(0.90, Y − 1) × deviation / √Y and r × chi²(0.90, 2 × sum(y) / r + 2) / (2 × Y)", "Student's t on the spread between years; exact Poisson limit on runs of dark nights (Garwood 1936, from memory)", IsArithmetic: false),
        new("charge_pulse", "I = f × Isc × n", "short-circuit current with the factor of a design rule; common practice"),
        new("charge_tracking", "I = A × e / (V × u)", "power in is power out at the lowest battery voltage"),
        new("lamp_current", "I = P / (1 − d) / (V × u)", Ohm),
        new("array_current", "I = Im × n", "currents of strings side by side add up"),
        new("battery_current", "I = max(Il, Ic)", "the greater of what the lamp draws and what the controller gives"),
        new("drop", "d = (2 × L × I × R × (234.5 + t) / 254.5 / 1000 + 2 × n × I × Rc / 1000) / V × 100", "Ohm's law; resistance at 20 °C of IEC 60228:2004 tables 2 and 3, its rise of annex B (from memory)"),
        new("fuse", "If = f × I", "common practice: a fuse carries its current with a margin; ratings of IEC 60269-1 (from memory)"),
        new("wind_pressure", "q = ce(z) × 0.5 × 1.25 × v ^ 2, ce = (1 + 7 / ln(z / z0)) × (0.19 × (z0 / 0.05) ^ 0.07 × ln(z / z0)) ^ 2, z0 and the least z by terrain", "EN 1991-1-4 4.3 to 4.5, table 4.1", IsArithmetic: false),
        new("wind_pressure_asce", "q = 0.613 × Kz × 0.95 × v ^ 2, Kz by exposure and height", "ASCE 7-16 26.10 (from memory)", IsArithmetic: false),
        new("module_area", "A = n × l × w × max(sin(a), p)", "area seen from the side, not less than a share of a design rule"),
        new("wind_force", "F = b × x × q × c × A", "EN 1991-1-4 5.3: structural factor, level, pressure, coefficient, area"),
        new("wind_shaft", "sum over 40 pieces of the shaft of b × x × q(z) × c × d × length, c of a galvanised cylinder at its Reynolds number", "EN 1991-1-4 5.3 and 7.9", IsArithmetic: false),
        new("base_shear", "V = sum(F)", Statics),
        new("base_moment", "M = sum(F × h)", Statics),
        new("base_stress", "s = M × 1000 / (pi / 32 × (D ^ 4 − (D − 2 × t) ^ 4) / D)", "beam theory, section of a round tube"),
        new("weight", "N = sum(m) × 9.81 + L × B × h × g × 1000", "weight of what stands on the ground; 9.81 kN/m³ less for a block under water"),
        new("overturning", "s = N × B / 2 / (M + V × h)", "statics of a rigid block, soil at its sides left out"),
        new("embedment", "d = a / 2 × (1 + sqrt(1 + 4.36 × e / a)) where a = 2.34 × V / (1000 × S × min(D, 3.6576) / 3 × b)", "IBC 1807.3.2.1, solved for d = D"),
        new("depth_needed", "d = max(D, p)", "the greater of IBC 1807.3.2.1 and the planting depth of EN 40-2 (from memory)"),
        new("block", "C = L × B × h", Definition),
    ];

    private static readonly FrozenDictionary<string, TraceFormula> _byId = All.ToFrozenDictionary(f => f.Id, StringComparer.Ordinal);

    /// <summary>The formula of an id.</summary>
    /// <exception cref="KeyNotFoundException">No formula of that id: a bug.</exception>
    public static TraceFormula Of(string id) => _byId[id];
}

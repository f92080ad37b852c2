using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Sizing.Wiring;
using TenderKit.Tendering.Bill;

namespace TenderKit.Cli.SelfCheck;

/// <summary>A calculation whose answer is known from outside.</summary>
/// <param name="Tolerance">Half a unit of the last digit printed, unless the source says otherwise; in the unit of the value.</param>
internal sealed record Sample(string Slice, string What, string Unit, double Expected, double Tolerance, string Source, Func<double> Compute);

/// <summary>Sample calculations of every slice of the engineering, each with its published or recomputed answer.</summary>
internal static class Samples
{
    private const string Reinstall = "The arithmetic of this installation is not that which was tested: install the program again, and use no bid it made until this passes.";
    private const double PoundN = 4.4482216;
    private const double FootM = 0.3048;
    private const double PsfPerFtKPaPerM = 0.04788026 / 0.3048;
    private const double MjPerKWh = 3.6;

    public static ImmutableArray<Sample> All { get; } =
    [
        new("light", "point source of 10,000 lm, 3 m up, 2 m aside", "lx", 50.93, 0.005, "CIE 171:2006 style case, recomputed", () => AtPoint(Even(10_000), 3, 2)),
        new("light", "road of 7 m, 5,000 lm every 25 m at 8 m, average", "lx", 3.195, 0.032, "EN 13201-3 grid, recomputed independently, 1 %", () => OnRoad().AverageLx),
        new("light", "the same, minimum", "lx", 1.656, 0.033, "EN 13201-3 grid, recomputed independently, 2 %", () => OnRoad().MinimumLx),
        new("energy", "sun above the air, 20 S, 3 September", "MJ/m2 a day", 32.2, 0.05, "FAO Irrigation and Drainage Paper 56 (1998), example 8, page 80, read", SunAboveTheAir),
        new("energy", "battery of a small kit, 11 Wh a night, 4 nights, half used", "Wh", 88, 0.01, "worked example, read", () => HandMethod.Size(Kit(11) with { AutonomyNights = 4, UsableDepthFraction = 0.5 }).BatteryRatedWh),
        new("energy", "array for 1,920 Wh at a ratio of 1.3 and 5 h of sun", "Wp", 499.2, 0.1, "worked example, read", () => HandMethod.Size(Kit(240) with { MonthlyDemandWh = Year(1920), ArrayToLoadRatio = 1.3 }).ArrayRatioWp),
        new("energy", "size factor of a lead-acid battery at 50 degF", "", 1.190, 0.0005, "IEEE 485, table 1, read", () => BatteryCapacity.CellSizeFactor(10)),
        new("wiring", "resistance of stranded copper, 4 mm2", "Ohm/km", 4.61, 0.0005, "IEC 60228:2004, table 2, read", () => Conductor.ResistanceOhmPerKm(ConductorClass.Stranded2, 4)),
        new("wiring", "cable in conduit on a wall, PVC, 4 mm2", "A", 30, 0.5, "SANS 10142-1:2019, table 6.3(a), page 99, read", () => CableCapacity.AtReferenceA(CableRun.EnclosedB2, CableInsulation.Pvc70, 4)),
        new("wiring", "current of a circuit for a module of 8.33 A", "A", 13.0156, 0.001, "NFPA 70, 690.8, worked example, read", () => Protection.Nfpa70CircuitA(8.33)),
        new("structure", "peak pressure, 22 m/s, terrain III, 7.02 m", "N/m2", 449, 0.5, "EN 1991-1-4, published calculation, read", () => Wind.PeakPressureNPerM2(22, Terrain.III, 7.02)),
        new("structure", "depth of a pole, 510 lb at 4 ft, 1 ft wide", "ft", 5.02, 0.005, "Christy, Engineering with the Spreadsheet (ASCE 2006), read", () => Foundation.EmbeddedDepthM(510 * PoundN, 4 * FootM, FootM, 266 * PsfPerFtKPaPerM) / FootM),
        new("bill", "sum of seven bills of a road", "", 9310144.16, 0, "published county bill of quantities, read", () => (double)SumOf(1476267.96m, 1448759.00m, 1047035.00m, 2333472.00m, 1315213.00m, 983494.00m, 705903.20m)),
        new("bill", "12 items at 150.00, the half cent of 2.345 rounded up", "", 1802.35, 0, "rule of the unit price, United Nations instructions to bidders, read; ROUND of OpenFormula 1.2, from memory", RoundedLine),
    ];

    /// <summary>Each sample worked out and held against its answer; a fault while working it out is a failure, not an end.</summary>
    public static IEnumerable<Proof> Run() => All.Select(Prove);

    internal static Proof Prove(Sample sample)
    {
        try
        {
            var found = sample.Compute();
            var difference = found - sample.Expected;
            return new(sample.Slice, sample.What, Math.Abs(difference) <= sample.Tolerance, Text(found, sample), $"{Text(sample.Expected, sample)} +- {sample.Tolerance.ToString(CultureInfo.InvariantCulture)}", difference, sample.Source, Reinstall);
        }
        catch (Exception e) when (e is ArgumentException or ArithmeticException or InvalidOperationException)
        {
            return new(sample.Slice, sample.What, false, e.Message, Text(sample.Expected, sample), null, sample.Source, Reinstall);
        }
    }

    private static string Text(double value, Sample sample) => (value.ToString("0.#####", CultureInfo.InvariantCulture) + " " + sample.Unit).TrimEnd();

    private static double AtPoint(LightDistribution distribution, double heightM, double asideM) =>
        Illuminance.AtPoints(distribution, [new LuminairePosition(0, 0, heightM, 90, 0)], [new LightPoint(asideM, 0, 0)], 1)[0].IlluminanceLx;

    private static LightResult OnRoad() => Illuminance.OnRoad(Even(5000), new RoadLayout(7, 25, 8, 0, 0, Arrangement.SingleSided), 1);

    /// <summary>Equal intensity in every direction.</summary>
    private static LightDistribution Even(double fluxLm)
    {
        ImmutableArray<double> planes = [.. Enumerable.Range(0, 73).Select(i => i * 5.0)], gammas = [.. Enumerable.Range(0, 181).Select(i => (double)i)];
        return new(planes, gammas, [.. Enumerable.Repeat(fluxLm / (4 * Math.PI), planes.Length * gammas.Length)], null, null);
    }

    /// <summary>With the declination and solar constant of the paper itself (equation 24; 0.0820 MJ/m2 a minute).</summary>
    private static double SunAboveTheAir() => MjPerKWh * SunGeometry.DailyExtraterrestrialKWhPerM2(
        -20, 0.409 * Math.Sin((2 * Math.PI * 246 / 365) - 1.39), SunGeometry.DistanceFactor(246) * 0.0820e6 / 60);

    private static HandInputs Kit(double nightlyWh) => new(nightlyWh, Year(5), Year(nightlyWh), 1, 1, 1, 1, 1, 1, 1, 1, 10);

    private static ImmutableArray<double> Year(double value) => [.. Enumerable.Repeat(value, 12)];

    private static decimal SumOf(params decimal[] bills) => Evaluated(new Sum([.. bills.Select(b => new Literal(b))]));

    private static double RoundedLine() => (double)Evaluated(new Sum([new Product([new Literal(12), new Literal(150.00m)]), new Rounded(new Literal(2.345m), 2)]));

    private static decimal Evaluated(Expression expression)
    {
        var cell = new CellId("x");
        return LedgerValues.Evaluate(new Ledger([new(cell, expression)]))[cell];
    }
}

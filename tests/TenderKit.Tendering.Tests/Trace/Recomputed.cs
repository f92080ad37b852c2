using System.Collections.Immutable;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Trace;

namespace TenderKit.Tendering.Tests.Trace;

/// <summary>Works a figure out again from nothing but its printed formula and its listed inputs.</summary>
internal static class Recomputed
{
    public static double Value(TracedFigure figure)
    {
        var formula = TraceFormulas.Of(figure.FormulaId);
        return formula.IsArithmetic ? Arithmetic.Of(formula.Text, figure.Inputs.Select(i => (i.Symbol, i.Values.AsEnumerable()))) : ByFunction(formula.Id, new Listed(figure));
    }

    /// <summary>The formulas that are no arithmetic: written again here, or by the function they stand for.</summary>
    private static double ByFunction(string formula, Listed of) => formula switch
    {
        "plane_month" => PlaneMonth(of),
        "battery_temperature" => BatteryCapacity.TemperatureFactor((BatteryChemistry)(int)of["chemistry"], of["t"]),
        "dark_bound" => DarkNightBound.UpperNinety([.. of.List("y").Select(n => (int)n)], of["r"]),
        "wind_pressure" => EnPressure(of["v"], (int)of["terrain"], of["z"]),
        "wind_pressure_asce" => AscePressure(of["v"], (int)of["terrain"], of["z"]),
        "wind_shaft" => Shaft(of),
        _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "is no arithmetic and has no function here"),
    };

    private static double PlaneMonth(Listed of)
    {
        ImmutableArray<double> twelve = [.. Enumerable.Repeat(of["H"], 12)], mild = [.. Enumerable.Repeat(20.0, 12)];
        var climate = new MonthlyClimate(of["latitude"], 0, twelve, mild, mild, mild, 0, 40, ClimateGrade.Unsourced, "");
        var line = of.List("horizon").Chunk(2).Select(p => (p[0], p[1])).ToImmutableArray();
        return TiltedPlane.MonthlyKWhPerM2(climate, new PlaneOrientation(of["tilt"], of["azimuth"]), of["albedo"], line.IsEmpty ? null : new HorizonProfile(line))[(int)of["month"] - 1];
    }

    /// <summary>EN 1991-1-4 4.3 to 4.5 with table 4.1, written a second time.</summary>
    private static double EnPressure(double v, int terrain, double z)
    {
        var (z0, least) = new[] { (0.003, 1.0), (0.01, 1.0), (0.05, 2.0), (0.3, 5.0), (1.0, 10.0) }[terrain];
        var log = Math.Log(Math.Max(z, least) / z0);
        return (1 + (7 / log)) * Math.Pow(0.19 * Math.Pow(z0 / 0.05, 0.07) * log, 2) * 0.5 * 1.25 * v * v;
    }

    /// <summary>ASCE 7-16 26.10 (from memory), written a second time.</summary>
    private static double AscePressure(double v, int terrain, double z)
    {
        var (alpha, zg) = terrain switch { 0 or 1 => (11.5, 213.4), 2 => (9.5, 274.3), _ => (7.0, 365.8) };
        return 0.613 * 2.01 * Math.Pow(Math.Max(z, 4.57) / zg, 2 / alpha) * 0.95 * v * v;
    }

    private static double Shaft(Listed of)
    {
        var shaft = new PoleShaft(of["H"], of["D1"], of["D2"], 2, 235);
        var asce = of["x"] < 1;
        double Pressure(double z) => of["x"] * (asce ? AscePressure(of["v"], (int)of["terrain"], z) : EnPressure(of["v"], (int)of["terrain"], z));
        return Wind.OnPole(shaft, [], Pressure, structuralFactor: of["b"]).BaseShearN;
    }

    private sealed class Listed(TracedFigure figure)
    {
        public double this[string symbol] => List(symbol).Single();

        public ImmutableArray<double> List(string symbol) => figure.Inputs.Single(i => i.Symbol == symbol).Values;
    }
}

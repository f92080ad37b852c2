using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Tests.Samples;

/// <summary>Plausible engineering results for <see cref="HandMadeDesign"/>; invented.</summary>
public static class HandMadeFigures
{
    public static readonly LightTarget Target = new("P4", 5, 1, null, 7.5, "EN 13201-2, table 3, from memory");

    public static readonly ImmutableArray<double> Irradiation = [5.9, 6.2, 6.0, 5.5, 5.1, 4.8, 4.6, 5.0, 5.7, 5.8, 5.3, 5.6];

    public static readonly ImmutableArray<double> FullHours = [7.8, 7.8, 7.7, 7.8, 7.9, 7.9, 7.9, 7.8, 7.7, 7.7, 7.8, 7.8];

    public static readonly ImmutableArray<double> PlaneIrradiation = [.. Irradiation.Select(h => Math.Round(h * 0.93, 2))];

    public static SiteClimate Climate(Site site) => new(
        new MonthlyClimate(
            site.LatitudeDegrees, site.LongitudeDegrees, Irradiation, Twelve(23.4, 0.9), Twelve(29.2, 1.1), Twelve(16.8, 0.7), 9, 37,
            ClimateGrade.EstimateNear, "reference table, interpolated", 214),
        0.93, new PlaneOrientation(10, 0), PlaneIrradiation, [.. Enumerable.Repeat(11.9, 12)],
        new LampHours([.. Enumerable.Range(0, 8760).Select(h => LampAt(h % 24))], FullHours));

    public static LightSolution Light(SiteKind kind, int poles, double poleHeightM)
    {
        var spacing = kind == SiteKind.Yard ? 30 : 28;
        var width = kind == SiteKind.Yard ? 25.0 : 5.0;
        var points = (from row in Enumerable.Range(0, 4) from column in Enumerable.Range(0, 10) select Point(row, column, spacing, width, poleHeightM)).ToImmutableArray();
        var result = new LightResult(points.Average(p => p.IlluminanceLx), points.Min(p => p.IlluminanceLx), points.Max(p => p.IlluminanceLx), 10, 4, points);
        var mounting = poleHeightM - 0.1;
        return kind == SiteKind.Yard
            ? new LightSolution(spacing, null, new YardLayout(poles * 28, width, (poles + 1) / 2, true, mounting, 0.5, 5), 0.9, result, true, "minimum illuminance")
            : new LightSolution(spacing, new RoadLayout(width, spacing, mounting, 0.5, 5, Arrangement.SingleSided), null, 0.85, result, true, "minimum illuminance");
    }

    public static EnergyDesign Energy(PoleParts parts)
    {
        var lampW = 0.45 * parts.Luminaire.InputPowerW;
        var demand = FullHours.Select(h => Math.Round((h * lampW) + (24 * parts.Controller.OwnUseW), 1)).ToImmutableArray();
        var nightly = demand.Max();
        var usable = Math.Round(parts.BatteryRatedWh * 0.8 * 0.8 * 0.97, 1);
        var hand = new HandInputs(nightly, PlaneIrradiation, demand, 3, 0.8, 0.8, 1, 0.97, 0.97, 0.86, 1.2, 10);
        var system = new PowerSystem(
            new ArrayModel(parts.ArrayWp, parts.Module.MaximumPowerV, parts.Module.MaximumPowerA, parts.Module.PowerCoefficientPerK, parts.Module.NoctC, 0.86),
            new BatteryModel(parts.Battery.Chemistry, parts.BatteryRatedWh, parts.SystemVoltageV, 5, 1.02, 0.8, 0.8, 0.97, 0.97, 0.03, 8, 0),
            new ControlModel(parts.Controller.Kind, parts.Controller.RatedChargeA, parts.Controller.Efficiency, parts.Controller.OwnUseW, 0.3), lampW);
        return new EnergyDesign(lampW, nightly, usable, usable / nightly, 8.4, hand, HandMethod.Size(hand), system, Simulated(parts, demand));
    }

    public static StructureDesign Structure(PoleParts parts)
    {
        ImmutableArray<WindForce> forces =
        [
            new("module", 690 * parts.Module.LengthM, parts.Pole.HeightM), new("luminaire", 55, parts.Pole.HeightM - 0.1), new("enclosure", 120, 3.2),
            new("shaft", 62 * parts.Pole.HeightM, parts.Pole.HeightM * 0.46),
        ];
        var moment = forces.Sum(f => f.MomentNm);
        var set = parts.Foundation;
        var concrete = set.LengthM * set.WidthM * set.DepthM;
        return new StructureDesign(
            new PoleLoad(forces, forces.Sum(f => f.ForceN), moment, moment * 0.0185, 0.011 * parts.Pole.HeightM),
            new BlockResult(1.74, 61, concrete, (set.LengthM + 0.4) * (set.WidthM + 0.4) * set.DepthM), 1015);
    }

    public static ImmutableArray<Check> Checks(PoleParts parts, LightSolution light, EnergyDesign energy, StructureDesign structure) =>
    [
        new("light.average", "Luminaire", "maintained average illuminance", Comparison.AtLeast, 5, light.Result.AverageLx, "lx", "tender, class P4"),
        new("light.minimum", "Luminaire", "maintained minimum illuminance", Comparison.AtLeast, 1, light.Result.MinimumLx, "lx", "tender, class P4"),
        new("battery.autonomy", "Battery", "autonomy at end of life", Comparison.AtLeast, 3, energy.AutonomyNights, "nights", "tender, reliability"),
        new("energy.dark_nights", "System", "dark nights a year, upper bound", Comparison.AtMost, 1, energy.Simulated.DarkNightsUpperBound, "", "tender, reliability"),
        new("controller.charge_current", "Controller", "charge current", Comparison.AtLeast, 1.25 * parts.Module.ShortCircuitA, parts.Controller.RatedChargeA, "A", "design rule"),
        new("pole.stress", "Pole", "stress at the base", Comparison.AtMost, parts.Pole.YieldMPa / 1.1, structure.Load.BaseStressMPa, "MPa", "EN 40-3-3, from memory", 0),
        new("foundation.overturning", "Foundation", "safety against overturning", Comparison.AtLeast, 1.5, structure.Foundation.OverturningSafetyFactor, "", "design rule"),
    ];

    private static EnergyResult Simulated(PoleParts parts, ImmutableArray<double> demand)
    {
        var supply = PlaneIrradiation.Select(h => Math.Round(h * parts.ArrayWp * 0.8, 1)).ToImmutableArray();
        var yearDemand = demand.Average() * 365 * 20;
        var input = yearDemand * 1.09;
        return new EnergyResult(
            20, 0.0004, 0.35, 0.62, 3, 2, [.. Enumerable.Range(0, 12).Select(m => 0.42 + (0.03 * Math.Abs(m - 6)))], 0.78, 6, 96, supply, demand,
            [.. Enumerable.Range(0, 744).Select(StateAt)], 7, 13,
            new EnergyLedger(input, yearDemand * 0.95, yearDemand * 0.05, input - yearDemand, 0, 0, yearDemand, yearDemand * 0.0004))
        {
            WorstSpell = new WorstSpell(191, 13, [.. Enumerable.Range(0, 720).Select(StateAt)], [.. Enumerable.Range(0, 30).Select(d => 0.2 + (d > 20 ? 0.01 : 0))], [.. Enumerable.Repeat(0.44, 30)]),
            Recovery = new RecoveryTimes(3, 9, 6.5),
            LossOfLoadByMonth = [0, 0, 0, 0, 0, 0.001, 0.0038, 0, 0, 0, 0, 0],
        };
    }

    private static LightPoint Point(int row, int column, double spacing, double width, double heightM)
    {
        var x = spacing * (column + 0.5) / 10;
        var y = width * (row + 0.5) / 4;
        var dx = Math.Min(x, spacing - x);
        var dy = width > 10 ? Math.Min(y, width - y) : y;
        var far = Math.Sqrt((dx * dx) + (dy * dy));
        return new LightPoint(x, y, 1.2 + (11 / (1 + Math.Pow(far / heightM, 2.4))));
    }

    private static double LampAt(int hour) => hour switch { >= 19 and < 23 => 1, 4 or 5 => 1, 18 => 0.5, >= 6 and < 18 => 0, _ => 0.3 };

    private static double StateAt(int hour) => Math.Round(0.72 - (0.2 * Math.Sin(Math.PI * hour / 744)) + (0.14 * Math.Sin(2 * Math.PI * ((hour % 24) - 10) / 24)), 4);

    private static ImmutableArray<double> Twelve(double mean, double swing) => [.. Enumerable.Range(0, 12).Select(m => Math.Round(mean + (swing * Math.Cos(Math.PI * m / 6)), 1))];
}

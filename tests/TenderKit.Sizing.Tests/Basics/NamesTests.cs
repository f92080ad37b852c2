using System.Reflection;
using System.Text.RegularExpressions;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Sizing.Tests.Basics;

/// <summary>Every public number of the engineering carries its unit in its name.</summary>
public partial class NamesTests
{
    /// <summary>Names that hold a number in whatever unit the record or the caller states.</summary>
    private static readonly HashSet<string> UnitElsewhere = ["value", "min", "max", "Required", "Offered", "Reached", "beam", "diffuse", "global", "extraterrestrial"];

    /// <summary>Pure numbers the trade calls by these names.</summary>
    private static readonly HashSet<string> PureNumbers =
    [
        "OverallUniformity", "overallUniformity", "ArrayToLoadRatio", "PeukertExponent", "peukertExponent", "albedo", "MinSpacingToHeight", "MaxSpacingToHeight",
        "ForceCoefficient", "CyclesAtDepth", "cyclesAtDepth", "EquivalentFullCyclesPerYear", "equivalentFullCyclesPerYear", "dayOfYear", "DayToDayCorrelation", "MonthToMonthCorrelation",
        "DarkNightsPerYear", "DarkNightsUpperBound", "Gamma", "share", "cosTilt", "horizonTerm", "DistanceAu", "julianDay", "meanRunNights",
        "LongitudinalUniformity", "HemisphericalUniformity", "S1", "S2", "tangent",
    ];

    [Fact]
    public void Public_doubles_end_in_a_unit()
    {
        var bad = typeof(Diagnostic).Assembly.GetExportedTypes()
            .SelectMany(NumbersOf)
            .Where(n => !UnitElsewhere.Contains(n.Name) && !PureNumbers.Contains(n.Name) && !Unit().IsMatch(n.Name))
            .Select(n => $"{n.Owner}: {n.Name}")
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToList();
        Assert.True(bad.Count == 0, string.Join(Environment.NewLine, bad));
    }

    private static IEnumerable<(string Owner, string Name)> NumbersOf(Type type)
    {
        const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var properties = type.GetProperties(Own).Where(p => IsNumber(p.PropertyType)).Select(p => (type.Name, p.Name));
        var parameters = type.GetMethods(Own).Where(m => !m.IsSpecialName && !m.Name.StartsWith('<'))
            .SelectMany(m => m.GetParameters().Where(p => IsNumber(p.ParameterType)).Select(p => ($"{type.Name}.{m.Name}", p.Name!)));
        return properties.Concat(parameters);
    }

    private static bool IsNumber(Type type) => type == typeof(double) || type == typeof(double?);

    [GeneratedRegex("(?<![A-Z])(W|Wp|Wh|V|A|Ah|Ohm|OhmPerKm|OhmM|M|Mm|Mm2|M2|M3|Kg|N|Nm|N[Pp]erM2|KN[Pp]erM3|Pa|K?Pa|KPaPerM|MPa|C|K|Lx|Lm|Cd|CdPerKlm|(K|M)?WhPerM2|WPerM2|MJPerM2|KWhPerM2Day|S|H|Hours|Years?|Nights|Days|MPerS|PerK|PerM|Km|PerV|Um)$|(Fraction|Factor|Degrees|Rad|Ratio|Exponent|Coefficient|Clearness|Count|PerCent|Minutes)(At25C|PerMonth)?$|[eE]fficiency$|^(XM|YM|setPointAt25CV|degrees|rad|hours|factor|clearness)$")]
    private static partial Regex Unit();
}

using System.Globalization;

namespace TenderKit.Cli.Commands;

/// <summary>A value of an option with the ends it must lie between.</summary>
internal sealed record Limit(string Option, double Value, double Least, double Greatest)
{
    /// <summary>What is wrong with the first value outside its ends, or null.</summary>
    public static string? Problem(params IEnumerable<Limit> limits) => limits
        .Where(l => !(l.Value >= l.Least && l.Value <= l.Greatest))
        .Select(l => string.Create(CultureInfo.InvariantCulture, $"{l.Option} must lie between {l.Least} and {l.Greatest}, not {l.Value}"))
        .FirstOrDefault();
}

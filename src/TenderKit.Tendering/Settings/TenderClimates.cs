using System.Collections.Immutable;
using TenderKit.Intake.Tables;

namespace TenderKit.Tendering.Settings;

/// <summary>A climate the tender gives a name: a file, or values typed in the tender file.</summary>
/// <param name="File">File name, or null for typed values.</param>
/// <param name="Values">The typed values in the layout of a 12-month table, or null for a file.</param>
/// <param name="Line">Line of the tender file it stands in.</param>
public sealed record NamedClimate(string? File, Table? Values, int Line);

/// <summary>The climates of a tender: the one that holds where a site row is silent, and those with a name.</summary>
/// <param name="Default">A name, a file, "estimate", or null for the estimate.</param>
/// <param name="Named">By name, upper and lower case alike.</param>
public sealed record TenderClimates(string? Default, ImmutableSortedDictionary<string, NamedClimate> Named)
{
    /// <summary>Word for the built-in reference table.</summary>
    public const string Estimate = "estimate";

    /// <summary>Name of values typed directly under <c>climate: monthly</c>.</summary>
    public const string Monthly = "monthly";

    public static readonly TenderClimates None = new(null, ImmutableSortedDictionary.Create<string, NamedClimate>(StringComparer.OrdinalIgnoreCase));

    /// <summary>The name as the tender writes it, the file, or null for the estimate.</summary>
    /// <param name="written">What a site row or the default says, or null.</param>
    public string? NameOf(string? written)
    {
        var name = (written ?? Default)?.Trim();
        if (name is null || name.Equals(Estimate, StringComparison.OrdinalIgnoreCase)) return null;
        return Named.Keys.FirstOrDefault(k => k.Equals(name, StringComparison.OrdinalIgnoreCase)) ?? name;
    }
}

using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;

namespace TenderKit.Tendering.Settings;

/// <summary>Reads users' numbers out of sections of the tender file, with units, each problem with its line.</summary>
internal static class SectionNumbers
{
    /// <summary>The number under a key in the base unit of its kind; <paramref name="fallback"/> when absent or unreadable (then with an error).</summary>
    public static double Number(this YamlSection section, string key, QuantityKind kind, double fallback) =>
        section.Scalar(key) is { } scalar ? NumberOf(section, scalar, kind) ?? fallback : fallback;

    /// <summary>The number under a key; a missing one is an error and gives zero.</summary>
    public static double RequiredNumber(this YamlSection section, string key, QuantityKind kind) =>
        section.Scalar(key) is null ? Missing(section, key) : section.Number(key, kind, 0);

    /// <summary>A fraction as decimal, for prices; below zero or above the greatest it is an error and reads as zero.</summary>
    /// <param name="greatest">Greatest share allowed, fraction.</param>
    public static decimal Share(this YamlSection section, string key, decimal greatest = 1m)
    {
        var value = section.Number(key, QuantityKind.Fraction, 0);
        if (value >= 0 && value <= (double)greatest) return (decimal)value;
        section.AddError("TK116", FormattableString.Invariant($"'{key}' is {value * 100:0.##} %, outside 0 to {greatest * 100:0} %; correct it"), section.Scalar(key)!.Line);
        return 0;
    }

    /// <summary>A whole number between two limits; <paramref name="fallback"/> when absent or outside them (then with an error).</summary>
    public static int Whole(this YamlSection section, string key, int least, int greatest, int fallback)
    {
        var value = section.Number(key, QuantityKind.Count, fallback);
        if (value >= least && value <= greatest) return (int)value;
        section.AddError("TK116", FormattableString.Invariant($"'{key}' is {value:0.##}, outside {least} to {greatest}; correct it"), section.Scalar(key)!.Line);
        return fallback;
    }

    /// <summary>The number a scalar means, or null with an error.</summary>
    public static double? NumberOf(YamlSection section, YamlScalarText scalar, QuantityKind kind)
    {
        var reading = UserNumber.Read(scalar.Text, kind);
        if (reading.Value is { } value) return value;
        section.AddError("TK114", $"'{scalar.Path}' is '{scalar.Text}', which {reading.Problem}", scalar.Line);
        return null;
    }

    private static double Missing(YamlSection section, string key)
    {
        section.RequiredText(key);
        return 0;
    }
}

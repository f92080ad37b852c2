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

    /// <summary>A fraction as decimal, for prices.</summary>
    public static decimal Share(this YamlSection section, string key) => (decimal)section.Number(key, QuantityKind.Fraction, 0);

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

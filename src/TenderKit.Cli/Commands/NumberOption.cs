using System.CommandLine;
using TenderKit.Intake.Numbers;

namespace TenderKit.Cli.Commands;

/// <summary>Options that hold a user's number: decimal comma or point, with or without its unit.</summary>
internal static class NumberOption
{
    /// <param name="name">Name with its unit, such as <c>--height-m</c>.</param>
    /// <param name="description">What it is and its range.</param>
    /// <param name="fallback">Value when it is not given; null when it must be.</param>
    public static Option<double> Make(string name, string description, QuantityKind kind, double? fallback = null)
    {
        var option = new Option<double>(name)
        {
            Description = description,
            Required = fallback is null,
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
                var reading = UserNumber.Read(text, kind);
                if (reading.Value is { } value) return value;
                result.AddError($"{name} is '{text}', which {reading.Problem}");
                return 0;
            },
        };
        if (fallback is { } given) option.DefaultValueFactory = _ => given;
        return option;
    }

    /// <summary>A number that may be left out and has no default of its own: ask whether it was given before its value.</summary>
    public static Option<double> Optional(string name, string description, QuantityKind kind)
    {
        var option = Make(name, description, kind);
        option.Required = false;
        return option;
    }
}

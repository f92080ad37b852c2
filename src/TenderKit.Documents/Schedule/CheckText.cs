using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;

namespace TenderKit.Documents.Schedule;

/// <summary>A check in the short form of the compliance table.</summary>
internal static class CheckText
{
    public static string Requirement(Check check) => $"{check.Item}: {check.Property}";

    public static string Required(Check check) =>
        check.IsYesNo ? check.RequiredText : (check.Comparison == Comparison.AtLeast ? "≥ " : "≤ ") + Value(check, check.Required);

    public static string Offered(Check check) => check.IsYesNo ? check.OfferedText : Value(check, check.Offered);

    public static string Margin(Check check) => check.MarginFraction is null ? "–" : check.MarginText.Replace('-', '−');

    /// <summary>Whether the margin is that of something measured: not a yes or no, a count or a class.</summary>
    public static bool IsMeasured(Check check) => check.MarginFraction is not null && !(check.Decimals == 0 && check.Unit is "" or "IP");

    private static string Value(Check check, double value)
    {
        var number = Figures.Number(value, check.Decimals);
        return check.Unit switch
        {
            "" => number,
            "IP" => "IP" + number,
            "degrees" => number + "°",
            "degC" => number + " °C",
            "m2" => number + " m²",
            "m3" => number + " m³",
            "l" => number + " L",
            _ => number + " " + check.Unit,
        };
    }
}

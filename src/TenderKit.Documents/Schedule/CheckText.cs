using TenderKit.Documents.Layout;
using TenderKit.Sizing.Basics;

namespace TenderKit.Documents.Schedule;

/// <summary>A check in the short form of the compliance table.</summary>
internal static class CheckText
{
    public static string Required(Check check) =>
        check.IsYesNo ? check.RequiredText : (check.Comparison == Comparison.AtLeast ? "≥ " : "≤ ") + Value(check, check.Required);

    public static string Offered(Check check) => check.IsYesNo ? check.OfferedText : Value(check, check.Offered);

    /// <summary>
    /// The margin as printed: a share of what is required; in kelvin and degrees for temperatures and angles, whose zero is
    /// arbitrary; none for yes or no, counts and codes.
    /// </summary>
    public static string Margin(Check check)
    {
        if (check.IsYesNo || IsCode(check)) return "–";
        if (!HasArbitraryZero(check)) return check.MarginFraction is null ? "–" : Signs(check.MarginText);
        var spare = check.Comparison == Comparison.AtLeast ? check.Offered - check.Required : check.Required - check.Offered;
        var number = Figures.Number(spare, check.Decimals);
        return Signs((spare > 0 && number != "0" ? "+" : "") + number + (check.Unit == "degC" ? " K" : "°"));
    }

    /// <summary>Whether the margin is a share of something measured: not a yes or no, a count, a class, a temperature or an angle.</summary>
    public static bool IsMeasured(Check check) => check.MarginFraction is not null && !IsCode(check) && !HasArbitraryZero(check);

    private static bool IsCode(Check check) => check.Unit is "IP" or "IK" || (check.Decimals == 0 && check.Unit.Length == 0);

    private static bool HasArbitraryZero(Check check) => check.Unit is "degC" or "degrees";

    private static string Signs(string text) => text.Replace('-', '−');

    private static string Value(Check check, double value)
    {
        var number = Signs(Figures.Number(value, check.Decimals));
        return check.Unit switch
        {
            "" => number,
            "IP" => "IP" + number,
            "IK" => "IK" + Figures.Number(value, 0).PadLeft(2, '0'),
            "um" => number + " µm",
            "degrees" => number + "°",
            "degC" => number + " °C",
            "l" => number + " L",
            _ => number + " " + Words.Unit(check.Unit),
        };
    }
}

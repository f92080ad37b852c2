using TenderKit.Intake.Yaml;

namespace TenderKit.Tendering.Settings;

/// <summary>What the designs of a tender are chosen by.</summary>
/// <param name="ByPresentValue">By first cost and the replacements that follow, discounted; else by first cost alone.</param>
/// <param name="Years">Years looked at; nothing is replaced at their end or after.</param>
/// <param name="DiscountFraction">Discount a year, fraction.</param>
public sealed record ChoiceBasis(bool ByPresentValue, int Years, decimal DiscountFraction)
{
    /// <summary>First cost alone; the years and the discount are then of no effect.</summary>
    public static readonly ChoiceBasis FirstCost = new(false, 10, 0.08m);

    /// <summary>As printed.</summary>
    public string InWords => ByPresentValue
        ? FormattableString.Invariant($"present value over {Years} years at {DiscountFraction * 100:0.##} % a year")
        : "first cost";
}

/// <summary>Reads <c>choice</c> of the tender file.</summary>
internal static class ChoiceSection
{
    private const decimal GreatestDiscount = 0.5m;

    public static ChoiceBasis Read(YamlSection? section)
    {
        if (section is null) return ChoiceBasis.FirstCost;
        var by = section.Scalar("by");
        if (by is not null && by.Text is not ("first cost" or "present value"))
            section.AddError("TK117", $"'{by.Path}' is '{by.Text}'; use first cost or present value", by.Line);
        var read = new ChoiceBasis(
            by?.Text == "present value",
            section.Whole("years", 1, 50, ChoiceBasis.FirstCost.Years),
            section.Has("discount") ? section.Share("discount", GreatestDiscount) : ChoiceBasis.FirstCost.DiscountFraction);
        section.ReportUnknownKeys();
        return read;
    }
}

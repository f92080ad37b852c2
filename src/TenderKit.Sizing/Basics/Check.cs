using System.Globalization;

namespace TenderKit.Sizing.Basics;

/// <summary>Which way a requirement points.</summary>
public enum Comparison
{
    AtLeast,
    AtMost,
}

/// <summary>
/// One requirement met or not by one figure. The same object decides (a part is refused when it does not comply)
/// and prints (the compliance table), so the two cannot differ.
/// </summary>
/// <param name="Id">Stable id, dotted lower case, e.g. <c>battery.autonomy</c>.</param>
/// <param name="Item">What is checked, e.g. "Battery".</param>
/// <param name="Property">Which property, e.g. "autonomy at end of life".</param>
/// <param name="Comparison">At least or at most.</param>
/// <param name="Required">Required value in <paramref name="Unit"/>.</param>
/// <param name="Offered">Offered or calculated value in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit as printed; empty for a plain number.</param>
/// <param name="Basis">Why it is required: tender clause, standard or design rule.</param>
/// <param name="Decimals">Decimals to print.</param>
/// <param name="IsYesNo">The values are 1 for yes and 0 for no; made by <see cref="YesNo"/>.</param>
public sealed record Check(
    string Id, string Item, string Property, Comparison Comparison, double Required, double Offered, string Unit, string Basis, int Decimals = 2, bool IsYesNo = false)
{
    /// <summary>A feature that is required or not and present or not; it has no margin.</summary>
    public static Check YesNo(string id, string item, string property, bool required, bool offered, string basis) =>
        new(id, item, property, Comparison.AtLeast, required ? 1 : 0, offered ? 1 : 0, "", basis, 0, true);

    /// <summary>A requirement in words, such as one of several chemistries; it has no margin.</summary>
    public static Check InWords(string id, string item, string property, string required, string offered, bool complies, string basis) =>
        new(id, item, property, Comparison.AtLeast, 1, complies ? 1 : 0, "", basis, 0, true) { RequiredWords = required, OfferedWords = offered };

    /// <summary>Number of the employer's clause behind it; empty where it is none.</summary>
    public string Clause { get; init; } = "";

    /// <summary>What is required, where that is said in words.</summary>
    public string? RequiredWords { get; init; }

    /// <summary>What is offered, where that is said in words.</summary>
    public string? OfferedWords { get; init; }

    public bool Complies => Comparison == Comparison.AtLeast ? Offered >= Required : Offered <= Required;

    /// <summary>Margin as a fraction of the required value, positive when on the safe side; null when the required value is zero or the check is yes or no.</summary>
    public double? MarginFraction
    {
        get
        {
            if (Required == 0 || IsYesNo) return null;
            return (Comparison == Comparison.AtLeast ? Offered - Required : Required - Offered) / Math.Abs(Required);
        }
    }

    public string RequiredText => RequiredWords ?? (IsYesNo ? (Required > 0 ? "yes" : "not needed") : (Comparison == Comparison.AtLeast ? "at least " : "at most ") + Number(Required));

    public string OfferedText => OfferedWords ?? (IsYesNo ? (Offered > 0 ? "yes" : "no") : Number(Offered));

    public string MarginText => MarginFraction is { } m ? (m * 100).ToString("+0;-0;0", CultureInfo.InvariantCulture) + " %" : "-";

    private string Number(double value)
    {
        var text = value.ToString("N" + Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Unit.Length == 0 ? text : text + " " + Unit;
    }
}

using System.Globalization;
using System.Text.RegularExpressions;

namespace TenderKit.Catalog.Families;

/// <summary>
/// The two numbers of a bolt's property class: a hundredth of the nominal tensile strength in MPa, and ten times the ratio of nominal
/// yield to tensile strength (ISO 898-1, designation of property classes; from memory). Check: 8.8 is 800 MPa and 640 MPa.
/// </summary>
public static partial class BoltClass
{
    /// <summary>Nominal tensile strength, MPa, or null when the text is no property class.</summary>
    public static double? TensileMPa(string grade) => Numbers(grade) is var (first, _) ? first * 100 : null;

    /// <summary>Nominal yield strength, MPa, or null when the text is no property class.</summary>
    public static double? YieldMPa(string grade) => Numbers(grade) is var (first, second) ? first * second * 10 : null;

    private static (int First, int Second)? Numbers(string grade)
    {
        var match = Designation().Match(grade);
        return match.Success ? (Number(match.Groups[1]), Number(match.Groups[2])) : null;
    }

    private static int Number(Group group) => int.Parse(group.ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([3-9]|1[0-4])\.([6-9])$")]
    private static partial Regex Designation();
}

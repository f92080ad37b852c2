using TenderKit.Catalog.Families;

namespace TenderKit.Tendering.Design;

/// <summary>The voltage class controllers are sold by, from a bank's nominal voltage: 12.8 V of lithium iron phosphate is a 12 V system.</summary>
public static class SystemVoltage
{
    /// <summary>12, 24, 36 or 48 V for a bank within 10 % above it; null for any other bank.</summary>
    public static double? ClassOf(double bankV) =>
        new double[] { 12, 24, 36, 48 }.Where(c => bankV >= c && bankV <= c * 1.1).Cast<double?>().FirstOrDefault();

    public static double BankV(Battery battery, int inSeries) => battery.NominalVoltageV * inSeries;
}

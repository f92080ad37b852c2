using System.Globalization;

namespace TenderKit.Documents.Layout;

/// <summary>Numbers, dates and names as printed on pages, the same in every culture.</summary>
internal static class Figures
{
    public static string Number(double value, int decimals)
    {
        if (double.IsNaN(value) || double.IsInfinity(value)) return "–";
        var rounded = Math.Round(value, Math.Clamp(decimals, 0, 15));
        return (rounded == 0 ? 0 : rounded).ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>With a true minus sign.</summary>
    public static string Signed(double value, int decimals) => Number(value, decimals).Replace('-', '−');

    public static string Percent(double fraction, int decimals = 0) => Number(fraction * 100, decimals) + " %";

    /// <summary>Up to three significant decimals, none trailing: for values whose precision is the user's own.</summary>
    public static string Short(double value) => value.ToString("#,0.####", CultureInfo.InvariantCulture);

    public static string Date(DateOnly date) => date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    public static string Month(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);

    public static string MonthShort(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedMonthName(month);

    /// <summary>First twelve digits of a digest.</summary>
    public static string ShortDigest(string sha256) => sha256.Length > 12 ? sha256[..12] : sha256;

    public static string Count(int count, string one, string many) => Number(count, 0) + " " + (count == 1 ? one : many);
}

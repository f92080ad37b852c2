using System.Globalization;

namespace TenderKit.Sizing.Basics;

/// <summary>Preconditions: a call that breaks one is a bug of the caller and throws.</summary>
public static class Require
{
    /// <summary>Returns <paramref name="value"/> when it lies in [min, max].</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double InRange(double value, double min, double max, string name)
    {
        if (value >= min && value <= max) return value;
        throw new ArgumentOutOfRangeException(name, value, string.Create(CultureInfo.InvariantCulture, $"must lie in {min} to {max}"));
    }

    /// <summary>Returns <paramref name="value"/> when it is greater than zero and finite.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative, infinite or not a number.</exception>
    public static double Positive(double value, string name) =>
        value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "must be greater than zero");

    /// <summary>Returns <paramref name="value"/> when it is zero or more and finite.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, infinite or not a number.</exception>
    public static double NotNegative(double value, string name) =>
        value >= 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, "must be zero or more");

    /// <summary>Throws when a month is not 1 to 12.</summary>
    public static int Month(int month) =>
        month is >= 1 and <= 12 ? month : throw new ArgumentOutOfRangeException(nameof(month), month, "must be 1 to 12");
}

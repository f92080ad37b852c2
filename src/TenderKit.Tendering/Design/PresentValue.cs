using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>Present value of what is replaced in the years after the first cost.</summary>
public static class PresentValue
{
    /// <summary>
    /// Replacements of a part at the end of its life, at today's price, discounted to the year each falls in: sum over k = 1, 2, ... with k L below N of
    /// P / (1 + r)^(k L). Present value of a stream of costs: ISO 15686-5:2017, real costs and a real rate (from memory).
    /// A shorter life never gives less, so any life that is not too short gives a lower bound.
    /// </summary>
    /// <param name="price">P, today's price of one replacement.</param>
    /// <param name="lifeYears">Expected life, years; L is the whole years in it, at least 1.</param>
    /// <param name="basis">N years, none replaced at their end or after; r discount a year, fraction.</param>
    /// <returns>In the currency of the price. Check value: 200 every 3.7 years over 10 years at 8 %, thus after 3, 6 and 9: 200 x (0.793832 + 0.630170 + 0.500249) = 384.85.</returns>
    public static decimal OfReplacements(decimal price, double lifeYears, ChoiceBasis basis)
    {
        if (lifeYears >= basis.Years) return 0;
        var whole = Math.Max(1, (int)Math.Floor(lifeYears));
        var (sum, growth) = (0m, 1m);
        for (var year = 1; year < basis.Years; year++)
        {
            growth *= 1 + basis.DiscountFraction;
            if (year % whole == 0) sum += price / growth;
        }

        return sum;
    }
}

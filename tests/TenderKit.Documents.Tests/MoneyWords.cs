using System.Text.RegularExpressions;

namespace TenderKit.Documents.Tests;

/// <summary>Finds amounts of money and words of price in a text, independently of the product's own filter.</summary>
internal static partial class MoneyWords
{
    public static IEnumerable<string> In(string text) => Money().Matches(text).Select(m => m.Value);

    [GeneratedRegex(@"\b(KES|USD|EUR|GBP|XOF|XAF|NGN|UGX|TZS|INR|CHF|JPY|CNY)\b|[$€£¥₦₹]|\b(price[sd]?|unpriced|pricing|costs?|costing|currency|currencies|payments?|payable|invoices?|profit|overheads?|mark-?up|duty|freight|exchange rate|shillings?|dollars?|euros?|francs?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Money();
}

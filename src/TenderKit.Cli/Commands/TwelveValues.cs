using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;

namespace TenderKit.Cli.Commands;

/// <summary>Options that hold twelve monthly values, January first: between spaces, semicolons or commas; a decimal comma is read where spaces or semicolons part the values.</summary>
internal static class TwelveValues
{
    private static readonly char[] Gaps = [' ', '\t', '\n', '\r', ';'];

    /// <param name="least">Least value of a month.</param>
    /// <param name="greatest">Greatest value of a month.</param>
    public static Option<ImmutableArray<double>?> Make(string name, string description, double least, double greatest) => new(name)
    {
        Description = description,
        CustomParser = result =>
        {
            var read = Read(result.Tokens.Count == 0 ? "" : result.Tokens[0].Value, least, greatest, out var problem);
            if (read is null) result.AddError($"{name} {problem}");
            return read;
        },
    };

    private static ImmutableArray<double>? Read(string text, double least, double greatest, out string problem)
    {
        problem = "";
        var words = Words(text);
        if (words.Length != 12)
        {
            problem = string.Create(CultureInfo.InvariantCulture, $"holds {words.Length} values where twelve are needed, January to December, such as \"5.9 6.2 6.3 6.0 5.8 5.2 4.6 4.8 5.4 6.1 6.2 5.9\"");
            return null;
        }

        var values = ImmutableArray.CreateBuilder<double>(12);
        foreach (var word in words)
        {
            if (!double.TryParse(word.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) || !(value >= least && value <= greatest))
            {
                problem = string.Create(CultureInfo.InvariantCulture, $"holds '{word}' where a number from {least} to {greatest} is needed");
                return null;
            }

            values.Add(value);
        }

        return values.MoveToImmutable();
    }

    private static string[] Words(string text)
    {
        var words = text.Split(Gaps, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return words.Length == 12
            ? [.. words.Select(w => w.TrimEnd(','))]
            : text.Split([.. Gaps, ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}

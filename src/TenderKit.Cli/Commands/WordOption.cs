using System.CommandLine;
using TenderKit.Intake.Words;

namespace TenderKit.Cli.Commands;

/// <summary>Options that hold one of a few known words; a word that is not known is answered with the option's name and the nearest word.</summary>
internal static class WordOption
{
    /// <param name="words">Known words with what they stand for.</param>
    /// <param name="fallback">Word when none is given; null when one must be.</param>
    public static Option<T> Make<T>(string name, string description, IReadOnlyList<(string Word, T Value)> words, string? fallback = null)
    {
        var option = new Option<T>(name)
        {
            Description = $"{description}: {string.Join(", ", words.Select(w => w.Word))}.",
            Required = fallback is null,
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value.Trim();
                foreach (var (word, value) in words) if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase)) return value;
                var nearest = Nearest.Of(text, words.Select(w => w.Word));
                result.AddError($"{name} is '{text}', which is not known" + (nearest is null ? "" : $"; did you mean '{nearest}'?") + $" Known: {string.Join(", ", words.Select(w => w.Word))}");
                return default!;
            },
        };
        if (fallback is not null) option.DefaultValueFactory = _ => words.First(w => w.Word == fallback).Value;
        return option;
    }
}

using System.CommandLine;
using TenderKit.Intake.Words;

namespace TenderKit.Cli.Commands;

/// <summary>Options that hold one of a few known words; a word that is not known is answered with the option's name and the nearest word.</summary>
internal static class WordOption
{
    /// <param name="words">Known words in small letters; the first is the default.</param>
    public static Option<string> Make(string name, string description, params string[] words) => new(name)
    {
        Description = description,
        HelpName = string.Join('|', words),
        DefaultValueFactory = _ => words[0],
        CustomParser = result =>
        {
            var text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value.Trim();
            if (words.FirstOrDefault(w => string.Equals(w, text, StringComparison.OrdinalIgnoreCase)) is { } known) return known;
            var nearest = Nearest.Of(text, words);
            result.AddError($"{name} is '{text}', which is not known" + (nearest is null ? "." : $"; did you mean '{nearest}'?") + $" Known: {string.Join(", ", words)}");
            return words[0];
        },
    };
}

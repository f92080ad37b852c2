using System.CommandLine;

namespace TenderKit.Cli.Commands;

/// <summary>Arguments and options several commands share.</summary>
internal static class CommonOptions
{
    public static Argument<string> TenderFile() => new("tender") { Description = "The tender file, such as tender.yaml." };

    public static Option<string> Format()
    {
        var option = new Option<string>("--format") { Description = "text for people, json for machines.", DefaultValueFactory = _ => "text" };
        option.AcceptOnlyFromAmong("text", "json");
        return option;
    }
}

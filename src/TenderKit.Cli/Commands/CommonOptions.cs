using System.CommandLine;
using TenderKit.Tendering.Settings;

namespace TenderKit.Cli.Commands;

/// <summary>Arguments and options several commands share.</summary>
internal static class CommonOptions
{
    public static Argument<string> TenderFile() => new("tender") { Description = "The tender file, such as tender.yaml." };

    public static Option<string> Language()
    {
        var option = new Option<string>("--language") { Description = "Language of the document: en, fr, es or pt.", DefaultValueFactory = _ => TenderLanguages.English };
        option.AcceptOnlyFromAmong([.. TenderLanguages.All]);
        return option;
    }

    public static Option<string> Format()
    {
        var option = new Option<string>("--format") { Description = "text for people, json for machines.", DefaultValueFactory = _ => "text" };
        option.AcceptOnlyFromAmong("text", "json");
        return option;
    }
}

using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Cli.Commands;

/// <summary><c>light propose-class</c>: a P class from the weights of CEN/TR 13201-1, as an aid.</summary>
internal static class ClassCommand
{
    public static Command Make(Terminal terminal)
    {
        var speed = Choice<FootSpeed>("--speed", "Speed of travel: low (40 km/h or less) or walking.");
        var use = Choice<UseIntensity>("--use", "How much the place is used: busy, normal or quiet.");
        var mix = Choice<FootMix>("--users", "Who uses it.");
        var ambient = Choice<AmbientLuminosity>("--surroundings", "How bright the surroundings are: high, moderate or low.");
        var parked = new Option<bool>("--parked") { Description = "Vehicles are parked along it." };
        var format = CommonOptions.Format();
        var command = new Command("propose-class", "Proposes a P class for a place used on foot, by cycle or at low speed, from the weights of CEN/TR 13201-1:2014. An aid: the employer decides.")
        {
            speed, use, mix, ambient, parked, format,
        };
        command.SetAction(parsed => Show(
            ClassSelection.P(Value<FootSpeed>(parsed, speed), Value<UseIntensity>(parsed, use), Value<FootMix>(parsed, mix), parsed.GetValue(parked), Value<AmbientLuminosity>(parsed, ambient)),
            parsed.GetValue(format) == "json",
            terminal));
        return command;
    }

    private static int Show(ClassProposal proposal, bool json, Terminal terminal)
    {
        if (json)
        {
            terminal.Result(new JsonObject
            {
                ["class"] = proposal.ClassName,
                ["weightSum"] = proposal.WeightSum,
                ["bounded"] = proposal.Bounded,
                ["weights"] = new JsonArray([.. proposal.Weights.Select(w => new JsonObject { ["parameter"] = w.Parameter, ["option"] = w.Option, ["weight"] = w.Weight })]),
                ["source"] = proposal.Source,
            });
            return ExitCodes.Good;
        }

        terminal.Table(["Parameter", "Option", "Weight"], proposal.Weights.Select(w => (IReadOnlyList<string>)[w.Parameter, w.Option, w.Weight.ToString(CultureInfo.InvariantCulture)]));
        terminal.Result(string.Create(CultureInfo.InvariantCulture, $"Class {proposal.ClassName}: 6 less the sum of the weights, {proposal.WeightSum} ({proposal.Source})."));
        return ExitCodes.Good;
    }

    private static Option<string> Choice<T>(string name, string description)
        where T : struct, Enum
    {
        var option = new Option<string>(name) { Description = description, Required = true };
        option.AcceptOnlyFromAmong([.. Enum.GetNames<T>().Select(Words)]);
        return option;
    }

    private static T Value<T>(ParseResult parsed, Option<string> option)
        where T : struct, Enum => Enum.GetValues<T>().First(v => Words(v.ToString()) == parsed.GetRequiredValue(option));

    /// <summary>OneKindOnly as one-kind-only.</summary>
    private static string Words(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i == 0 ? "" : "-") + char.ToLowerInvariant(c) : c.ToString()));
}

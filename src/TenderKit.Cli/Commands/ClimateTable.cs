using System.Globalization;
using System.Text.Json.Nodes;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Cli.Commands;

/// <summary>The climate each site gets, for <c>inspect</c>: grade, factor, dullest month and distance, and what is doubtful about it.</summary>
internal static class ClimateTable
{
    private static readonly string[] Headings = ["Site", "Climate", "Grade", "Taken at", "Years", "Dullest month kWh/m2 a day", "Mean kWh/m2 a day", "Hours supplied", "Horizon", "Azimuth"];

    public static void Show(DesignInputs inputs, Terminal terminal) => terminal.Table(Headings, inputs.Sites.Select(s => RowOf(s, inputs)));

    /// <summary>What the design would notice about the climate and the nights of each site.</summary>
    public static IEnumerable<Diagnostic> Noticed(DesignInputs inputs) => inputs.Sites.SelectMany(s => ClimateStage.Examine(s, ClimateStage.ClimateOf(s, inputs), inputs));

    public static JsonObject? Json(Site site, DesignInputs? inputs)
    {
        if (inputs is null || !inputs.Sites.Any(s => s.Id == site.Id)) return null;
        var climate = ClimateStage.ClimateOf(site, inputs);
        return new JsonObject
        {
            ["name"] = inputs.Tender.Climates.NameOf(site.ClimateFile) ?? TenderClimates.Estimate,
            ["grade"] = ClimateGrades.Words(climate.Grade),
            ["cautiousFactorFraction"] = ClimateStage.CautiousFactor(climate.Grade, inputs.Rules),
            ["cautiousFactorRule"] = ClimateGrades.RuleId(climate.Grade),
            ["source"] = climate.Source,
            ["years"] = climate.YearCount,
            ["horizontalKWhPerM2Day"] = new JsonArray([.. climate.IrradiationKWhPerM2.Select(v => JsonValue.Create(Math.Round(v, 4)))]),
            ["yearsOfHours"] = ClimateStage.SeriesOf(site, inputs)?.YearCount,
        };
    }

    private static IReadOnlyList<string> RowOf(Site site, DesignInputs inputs)
    {
        var climate = ClimateStage.ClimateOf(site, inputs);
        var least = climate.IrradiationKWhPerM2.IndexOf(climate.IrradiationKWhPerM2.Min());
        return
        [
            site.Id, inputs.Tender.Climates.NameOf(site.ClimateFile) ?? TenderClimates.Estimate, ClimateGrades.Words(climate.Grade),
            Text($"{ClimateStage.CautiousFactor(climate.Grade, inputs.Rules):0.00}"), Text($"{climate.YearCount}"),
            Text($"{climate.IrradiationKWhPerM2[least]:0.00} in {CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedMonthName(least + 1)}"),
            Text($"{climate.IrradiationKWhPerM2.Average():0.00}"), HoursText(ClimateStage.SeriesOf(site, inputs)),
            site.Horizon is { } horizon ? HorizonText.Of(horizon) : "", site.AzimuthDegrees is { } azimuth ? Text($"{azimuth:0}") : "",
        ];
    }

    private static string HoursText(HourlySeries? series) => series is null ? "" : series.Kind == SeriesKind.TypicalYear ? "typical year" : Text($"{series.YearCount} years");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

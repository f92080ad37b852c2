using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Design;

/// <summary>Prints what the stages of bank and array decided: made for what is chosen, not for the many that are tried.</summary>
internal static class PowerStages
{
    /// <summary>Checks of bank and array of a whole candidate.</summary>
    public static ImmutableArray<Check> ChecksOf(Candidate candidate, Site site, SiteWeather weather, DesignInputs inputs) => candidate.Light.Integrated is { } unit
        ? IntegratedStage.PowerChecks(candidate.Power, candidate.Light, site, IntegratedStage.Weathers(unit, candidate.Light.Shape, site, weather, inputs)[0].Climate, inputs)
        : Checks(candidate.Power, candidate.Light, site, weather.Climate, inputs);

    /// <summary>Checks of a bank and its array.</summary>
    public static ImmutableArray<Check> Checks(PowerOption power, LightOption light, Site site, SiteClimate climate, DesignInputs inputs) => CheckList.Record(list =>
    {
        BankStage.BankChecks(list, power.Bank, light, site, climate, inputs);
        ArrayStage.ArrayChecks(list, power, climate, inputs.Rules);
    });
}

using TenderKit.Intake.Yaml;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Upkeep;

/// <summary>Who keeps the lights after the contract and pays for new batteries.</summary>
/// <param name="Households">Households that share, or zero when not stated: the reserve is then given for a pole.</param>
/// <param name="Fund">Name of the fund that pays a share, or empty.</param>
/// <param name="FundShareFraction">Share of the reserve the fund pays; the households pay the rest.</param>
public sealed record VillageFund(int Households, string Fund, decimal FundShareFraction);

/// <summary>Reads <c>village</c> of the tender file.</summary>
internal static class VillageSection
{
    private const int MostHouseholds = 1_000_000;

    public static VillageFund? Read(YamlSection? section)
    {
        if (section is null) return null;
        var read = new VillageFund(section.Whole("households", 0, MostHouseholds, 0), section.Text("fund") ?? "", section.Share("fund_share"));
        if (read.FundShareFraction > 0 && read.Fund.Length == 0)
            section.AddError("TK113", "'fund_share' is stated without 'fund'; name the fund that pays it", section.Line);
        section.ReportUnknownKeys();
        return read;
    }
}

using System.Collections.Immutable;
using TenderKit.Sizing.Climate;

namespace TenderKit.Tendering.Regions;

/// <summary>One place of a region, designed.</summary>
/// <param name="SunOverLamp">Irradiation on the module, taken at the fraction of its grade, over the full hours of the lamp in the month where that is least, kWh/m2 a hour.</param>
/// <param name="ArrayWp">Array of the cheapest design for this place alone, Wp.</param>
/// <param name="BatteryWh">Battery of that design, Wh.</param>
/// <param name="OwnCost">Direct cost of a pole designed for this place alone, in the tender's currency.</param>
/// <param name="CommonCost">Direct cost of a pole of the common kit here.</param>
/// <param name="DarkNightsPerYear">Of the common kit, upper 90 % bound of the mean.</param>
/// <param name="AutonomyNights">Of the common kit.</param>
public sealed record RegionPlaceDesign(
    string SiteId, string Name, double LatitudeDegrees, double LongitudeDegrees, ClimateGrade Grade, double CautiousFactor, int DarkestMonth, double SunOverLamp,
    double ArrayWp, double BatteryWh, decimal OwnCost, decimal CommonCost, double DarkNightsPerYear, double AutonomyNights);

/// <summary>Which place leaves the least margin of one requirement.</summary>
/// <param name="Places">The place or places, or empty where every place is alike.</param>
/// <param name="MarginFraction">Margin left there, fraction.</param>
public sealed record RegionGovern(string Item, string Property, ImmutableArray<string> Places, double? MarginFraction);

/// <summary>A region, designed for its worst place.</summary>
/// <param name="Sampled">Places looked at.</param>
/// <param name="Places">Places designed in full: the dullest, the coldest, the hottest and the mildest of those looked at.</param>
/// <param name="GoverningSiteId">Place with the least margin of energy under the common kit: the one the documents are made for.</param>
/// <param name="MildSiteId">Place whose own design costs least.</param>
/// <param name="Unserved">Places looked at which the common kit does not serve.</param>
public sealed record RegionDesign(
    RegionAsk Ask, int Sampled, ImmutableArray<RegionPlaceDesign> Places, ImmutableArray<RegionGovern> Governs, string GoverningSiteId, string MildSiteId,
    ImmutableArray<string> Unserved)
{
    public RegionPlaceDesign Governing => Places.First(p => p.SiteId == GoverningSiteId);

    public RegionPlaceDesign Mild => Places.First(p => p.SiteId == MildSiteId);

    /// <summary>What a pole costs more, for serving everywhere, than one designed for the mildest place alone.</summary>
    public decimal ExtraCost => Mild.CommonCost - Mild.OwnCost;
}

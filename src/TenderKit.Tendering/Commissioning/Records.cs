using System.Collections.Immutable;
using TenderKit.Sizing.Settings;

namespace TenderKit.Tendering.Commissioning;

/// <summary>How one kit is to be set, connected and tested.</summary>
/// <param name="ColdC">Battery on the coldest night of the kit's sites, degC.</param>
/// <param name="HotC">Battery on the hottest day, degC.</param>
/// <param name="GreatestChargeA">Greatest charge current of the bank, A.</param>
/// <param name="Sites">One row a site.</param>
public sealed record KitSettings(
    string KitId,
    double SystemVoltageV,
    ControllerSettings Controller,
    double ColdC,
    double HotC,
    double GreatestChargeA,
    ImmutableArray<ConnectionStep> Order,
    ImmutableArray<PoleTest> Tests,
    ImmutableArray<SiteSettings> Sites);

/// <summary>One step of connecting a pole, with its reason.</summary>
public sealed record ConnectionStep(int Number, string What, string Reason);

/// <summary>One test of a pole: how it is done and what it must show.</summary>
public sealed record PoleTest(string Name, string How, string MustShow);

/// <summary>What differs from site to site of one kit, and the light a meter must read when the installation is new.</summary>
/// <param name="LevelFraction">Level of the luminaire that is full level here, fraction.</param>
/// <param name="RequiredNewLx">Required maintained average over the maintenance factor, lx; null where the class asks for no illuminance.</param>
/// <param name="RequiredNewMinimumLx">Required maintained minimum over the maintenance factor, lx, or null.</param>
/// <param name="ExpectedNewLx">Calculated average when new, lx.</param>
/// <param name="ExpectedNewMinimumLx">Calculated minimum when new, lx.</param>
/// <param name="Grid">Where the meter is held, in words.</param>
public sealed record SiteSettings(
    string SiteId,
    string Schedule,
    double LevelFraction,
    double TiltDegrees,
    double AzimuthDegrees,
    string ClassName,
    double MaintenanceFactor,
    double? RequiredNewLx,
    double? RequiredNewMinimumLx,
    double ExpectedNewLx,
    double ExpectedNewMinimumLx,
    string Grid);

using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Light;

/// <summary>What a light sheet is made from: one luminaire over one layout of a road, already calculated.</summary>
/// <param name="Title">What the sheet is about, e.g. the name of the road.</param>
/// <param name="PhotometricFile">Name of the photometric file, without folder.</param>
/// <param name="Distribution">Light of the luminaire, new, at full output.</param>
/// <param name="Analysis">What that distribution says by itself.</param>
/// <param name="Layout">The layout.</param>
/// <param name="MaintenanceFactor">Maintenance factor behind the maintained values, fraction.</param>
/// <param name="Result">Maintained horizontal illuminance of the carriageway at <paramref name="LevelFraction"/>.</param>
/// <param name="Quality">
/// Every measure of the same road at the same level, or null when only illuminance was worked out. The classes of its strips are the ones judged.
/// </param>
/// <param name="Class">
/// Class of the carriageway, or null when none was asked for. Judged on illuminance alone when <paramref name="Quality"/> is null.
/// </param>
/// <param name="Governs">What stops a wider spacing, in words, or how the spacing came about; may be empty.</param>
/// <param name="Warnings">Whatever was noticed; notes are left out of the sheet.</param>
/// <param name="LevelFraction">Level the luminaires are run at, fraction.</param>
/// <param name="ArmReachM">From the foot of the pole to the photometric centre, m, or null when not known: then luminaires are drawn without poles.</param>
/// <param name="Lanes">Lanes of the carriageway, or null when not stated.</param>
/// <param name="Surface">Surface of the road in words, e.g. "R3, Q0 0.07", or null when no luminance was asked for.</param>
/// <param name="Issued">Date to print, or null for a sheet without a date.</param>
/// <param name="Author">Who issues it; may be empty.</param>
/// <param name="TurnDegrees">Turn of each luminaire about its vertical axis behind the values, degrees, counter-clockwise from above.</param>
public sealed record LightSheetContent(
    string Title,
    string PhotometricFile,
    LightDistribution Distribution,
    PhotometricAnalysis Analysis,
    RoadLayout Layout,
    double MaintenanceFactor,
    LightResult Result,
    RoadQuality? Quality,
    RoadClass? Class,
    string Governs,
    ImmutableArray<Diagnostic> Warnings,
    double LevelFraction = 1,
    double? ArmReachM = null,
    int? Lanes = null,
    string? Surface = null,
    DateOnly? Issued = null,
    string Author = "",
    double TurnDegrees = 0)
{
    /// <summary>ISO 639-1 code of the language of the sheet.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Every strip that something is asked of, against its class.</summary>
    internal ImmutableArray<ClassVerdict> Verdicts =>
        Quality is { } quality ? [.. OfCarriageway(quality), .. quality.Sidewalks.Select(s => s.Verdict).OfType<ClassVerdict>()]
        : Class?.Illuminance is { } target ? [ClassVerdict.OfArea(RoadQuality.CarriagewayName, Result, 0, RoadClass.Of(target))]
        : [];

    /// <summary>Whether the class asks for more than was worked out.</summary>
    internal bool IsPartly => Quality is null && Class is { } c
        && (c.Luminance is not null || c.Glare is not null || c.EdgeRatio is not null || c.MinimumVerticalLx is not null
            || c.MinimumSemicylindricalLx is not null || c.Hemispherical is not null);

    /// <summary>The class judged on the carriageway.</summary>
    internal RoadClass? Judged => Quality?.Carriageway.Class ?? Class;

    private IEnumerable<ClassVerdict> OfCarriageway(RoadQuality quality) =>
        Judged is { } judged ? [ClassVerdict.Of(quality.Carriageway, judged)] : [];
}

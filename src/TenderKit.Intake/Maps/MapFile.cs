using System.Collections.Immutable;
using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Intake.Maps;

/// <summary>What is drawn.</summary>
public enum MapShape
{
    Point,
    Line,
    Area,
}

/// <summary>One thing drawn on a map.</summary>
/// <param name="Number">1-based, in the order of the file.</param>
/// <param name="Parts">A point each, a line each, or an outer ring each without its closing point.</param>
/// <param name="Properties">Names and texts in the order of the file; the name itself is not among them.</param>
public sealed record MapFeature(
    int Number, MapShape Shape, ImmutableArray<ImmutableArray<GeoPoint>> Parts, string Name, ImmutableArray<KeyValuePair<string, string>> Properties)
{
    /// <summary>Openings inside the areas, each without its closing point.</summary>
    public ImmutableArray<ImmutableArray<GeoPoint>> Holes { get; init; } = [];

    /// <summary>Length of all lines, or around all areas, m on WGS84; zero for points.</summary>
    public double LengthM => Parts.Sum(p => MapMeasure.LengthM(p, Shape == MapShape.Area));
}

/// <summary>A map file, read.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Sha256">SHA-256 of the bytes, lower-case hex.</param>
public sealed record MapFile(string File, ImmutableArray<MapFeature> Features, string Sha256);

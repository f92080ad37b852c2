using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>An endless row of equal luminaires at equal spacing.</summary>
/// <param name="YM">Photometric centre across the road from the near edge of the carriageway, m.</param>
/// <param name="HeightM">Mounting height, m, 2 to 20.</param>
/// <param name="FacingDegrees">Direction of the street side (C 90), degrees from +x towards +y: 90 from the near side, 270 from the far side.</param>
/// <param name="TiltDegrees">Tilt of the street side upwards, degrees.</param>
/// <param name="OffsetFraction">Shift along the road as a fraction of the spacing: 0.5 for the second row of a staggered layout.</param>
public readonly record struct LuminaireRow(double YM, double HeightM, double FacingDegrees, double TiltDegrees, double OffsetFraction)
{
    /// <summary>Rows of a road layout, as <see cref="Illuminance.OnRoad"/> has them.</summary>
    public static ImmutableArray<LuminaireRow> Of(RoadLayout layout)
    {
        Illuminance.Check(layout);
        var near = new LuminaireRow(layout.OverhangM, layout.MountingHeightM, 90, layout.TiltDegrees, 0);
        var far = near with { YM = layout.WidthM - layout.OverhangM, FacingDegrees = 270 };
        return layout.Arrangement switch
        {
            Arrangement.SingleSided => [near],
            Arrangement.Opposite => [near, far],
            Arrangement.Staggered => [near, far with { OffsetFraction = 0.5 }],
            _ => throw new ArgumentOutOfRangeException(nameof(layout), layout.Arrangement, "no rows are known for this arrangement"),
        };
    }
}

/// <summary>A footway, cycle track or verge beside the carriageway.</summary>
/// <param name="Name">Name as printed.</param>
/// <param name="WidthM">Width, m, 0.5 to 20.</param>
/// <param name="Class">What is asked of it, or null.</param>
public sealed record Sidewalk(string Name, double WidthM, RoadClass? Class);

/// <summary>
/// Cross-section of a straight road in strips, and the rows that light it. y runs from the near edge of the carriageway (0) to its far edge;
/// near sidewalks lie at y below 0. Traffic runs along x.
/// </summary>
/// <param name="WidthM">Width of the carriageway, m, 0.5 to 40.</param>
/// <param name="Lanes">Lanes of equal width, 1 to 10.</param>
/// <param name="SpacingM">Spacing along one row, m, 2 to 120.</param>
/// <param name="Rows">Rows of luminaires, one or more.</param>
/// <param name="Class">What is asked of the carriageway, or null.</param>
/// <param name="NearSidewalks">From the near edge outwards, at most two.</param>
/// <param name="FarSidewalks">From the far edge outwards, at most two.</param>
/// <param name="BothDirections">
/// Whether every lane is judged by drivers of both directions (worst taken): matters for luminaires that throw more light ahead than behind.
/// </param>
public sealed record RoadSection(
    double WidthM,
    int Lanes,
    double SpacingM,
    ImmutableArray<LuminaireRow> Rows,
    RoadClass? Class,
    ImmutableArray<Sidewalk> NearSidewalks,
    ImmutableArray<Sidewalk> FarSidewalks,
    bool BothDirections = false)
{
    public double LaneWidthM => WidthM / Lanes;

    /// <summary>Greatest mounting height, m.</summary>
    public double HeightM => Rows.Max(r => r.HeightM);

    /// <summary>A carriageway alone, lit as the layout says.</summary>
    public static RoadSection Of(RoadLayout layout, int lanes, RoadClass? roadClass = null)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return new RoadSection(layout.WidthM, lanes, layout.SpacingM, LuminaireRow.Of(layout), roadClass, [], []);
    }

    internal void Check()
    {
        Require.InRange(WidthM, 0.5, 40, nameof(WidthM));
        Require.InRange(Lanes, 1, 10, nameof(Lanes));
        Require.InRange(SpacingM, 2, 120, nameof(SpacingM));
        Require.InRange(Rows.Length, 1, 8, nameof(Rows));
        foreach (var row in Rows)
        {
            Require.InRange(row.HeightM, 2, 20, nameof(Rows));
            Require.InRange(row.YM, -30, WidthM + 30, nameof(Rows));
            Require.InRange(row.TiltDegrees, 0, 45, nameof(Rows));
            Require.InRange(row.OffsetFraction, 0, 1, nameof(Rows));
        }

        Require.InRange(NearSidewalks.Length, 0, 2, nameof(NearSidewalks));
        Require.InRange(FarSidewalks.Length, 0, 2, nameof(FarSidewalks));
        foreach (var sidewalk in NearSidewalks.Concat(FarSidewalks)) Require.InRange(sidewalk.WidthM, 0.5, 20, nameof(Sidewalk.WidthM));
    }
}

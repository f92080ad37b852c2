using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>An endless row of luminaires along the road. x runs along the road, y across it to the left, angles counter-clockwise from above.</summary>
/// <param name="YM">Photometric centres across the road, m, -100 to 100.</param>
/// <param name="OffsetM">First luminaire along the road, m; the others follow at the spacing both ways.</param>
/// <param name="FacingDegrees">Direction of the street side (C 90), degrees from +x towards +y; 90 looks across from the near edge.</param>
/// <param name="TiltDegrees">Tilt of the street side upwards, degrees, 0 to 45.</param>
public readonly record struct SceneRow(double YM, double OffsetM, double FacingDegrees, double TiltDegrees);

/// <summary>A lit strip that is judged by itself: carriageway, footway, verge.</summary>
/// <param name="Name">Name as printed.</param>
/// <param name="FromYM">Lower edge, m.</param>
/// <param name="ToYM">Upper edge, m; 0.5 to 40 m from the lower one.</param>
public sealed record Strip(string Name, double FromYM, double ToYM);

/// <summary>Light of one strip.</summary>
public sealed record SceneStripLight(Strip Strip, LightResult Result);

/// <summary>Any number of endless rows of equal luminaires, and the strips they light.</summary>
/// <param name="SpacingM">Spacing along each row, m, 2 to 120.</param>
/// <param name="MountingHeightM">Mounting height, m, 2 to 20.</param>
public sealed record RoadScene(double SpacingM, double MountingHeightM, ImmutableArray<SceneRow> Rows, ImmutableArray<Strip> Strips)
{
    private const string Carriageway = "carriageway";

    /// <summary>Poles at the near (right-hand, y = 0) edge.</summary>
    /// <param name="road">Shape of the road; its arrangement is ignored.</param>
    /// <param name="rotationDegrees">Turn of each luminaire about its vertical axis, counter-clockwise from above, degrees.</param>
    public static RoadScene SingleSidedRight(RoadLayout road, double rotationDegrees = 0) => OfRows(road, [Near(road, rotationDegrees)]);

    /// <summary>Poles at the far (left-hand) edge; parameters as in <see cref="SingleSidedRight"/>.</summary>
    public static RoadScene SingleSidedLeft(RoadLayout road, double rotationDegrees = 0) => OfRows(road, [Far(road, rotationDegrees, 0)]);

    /// <summary>Poles at both edges, face to face; parameters as in <see cref="SingleSidedRight"/>.</summary>
    public static RoadScene Opposite(RoadLayout road, double rotationDegrees = 0) =>
        OfRows(road, [Near(road, rotationDegrees), Far(road, rotationDegrees, 0)]);

    /// <summary>Poles at both edges, those of the far edge moved by half a spacing; parameters as in <see cref="SingleSidedRight"/>.</summary>
    public static RoadScene Staggered(RoadLayout road, double rotationDegrees = 0) =>
        OfRows(road, [Near(road, rotationDegrees), Far(road, rotationDegrees, Checked(road).SpacingM / 2)]);

    /// <summary>The scene of a layout by its own arrangement.</summary>
    public static RoadScene Of(RoadLayout road, double rotationDegrees = 0) => Checked(road).Arrangement switch
    {
        Arrangement.SingleSided => SingleSidedRight(road, rotationDegrees),
        Arrangement.Opposite => Opposite(road, rotationDegrees),
        Arrangement.Staggered => Staggered(road, rotationDegrees),
        _ => throw new ArgumentOutOfRangeException(nameof(road), road.Arrangement, "is not known"),
    };

    /// <summary>
    /// Poles on a median, two luminaires on each, back to back. The right-hand carriageway lies below the median, the left-hand one above;
    /// each luminaire reaches out by the overhang beyond the inner edge of its own carriageway.
    /// </summary>
    /// <param name="carriageway">One carriageway: width, spacing, height, overhang, tilt.</param>
    /// <param name="medianWidthM">Width of the median, m, 0 to 40.</param>
    public static RoadScene TwinMedian(RoadLayout carriageway, double medianWidthM, double rotationDegrees = 0)
    {
        var road = Checked(carriageway);
        Require.InRange(medianWidthM, 0, 40, nameof(medianWidthM));
        var upper = road.WidthM + medianWidthM;
        return new RoadScene(
            road.SpacingM,
            road.MountingHeightM,
            [
                new SceneRow(road.WidthM - road.OverhangM, 0, 270 + rotationDegrees, road.TiltDegrees),
                new SceneRow(upper + road.OverhangM, 0, 90 + rotationDegrees, road.TiltDegrees),
            ],
            [new Strip("right carriageway", 0, road.WidthM), new Strip("left carriageway", upper, upper + road.WidthM)]);
    }

    /// <summary>A path: a narrow road lit from its right-hand edge.</summary>
    public static RoadScene Path(double widthM, double spacingM, double mountingHeightM, double overhangM, double tiltDegrees, double rotationDegrees = 0)
    {
        var road = new RoadLayout(widthM, spacingM, mountingHeightM, overhangM, tiltDegrees, Arrangement.SingleSided);
        return SingleSidedRight(road, rotationDegrees) with { Strips = [new Strip("path", 0, widthM)] };
    }

    /// <summary>The scene with one more strip to be judged, a footway for one.</summary>
    public RoadScene With(Strip strip) => this with { Strips = Strips.Add(strip) };

    private static RoadScene OfRows(RoadLayout road, ImmutableArray<SceneRow> rows) =>
        new(road.SpacingM, road.MountingHeightM, rows, [new Strip(Carriageway, 0, road.WidthM)]);

    private static SceneRow Near(RoadLayout road, double rotationDegrees) =>
        new(Checked(road).OverhangM, 0, 90 + rotationDegrees, road.TiltDegrees);

    private static SceneRow Far(RoadLayout road, double rotationDegrees, double offsetM) =>
        new(Checked(road).WidthM - road.OverhangM, offsetM, 270 + rotationDegrees, road.TiltDegrees);

    private static RoadLayout Checked(RoadLayout road)
    {
        Illuminance.Check(road);
        return road;
    }
}

/// <summary>Light of a road scene.</summary>
public static class SceneLight
{
    /// <summary>
    /// Maintained horizontal illuminance of each strip over one spacing, on the grid of <see cref="RoadGrid"/> over that strip. Source:
    /// EN 13201-3:2015, clause 7 (rules from memory). Check: single sided right equals <see cref="Illuminance.OnRoad"/>.
    /// </summary>
    /// <param name="distribution">Luminaire, new.</param>
    /// <param name="scene">Rows and strips; ranges at the records.</param>
    /// <param name="maintenanceFactor">Maintenance factor, above 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length, angle or factor outside its range.</exception>
    public static ImmutableArray<SceneStripLight> Of(LightDistribution distribution, RoadScene scene, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        ArgumentNullException.ThrowIfNull(scene);
        Require.InRange(scene.SpacingM, 2, 120, nameof(scene.SpacingM));
        Require.InRange(scene.MountingHeightM, 2, 20, nameof(scene.MountingHeightM));
        Illuminance.CheckMaintenance(maintenanceFactor);
        var field = new RowField();
        return [.. scene.Strips.Select(s => new SceneStripLight(s, OnStrip(distribution, scene, s, maintenanceFactor, field)))];
    }

    private static LightResult OnStrip(LightDistribution distribution, RoadScene scene, Strip strip, double maintenanceFactor, RowField field)
    {
        Require.InRange(strip.FromYM, -100, 100, nameof(strip.FromYM));
        var widthM = Require.InRange(strip.ToYM - strip.FromYM, 0.5, 40, nameof(strip.ToYM));
        field.Lay(scene.SpacingM, strip.FromYM, widthM);
        foreach (var row in scene.Rows)
        {
            Require.InRange(row.YM, -100, 100, nameof(row.YM));
            var tilt = Require.InRange(row.TiltDegrees, 0, 45, nameof(row.TiltDegrees));
            field.AddRow(distribution, new Mounting(scene.MountingHeightM, row.FacingDegrees, tilt), row.YM, row.OffsetM, scene.SpacingM);
        }

        return field.WithPoints(field.Summary(maintenanceFactor), maintenanceFactor);
    }
}

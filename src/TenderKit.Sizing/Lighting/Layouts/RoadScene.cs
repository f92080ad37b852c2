using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Lighting;

/// <summary>A lit strip that is judged by itself: carriageway, footway, verge.</summary>
/// <param name="Name">Name as printed.</param>
/// <param name="FromM">Lower edge across the road (y), m.</param>
/// <param name="ToM">Upper edge, m; 0.5 to 40 m from the lower one.</param>
public sealed record Strip(string Name, double FromM, double ToM);

/// <summary>Horizontal illuminance of one strip.</summary>
public sealed record StripIlluminance(Strip Strip, LightResult Result);

/// <summary>
/// Any number of endless rows of equal luminaires, and the strips they light. x runs along the road, y across it to the left, angles
/// counter-clockwise from above; nothing stands in the way of the light.
/// </summary>
/// <param name="SpacingM">Spacing along each row, m, 2 to 120.</param>
public sealed record RoadScene(double SpacingM, ImmutableArray<LuminaireRow> Rows, ImmutableArray<Strip> Strips)
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
        OfRows(road, [Near(road, rotationDegrees), Far(road, rotationDegrees, 0.5)]);

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
            [
                new LuminaireRow(road.WidthM - road.OverhangM, road.MountingHeightM, 270 + rotationDegrees, road.TiltDegrees, 0),
                new LuminaireRow(upper + road.OverhangM, road.MountingHeightM, 90 + rotationDegrees, road.TiltDegrees, 0),
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

    /// <summary>
    /// One strip as a carriageway of its own, lit by every row of the scene: what luminance and glare are worked out on. Its traffic runs
    /// along x; ask for both directions where it runs the other way.
    /// </summary>
    public RoadSection SectionOf(Strip strip, int lanes, RoadClass? roadClass = null, bool bothDirections = false)
    {
        ArgumentNullException.ThrowIfNull(strip);
        var rows = Rows.Select(r => r with { YM = r.YM - strip.FromM });
        return new RoadSection(strip.ToM - strip.FromM, lanes, SpacingM, [.. rows], roadClass, [], [], bothDirections);
    }

    private static RoadScene OfRows(RoadLayout road, ImmutableArray<LuminaireRow> rows) =>
        new(road.SpacingM, rows, [new Strip(Carriageway, 0, road.WidthM)]);

    private static LuminaireRow Near(RoadLayout road, double rotationDegrees) =>
        new(Checked(road).OverhangM, road.MountingHeightM, 90 + rotationDegrees, road.TiltDegrees, 0);

    private static LuminaireRow Far(RoadLayout road, double rotationDegrees, double offsetFraction) =>
        new(Checked(road).WidthM - road.OverhangM, road.MountingHeightM, 270 + rotationDegrees, road.TiltDegrees, offsetFraction);

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
    public static ImmutableArray<StripIlluminance> Of(LightDistribution distribution, RoadScene scene, double maintenanceFactor)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        ArgumentNullException.ThrowIfNull(scene);
        Require.InRange(scene.SpacingM, 2, 120, nameof(scene.SpacingM));
        Illuminance.CheckMaintenance(maintenanceFactor);
        var field = new RowField();
        return [.. scene.Strips.Select(s => new StripIlluminance(s, OnStrip(distribution, scene, s, maintenanceFactor, field)))];
    }

    private static LightResult OnStrip(LightDistribution distribution, RoadScene scene, Strip strip, double maintenanceFactor, RowField field)
    {
        Require.InRange(strip.FromM, -100, 100, nameof(strip.FromM));
        var widthM = Require.InRange(strip.ToM - strip.FromM, 0.5, 40, nameof(strip.ToM));
        field.Lay(scene.SpacingM, strip.FromM, widthM);
        foreach (var row in scene.Rows)
        {
            Require.InRange(row.YM, -100, 100, nameof(row.YM));
            Require.InRange(row.HeightM, 2, 20, nameof(row.HeightM));
            Require.InRange(row.TiltDegrees, 0, 45, nameof(row.TiltDegrees));
            var mounting = new Mounting(row.HeightM, row.FacingDegrees, row.TiltDegrees);
            field.AddRow(distribution, mounting, row.YM, row.OffsetFraction * scene.SpacingM, scene.SpacingM);
        }

        return field.WithPoints(field.Summary(maintenanceFactor), maintenanceFactor);
    }
}

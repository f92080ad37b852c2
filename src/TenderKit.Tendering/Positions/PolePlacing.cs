using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Positions;

/// <summary>The pole schedule of a designed tender: as many poles as are billed, where the light calculation has them.</summary>
public static class PolePlacing
{
    /// <summary>Two roads meet when they come this near, m. Common practice, no source.</summary>
    private const double MeetM = 3;

    /// <summary>A bay longer than the one calculated by this fraction is said. Common practice, no source.</summary>
    private const double BayTolerance = 0.05;

    /// <summary>Poles of all sites with a line or an area.</summary>
    public static PoleSchedule Of(TenderDesign design)
    {
        var drawn = design.Sites.Where(s => s.Site.Geometry is not null).ToList();
        var lines = drawn.Where(s => s.Site.Geometry!.Shape == MapShape.Line).ToList();
        var (poles, found) = (new List<ScheduledPole>(), new List<Diagnostic>());
        foreach (var site in drawn)
        {
            var positions = Positions(site, lines, design, found);
            poles.AddRange(positions.Select((p, i) => new ScheduledPole(
                string.Create(CultureInfo.InvariantCulture, $"{site.Site.Id}-P{i + 1:00}"), site.Site.Id, site.Site.Name, site.KitId, HeightM(site.Light), p)));
        }

        return new([.. poles], [.. found]);
    }

    private static ImmutableArray<PolePosition> Positions(SiteDesign design, List<SiteDesign> lines, TenderDesign tender, List<Diagnostic> found)
    {
        var geometry = design.Site.Geometry!;
        if (geometry.Poles.Length == design.Poles && design.Light.Area is null) return [.. geometry.Poles.Select(p => Drawn(geometry, p))];
        if (design.Light.Area is { } area && geometry.Lit is { } lit) return [.. area.Luminaires.Select((l, i) => InArea(area, lit, l, i))];
        var setbackM = tender.Rule("light.setback");
        if (design.Light.Yard is { } yard && geometry.Shape == MapShape.Area) return OnArea(design, yard, setbackM, found);
        var line = geometry.Shape == MapShape.Line ? geometry.Parts : [geometry.Parts[0].Add(geometry.Parts[0][0])];
        var junctions = Junctions(design, line, lines);
        var plan = new LinePlan(design.Poles, design.Site.Arrangement, (design.Site.WidthM / 2) + setbackM, tender.Rule("light.junction_clearance"), junctions, SideOf(design, line))
        {
            PlacesM = PlacesOf(design, line),
        };
        var placed = PolePositions.Along(line, plan);
        Report(design, line, placed, found);
        return placed;
    }

    private static PolePosition InArea(AreaLayout area, DrawnArea lit, LuminairePosition luminaire, int index) =>
        new(lit.Frame.ToGround(area.FootOf(luminaire)), Angle.Normalised(90 - luminaire.FacingDegrees), index, PoleSide.Area, "");

    /// <summary>Places with a pole at each bend, where the number of poles was found for them; empty otherwise.</summary>
    private static ImmutableArray<double> PlacesOf(SiteDesign design, ImmutableArray<ImmutableArray<GeoPoint>> line)
    {
        if (SiteLighting.DrawnOf(design.Site) is not { Shape: MapShape.Line } || design.Light.SpacingM >= design.Site.LengthM) return [];
        var scale = line.Sum(p => MapMeasure.LengthM(p)) / design.Site.LengthM;
        return [.. SiteLighting.BaysOf(design.Site, design.Light.SpacingM).PlacesM.Select(p => p * scale)];
    }

    /// <summary>The side of a single row: as the list states, else the one on the outside of the bends, else the left.</summary>
    private static PoleSide SideOf(SiteDesign design, ImmutableArray<ImmutableArray<GeoPoint>> line)
    {
        if (design.Site.Side is { } stated) return stated;
        var turned = design.Site.Arrangement == Arrangement.SingleSided ? line.SelectMany(p => PolePositions.Bends(p)).Sum(b => b.TurnDegrees) : 0;
        return turned < 0 ? PoleSide.Right : PoleSide.Left;
    }

    private static PolePosition Drawn(SiteGeometry geometry, GeoPoint pole)
    {
        var target = geometry.Shape == MapShape.Line ? NearestOn(geometry.Parts, pole) : MapMeasure.Inside(geometry.Parts[0]);
        return new(pole, Geodesic.Between(pole, target).AzimuthDegrees, 0, PoleSide.Drawn, "");
    }

    private static GeoPoint NearestOn(ImmutableArray<ImmutableArray<GeoPoint>> line, GeoPoint pole)
    {
        var part = line.MinBy(p => MapMeasure.DistanceM(p, pole));
        const int steps = 200;
        var length = MapMeasure.LengthM(part);
        return Enumerable.Range(0, steps + 1).Select(i => MapMeasure.PointAt(part, i * length / steps).Point).MinBy(p => Geodesic.Between(p, pole).LengthM);
    }

    private static ImmutableArray<PolePosition> OnArea(SiteDesign design, YardLayout yard, double setbackM, List<Diagnostic> found)
    {
        var placed = PolePositions.Around(design.Site.Geometry!.Parts[0], yard.PolesPerSide, yard.BothSides, setbackM);
        var outside = placed.Count(p => p.Remark.Length > 0);
        if (outside > 0)
            found.Add(Diagnostic.Warning("TK752", FormattableString.Invariant($"{outside} of {placed.Length} poles stand on the smallest rectangle around the area and away from the area drawn; check that they may stand there"), PlaceOf(design)));
        return placed;
    }

    private static ImmutableArray<double> Junctions(SiteDesign design, ImmutableArray<ImmutableArray<GeoPoint>> line, List<SiteDesign> lines)
    {
        var (junctions, before) = (new List<double>(), 0.0);
        foreach (var part in line)
        {
            foreach (var other in lines.Where(o => o != design).SelectMany(o => o.Site.Geometry!.Parts).Where(o => MayMeet(part, o)))
                junctions.AddRange(MapMeasure.Junctions(part, other, MeetM).Select(j => before + j));
            before += MapMeasure.LengthM(part);
        }

        return [.. junctions.Distinct().Order()];
    }

    private static bool MayMeet(ImmutableArray<GeoPoint> a, ImmutableArray<GeoPoint> b)
    {
        const double nearDegrees = 0.001;
        return a.Min(p => p.LatitudeDegrees) <= b.Max(p => p.LatitudeDegrees) + nearDegrees && b.Min(p => p.LatitudeDegrees) <= a.Max(p => p.LatitudeDegrees) + nearDegrees;
    }

    private static void Report(SiteDesign design, ImmutableArray<ImmutableArray<GeoPoint>> line, ImmutableArray<PolePosition> placed, List<Diagnostic> found)
    {
        var spacing = design.Light.SpacingM;
        var widest = placed.GroupBy(p => p.Side).Select(side => side.Zip(side.Skip(1), (a, b) => b.AlongM - a.AlongM).DefaultIfEmpty(0).Max()).DefaultIfEmpty(0).Max();
        if (placed.Any(p => p.Remark.Length > 0) && widest > spacing * (1 + BayTolerance))
            found.Add(Diagnostic.Warning("TK750", FormattableString.Invariant($"poles moved clear of a junction leave a bay of {widest:0.0} m where {spacing:0.0} m were calculated; add a pole there, or light the junction by itself"), PlaceOf(design)));
        var bends = line.SelectMany(p => PolePositions.Bends(p)).ToList();
        if (bends.Count == 0) return;
        var where = string.Join(", ", bends.Take(6).Select(b => FormattableString.Invariant($"{b.AlongM:0} m")));
        found.Add(SiteLighting.DrawnOf(design.Site) is null
            ? Diagnostic.Note("TK751", FormattableString.Invariant($"the line bends by more than {PolePositions.BendDegrees:0} degrees at {where} and the poles stand evenly along it, as many as are asked for: look at the poles there, the outer side of a bend is the better one"), PlaceOf(design))
            : Diagnostic.Note("TK751", FormattableString.Invariant($"the line bends by more than {PolePositions.BendDegrees:0} degrees at {where}; a pole stands at each bend, and no bay is longer than calculated. Light is calculated for straight roads: look at the poles there, the outer side of a bend is the better one"), PlaceOf(design)));
    }

    private static double HeightM(LightSolution light) => light.Layout?.MountingHeightM ?? light.Yard?.MountingHeightM ?? 0;

    private static Place PlaceOf(SiteDesign design) => new(Site: design.Site.Id);
}

using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Intake.Maps;
using TenderKit.Intake.Numbers;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Positions;

namespace TenderKit.Tendering.Sites;

/// <summary>Turns one row into a site; every cell is looked at even when an earlier one is wrong.</summary>
internal sealed class SiteRowReader(SiteDefaults defaults, Func<string, LightTarget?> classFinder, IReadOnlyList<string> classNames)
{
    private static readonly string[] SideNames = ["left", "right"];

    private static readonly string[] SoilNames = [SoilClasses.Dense.Name, SoilClasses.Medium.Name, SoilClasses.Soft.Name];

    public Site? Read(SiteRow row)
    {
        var name = row.Echoed(SiteColumns.Name);
        var position = row.Position;
        var kind = Kind(row);
        var (length, width) = Size(row, kind);
        var target = Target(row);
        var schedule = Schedule(row);
        var poles = row.Number(SiteColumns.Poles, QuantityKind.Count, 1, SiteLimits.GreatestPoles);
        var arrangement = row.Choice<Arrangement>(SiteColumns.Arrangement, SiteWords.ArrangementOf) ?? defaults.Arrangement;
        var shaded = row.Number(SiteColumns.Shading, QuantityKind.Fraction, 0, SiteLimits.GreatestShadedFraction) ?? defaults.ShadedFraction;
        var horizon = Horizon(row);
        var azimuth = row.Number(SiteColumns.Azimuth, QuantityKind.Degrees, 0, 360);
        var bearing = row.Number(SiteColumns.Bearing, QuantityKind.Degrees, 0, 360);
        var side = Side(row);
        var heights = row.IsFilled(SiteColumns.MountingHeight) ? row.Heights(SiteColumns.MountingHeight) : defaults.MountingHeightsM;
        var wind = row.Number(SiteColumns.Wind, QuantityKind.Speed, SiteLimits.LeastWindMPerS, SiteLimits.GreatestWindMPerS)
            ?? defaults.BasicWindMPerS;
        var terrain = row.Choice<Terrain>(SiteColumns.Terrain, SiteWords.TerrainOf) ?? defaults.Terrain;
        var (soil, soilStated) = GroundCells.Soil(row, Soil(row));
        var ground = GroundCells.Read(row, defaults.Ground);
        var (isSurveyed, surveyedOn) = SurveyCell.Read(row);
        var lot = Lot(row);
        var climate = row.Echoed(SiteColumns.ClimateFile);
        var remark = row.Echoed(SiteColumns.Remark);
        var district = row.Echoed(SiteColumns.District);
        if (row.HasErrors || target is null || schedule is null || heights is null || position is not { } point || length is null
            || width is null) return null;
        return new Site(
            row.SiteId, name, row.Row, point.LatitudeDegrees, point.LongitudeDegrees, kind, length.Value, width.Value, target, schedule, (int?)poles,
            arrangement, shaded, heights.Value,
            wind, terrain, soil, soilStated, lot, climate.Length == 0 ? null : climate, remark)
        {
            District = district,
            IsPositionStated = row.IsPositionStated,
            Horizon = horizon,
            AzimuthDegrees = azimuth,
            BearingDegrees = bearing,
            Side = side,
            Ground = ground,
            IsSurveyed = isSurveyed,
            SurveyedOn = surveyedOn,
        };
    }

    private static HorizonProfile? Horizon(SiteRow row)
    {
        if (!row.IsFilled(SiteColumns.Horizon)) return null;
        var (profile, problem) = HorizonText.Read(row.Text(SiteColumns.Horizon));
        if (profile is null) row.Error("TK183", SiteColumns.Horizon, problem!);
        else row.Understood(SiteColumns.Horizon, HorizonText.Of(profile));
        return profile;
    }

    private static PoleSide? Side(SiteRow row) => row.Choice(SiteColumns.Side, t => SiteWords.SideOf(t)?.ToString().ToLowerInvariant(), s => s, SideNames) is { } side ? SiteWords.SideOf(side) : null;

    private static SiteKind Kind(SiteRow row)
    {
        if (row.IsFilled(SiteColumns.Kind)) return row.Choice<SiteKind>(SiteColumns.Kind, SiteWords.KindOf) ?? SiteKind.Road;
        return row.Drawing is { Shape: MapShape.Area } ? SiteKind.Yard : SiteKind.Road;
    }

    private (double? LengthM, double? WidthM) Size(SiteRow row, SiteKind kind)
    {
        if (row.Drawing is { } drawn && !row.IsFilled(SiteColumns.Length)) return DrawnSize(row, drawn, kind);
        if (row.IsDrawingBroken && !row.IsFilled(SiteColumns.Length)) return (null, null);
        if (!row.IsFilled(SiteColumns.Length)) row.Error("TK182", SiteColumns.Length, "is missing; write it in metres");
        var length = row.Number(SiteColumns.Length, QuantityKind.Length, SiteLimits.LeastLengthM, SiteLimits.GreatestLengthM);
        var widest = kind == SiteKind.Yard ? SiteLimits.GreatestLengthM : SiteLimits.GreatestStripWidthM;
        if (row.IsFilled(SiteColumns.Width))
            return Ordered(kind, length, row.NumberOrGreater(SiteColumns.Width, QuantityKind.Length, SiteLimits.LeastWidthM, widest));
        if (kind != SiteKind.Yard) return (length, defaults.WidthM);
        row.Error("TK182", SiteColumns.Width, "is missing; a yard needs both sides");
        return (length, null);
    }

    /// <summary>Size measured on what is drawn.</summary>
    private (double? LengthM, double? WidthM) DrawnSize(SiteRow row, MapFeature drawn, SiteKind kind)
    {
        var box = drawn.Shape == MapShape.Area ? SiteDrawing.RectangleOf(drawn) : null;
        var (column, lengthM) = box is null ? (SiteColumns.Trace, Math.Round(drawn.LengthM, 1)) : (SiteColumns.Outline, Math.Round(box.LongSideM, 1));
        if (lengthM is < SiteLimits.LeastLengthM or > SiteLimits.GreatestLengthM)
        {
            row.Error("TK184", column, FormattableString.Invariant($"is {lengthM:0.#} m long, outside {SiteLimits.LeastLengthM} to {SiteLimits.GreatestLengthM} m; walk it again"));
            return (null, null);
        }

        var widest = kind == SiteKind.Yard ? SiteLimits.GreatestLengthM : SiteLimits.GreatestStripWidthM;
        var stated = row.NumberOrGreater(SiteColumns.Width, QuantityKind.Length, SiteLimits.LeastWidthM, widest);
        return (lengthM, stated ?? (box is null ? defaults.WidthM : Math.Max(SiteLimits.LeastWidthM, Math.Round(box.ShortSideM, 1))));
    }

    // the long side of a yard is its length
    private static (double? LengthM, double? WidthM) Ordered(SiteKind kind, double? length, double? width) =>
        kind == SiteKind.Yard && width > length ? (width, length) : (length, width);

    private LightTarget? Target(SiteRow row)
    {
        var named = row.Choice(SiteColumns.LightClass, classFinder, t => t.Name, classNames);
        var average = row.Number(SiteColumns.AverageLux, QuantityKind.Illuminance, SiteLimits.LeastLx, SiteLimits.GreatestLx);
        var minimum = row.Number(SiteColumns.MinimumLux, QuantityKind.Illuminance, 0, SiteLimits.GreatestLx);
        var uniformity = row.Number(SiteColumns.Uniformity, QuantityKind.Fraction, 0, 1);
        if (average is { } lx) return OwnTarget(row, lx, minimum, uniformity, named);
        if (row.IsFilled(SiteColumns.LightClass) || row.IsFilled(SiteColumns.AverageLux)) return named;
        if (minimum is not null || uniformity is not null)
            row.Error("TK182", SiteColumns.AverageLux, "is missing; a minimum or a uniformity needs the average beside it");
        else if (defaults.Target is null)
            row.Error("TK182", SiteColumns.LightClass, "is missing and the tender states none; write a class such as P4, or the lux asked for");
        return defaults.Target;
    }

    private static LightTarget OwnTarget(SiteRow row, double averageLx, double? minimumLx, double? uniformity, LightTarget? named)
    {
        if (named is not null) row.Warning("TK193", SiteColumns.LightClass, "stands beside lux values; the lux values are used");
        if (minimumLx > averageLx) row.Error("TK184", SiteColumns.MinimumLux, "is above the average; check which is which");
        var name = string.Create(CultureInfo.InvariantCulture, $"{averageLx:0.##} lx");
        return new(name, averageLx, minimumLx, uniformity, null, string.Create(CultureInfo.InvariantCulture, $"site list, row {row.Row}"));
    }

    private LightingSchedule? Schedule(SiteRow row)
    {
        if (row.IsFilled(SiteColumns.Schedule))
            return row.Choice(SiteColumns.Schedule, Find, s => s.Name, defaults.Schedules.Keys);
        if (Find(defaults.ScheduleName) is { } schedule) return schedule;
        row.Error("TK182", SiteColumns.Schedule,
            $"is missing and the tender's schedule '{defaults.ScheduleName}' is not defined; define it or name one here");
        return null;
    }

    private LightingSchedule? Find(string name)
    {
        var words = HeadingMatch.Words(name);
        return defaults.Schedules.GetValueOrDefault(name) ?? defaults.Schedules.FirstOrDefault(s => HeadingMatch.Words(s.Key) == words).Value;
    }

    private (SoilClass Soil, bool IsStated) Soil(SiteRow row)
    {
        if (!row.IsFilled(SiteColumns.Soil)) return (defaults.Soil, defaults.SoilStated);
        if (!SiteWords.IsUnknown(row.Text(SiteColumns.Soil)))
            return (row.Choice(SiteColumns.Soil, SiteWords.SoilOf, s => s.Name, SoilNames) ?? defaults.Soil, true);
        row.Understood(SiteColumns.Soil, SoilClasses.Soft.Name + ", the worst class");
        return (SoilClasses.Soft, false);
    }

    private string Lot(SiteRow row)
    {
        var lot = row.Echoed(SiteColumns.Lot);
        return lot.Length > 0 ? lot : defaults.LotOfSite.GetValueOrDefault(row.SiteId, "");
    }
}

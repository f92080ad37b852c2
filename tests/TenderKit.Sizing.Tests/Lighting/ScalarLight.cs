using TenderKit.Sizing.Lighting;

namespace TenderKit.Sizing.Tests.Lighting;

/// <summary>
/// The reference for the fast kernel: the inverse square law written out plainly, one luminaire and one point at a time, with the angles
/// of the standard library and the table looked up by linear search.
/// </summary>
internal static class ScalarLight
{
    public static double[] At(LightDistribution d, IReadOnlyList<LuminairePosition> luminaires, IReadOnlyList<LightPoint> points, double maintenanceFactor) =>
        [.. points.Select(p => maintenanceFactor * luminaires.Sum(l => One(d, l, p.XM - l.XM, p.YM - l.YM)))];

    /// <summary>Endless rows: every luminaire within five mounting heights of the point, by counting far enough both ways.</summary>
    public static double[] OnRoad(LightDistribution d, RoadLayout road, IReadOnlyList<LightPoint> points, double maintenanceFactor)
    {
        var farX = road.Arrangement == Arrangement.Staggered ? road.SpacingM / 2 : 0;
        var luminaires = new List<LuminairePosition>();
        for (var k = -60; k <= 60; k++)
        {
            luminaires.Add(new(k * road.SpacingM, road.OverhangM, road.MountingHeightM, 90, road.TiltDegrees));
            if (road.Arrangement == Arrangement.SingleSided) continue;
            luminaires.Add(new((k * road.SpacingM) + farX, road.WidthM - road.OverhangM, road.MountingHeightM, 270, road.TiltDegrees));
        }

        var reach = 5 * road.MountingHeightM;
        return
        [
            .. points.Select(p => maintenanceFactor * luminaires
                .Where(l => Math.Sqrt(Math.Pow(p.XM - l.XM, 2) + Math.Pow(p.YM - l.YM, 2)) <= reach)
                .Sum(l => One(d, l, p.XM - l.XM, p.YM - l.YM))),
        ];
    }

    private static double One(LightDistribution d, LuminairePosition l, double dx, double dy)
    {
        double facing = l.FacingDegrees * Math.PI / 180, tilt = l.TiltDegrees * Math.PI / 180;
        // first about the vertical by the facing, then about C 0 by the tilt
        var ahead = (dx * Math.Cos(facing)) + (dy * Math.Sin(facing));
        var along = (dx * Math.Sin(facing)) - (dy * Math.Cos(facing));
        var street = (ahead * Math.Cos(tilt)) - (l.HeightM * Math.Sin(tilt));
        var down = (ahead * Math.Sin(tilt)) + (l.HeightM * Math.Cos(tilt));
        var plane = Math.Atan2(street, along) * 180 / Math.PI;
        var gamma = Math.Atan2(Math.Sqrt((along * along) + (street * street)), down) * 180 / Math.PI;
        var distance = Math.Sqrt((dx * dx) + (dy * dy) + (l.HeightM * l.HeightM));
        return Bilinear(d, plane < 0 ? plane + 360 : plane, gamma) / (distance * distance) * (l.HeightM / distance);
    }

    private static double Bilinear(LightDistribution d, double plane, double gamma)
    {
        var (planes, gammas) = (d.PlanesDegrees.ToArray(), d.GammasDegrees.ToArray());
        if (gamma > gammas[^1]) return 0;
        var c = Math.Min(planes.Count(p => p <= plane), planes.Length - 1) - 1;
        var g = Math.Min(gammas.Count(a => a <= gamma), gammas.Length - 1) - 1;
        double u = (plane - planes[c]) / (planes[c + 1] - planes[c]), v = (gamma - gammas[g]) / (gammas[g + 1] - gammas[g]);
        double At(int i, int j) => d.IntensityCd(planes[i], gammas[j]); // at a corner of the table: the listed value
        return ((1 - u) * (1 - v) * At(c, g)) + ((1 - u) * v * At(c, g + 1)) + (u * (1 - v) * At(c + 1, g)) + (u * v * At(c + 1, g + 1));
    }
}

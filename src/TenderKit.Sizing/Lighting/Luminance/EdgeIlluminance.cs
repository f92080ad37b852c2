namespace TenderKit.Sizing.Lighting;

/// <summary>
/// Edge illuminance ratio REI: average horizontal illuminance of a strip one lane wide just outside the edge of the carriageway over that of a
/// strip of the same width just inside; the side with the lower ratio counts. Grid of each strip as for illuminance. A side whose neighbour has a
/// class of its own does not count: that class rules there.
/// Source: EN 13201-2:2015, 3.1 and clause 8; EN 13201-3:2015, 8.6 (definition from memory). Check: a row over the edge that lights both sides
/// alike gives 1 on that side.
/// </summary>
internal static class EdgeIlluminance
{
    /// <summary>The lower of the sides that count, fraction, or null when none does; a level or a maintenance factor does not change it.</summary>
    public static double? Ratio(RoadField field, RoadSection section)
    {
        var sides = new List<double>(2);
        if (IsFree(section.NearSidewalks)) sides.Add(At(field, section, 0, -section.LaneWidthM));
        if (IsFree(section.FarSidewalks)) sides.Add(At(field, section, section.WidthM - section.LaneWidthM, section.WidthM));
        return sides.Count == 0 ? null : sides.Min();
    }

    private static bool IsFree(IReadOnlyList<Sidewalk> sidewalks) => sidewalks.Count == 0 || sidewalks[0].Class is null;

    private static double At(RoadField field, RoadSection section, double insideFromYM, double outsideFromYM)
    {
        var inside = StripLight.Horizontal(field, insideFromYM, section.LaneWidthM, 1).AverageLx;
        var outside = StripLight.Horizontal(field, outsideFromYM, section.LaneWidthM, 1).AverageLx;
        return inside > 0 ? outside / inside : 0;
    }
}

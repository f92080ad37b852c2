using System.Collections.Immutable;

namespace TenderKit.Sizing.Lighting;

/// <summary>The rows of a road, ready for lookups: which luminaires act on a point, and with what intensity. New luminaires at full level.</summary>
internal sealed class RoadField
{
    private readonly LightDistribution distribution;
    private readonly ImmutableArray<(Mounting Mounting, LuminaireRow Row)> rows;

    public RoadField(LightDistribution distribution, RoadSection section)
    {
        ArgumentNullException.ThrowIfNull(distribution);
        this.distribution = distribution;
        SpacingM = section.SpacingM;
        rows = [.. section.Rows.Select(r => (new Mounting(r.HeightM, r.FacingDegrees, r.TiltDegrees), r))];
    }

    public double SpacingM { get; }

    public ImmutableArray<(Mounting Mounting, LuminaireRow Row)> Rows => rows;

    /// <summary>Adds the horizontal illuminance of every row, lx, to points of the ground.</summary>
    public void LightTo(RowField points)
    {
        foreach (var (mounting, row) in rows) points.AddRow(distribution, mounting, row.YM, row.OffsetFraction * SpacingM, SpacingM);
    }

    public double IntensityCd(in Mounting mounting, double dx, double dy, double dropM) => mounting.IntensityCd(distribution, dx, dy, dropM);

    public double XOf(in LuminaireRow row, int k) => (k + row.OffsetFraction) * SpacingM;

    /// <summary>Luminaires of a row whose x lies in a range.</summary>
    public (int First, int Last) Between(in LuminaireRow row, double fromX, double toX)
    {
        var offset = row.OffsetFraction;
        return ((int)Math.Ceiling((fromX / SpacingM) - offset - 1e-9), (int)Math.Floor((toX / SpacingM) - offset + 1e-9));
    }

    /// <summary>Luminaires of a row within five mounting heights in plan.</summary>
    public (int First, int Last) WithinCircle(in LuminaireRow row, double x, double y)
    {
        var reachM = RoadGrid.ReachInHeights * row.HeightM;
        var dy = y - row.YM;
        if (Math.Abs(dy) > reachM) return (0, -1);
        var alongM = Math.Sqrt((reachM * reachM) - (dy * dy));
        return Between(row, x - alongM, x + alongM);
    }
}

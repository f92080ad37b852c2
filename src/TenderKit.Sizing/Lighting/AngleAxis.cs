namespace TenderKit.Sizing.Lighting;

/// <summary>Ascending angles starting at 0, searched by cell; equal steps are found by one multiplication.</summary>
internal sealed class AngleAxis
{
    private readonly double[] degrees;
    private readonly double cellsPerDegree;

    public AngleAxis(IEnumerable<double> ascendingDegrees, string name)
    {
        degrees = [.. ascendingDegrees];
        if (degrees.Length < 2 || degrees[0] != 0) throw new ArgumentException("must start at 0 and hold two angles or more", name);
        for (var i = 1; i < degrees.Length; i++)
        {
            if (!(degrees[i] > degrees[i - 1])) throw new ArgumentException("must ascend", name);
        }

        cellsPerDegree = HasEqualSteps() ? (degrees.Length - 1) / degrees[^1] : 0;
    }

    public int Count => degrees.Length;

    public double Last => degrees[^1];

    public ReadOnlySpan<double> Degrees => degrees;

    /// <summary>Index of the cell that holds an angle of [0, last], and how far into the cell it lies, 0 to 1.</summary>
    public int Cell(double angle, out double fraction)
    {
        if (cellsPerDegree > 0)
        {
            var cells = angle * cellsPerDegree;
            var i = Math.Min((int)cells, degrees.Length - 2);
            fraction = cells - i;
            return i;
        }

        var cell = Search(angle);
        fraction = (angle - degrees[cell]) / (degrees[cell + 1] - degrees[cell]);
        return cell;
    }

    private int Search(double angle)
    {
        var low = 0;
        var high = degrees.Length - 1;
        while (high - low > 1)
        {
            var middle = (low + high) >> 1;
            if (degrees[middle] <= angle) low = middle;
            else high = middle;
        }

        return low;
    }

    private bool HasEqualSteps()
    {
        var step = Last / (degrees.Length - 1);
        for (var i = 1; i < degrees.Length; i++)
        {
            if (Math.Abs(degrees[i] - (i * step)) > 1e-9) return false;
        }

        return true;
    }
}

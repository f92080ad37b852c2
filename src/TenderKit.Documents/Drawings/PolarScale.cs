using PdfSharp.Drawing;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Documents.Drawings;

/// <summary>
/// Where an intensity stands in a polar diagram: gamma 0 points straight down, positive angles turn to the right, and the distance from the
/// centre is in proportion to the intensity.
/// </summary>
/// <param name="Centre">The luminaire, points.</param>
/// <param name="RadiusPt">Radius of the outer ring, points.</param>
/// <param name="StepCdPerKlm">From ring to ring, cd/klm.</param>
/// <param name="Rings">Rings; the outer one holds the greatest intensity.</param>
internal sealed record PolarScale(XPoint Centre, double RadiusPt, double StepCdPerKlm, int Rings)
{
    public double OuterCdPerKlm => StepCdPerKlm * Rings;

    /// <summary>A scale with round rings, three to five of them, the outer one at the greatest intensity or beyond.</summary>
    public static PolarScale For(XPoint centre, double radiusPt, double greatestCdPerKlm)
    {
        var step = Pencil.NiceStep(greatestCdPerKlm, 4);
        return new PolarScale(centre, radiusPt, step, Math.Max(1, (int)Math.Ceiling((greatestCdPerKlm / step) - 1e-9)));
    }

    public double Radius(double cdPerKlm) => cdPerKlm / OuterCdPerKlm * RadiusPt;

    public XPoint At(double gammaDegrees, double cdPerKlm)
    {
        var (sin, cos) = Math.SinCos(gammaDegrees * Math.PI / 180);
        return new XPoint(Centre.X + (Radius(cdPerKlm) * sin), Centre.Y + (Radius(cdPerKlm) * cos));
    }

    /// <param name="points">Points of one curve, cd.</param>
    /// <param name="perKlm">cd/klm for one cd.</param>
    public XPoint[] Line(IEnumerable<PolarPoint> points, double perKlm) => [.. points.Select(p => At(p.GammaDegrees, p.IntensityCd * perKlm))];
}

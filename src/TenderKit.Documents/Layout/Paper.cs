namespace TenderKit.Documents.Layout;

/// <summary>The page: A4 upright, in points, y down from the top edge.</summary>
internal static class Paper
{
    public const double WidthPt = 595.276;
    public const double HeightPt = 841.89;
    public const double LeftPt = 62;
    public const double RightPt = WidthPt - 62;
    public const double TopPt = 61;
    public const double BottomPt = TopPt + (108 * TextStyle.Step);
    public const double MeasurePt = RightPt - LeftPt;
    public const double FooterPt = 800;
    public const double TextHeightPt = BottomPt - TopPt;
}

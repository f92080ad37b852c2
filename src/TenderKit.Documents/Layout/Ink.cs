using PdfSharp.Drawing;

namespace TenderKit.Documents.Layout;

/// <summary>Greys only: every document survives a black-and-white printer. 0 is black, 1 is white.</summary>
internal static class Ink
{
    public const double Black = 0;
    public const double Dark = 0.35;
    public const double Mid = 0.6;
    public const double Light = 0.8;
    public const double Tint = 0.94;

    public const double HairPt = 0.35;
    public const double ThinPt = 0.5;
    public const double FirmPt = 0.9;

    public static XPen Pen(double widthPt, double grey = Black) => new(XColor.FromGrayScale(grey), widthPt);

    public static XPen Dashed(double widthPt, double grey, double onPt, double offPt) =>
        new(XColor.FromGrayScale(grey), widthPt) { DashStyle = XDashStyle.Custom, DashPattern = [onPt / widthPt, offPt / widthPt] };

    public static XBrush Fill(double grey) => new XSolidBrush(XColor.FromGrayScale(grey));
}

using PdfSharp.Drawing;

namespace TenderKit.Documents.Layout;

/// <summary>One style of text. Sizes and leading in points; grey 0 is black.</summary>
internal sealed record TextStyle(double Size, double Leading, bool Strong = false, double Grey = 0)
{
    /// <summary>Half a line of body text: every vertical distance is a multiple of it.</summary>
    public const double Step = 6.5;

    public static readonly TextStyle Title = new(24, 5 * Step, Strong: true);
    public static readonly TextStyle Chapter = new(15, 3 * Step, Strong: true);
    public static readonly TextStyle Section = new(10.5, 2 * Step, Strong: true);
    public static readonly TextStyle Body = new(9, 2 * Step);
    public static readonly TextStyle BodyStrong = new(9, 2 * Step, Strong: true);
    public static readonly TextStyle Small = new(7.5, 10);
    public static readonly TextStyle SmallStrong = new(7.5, 10, Strong: true);
    public static readonly TextStyle Fine = new(7, 8.8);
    public static readonly TextStyle FineStrong = new(7, 8.8, Strong: true);
    public static readonly TextStyle Quiet = new(7.5, 10, Grey: 0.35);
    public static readonly TextStyle Figure = new(24, 5 * Step, Strong: true);

    private readonly Lazy<XFont> _font = new(() => MakeFont(Size, Strong));

    public XFont Font => _font.Value;

    public XBrush Brush => new XSolidBrush(XColor.FromGrayScale(Grey));

    public double Width(string text) => Fonts.Face(Strong).Width(text, Size);

    private static XFont MakeFont(double size, bool strong)
    {
        Fonts.Register();
        return new XFont(Fonts.Family, size, strong ? XFontStyleEx.Bold : XFontStyleEx.Regular);
    }
}

using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Spreadsheet;

namespace TenderKit.Documents.Workbooks;

/// <summary>Numbers the looks in the order of their first use and writes the stylesheet.</summary>
internal sealed class StyleTable
{
    private const string FontName = "Arial";
    private const uint FirstOwnFormat = 164;

    private readonly List<Look> _looks = [new()];
    private readonly Dictionary<Look, uint> _numbers = new() { [new()] = 0 };

    public uint Number(Look look)
    {
        if (_numbers.TryGetValue(look, out var known)) return known;
        _looks.Add(look);
        return _numbers[look] = (uint)(_looks.Count - 1);
    }

    public Stylesheet Build()
    {
        var formats = _looks.Select(l => l.Format).Where(f => f != "General").Distinct().ToList();
        var fonts = _looks.Select(Font).Distinct().ToList();
        var shades = Enum.GetValues<Shade>();
        var lines = Enum.GetValues<Lines>();
        var cells = _looks.Select(l => CellFormat(l, formats, fonts));
        return new Stylesheet(
            new NumberingFormats(formats.Select((f, i) => new NumberingFormat { NumberFormatId = FirstOwnFormat + (uint)i, FormatCode = f })),
            new Fonts(fonts.Select(f => MakeFont(f.Bold, f.SizePt, f.Faint, f.Linked))),
            new Fills([PatternFill(PatternValues.None), PatternFill(PatternValues.Gray125), .. shades.Skip(1).Select(MakeFill)]),
            new Borders(lines.SelectMany(l => new[] { MakeBorder(l, false), MakeBorder(l, true) })),
            new CellStyleFormats(new CellFormat()),
            new CellFormats(cells),
            new CellStyles(new CellStyle { Name = "Normal", FormatId = 0, BuiltinId = 0 }),
            new DifferentialFormats(Enum.GetValues<BarShade>().Select(MakeBar)) { Count = (uint)Enum.GetValues<BarShade>().Length });
    }

    /// <summary>Formats of bars, in the order of <see cref="BarShade"/>.</summary>
    private static DifferentialFormat MakeBar(BarShade shade) => shade switch
    {
        BarShade.Light => new DifferentialFormat(new Fill(new PatternFill(new BackgroundColor { Rgb = "FFBFBFBF" }) { PatternType = PatternValues.Solid })),
        BarShade.Dark => new DifferentialFormat(new Font(new Bold(), new Color { Rgb = "FFFFFFFF" }), new Fill(new PatternFill(new BackgroundColor { Rgb = "FF404040" }) { PatternType = PatternValues.Solid })),
        _ => new DifferentialFormat(
            new Font(new Bold(), new Color { Rgb = "FF000000" }),
            new Fill(new PatternFill(new ForegroundColor { Rgb = "FF000000" }, new BackgroundColor { Rgb = "FFFFFFFF" }) { PatternType = PatternValues.LightUp })),
    };

    private static (bool Bold, double SizePt, bool Faint, bool Linked) Font(Look look) => (look.Bold, look.SizePt, look.Faint, look.Linked);

    private static CellFormat CellFormat(Look look, List<string> formats, List<(bool, double, bool, bool)> fonts) => new(
        new Alignment { Horizontal = Horizontal(look.Side), Vertical = VerticalAlignmentValues.Top, Indent = look.Side is Side.Right or Side.Left ? 1u : null, WrapText = look.Wrap ? true : null, TextRotation = look.Turned ? 90u : null },
        new Protection { Locked = !look.IsInput })
    {
        NumberFormatId = look.Format == "General" ? 0 : FirstOwnFormat + (uint)formats.IndexOf(look.Format),
        FontId = (uint)fonts.IndexOf(Font(look)),
        FillId = look.Shade == Shade.None ? 0 : (uint)look.Shade + 1,
        BorderId = ((uint)look.Lines * 2) + (look.IsInput ? 1u : 0u),
        FormatId = 0,
        ApplyNumberFormat = true,
        ApplyFont = true,
        ApplyFill = true,
        ApplyBorder = true,
        ApplyAlignment = true,
        ApplyProtection = true,
    };

    private static EnumValue<HorizontalAlignmentValues>? Horizontal(Side side) => side switch
    {
        Side.Left => HorizontalAlignmentValues.Left,
        Side.Right => HorizontalAlignmentValues.Right,
        Side.Centre => HorizontalAlignmentValues.Center,
        _ => null,
    };

    private static Font MakeFont(bool bold, double sizePt, bool faint, bool linked)
    {
        var font = new Font();
        if (bold) font.Append(new Bold());
        if (linked) font.Append(new Underline());
        font.Append(new FontSize { Val = sizePt }, new Color { Rgb = faint ? "FF595959" : "FF000000" }, new FontName { Val = FontName }, new FontFamilyNumbering { Val = 2 });
        return font;
    }

    private static Fill PatternFill(PatternValues pattern) => new(new PatternFill { PatternType = pattern });

    private static Fill MakeFill(Shade shade) => new(new PatternFill(new ForegroundColor { Rgb = Rgb(shade) }) { PatternType = PatternValues.Solid });

    private static string Rgb(Shade shade) => shade switch { Shade.Head => "FFD9D9D9", Shade.Band => "FFEDEDED", _ => "FFFFF7DB" };

    /// <summary>Input cells are framed on all sides, the rest only ruled below.</summary>
    private static Border MakeBorder(Lines lines, bool input)
    {
        var (top, bottom) = lines switch
        {
            Lines.Thin => (BorderStyleValues.None, BorderStyleValues.Hair),
            Lines.Total => (BorderStyleValues.Thin, BorderStyleValues.Thin),
            Lines.Grand => (BorderStyleValues.Thin, BorderStyleValues.Double),
            _ => (BorderStyleValues.None, BorderStyleValues.None),
        };
        if (!input) return new Border(new LeftBorder(), new RightBorder(), Edge(new TopBorder(), top), Edge(new BottomBorder(), bottom), new DiagonalBorder());
        var thin = BorderStyleValues.Thin;
        return new Border(Edge(new LeftBorder(), thin), Edge(new RightBorder(), thin), Edge(new TopBorder(), thin), Edge(new BottomBorder(), thin), new DiagonalBorder());
    }

    private static T Edge<T>(T edge, BorderStyleValues style)
        where T : BorderPropertiesType
    {
        if (style == BorderStyleValues.None) return edge;
        edge.Style = style;
        edge.Color = new Color { Rgb = "FF7F7F7F" };
        return edge;
    }
}

namespace TenderKit.Documents.Workbooks;

/// <summary>Estimates the height of wrapped text. Column widths count digits of the default font, and text runs a little narrower than digits.</summary>
internal static class TextFit
{
    private const double LettersPerDigit = 1.13;
    private const double LinePt = 12.9;
    private const double PaddingPt = 2.5;

    /// <summary>Row height for a text in a cell so wide, pt.</summary>
    public static double HeightPt(string text, double widthDigits, double sizePt, bool bold)
    {
        var scale = sizePt / 10;
        var perLine = Math.Max(1, (widthDigits - 1) * LettersPerDigit / scale / (bold ? 1.1 : 1));
        return (LineCount(text, perLine) * LinePt * scale) + PaddingPt;
    }

    private static int LineCount(string text, double perLine) => text.Split('\n').Sum(paragraph => ParagraphLines(paragraph, perLine));

    private static int ParagraphLines(string paragraph, double perLine)
    {
        var lines = 1;
        var used = 0.0;
        foreach (var word in paragraph.Split(' '))
        {
            var needed = used == 0 ? word.Length : used + 1 + word.Length;
            if (needed <= perLine)
            {
                used = needed;
                continue;
            }

            if (used > 0) lines++;
            lines += (int)((word.Length - 1) / perLine);
            used = word.Length % perLine;
        }

        return lines;
    }
}

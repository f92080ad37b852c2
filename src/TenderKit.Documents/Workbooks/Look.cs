namespace TenderKit.Documents.Workbooks;

internal enum Shade
{
    None,
    Head,
    Band,
    Input,
}

internal enum Lines
{
    None,
    Thin,
    Total,
    Grand,
}

internal enum Side
{
    General,
    Left,
    Right,
    Centre,
}

/// <summary>How a cell looks. Greys and rules carry the meaning, so that a black-and-white print keeps it.</summary>
internal sealed record Look(
    string Format = "General", bool Bold = false, double SizePt = 10, bool Faint = false, Shade Shade = Shade.None, Lines Lines = Lines.None, Side Side = Side.General, bool Wrap = false, bool Turned = false, bool Linked = false)
{
    public const string MoneyFormat = "#,##0.00";
    public const string WholeFormat = "#,##0";
    public const string PercentFormat = "0.0%";
    public const string DateFormat = "yyyy\\-mm\\-dd";

    public static readonly Look Title = new(Bold: true, SizePt: 14);
    public static readonly Look Heading = new(Bold: true, SizePt: 11);
    public static readonly Look Text = new();
    public static readonly Look Label = new(Faint: true);
    public static readonly Look Paragraph = new(Wrap: true);
    public static readonly Look Head = new(Bold: true, Shade: Shade.Head, Lines: Lines.Thin, Wrap: true);
    public static readonly Look HeadRight = Head with { Side = Side.Right };
    public static readonly Look Row = new(Lines: Lines.Thin, Wrap: true);
    public static readonly Look RowCentre = Row with { Side = Side.Centre };
    public static readonly Look Band = new(Bold: true, Shade: Shade.Band, Lines: Lines.Thin);
    public static readonly Look Whole = Number(WholeFormat);
    public static readonly Look Money = Number(MoneyFormat);
    public static readonly Look Date = Number(DateFormat);
    public static readonly Look Percent = Number(PercentFormat);
    public static readonly Look TotalText = new(Bold: true, Lines: Lines.Total, Wrap: true);
    public static readonly Look TotalMoney = new(MoneyFormat, Bold: true, Lines: Lines.Total, Side: Side.Right);
    public static readonly Look GrandText = TotalText with { Lines = Lines.Grand };
    public static readonly Look GrandMoney = TotalMoney with { Lines = Lines.Grand };

    public bool IsInput => Shade == Shade.Input;

    public static Look Number(string format) => new(format, Lines: Lines.Thin, Side: Side.Right);

    public Look AsLink() => this with { Linked = true };

    public Look AsInput() => this with { Shade = Shade.Input };
}

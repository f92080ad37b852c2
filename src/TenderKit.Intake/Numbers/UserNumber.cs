using System.Globalization;
using System.Text.RegularExpressions;
using TenderKit.Intake.Tables;

namespace TenderKit.Intake.Numbers;

/// <summary>
/// Reads the numbers of users: decimal comma or point, thousands marks, units, feet and inches, percent, hours and
/// minutes. Nothing is guessed in silence: what could be read in two ways carries a note.
/// </summary>
public static partial class UserNumber
{
    /// <summary>Reads a cell; a number the file itself holds has no marks to doubt.</summary>
    /// <param name="unit">Unit of the heading, used when the cell names none.</param>
    public static NumberReading Read(Cell cell, QuantityKind kind, DecimalMark mark = DecimalMark.Unknown, string? unit = null) =>
        cell.Number is { } number && !cell.Text.EndsWith('%') ? InBase(number, kind, null, unit, null, false) : Read(cell.Text, kind, mark, unit);

    /// <summary>Reads a text.</summary>
    /// <param name="text">As the user wrote it.</param>
    /// <param name="kind">What it measures; the value comes in the unit of this kind.</param>
    /// <param name="mark">Decimal mark of the file, where known from its other numbers.</param>
    /// <param name="unit">Unit of the heading, used when the text names none.</param>
    public static NumberReading Read(string text, QuantityKind kind, DecimalMark mark = DecimalMark.Unknown, string? unit = null)
    {
        var plain = Spelling.Plain(text);
        if (plain.Length == 0) return NumberReading.Failed("is empty; write a number");
        if (IsoDate().IsMatch(plain))
            return NumberReading.Failed("is a date; the spreadsheet may have turned 5-6 into one: format the cell as text and write it again");
        var bare = Approximate().Replace(TextMark().Replace(plain, ""), "");
        var reading = kind switch
        {
            QuantityKind.Degrees => DegreesText.Read(bare),
            QuantityKind.Money => Money(ReadMoney(bare, mark)),
            QuantityKind.Length when FeetAndInches(bare, mark) is { } feet => feet,
            QuantityKind.Hours when HoursAndMinutes(bare) is { } hours => hours,
            _ => Measured(bare, kind, mark, unit),
        };
        return !Approximate().IsMatch(plain) || reading.Value is null
            ? reading
            : reading with { Note = Join("is approximate in the source", reading.Note) };
    }

    /// <summary>Reads an amount of money exactly; a currency may stand before or after it.</summary>
    public static MoneyReading ReadMoney(string text, DecimalMark mark = DecimalMark.Unknown)
    {
        var match = MoneyPattern().Match(Spelling.Plain(text));
        if (!match.Success) return new(null, null, Problem: "is not an amount of money; write a number such as 1250.50");
        var plain = PlainNumber.Read(match.Groups["n"].Value, mark, whole: false);
        if (plain.Invariant is null || !decimal.TryParse(plain.Invariant, NumberStyles.Number, CultureInfo.InvariantCulture, out var amount))
            return new(null, null, Problem: "has marks that fit no number; write it as 1250.50");
        var currency = (match.Groups["before"].Value.Trim() + " " + match.Groups["after"].Value.Trim()).Trim();
        return new(amount, currency.Length == 0 ? null : currency, AmbiguityNote(plain), Ambiguous: plain.Ambiguous);
    }

    /// <summary>Reads a single length or a range such as <c>5-6 m</c>, ends included; one value gives two equal ends.</summary>
    public static (NumberReading Low, NumberReading High) ReadRange(string text, QuantityKind kind, DecimalMark mark = DecimalMark.Unknown,
        string? unit = null)
    {
        var match = RangePattern().Match(Spelling.Plain(text));
        if (!match.Success) return (Read(text, kind, mark, unit), Read(text, kind, mark, unit));
        var high = Read(match.Groups["b"].Value, kind, mark, unit);
        return (Read(match.Groups["a"].Value, kind, mark, high.Unit ?? unit), high);
    }

    private static NumberReading Measured(string text, QuantityKind kind, DecimalMark mark, string? headingUnit)
    {
        if (RangePattern().IsMatch(text)) return NumberReading.Failed("is a range; write one number");
        var match = NumberPattern().Match(text);
        if (!match.Success) return NumberReading.Failed("is not a number; " + HowTo(kind));
        var plain = PlainNumber.Read(match.Groups["n"].Value, mark, kind == QuantityKind.Count);
        if (plain.Invariant is null) return NumberReading.Failed("has marks that fit no number; " + HowTo(kind));
        if (!double.TryParse(plain.Invariant + match.Groups["e"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            || !double.IsFinite(value))
            return NumberReading.Failed("is too large a number; " + HowTo(kind));
        var unit = match.Groups["u"].Value.Trim();
        return InBase(value, kind, unit.Length == 0 ? null : unit, headingUnit, AmbiguityNote(plain), plain.Ambiguous);
    }

    private static NumberReading InBase(double value, QuantityKind kind, string? unit, string? headingUnit, string? note, bool ambiguous)
    {
        var spelling = unit ?? headingUnit;
        double? converted = spelling is null ? value : UnitSpellings.ToBase(value, kind, spelling);
        if (converted is not { } inBase)
            return NumberReading.Failed(kind is QuantityKind.Number or QuantityKind.Money
                ? $"has '{spelling}' after the number; write the number alone"
                : $"has the unit '{spelling}', which is not read here; {HowTo(kind)}");
        if (kind == QuantityKind.Count && inBase % 1 != 0) return NumberReading.Failed("is not a whole number; write whole pieces");
        if (kind == QuantityKind.Fraction && spelling is null && inBase > 1)
        {
            inBase /= 100;
            note = Join("is above 1 and was read as percent", note);
        }

        return new(inBase, Understood(inBase, kind), note, Unit: unit, Ambiguous: ambiguous);
    }

    private static string Understood(double value, QuantityKind kind)
    {
        var text = kind == QuantityKind.Fraction
            ? Text(value * 100) + " %"
            : $"{Text(value)} {UnitSpellings.BaseSymbol(kind)}";
        return text.TrimEnd();
    }

    private static string Text(double value) =>
        value != 0 && Math.Abs(value) < 1e-4
            ? value.ToString("G4", CultureInfo.InvariantCulture)
            : value.ToString("0.######", CultureInfo.InvariantCulture);

    private static NumberReading? FeetAndInches(string text, DecimalMark mark)
    {
        var match = FeetPattern().Match(text);
        if (!match.Success) return null;
        var feet = double.Parse(match.Groups["f"].Value, CultureInfo.InvariantCulture);
        var inches = PlainNumber.Read(match.Groups["i"].Value, mark, whole: false);
        if (inches.Invariant is null || double.Parse(inches.Invariant, CultureInfo.InvariantCulture) is not (< 12 and var i))
            return NumberReading.Failed("has 12 or more inches; write feet and inches as 5'6\", or metres");
        var metres = UnitSpellings.ToBase((feet * 12) + i, QuantityKind.Length, "in")!.Value;
        return new(metres, Understood(metres, QuantityKind.Length), Unit: "ft");
    }

    private static NumberReading? HoursAndMinutes(string text)
    {
        var match = HoursPattern().Match(text);
        if (!match.Success) return null;
        var minutes = int.Parse(match.Groups["m"].Value, CultureInfo.InvariantCulture);
        if (minutes >= 60) return NumberReading.Failed("has 60 or more minutes; write 4 h 30 min or 4.5 h");
        var hours = int.Parse(match.Groups["h"].Value, CultureInfo.InvariantCulture) + (minutes / 60.0);
        return new(hours, Understood(hours, QuantityKind.Hours), Unit: "h");
    }

    private static NumberReading Money(MoneyReading money) => money.Amount is { } amount
        ? new((double)amount, amount.ToString(CultureInfo.InvariantCulture), money.Note, Unit: money.Currency, Ambiguous: money.Ambiguous)
        : NumberReading.Failed(money.Problem!);

    private static string? AmbiguityNote(PlainNumber.Plain plain) =>
        plain.Ambiguous ? $"was read as {plain.Invariant}, the comma as a thousands mark; write {plain.Invariant} or use a decimal point" : null;

    private static string? Join(string first, string? second) => second is null ? first : first + "; " + second;

    private static string HowTo(QuantityKind kind) => kind switch
    {
        QuantityKind.Number or QuantityKind.Money => "write a number such as 12.5",
        QuantityKind.Count => "write a whole number such as 12",
        QuantityKind.Fraction => "write it as 0.8 or 80 %",
        QuantityKind.Length => "write metres such as 12.5, or a unit: m, km, cm, mm, ft, in",
        _ => $"write a number in {UnitSpellings.BaseSymbol(kind)} such as 12.5",
    };

    [GeneratedRegex(@"^\d{4}-\d{2}-\d{2}(?: .*)?$")]
    private static partial Regex IsoDate();

    // an apostrophe before a number marks it as text in spreadsheet programs
    [GeneratedRegex(@"^'(?=[\d+-])")]
    private static partial Regex TextMark();

    [GeneratedRegex(@"^(?:approximately|approximativement|approximatif|appr|approx|app|aproximadamente|aprox|environ|env|about|around|circa|cerca de|ca|c|~|\u2248|\u00B1)\.?\s*(?=[\d+-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Approximate();

    [GeneratedRegex(@"^(?<n>[+-]?\s?(?:\d[\d.,' ]*\d|\d|[.,]\d+))(?<e>[eE][+-]?\d+)?\s*(?<u>[^\d\s.,+-].*)?\.?$")]
    private static partial Regex NumberPattern();

    [GeneratedRegex(@"^(?<before>[^\d+\-.,]*\.?\s*)(?<n>[+-]?(?:\d[\d.,' ]*\d|\d|[.,]\d+))(?:,-|\.-)?(?<after>[^\d.,]*\.?)$")]
    private static partial Regex MoneyPattern();

    [GeneratedRegex(@"^(?<a>\d[\d.,]*(?:\s*[a-z'""]+)?)\s*(?:-|\bto\b|\.\.+|\bbis\b|\u00E0)\s*(?<b>\d[\d.,]*(?:\s*[a-z'""]+)?)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex RangePattern();

    [GeneratedRegex(@"^(?<f>\d+)\s*(?:'|feet|foot|ft\.?)\s*-?\s*(?<i>\d{1,2}(?:[.,]\d+)?)\s*(?:""|''|inches|inch|in\.?)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex FeetPattern();

    [GeneratedRegex(@"^(?<h>\d{1,2})\s*(?:hours|hour|hrs|hr|h|:)\s*(?<m>\d{1,2})\s*(?:minutes|mins|min|m)?(?::00)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HoursPattern();
}

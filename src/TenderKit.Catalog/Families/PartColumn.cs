using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Tables;

namespace TenderKit.Catalog.Families;

/// <summary>One property of a part record as a column of a csv file and of the store.</summary>
public sealed partial class PartColumn
{
    private readonly PropertyInfo property;
    private readonly Type type;
    private readonly PartRange? range;

    internal PartColumn(PropertyInfo property)
    {
        this.property = property;
        type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        IsNullable = type != property.PropertyType;
        IsRequired = property.IsDefined(typeof(RequiredMemberAttribute));
        Name = WordStart().Replace(property.Name, "_").ToLowerInvariant();
        range = PartRange.For(property.DeclaringType!, property.Name);
    }

    /// <summary>Property name in snake case: <c>RatedWp</c> is <c>rated_wp</c>.</summary>
    public string Name { get; }

    public string PropertyName => property.Name;

    public bool IsRequired { get; }

    public bool IsNullable { get; }

    /// <summary>Whether the property is a number or a list of numbers.</summary>
    public bool IsNumeric => type == typeof(double) || type == typeof(int) || type == typeof(decimal) || type == typeof(ImmutableArray<double>);

    internal bool IsText => type == typeof(string);

    /// <summary>Whether the values stand in the table of prices and not in that of the family.</summary>
    internal bool IsPrices => type == typeof(ImmutableArray<PriceBreak>);

    /// <summary>Names allowed, for a property with a closed list of values.</summary>
    public IReadOnlyList<string> Choices => ItemType.IsEnum ? Enum.GetNames(ItemType) : [];

    internal string SqlType => type == typeof(double) ? "REAL" : type == typeof(int) || type == typeof(bool) ? "INTEGER" : "TEXT";

    internal bool IsYesNo => type == typeof(bool);

    internal bool IsList => type != ItemType;

    private Type ItemType => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>) ? type.GetGenericArguments()[0] : type;

    /// <summary>What a heading and a name have in common: letters and digits only.</summary>
    public static string Key(string heading) => NotLetterOrDigit().Replace(Spelling.Folded(heading), "");

    public object? Of(Part part) => property.GetValue(part);

    /// <summary>A value as written in a csv file.</summary>
    public string TextOf(object? value) => Text(value);

    /// <summary>Why a number of the property lies outside its <see cref="PartRange"/>, or null.</summary>
    internal string? RangeProblem(Part part) => range is null ? null : RangeProblem(Of(part));

    /// <summary>Why a value of the property lies outside its <see cref="PartRange"/>, or null.</summary>
    internal string? RangeProblem(object? value) => range is null ? null : value switch
    {
        double d => range.Problem(d),
        int i => range.Problem(i),
        decimal m => range.Problem((double)m),
        ImmutableArray<double> list => list.Select(range.Problem).FirstOrDefault(p => p is not null),
        _ => null,
    };

    internal void Set(Part part, object? value) => property.SetValue(part, value);

    /// <summary>Reads a cell: the value, or the problem in words.</summary>
    internal (object? Value, string? Problem) Read(Cell cell, DecimalMark mark)
    {
        if (type == typeof(string)) return (cell.Text, null);
        if (type == typeof(bool)) return YesNo(cell.Text);
        if (type == typeof(DateOnly)) return Date(cell.Text);
        if (type == typeof(decimal)) return Money(cell.Text, mark);
        if (type.IsEnum) return Choice(cell.Text);
        if (type == typeof(ImmutableArray<double>)) return NumberList(cell, mark);
        if (IsPrices) return PriceList(cell.Text, mark);
        return IsList ? EnumList(cell.Text) : Number(cell, mark);
    }

    /// <summary>Canonical text of a value: the same for a csv file and for the store.</summary>
    internal string Text(object? value) => value switch
    {
        null => "",
        string s => s,
        double d => d.ToString("R", CultureInfo.InvariantCulture),
        decimal m => m.ToString("0.############################", CultureInfo.InvariantCulture),
        bool b => b ? "yes" : "no",
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        System.Collections.IEnumerable list when IsList => string.Join(';', list.Cast<object>().Select(Text)),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };

    internal object? ToSql(object? value) => value switch
    {
        null => null,
        double or int => value,
        bool b => b ? 1 : 0,
        _ => Text(value),
    };

    /// <exception cref="FormatException">The store holds a text that is no value of this column.</exception>
    internal object? FromSql(object? stored) => stored switch
    {
        null or DBNull => null,
        double d => d,
        long n when type == typeof(bool) => n != 0,
        long n => (int)n,
        string s when IsText => s,
        string s => Read(new Cell(s, 1, 1), DecimalMark.Point) is (var value, null) ? value : throw new FormatException($"column {Name} holds '{s}'"),
        _ => throw new FormatException($"column {Name} holds a value of the wrong kind"),
    };

    private (object? Value, string? Problem) Number(Cell cell, DecimalMark mark)
    {
        if (cell.Number is null && IsPlain(cell.Text, mark))
        {
            if (type == typeof(double)) return (double.Parse(cell.Text, NumberStyles.Float, CultureInfo.InvariantCulture), null);
            if (int.TryParse(cell.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole)) return (whole, null);
        }

        var isPercent = cell.Text.EndsWith('%') && Name.EndsWith("fraction", StringComparison.Ordinal);
        var kind = type == typeof(int) ? QuantityKind.Count : isPercent ? QuantityKind.Fraction : QuantityKind.Number;
        var reading = UserNumber.Read(cell, kind, mark);
        if (reading.Problem is not null) return (null, reading.Problem);
        if (reading.Ambiguous)
            return (null, "may have a decimal comma or a thousands comma; write it with a decimal point and without thousands marks");
        if (type != typeof(int)) return (reading.Value!.Value, null);
        return Math.Abs(reading.Value!.Value) <= int.MaxValue ? ((int)reading.Value.Value, null) : (null, "is too large a number");
    }

    /// <summary>Digits with at most one point, which can be read in one way only; the long way round gives the same.</summary>
    private static bool IsPlain(string text, DecimalMark mark)
    {
        if (text.Length > MostPlainDigits) return false;
        var (digits, points) = (0, 0);
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsAsciiDigit(text[i])) digits++;
            else if (text[i] == '.' && digits > 0 && i < text.Length - 1) points++;
            else if (text[i] != '-' || i > 0) return false;
        }

        return digits > 0 && (points == 0 || (points == 1 && mark != DecimalMark.Comma));
    }

    private static (object? Value, string? Problem) Money(string text, DecimalMark mark)
    {
        if (IsPlain(text, mark)) return (Bare(decimal.Parse(text, NumberStyles.Number, CultureInfo.InvariantCulture)), null);
        var money = UserNumber.ReadMoney(text, mark);
        if (money.Problem is not null) return (null, money.Problem);
        if (money.Currency is not null)
            return (null, $"has '{money.Currency}' beside the amount; write the number alone and the currency in its own column");
        if (money.Ambiguous)
            return (null, "may have a decimal comma or a thousands comma; write it with a decimal point and without thousands marks");
        return (Bare(money.Amount!.Value), null);
    }

    /// <summary>The amount without zeros at its end.</summary>
    private static decimal Bare(decimal amount) => amount / 1.0000000000000000000000000000m;

    private static (object? Value, string? Problem) PriceList(string text, DecimalMark mark)
    {
        var breaks = ImmutableArray.CreateBuilder<PriceBreak>();
        foreach (var item in Items(text))
        {
            var halves = item.Split(':', StringSplitOptions.TrimEntries);
            if (halves.Length != 2) return (null, $"has '{item}', which is no quantity and price; write them as 50:43.20;200:41.00");
            var ((from, fromProblem), (price, priceProblem)) = (Money(halves[0], mark), Money(halves[1], mark));
            if ((fromProblem ?? priceProblem) is { } problem) return (null, $"has '{item}', which {problem}; write quantity and price as 50:43.20;200:41.00");
            breaks.Add(new((decimal)from!, (decimal)price!));
        }

        return PriceListProblem(breaks) is { } wrong ? (null, wrong) : (breaks.ToImmutable(), null);
    }

    private static string? PriceListProblem(ImmutableArray<PriceBreak>.Builder breaks)
    {
        for (var i = 0; i < breaks.Count; i++)
        {
            if (breaks[i].FromQuantity <= 0) return "has a quantity that is not above 0; a break holds from a quantity on";
            if (breaks[i].UnitPrice < 0) return "has a price below 0; check the sign";
            if (i > 0 && breaks[i].FromQuantity <= breaks[i - 1].FromQuantity) return "does not rise in quantity; write the smaller quantity first";
        }

        return null;
    }

    private (object? Value, string? Problem) Choice(string text)
    {
        var key = Key(text);
        var name = Choices.FirstOrDefault(c => Key(c) == key);
        return name is null ? (null, $"is none of: {string.Join(", ", Choices)}") : (Enum.Parse(ItemType, name), null);
    }

    private (object? Value, string? Problem) EnumList(string text)
    {
        var items = Items(text).Select(Choice).ToList();
        if (items.Find(i => i.Problem is not null) is { Problem: { } problem }) return (null, problem);
        var array = Array.CreateInstance(ItemType, items.Count);
        for (var i = 0; i < items.Count; i++) array.SetValue(items[i].Value, i);
        return (Immutable(array), null);
    }

    private object Immutable(Array array) =>
        typeof(ImmutableArray).GetMethods()
            .First(m => m is { Name: nameof(ImmutableArray.ToImmutableArray), IsGenericMethodDefinition: true }
                && m.GetParameters()[0].ParameterType.Name == "IEnumerable`1")
            .MakeGenericMethod(ItemType).Invoke(null, [array])!;

    private static (object? Value, string? Problem) NumberList(Cell cell, DecimalMark mark)
    {
        if (cell.Number is { } single) return (ImmutableArray.Create(single), null);
        var readings = Items(cell.Text).Select(i => UserNumber.Read(i, QuantityKind.Number, mark)).ToList();
        return readings.Find(r => r.Problem is not null) is { Problem: { } problem }
            ? (null, problem)
            : (readings.Select(r => r.Value!.Value).ToImmutableArray(), null);
    }

    private static string[] Items(string text) => text.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>More digits than a double holds exactly are read the long way.</summary>
    private const int MostPlainDigits = 15;

    private static (object? Value, string? Problem) YesNo(string text) => text.ToUpperInvariant() switch
    {
        "YES" or "TRUE" or "1" or "Y" => (true, null),
        "NO" or "FALSE" or "0" or "N" => (false, null),
        _ => (null, "is neither yes nor no"),
    };

    private static (object? Value, string? Problem) Date(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? (date, null)
            : (null, "is not a date; write it as 2026-03-31");

    [GeneratedRegex(@"(?<=[a-z0-9])(?=[A-Z])|(?<=[a-z])(?=\d\d)")]
    private static partial Regex WordStart();

    [GeneratedRegex(@"[^\p{L}\p{Nd}]")]
    private static partial Regex NotLetterOrDigit();
}

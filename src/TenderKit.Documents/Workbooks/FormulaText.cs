using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Tendering.Bill;

namespace TenderKit.Documents.Workbooks;

/// <summary>Prints an expression as the formula of a workbook (OpenFormula spelling, without the leading equals sign).</summary>
internal sealed class FormulaText(string sheet, Func<CellId, Address> addressOf)
{
    /// <summary>Longest formula a workbook may hold.</summary>
    public const int MaxLength = 8192;

    private const int MaxArguments = 255;

    public string Print(Expression expression)
    {
        var text = Text(expression);
        return text.Length < MaxLength ? text : throw new InvalidOperationException($"a formula of {text.Length.ToString(CultureInfo.InvariantCulture)} characters does not fit a cell");
    }

    private string Text(Expression expression) => expression switch
    {
        Literal e => e.Value.ToString("0.############################", CultureInfo.InvariantCulture),
        Reference e => addressOf(e.Cell).From(sheet),
        Sum e => SumText(e.Terms),
        Difference e => Text(e.Left) + "-" + Subtracted(e.Right),
        Product e => string.Join("*", e.Factors.Select(Tight)),
        Quotient e => Tight(e.Dividend) + "/" + Denominator(e.Divisor),
        Rounded e => string.Create(CultureInfo.InvariantCulture, $"ROUND({Text(e.Inner)},{e.Decimals})"),
        RoundedUp e => $"ROUNDUP({Text(e.Inner)},0)",
        Greatest e => $"MAX({string.Join(",", Arguments(e.Terms))})",
        Least e => $"MIN({string.Join(",", Arguments(e.Terms))})",
        AtLeast e => $"IF({Text(e.Left)}>={Text(e.Right)},{Text(e.Then)},{Text(e.Otherwise)})",
        _ => throw new ArgumentException($"{expression.GetType().Name} has no formula", nameof(expression)),
    };

    private string Tight(Expression factor)
    {
        var text = Text(factor);
        return factor is Difference or Literal { Value: < 0 } || (factor is Sum && !IsOneCall(text) && text.Contains('+', StringComparison.Ordinal)) ? $"({text})" : text;
    }

    private static bool IsOneCall(string text) => text.StartsWith("SUM(", StringComparison.Ordinal) && text.IndexOf(')', StringComparison.Ordinal) == text.Length - 1;

    private string Denominator(Expression divisor) => divisor is Product or Quotient or Sum or Difference or Literal { Value: < 0 } ? $"({Text(divisor)})" : Text(divisor);

    private string Subtracted(Expression right) => right is Sum or Difference or Literal { Value: < 0 } ? $"({Text(right)})" : Text(right);

    private string SumText(ImmutableArray<Expression> terms)
    {
        if (terms.IsEmpty) return "0";
        var arguments = Arguments(terms);
        if (arguments.Count == terms.Length) return string.Join("+", arguments);
        return string.Join("+", arguments.Chunk(MaxArguments).Select(part => $"SUM({string.Join(",", part)})"));
    }

    /// <summary>Terms in order, runs of neighbouring cells drawn together into ranges.</summary>
    private List<string> Arguments(ImmutableArray<Expression> terms)
    {
        var arguments = new List<string>();
        for (var i = 0; i < terms.Length;)
        {
            var run = RunLength(terms, i);
            arguments.Add(run > 1 ? Text(terms[i]) + ":" + AddressOf(terms[i + run - 1])!.Value.Local : Text(terms[i]));
            i += run;
        }

        return arguments;
    }

    private int RunLength(ImmutableArray<Expression> terms, int start)
    {
        if (AddressOf(terms[start]) is not { } first) return 1;
        return Math.Max(Run(terms, start, first, 1, 0), Run(terms, start, first, 0, 1));
    }

    private int Run(ImmutableArray<Expression> terms, int start, Address first, int down, int right)
    {
        var length = 1;
        while (start + length < terms.Length
            && AddressOf(terms[start + length]) == first with { Row = first.Row + (down * length), Column = first.Column + (right * length) })
        {
            length++;
        }

        return length;
    }

    private Address? AddressOf(Expression term) => term is Reference reference ? addressOf(reference.Cell) : null;
}

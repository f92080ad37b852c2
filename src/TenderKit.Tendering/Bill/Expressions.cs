using System.Collections.Immutable;

namespace TenderKit.Tendering.Bill;

/// <summary>Name of a cell of the bill, e.g. <c>K1.luminaire.qty</c>; the documents give it an address.</summary>
public readonly record struct CellId(string Name)
{
    public override string ToString() => Name;
}

/// <summary>
/// An amount of the bill: a number or a small expression. It evaluates to decimal for the machine-readable bid and prints as the
/// workbook's formula; one definition, so the two can never disagree.
/// </summary>
public abstract record Expression;

/// <summary>A literal: an input cell.</summary>
public sealed record Literal(decimal Value) : Expression;

/// <summary>The value of another cell.</summary>
public sealed record Reference(CellId Cell) : Expression;

/// <summary>Sum of terms.</summary>
public sealed record Sum(ImmutableArray<Expression> Terms) : Expression;

/// <summary>Difference of two expressions.</summary>
public sealed record Difference(Expression Left, Expression Right) : Expression;

/// <summary>Product of factors.</summary>
public sealed record Product(ImmutableArray<Expression> Factors) : Expression;

/// <summary>Half away from zero to so many decimals, as a spreadsheet's ROUND does.</summary>
public sealed record Rounded(Expression Inner, int Decimals) : Expression;

/// <summary>Next whole number up, as a spreadsheet's ROUNDUP(x, 0) does for x of zero or more.</summary>
public sealed record RoundedUp(Expression Inner) : Expression;

/// <summary>Quotient of two expressions; the divisor must not be zero.</summary>
public sealed record Quotient(Expression Dividend, Expression Divisor) : Expression;

/// <summary>Greatest of several expressions, as a spreadsheet's MAX.</summary>
public sealed record Greatest(ImmutableArray<Expression> Terms) : Expression;

/// <summary>Least of several expressions, as a spreadsheet's MIN.</summary>
public sealed record Least(ImmutableArray<Expression> Terms) : Expression;

/// <summary>One expression where the left reaches the right, else another, as a spreadsheet's IF(left &gt;= right, then, otherwise).</summary>
public sealed record AtLeast(Expression Left, Expression Right, Expression Then, Expression Otherwise) : Expression;

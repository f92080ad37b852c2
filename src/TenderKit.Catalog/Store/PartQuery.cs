using System.Collections.Immutable;
using System.Linq.Expressions;
using TenderKit.Catalog.Families;

namespace TenderKit.Catalog.Store;

/// <summary>A question to the store for parts of one family; the store answers it through its indexes, not by going through all parts.</summary>
/// <typeparam name="T">Family asked for.</typeparam>
public sealed record PartQuery<T>
    where T : Part
{
    private static readonly PartFamily Family = PartFamily.Of<T>();

    internal ImmutableArray<(string Sql, object? Value)> Terms { get; init; } = [];

    /// <summary>Parts whose property is at least a value; unknown values are left out.</summary>
    public PartQuery<T> AtLeast(Expression<Func<T, double?>> property, double value) => With(property, ">=", value);

    /// <summary>Parts whose property is at most a value; unknown values are left out.</summary>
    public PartQuery<T> AtMost(Expression<Func<T, double?>> property, double value) => With(property, "<=", value);

    /// <summary>Parts whose property lies between two values, both included.</summary>
    public PartQuery<T> Between(Expression<Func<T, double?>> property, double low, double high) => AtLeast(property, low).AtMost(property, high);

    /// <summary>Parts whose property equals a value: a number, a text, a name of a closed list, yes or no.</summary>
    public PartQuery<T> Is<TValue>(Expression<Func<T, TValue>> property, TValue value) => With(property, "=", value switch
    {
        bool b => b ? 1 : 0,
        Enum name => name.ToString(),
        _ => value,
    });

    internal string Where => Terms.IsEmpty ? "" : "WHERE " + string.Join(" AND ", Terms.Select((t, i) => FormattableString.Invariant($"{t.Sql} @p{i}")));

    private PartQuery<T> With(LambdaExpression property, string comparison, object? value) =>
        this with { Terms = Terms.Add(($"{Schema.ColumnOf(Family, NameOf(property.Body))} {comparison}", value)) };

    private static string NameOf(Expression body) => body switch
    {
        MemberExpression { Member.Name: var name } => name,
        UnaryExpression { Operand: var inner } => NameOf(inner),
        _ => throw new ArgumentException("the property must be named alone, such as m => m.RatedWp", nameof(body)),
    };
}

/// <summary>Begins a question.</summary>
public static class PartQuery
{
    public static PartQuery<T> For<T>()
        where T : Part => new();
}

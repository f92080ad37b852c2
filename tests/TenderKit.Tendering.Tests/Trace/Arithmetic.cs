using System.Globalization;
using Xunit;

namespace TenderKit.Tendering.Tests.Trace;

/// <summary>
/// A small calculator for formulas as they are printed: "x = a × b ^ 2 where a = ...". Knows nothing of the program: numbers, lists, + − × / ^, brackets and a
/// few functions. Angles in degrees.
/// </summary>
internal sealed class Arithmetic
{
    private readonly Dictionary<string, double[]> _values;
    private readonly string _text;
    private int _at;

    private Arithmetic(string text, Dictionary<string, double[]> values) => (_text, _values) = (text, values);

    /// <summary>Value of what stands right of the equals sign.</summary>
    public static double Of(string formula, IEnumerable<(string Symbol, IEnumerable<double> Values)> inputs)
    {
        var values = inputs.ToDictionary(i => i.Symbol, i => i.Values.ToArray(), StringComparer.Ordinal);
        values["pi"] = [Math.PI];
        var parts = formula.Split(" where ");
        foreach (var definition in parts.Skip(1).Reverse()) values[Name(definition)] = Whole(Right(definition), values);
        return Assert.Single(Whole(Right(parts[0]), values));
    }

    private static string Name(string definition) => definition[..definition.IndexOf('=', StringComparison.Ordinal)].Trim();

    private static string Right(string definition) => definition[(definition.IndexOf('=', StringComparison.Ordinal) + 1)..];

    private static double[] Whole(string text, Dictionary<string, double[]> values)
    {
        var reader = new Arithmetic(text, values);
        var value = reader.Sum();
        if (reader.Peek() != '\0') throw new FormatException($"'{text}' is not understood from place {reader._at}");
        return value;
    }

    private double[] Sum()
    {
        var left = Product();
        while (Peek() is '+' or '−')
        {
            var minus = Take() == '−';
            left = Each(left, Product(), (a, b) => minus ? a - b : a + b);
        }

        return left;
    }

    private double[] Product()
    {
        var left = Signed();
        while (Peek() is '×' or '/')
        {
            var over = Take() == '/';
            left = Each(left, Signed(), (a, b) => over ? a / b : a * b);
        }

        return left;
    }

    private double[] Signed()
    {
        if (Peek() != '−') return Power();
        Take();
        return [.. Signed().Select(v => -v)];
    }

    private double[] Power()
    {
        var left = Atom();
        if (Peek() != '^') return left;
        Take();
        return Each(left, Signed(), Math.Pow);
    }

    private double[] Atom()
    {
        if (Peek() == '(') return Bracket()[0];
        var start = _at;
        while (_at < _text.Length && (char.IsLetterOrDigit(_text[_at]) || _text[_at] == '.')) _at++;
        var word = _text[start.._at];
        if (word.Length == 0) throw new FormatException($"'{_text}' is not understood from place {_at}");
        if (char.IsDigit(word[0])) return [double.Parse(word, CultureInfo.InvariantCulture)];
        return Peek() == '(' ? Function(word, Bracket()) : _values[word];
    }

    private List<double[]> Bracket()
    {
        Take();
        var arguments = new List<double[]> { Sum() };
        while (Peek() == ',')
        {
            Take();
            arguments.Add(Sum());
        }

        return Take() == ')' ? arguments : throw new FormatException($"a bracket of '{_text}' is not closed");
    }

    private static double[] Function(string name, List<double[]> arguments) => name switch
    {
        "sum" => [arguments.Single().Sum()],
        "min" => [arguments.SelectMany(a => a).Min()],
        "max" => [arguments.SelectMany(a => a).Max()],
        "sqrt" => [.. arguments.Single().Select(Math.Sqrt)],
        "cos" => [.. arguments.Single().Select(d => Math.Cos(d * Math.PI / 180))],
        "sin" => [.. arguments.Single().Select(d => Math.Sin(d * Math.PI / 180))],
        _ => throw new FormatException($"function '{name}' is not known"),
    };

    private static double[] Each(double[] left, double[] right, Func<double, double, double> work)
    {
        if (left.Length != right.Length && left.Length != 1 && right.Length != 1) throw new FormatException("lists of different lengths");
        return [.. Enumerable.Range(0, Math.Max(left.Length, right.Length)).Select(i => work(left[left.Length == 1 ? 0 : i], right[right.Length == 1 ? 0 : i]))];
    }

    private char Peek()
    {
        while (_at < _text.Length && _text[_at] == ' ') _at++;
        return _at < _text.Length ? _text[_at] : '\0';
    }

    private char Take()
    {
        var next = Peek();
        _at++;
        return next;
    }
}

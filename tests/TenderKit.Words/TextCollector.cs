using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace TenderKit.Words;

/// <summary>Collects the texts of one file: literals and interpolated strings, joined ones as one sentence, and those inside holes for themselves.</summary>
public sealed class TextCollector(string file, Reach reach)
{
    /// <summary>Methods whose arguments are never printed.</summary>
    private static readonly HashSet<string> _silent = new(StringComparer.Ordinal)
    {
        "StartsWith", "EndsWith", "Contains", "Replace", "Split", "IndexOf", "LastIndexOf", "IndexOfAny", "Trim", "TrimEnd", "TrimStart", "Equals", "Compare", "Section", "Sections", "RequiredText", "RequiredNumber", "Has",
        "Scalar", "Scalars", "Rule", "ToString", "TryParseExact", "ParseExact", "GetManifestResourceStream", "InRange", "Positive", "NotNegative", "ThrowIfNull", "That", "Own", "AddIn", "Parse", "Match", "IsMatch",
        "Value", "Measure", "Column", "GetString", "TryAdd", "AddError",
    };

    private static readonly HashSet<string> _messages = new(StringComparer.Ordinal) { "Error", "Warning", "Note", "AddWarning", "AddNote", "Diagnostic" };

    private readonly List<SourceText> _found = [];

    public IReadOnlyList<SourceText> Of(string source)
    {
        Collect(CSharpSyntaxTree.ParseText(source, new CSharpParseOptions(LanguageVersion.Latest)).GetRoot());
        return _found;
    }

    private void Collect(SyntaxNode node)
    {
        foreach (var root in Roots(node))
        {
            if (IsSilent(root)) continue;
            if (reach == Reach.All || IsInMessage(root) || IsSentence(root)) Add(root);
            foreach (var hole in Holes(root)) Collect(hole);
        }
    }

    /// <summary>The outermost texts under a node, itself included.</summary>
    private static IEnumerable<ExpressionSyntax> Roots(SyntaxNode node)
    {
        if (node is ExpressionSyntax expression && IsText(expression))
        {
            yield return expression;
            yield break;
        }

        foreach (var child in node.ChildNodes())
        {
            foreach (var root in Roots(child)) yield return root;
        }
    }

    private static bool IsText(ExpressionSyntax e) => e switch
    {
        LiteralExpressionSyntax => e.IsKind(SyntaxKind.StringLiteralExpression),
        InterpolatedStringExpressionSyntax => true,
        BinaryExpressionSyntax b => b.IsKind(SyntaxKind.AddExpression) && (IsText(b.Left) || IsText(b.Right)),
        ParenthesizedExpressionSyntax p => IsText(p.Expression),
        InvocationExpressionSyntax i => Interpolated(i) is not null,
        _ => false,
    };

    /// <summary>The interpolated string that a formatting call writes with a given culture.</summary>
    private static InterpolatedStringExpressionSyntax? Interpolated(InvocationExpressionSyntax call) =>
        call.Expression.ToString() is "FormattableString.Invariant" or "string.Create" && call.ArgumentList.Arguments is [.., var last]
            ? last.Expression as InterpolatedStringExpressionSyntax : null;

    private void Add(ExpressionSyntax root)
    {
        var (text, hole) = (new StringBuilder(), 0);
        Write(root, text, ref hole);
        var whole = text.ToString();
        foreach (var line in whole.Split(whole.StartsWith('"') ? '"' : '\n'))
        {
            var key = Renumbered(TextShape.Key(line));
            if (TextShape.HasWords(key)) _found.Add(new SourceText(key, file, root.GetLocation().GetLineSpan().StartLinePosition.Line + 1));
        }
    }

    private static void Write(ExpressionSyntax e, StringBuilder text, ref int hole)
    {
        switch (e)
        {
            case LiteralExpressionSyntax when e.IsKind(SyntaxKind.StringLiteralExpression):
                text.Append(((LiteralExpressionSyntax)e).Token.ValueText);
                break;
            case BinaryExpressionSyntax b when IsText(b):
                Write(b.Left, text, ref hole);
                Write(b.Right, text, ref hole);
                break;
            case ParenthesizedExpressionSyntax p when IsText(p):
                Write(p.Expression, text, ref hole);
                break;
            case InvocationExpressionSyntax i when Interpolated(i) is { } inner:
                Write(inner, text, ref hole);
                break;
            case InterpolatedStringExpressionSyntax s:
                foreach (var part in s.Contents)
                {
                    if (part is InterpolatedStringTextSyntax plain) text.Append(plain.TextToken.ValueText);
                    else if (part is InterpolationSyntax { Expression: LiteralExpressionSyntax literal } && IsText(literal)) text.Append(literal.Token.ValueText);
                    else text.Append(CultureInfo.InvariantCulture, $"{{{hole++}}}");
                }

                break;
            default:
                text.Append(CultureInfo.InvariantCulture, $"{{{hole++}}}");
                break;
        }
    }

    private static string Renumbered(string text)
    {
        var n = 0;
        return System.Text.RegularExpressions.Regex.Replace(text, @"\{\d+\}", _ => string.Create(CultureInfo.InvariantCulture, $"{{{n++}}}"));
    }

    private static IEnumerable<SyntaxNode> Holes(ExpressionSyntax e) => e switch
    {
        LiteralExpressionSyntax => [],
        BinaryExpressionSyntax b when IsText(b) => [.. Holes(b.Left), .. Holes(b.Right)],
        ParenthesizedExpressionSyntax p when IsText(p) => Holes(p.Expression),
        InvocationExpressionSyntax i when Interpolated(i) is { } inner => Holes(inner),
        InterpolatedStringExpressionSyntax s => s.Contents.OfType<InterpolationSyntax>().Select(i => i.Expression).Where(x => x is not LiteralExpressionSyntax),
        _ => [e],
    };

    private static bool IsSilent(ExpressionSyntax text)
    {
        SyntaxNode inner = text;
        foreach (var node in text.Ancestors())
        {
            var silent = node switch
            {
                AttributeSyntax or ThrowStatementSyntax or ThrowExpressionSyntax or ConstantPatternSyntax or CaseSwitchLabelSyntax or BracketedArgumentListSyntax or ParameterSyntax => true,
                BinaryExpressionSyntax b => b.IsKind(SyntaxKind.EqualsExpression) || b.IsKind(SyntaxKind.NotEqualsExpression),
                BaseObjectCreationExpressionSyntax c => c is ObjectCreationExpressionSyntax o && o.Type.ToString().EndsWith("Exception", StringComparison.Ordinal),
                InvocationExpressionSyntax i => inner is ArgumentListSyntax && _silent.Contains(NameOf(i)),
                _ => false,
            };
            if (silent) return true;
            if (node is StatementSyntax or MemberDeclarationSyntax) return false;
            inner = node;
        }

        return false;
    }

    private static bool IsInMessage(ExpressionSyntax text) => text.Ancestors().Any(n =>
        (n is InvocationExpressionSyntax i && _messages.Contains(NameOf(i))) || (n is ObjectCreationExpressionSyntax o && _messages.Contains(o.Type.ToString())));

    /// <summary>Whether a text outside a message reads like one: it is handed on to where the message is made.</summary>
    private static bool IsSentence(ExpressionSyntax text) => text.ToString() is var s && s.Count(c => c == ' ') >= 4 && !s.Contains('|', StringComparison.Ordinal) && !s.Contains("\"#", StringComparison.Ordinal) && !s.Contains("\"- ", StringComparison.Ordinal) && !text.ToString().Contains("SELECT", StringComparison.OrdinalIgnoreCase);

    private static string NameOf(InvocationExpressionSyntax call) => call.Expression switch
    {
        MemberAccessExpressionSyntax m => m.Name.Identifier.ValueText,
        MemberBindingExpressionSyntax m => m.Name.Identifier.ValueText,
        IdentifierNameSyntax n => n.Identifier.ValueText,
        _ => "",
    };
}

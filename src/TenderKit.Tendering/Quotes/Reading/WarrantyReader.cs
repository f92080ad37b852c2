using System.Text.RegularExpressions;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Warranties in running text, either way round: "luminaires 5 years; modules 10 years", "5 years on luminaires and lithium batteries".</summary>
internal static partial class WarrantyReader
{
    public static IEnumerable<StatedWarranty> Read(string text, Place place)
    {
        var folded = PlainText.Fold(text);
        if (Warranty().Match(folded) is not { Success: true } word) return [];
        var tokens = Token().Matches(folded).Where(m => m.Index > word.Index || m.Groups["n"].Success).Select(m => (Years: YearsOf(m), Family: FamilyOf(m))).Where(t => t.Years is not null || t.Family is not null).ToList();
        if (!tokens.Exists(t => t.Years is not null)) return [];
        return (tokens[0].Years is not null ? YearsFirst(tokens) : FamiliesFirst(tokens)).Select(w => new StatedWarranty(w.Family, w.Years, text, place));
    }

    private static IEnumerable<(string Family, double Years)> YearsFirst(List<(double? Years, string? Family)> tokens)
    {
        double years = 0;
        var named = true;
        foreach (var token in tokens)
        {
            if (token.Years is { } y)
            {
                if (!named) yield return ("all", years);
                (years, named) = (y, false);
            }
            else
            {
                named = true;
                yield return (token.Family!, years);
            }
        }

        if (!named) yield return ("all", years);
    }

    private static IEnumerable<(string Family, double Years)> FamiliesFirst(List<(double? Years, string? Family)> tokens)
    {
        var waiting = new List<string>();
        foreach (var token in tokens)
        {
            if (token.Family is { } family)
            {
                waiting.Add(family);
                continue;
            }

            foreach (var f in waiting) yield return (f, token.Years!.Value);
            waiting.Clear();
        }
    }

    private static double? YearsOf(Match match)
    {
        if (!match.Groups["n"].Success || PlainText.Number(match.Groups["n"].Value, false) is not { } value) return null;
        return match.Groups["u"].Value.StartsWith('m') ? value / 12 : value;
    }

    private static string? FamilyOf(Match match)
    {
        if (match.Groups["lamp"].Success) return "luminaire";
        if (match.Groups["module"].Success) return "module";
        if (match.Groups["control"].Success) return "controller";
        if (match.Groups["pole"].Success) return "pole";
        if (!match.Groups["battery"].Success) return null;
        return Lead().IsMatch(match.Value) ? "battery lead" : Lithium().IsMatch(match.Value) ? "battery lithium" : "battery";
    }

    private const string Kind = @"(?:lithium|litio|lifepo4|lfp|agm|gel|lead[- ]acid|plomb|plomo|chumbo|vrla|iron|phosphate|fosfato|hierro|ferro|fer|acid\w*|acido|au|de|d'|en|-|of)";
    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"warrant|guarant|garant", Options)]
    private static partial Regex Warranty();

    [GeneratedRegex(
        @"(?<n>\d{1,2}(?:[.,]\d)?)\s*(?<u>years?|yrs?|y|ans?|annees?|anos?|months?|mois|mes(?:es)?)\b"
        + @"|(?<battery>(?:(?:lithium|lifepo4|lfp|agm|gel|lead[- ]acid|vrla)(?:[ -](?:iron|phosphate))* )?(?:batter\w+|bateria\w*|accumul\w+|acumulador\w*)(?: " + Kind + @")*|\b(?:lifepo4|lfp|agm|gel)\b)"
        + @"|(?<lamp>luminaires?|farolas?|faroles|farois|farol|street ?lights?|luminarias?|lamps?|lampes?|lamparas?|lampadas?|lanternes?|lanterns?|\bleds?\b)|(?<module>modules?|placas?|modulos?|panels?|paneles|panneaux?|paineis|painel)"
        + @"|(?<control>controller\w*|controlador\w*|controleurs?|regulat\w+|regulador\w*|regulateurs?)|(?<pole>poles?\b|columns?\b|masts?\b|mats?\b|poteaux?|postes?\b|candelabres?|columnas?|colunas?)", Options)]
    private static partial Regex Token();

    [GeneratedRegex(@"agm|gel|lead|plomb|plomo|chumbo|vrla", Options)]
    private static partial Regex Lead();

    [GeneratedRegex(@"lithium|litio|lifepo4|lfp", Options)]
    private static partial Regex Lithium();
}

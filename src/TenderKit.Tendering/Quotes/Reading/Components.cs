using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>A word for a part of a light point at a place of a text.</summary>
internal readonly record struct ComponentWord(string Family, int At, int Length);

/// <summary>Words for the parts of a light point in running text, in four languages.</summary>
internal static partial class Components
{
    /// <summary>Every word for a part, in the order of the text.</summary>
    public static List<ComponentWord> Find(string folded)
    {
        var found = new List<ComponentWord>();
        void Add(string family, Regex pattern) => found.AddRange(pattern.Matches(folded).Select(m => new ComponentWord(family, m.Index, m.Length)));
        Add("luminaire", Luminaire());
        Add("module", Module());
        Add("battery", Battery());
        Add("controller", Controller());
        Add("pole", Pole());
        return [.. found.OrderBy(f => f.At)];
    }

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"\b(?:led|luminaires?|luminarias?|lanterns?|lanternes?|lamps?|lampes?|lamparas?|lampadas?|leuchte|light source|source lumineuse|projecteurs?|proyector\w*|projet\w*r\w*|foco)\b", Options)]
    private static partial Regex Luminaire();

    [GeneratedRegex(@"\b(?:modules?|modulos?|panels?|paneles|panneaux?|panneau|painel|paineis|pv|mono(?:crystalline|cristalin\w*)?|poly(?:crystalline|cristallin\w*)?|photovolta\w*|fotovolta\w*)\b", Options)]
    private static partial Regex Module();

    [GeneratedRegex(@"\b(?:batter(?:y|ies|ie)|batterie|batteries|bateria|baterias|batt|bat|accumulat\w+|acumulador\w*|accus?|lifepo4|lfp|gel|agm|opzs|opzv)\b", Options)]
    private static partial Regex Battery();

    [GeneratedRegex(@"\b(?:controllers?|controlador\w*|controleurs?|regulators?|regulateurs?|regulador\w*|ctrl|mppt|pwm)\b", Options)]
    private static partial Regex Controller();

    [GeneratedRegex(@"\b(?:poles?|columns?|masts?|mats?|poteaux?|poteau|postes?|columnas?|colunas?|candelabres?|baculos?|fut)\b", Options)]
    private static partial Regex Pole();
}

using System.Collections.Frozen;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Columns;
using TenderKit.Tendering.Positions;

namespace TenderKit.Tendering.Sites;

/// <summary>Words of site lists for closed choices, in English, French, Spanish and Portuguese.</summary>
internal static class SiteWords
{
    private static readonly FrozenDictionary<string, SiteKind> Kinds = Table(
        (SiteKind.Road,
            "road|street|main street|main road|highway|lane|avenue|access road|link road|ring road|route|rue|voie|piste|"
            + "boulevard|chaussee|calle|carretera|via|camino principal|avenida|estrada|rua|rodovia"),
        (SiteKind.Path,
            "path|footpath|school path|walkway|sidewalk|pedestrian|alley|track|cycle path|footway|stairs|sentier|chemin|"
            + "trottoir|ruelle|allee|camino|sendero|vereda|acera|caminho|passeio|calcada|passagem"),
        (SiteKind.Yard,
            "yard|market|market place|marketplace|landing|landing site|square|plaza|park|parking|car park|bus station|bus park|"
            + "playground|compound|school yard|hospital|health centre|station|area|marche|place|cour|gare|debarcadere|parking lot|"
            + "mercado|patio|parque|estacion|praca|feira|largo|desembarcadero|desembarcadouro"));

    private static readonly FrozenDictionary<string, Arrangement> Arrangements = Table(
        (Arrangement.SingleSided,
            "single sided|single|one side|one sided|singlesided|1|unilateral|unilaterale|un cote|un lado|unilateral um lado"),
        (Arrangement.Staggered, "staggered|zigzag|zig zag|quinconce|en quinconce|tresbolillo|al tresbolillo|alternada|alternado|alternate"),
        (Arrangement.Opposite,
            "opposite|double sided|two sides|both sides|facing|2|bilateral|bilaterale|vis a vis|en vis a vis|dos lados|pareado|"
            + "enfrentado|oposta|dois lados|face a face"));

    private static readonly FrozenDictionary<string, Terrain> Terrains = Table(
        (Terrain.Zero, "0|zero|sea|coast|open sea"), (Terrain.I, "i|1|lake|flat"), (Terrain.II, "ii|2|open|open country|rural"),
        (Terrain.III, "iii|3|suburban|suburb|village|forest"), (Terrain.IV, "iv|4|city|urban|town centre"));

    private static readonly FrozenDictionary<string, SoilClass> Soils = Table(
        (SoilClasses.Dense, "dense|denso|densa|compact|compacto|compacta|raide"),
        (SoilClasses.Medium, "medium|moyen|moyenne|medio|media"),
        (SoilClasses.Soft, "soft|mou|molle|meuble|blando|blanda|mole|macio"));

    private static readonly string[] TotalWords =
        ["total", "totals", "sub total", "subtotal", "grand total", "sum", "sous total", "somme", "total general", "suma", "sub total geral", "total geral", "soma", "carried forward", "brought forward", "a reporter", "report", "suma y sigue"];

    public static SiteKind? KindOf(string text) => Find(Kinds, text);

    public static Arrangement? ArrangementOf(string text) => Find(Arrangements, text);

    /// <summary>Side of a single row, seen along the line as drawn.</summary>
    public static PoleSide? SideOf(string text) => HeadingMatch.Words(text) switch
    {
        "left" or "l" or "gauche" or "izquierda" or "izquierdo" or "esquerda" or "esquerdo" => PoleSide.Left,
        "right" or "r" or "droite" or "derecha" or "derecho" or "direita" or "direito" => PoleSide.Right,
        _ => null,
    };

    public static Terrain? TerrainOf(string text) => Find(Terrains, text.Replace("category", "", StringComparison.OrdinalIgnoreCase));

    public static SoilClass? SoilOf(string text) =>
        SoilClasses.Find(text) ?? (Soils.TryGetValue(HeadingMatch.Words(text), out var soil) ? soil : null);

    /// <summary>Whether a soil is stated to be unknown; the worst class is taken then.</summary>
    public static bool IsUnknown(string text) =>
        HeadingMatch.Words(text) is "unknown" or "not known" or "tbd" or "inconnu" or "desconocido" or "desconhecido";

    /// <summary>A total, alone or with what it is of: "Sub-total Lot 1", "Total general", "Total (m)".</summary>
    public static bool IsTotal(string text)
    {
        if (text.Length > 60) return false;
        var words = HeadingMatch.Words(text);
        return TotalWords.Contains(words) || TotalWords.Any(t => t.Length > 3 && words.StartsWith(t + " ", StringComparison.Ordinal));
    }

    private static T? Find<T>(FrozenDictionary<string, T> words, string text)
        where T : struct => words.TryGetValue(HeadingMatch.Words(text), out var value) ? value : null;

    private static FrozenDictionary<string, T> Table<T>(params (T Value, string Words)[] rows) =>
        rows.SelectMany(r => r.Words.Split('|').Select(w => (Word: w, r.Value))).ToFrozenDictionary(p => p.Word, p => p.Value);
}

using System.Collections.Immutable;
using System.Text.RegularExpressions;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Items;

/// <summary>How a text was understood.</summary>
/// <param name="Kind">What it is about; unknown when no word is known.</param>
/// <param name="Words">The words that decided, as known here.</param>
/// <param name="Score">0 to 1: 1 when nothing else came near.</param>
/// <param name="Spare">Whether the text speaks of spares.</param>
public sealed record ItemReading(ItemKind Kind, string Words, double Score, bool Spare);

/// <summary>
/// Tells from its words what a line of a price list, bill or offer is about, in English, French, Spanish and Portuguese. Longer phrases
/// count more than single words, words at the head of the text more than words after it, and what follows "for", "with" or a comma less:
/// "pole-mounted box for battery" is a box. Common practice, no source.
/// </summary>
public static partial class ItemWords
{
    private const double LaterLoss = 0.06;
    private const double LeastLaterShare = 0.3;
    private const double WordShare = 0.6;

    private static readonly ImmutableArray<string> Spares = ["spare", "spares", "repuesto", "repuestos", "recambio", "recambios", "rechange", "pieces de rechange", "sobressalente", "sobressalentes", "reposicao"];

    private static readonly ImmutableArray<(ItemKind Kind, string[] Phrases)> Known =
    [
        (ItemKind.CompleteLight,
        [
            "solar street light complete", "complete solar street light", "solar street light set", "solar lighting unit", "complete light point", "complete lighting unit", "stand alone solar street light",
            "solar street lighting point", "lampadaire solaire complet", "lampadaire solaire", "point lumineux complet", "point lumineux", "luminaria solar completa", "punto de luz completo", "punto de luz", "farola solar completa", "farola solar",
            "poste solar completo", "ponto de luz completo", "ponto de luz", "poste solar", "candeeiro solar completo", "candeeiro solar", "solar street light", "solar streetlight", "solar street lamp", "kit solar completo",
        ]),
        (ItemKind.Integrated,
        [
            "all in one", "integrated solar", "integrated unit", "integrated solar luminaire", "integrated solar street light", "tout en un", "luminaire solaire integre", "lampadaire solaire integre", "unite integree", "todo en uno",
            "luminaria solar integrada", "unidad integrada", "luminaria integrada", "tudo em um", "luminaria solar integrada", "unidade integrada",
        ]),
        (ItemKind.Module,
        [
            "photovoltaic module", "pv module", "solar module", "solar panel", "photovoltaic panel", "pv panel", "panneau solaire", "panneau photovoltaique", "module photovoltaique", "module solaire", "panneau pv", "panel solar", "panel fotovoltaico",
            "modulo fotovoltaico", "modulo solar", "painel solar", "painel fotovoltaico", "panel", "panneau", "painel", "module", "modulo",
        ]),
        (ItemKind.Luminaire,
        [
            "led street luminaire", "led luminaire", "street luminaire", "led street light", "led lantern", "led lamp", "led light", "lantern", "luminaire led", "luminaire", "lampe led", "lanterne", "luminaria led", "luminaria", "lampara led", "lampara",
            "luminaria de led", "lampada led", "lampada", "led fixture", "floodlight", "projecteur", "proyector", "projetor", "area luminaire", "head",
        ]),
        (ItemKind.Battery,
        [
            "battery", "batteries", "lithium battery", "lifepo4 battery", "gel battery", "accumulator", "batterie", "batteries", "accumulateur", "bateria", "baterias", "acumulador", "lifepo4", "battery bank", "banco de baterias", "parc de batteries",
        ]),
        (ItemKind.Controller,
        [
            "charge controller", "solar charge controller", "solar controller", "controller", "charge regulator", "regulator", "regulateur de charge", "regulateur solaire", "regulateur", "controleur de charge", "controleur", "regulador de carga",
            "controlador de carga", "controlador de carga solar", "controlador", "regulador",
        ]),
        (ItemKind.Enclosure,
        [
            "battery box", "control box", "battery and controller enclosure", "battery and controller box", "battery and control box", "controller enclosure", "controller box", "control cabinet", "enclosure", "battery enclosure", "cabinet", "battery cabinet", "box", "coffret", "coffret batterie et regulateur", "armoire", "boitier", "coffret batterie", "caja", "gabinete", "caja de bateria", "caja de baterias", "armario", "caixa", "caixa de bateria", "quadro",
        ]),
        (ItemKind.Bracket,
        [
            "module bracket", "panel bracket", "panel mounting bracket", "module mounting bracket", "mounting bracket", "module support", "panel support", "mounting structure", "bracket", "support de panneau", "support panneau", "structure de montage", "support", "soporte de panel", "soporte para panel", "soporte", "estructura de montaje",
            "suporte de painel", "suporte para painel", "suporte", "estrutura de montagem",
        ]),
        (ItemKind.Pole,
        [
            "steel pole", "lighting column", "lighting pole", "column", "pole", "galvanised pole", "galvanized pole", "mast", "mat", "mat en acier", "poteau", "candelabre", "poteau acier", "poste", "poste metalico", "poste de acero", "columna", "baculo", "poste de aco", "coluna",
            "tapered round steel column", "octagonal pole", "mat galvanise",
        ]),
        (ItemKind.Foundation,
        [
            "anchor bolt set", "anchor bolts", "anchor set", "foundation bolts", "holding down bolts", "cast in anchor set", "foundation set", "foundation", "tiges d ancrage", "kit d ancrage", "ancrage", "fondation", "massif", "pernos de anclaje", "juego de anclaje", "anclaje",
            "cimentacion", "fundacion", "chumbadores", "conjunto de chumbadores", "fundacao", "sapata",
        ]),
        (ItemKind.Cable,
        [
            "copper cable", "solar cable", "dc cable", "electric cable", "cable", "cables", "wire", "wiring", "cable solaire", "cable cuivre", "cablage", "cable solar", "cable de cobre", "cableado", "cabo", "cabos", "cabo solar", "cabo de cobre", "cablagem",
        ]),
        (ItemKind.Fuse, ["fuse", "fuses", "dc fuse", "battery fuse", "fuse and holder", "fusible", "fusibles", "fusivel", "fusiveis", "circuit breaker", "breaker", "disjoncteur", "disyuntor", "disjuntor"]),
        (ItemKind.SurgeArrester, ["surge arrester", "surge protection", "surge protective device", "lightning arrester", "spd", "parafoudre", "parasurtenseur", "protector de sobretension", "descargador", "supresor de sobretensiones", "protetor contra surtos", "descarregador", "dps"]),
        (ItemKind.EarthElectrode, ["earth electrode", "earth rod", "earthing", "grounding", "ground rod", "earthing rod", "piquet de terre", "mise a la terre", "prise de terre", "electrodo de tierra", "puesta a tierra", "pica de tierra", "varilla de tierra", "eletrodo de terra", "haste de terra", "aterramento"]),
        (ItemKind.Fixings, ["fixings", "fixing set", "fasteners", "bolts and nuts", "clamps", "visserie", "fixations", "tornilleria", "fijaciones", "abrazaderas", "parafusos", "fixacoes", "abracadeiras"]),
        (ItemKind.SetUp, ["mobilisation", "mobilization", "site set up", "set up of site", "preliminaries", "site establishment", "demobilisation", "installation de chantier", "amenee et repli", "instalacion de faena", "movilizacion", "mobilizacao", "instalacao de estaleiro", "estaleiro"]),
        (ItemKind.Survey, ["site survey", "survey", "setting out", "pegging", "etude de site", "leve topographique", "implantation", "replanteo", "levantamiento", "estudio de sitio", "levantamento", "implantacao"]),
        (ItemKind.Excavation, ["excavation", "excavate", "digging", "fouille", "fouilles", "terrassement", "excavacion", "escavacao", "backfill", "remblai", "relleno", "reaterro"]),
        (ItemKind.Concrete, ["concrete", "beton", "hormigon", "concreto", "betao", "mass concrete", "reinforced concrete"]),
        (ItemKind.Reinforcement, ["reinforcement", "reinforcing steel", "rebar", "steel bars", "ferraillage", "acier d armature", "armature", "acero de refuerzo", "armadura", "aco de reforco", "ferragem"]),
        (ItemKind.ErectPole, ["erection of pole", "erect pole", "pole erection", "erection", "erect", "installation of pole", "levage de poteau", "pose de poteau", "pose de mat", "levage", "montaje de poste", "izado de poste", "izado", "montagem de poste", "elevacao de poste"]),
        (ItemKind.FitKit, ["fit kit", "install equipment", "installation of equipment", "mount module luminaire", "installation", "installation et cablage", "pose", "pose des equipements", "instalacion de equipos", "instalacion", "montaje", "instalacao de equipamentos", "instalacao", "montagem", "fit module luminaire and box"]),
        (ItemKind.LayCable, ["lay cable", "cable laying", "draw cable", "pull cable", "pose de cable", "tirage de cable", "tendido de cable", "passagem de cabo", "lancamento de cabo"]),
        (ItemKind.Commission, ["testing and commissioning", "test and commission", "commissioning", "commission", "essais et mise en service", "mise en service", "pruebas y puesta en marcha", "puesta en marcha", "puesta en servicio", "testes e comissionamento", "comissionamento", "colocacao em servico"]),
        (ItemKind.Training, ["training", "training of staff", "formation", "capacitacion", "formacion", "formacao", "treinamento"]),
        (ItemKind.Documents, ["as built", "documentation", "manuals", "as built drawings", "documentation technique", "dossier de recolement", "documentacion", "manuales", "documentacao", "manuais"]),
        (ItemKind.Maintenance, ["maintenance", "maintain", "entretien", "mantenimiento", "manutencao"]),
        (ItemKind.Transport, ["transport", "freight", "shipping", "delivery to site", "transporte", "flete", "frete", "livraison", "envio", "acarreo"]),
        (ItemKind.Contingency, ["contingency", "contingencies", "imprevus", "imprevistos", "contingencias", "divers et imprevus"]),
        (ItemKind.ProvisionalSum, ["provisional sum", "somme provisionnelle", "suma provisional", "soma provisional", "partida alzada", "soma provisoria"]),
        (ItemKind.Daywork, ["daywork", "dayworks", "travaux en regie", "regie", "trabajos por administracion", "trabalhos por administracao"]),
        (ItemKind.Tax, ["vat", "value added tax", "tax", "tva", "iva", "impuesto", "imposto"]),
        (ItemKind.Discount, ["discount", "rebate", "remise", "rabais", "descuento", "desconto"]),
        (ItemKind.Total, ["total", "sub total", "subtotal", "grand total", "sous total", "total general", "suma", "somme", "soma", "carried to", "a reporter"]),
    ];

    private static readonly ImmutableHashSet<string> After = ImmutableHashSet.Create(
        StringComparer.Ordinal, "for", "with", "and", "incl", "including", "on", "per", "pour", "avec", "y", "et", "para", "con", "com", "e", "sur", "sobre", "each", "without", "sans", "sin", "sem", "of", "de", "du", "des", "da", "do", "del");

    /// <summary>What the text is about.</summary>
    public static ItemReading Read(string text)
    {
        var words = HeadingMatch.Words(Mounted().Replace(text, " ")).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var spare = Spares.Any(s => At(words, s.Split(' ')) >= 0);
        var best = (Kind: ItemKind.Unknown, Words: "", Weight: 0.0);
        var second = 0.0;
        foreach (var (kind, phrases) in Known)
        {
            var own = phrases.Select(p => (Phrase: p, Weight: Weight(words, p.Split(' ')))).MaxBy(p => p.Weight);
            if (own.Weight > best.Weight) (second, best) = (best.Weight, (kind, own.Phrase, own.Weight));
            else if (own.Weight > second) second = own.Weight;
        }

        return best.Weight <= 0 ? new ItemReading(ItemKind.Unknown, "", 0, spare) : new ItemReading(best.Kind, best.Words, Math.Min(1, best.Weight - second + 0.5), spare);
    }

    private static double Weight(string[] words, string[] phrase)
    {
        var at = At(words, phrase);
        if (at < 0) return 0;
        var late = Math.Max(LeastLaterShare, 1 - (LaterLoss * at));
        var joined = words.Take(at).Any(After.Contains) ? 0.75 : 1;
        return Math.Pow(phrase.Length, WordShare) * late * joined;
    }

    /// <summary>"Pole-mounted" says where a thing goes, not what it is.</summary>
    [GeneratedRegex(@"\w+-(?:mounted|top)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Mounted();

    /// <summary>Index of the first of the phrase's words where they stand one after another, or -1.</summary>
    private static int At(string[] words, string[] phrase)
    {
        for (var i = 0; i + phrase.Length <= words.Length; i++)
        {
            if (words.AsSpan(i, phrase.Length).SequenceEqual(phrase)) return i;
        }

        return -1;
    }
}

using System.Text.RegularExpressions;
using TenderKit.Tendering.Items;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>What a line is about, by its words and by the units of its numbers.</summary>
internal static partial class LineFamily
{
    public static string Of(string folded, ItemReading item, List<Measure> measures, List<ComponentWord> words)
    {
        bool Has(MeasureKind kind) => measures.Exists(m => m.Kind == kind);
        bool Says(string family) => words.Exists(w => w.Family == family);
        var lamp = Has(MeasureKind.Lumen) || (Has(MeasureKind.Watt) && Says("luminaire"));
        var module = Has(MeasureKind.WattPeak) || (Says("module") && Has(MeasureKind.Watt));
        var battery = Has(MeasureKind.AmpereHour) || Has(MeasureKind.WattHour);
        if (lamp && module && battery) return Says("pole") && measures.Exists(m => m.Kind == MeasureKind.Metre && m.Value is >= 2 and <= 20) && !NoPole().IsMatch(folded) ? "kit" : "integrated";
        if (Service(folded, item.Kind)) return "service";
        if (ByWords(folded, item) is { } named) return named;
        return ByNumbers(Has, Says) ?? "other";
    }

    private static readonly System.Buffers.SearchValues<char> PhraseEnds = System.Buffers.SearchValues.Create(",;(0123456789");

    private static bool Service(string folded, ItemKind kind) => kind switch
    {
        ItemKind.SetUp or ItemKind.Survey or ItemKind.Excavation or ItemKind.Concrete or ItemKind.Reinforcement or ItemKind.ErectPole or ItemKind.FitKit or ItemKind.LayCable
            or ItemKind.Commission or ItemKind.Training or ItemKind.Documents or ItemKind.Maintenance or ItemKind.Daywork => true,
        ItemKind.Unknown => Work().IsMatch(folded),
        _ => WorkHead().IsMatch(folded),
    };

    private static string? ByWords(string folded, ItemReading item)
    {
        var whole = Spare().Replace(folded, "").TrimStart(' ', '-', ':', ',', '.');
        return HeadFamily(FirstPhrase(whole)) ?? HeadFamily(whole) ?? OfKind(item.Kind);
    }

    /// <summary>The words before the first number or comma: "photovoltaic module 60 Wp, frame 660 mm" is about a module.</summary>
    private static string FirstPhrase(string text)
    {
        var end = text.Length > 4 ? text.AsSpan(4).IndexOfAny(PhraseEnds) : -1;
        return end < 0 ? text : text[..(end + 4)];
    }

    private static string? HeadFamily(string head)
    {
        foreach (var (pattern, family) in Heads())
        {
            if (pattern.Match(head) is { Success: true, Index: < 28 } match && !After().IsMatch(head[..match.Index])) return family;
        }

        return null;
    }

    private static string? OfKind(ItemKind kind)
    {
        return kind switch
        {
            ItemKind.Module => "module",
            ItemKind.Luminaire => "luminaire",
            ItemKind.Battery => "battery",
            ItemKind.Controller => "controller",
            ItemKind.Enclosure => "enclosure",
            ItemKind.Bracket => "bracket",
            ItemKind.Pole => "pole",
            ItemKind.Foundation => "foundation",
            ItemKind.Cable => "cable",
            ItemKind.Fuse or ItemKind.SurgeArrester or ItemKind.EarthElectrode => "protection",
            ItemKind.Fixings => "other",
            ItemKind.Integrated => "integrated",
            ItemKind.CompleteLight => "kit",
            _ => null,
        };
    }

    private static string? ByNumbers(Func<MeasureKind, bool> has, Func<string, bool> says)
    {
        if (has(MeasureKind.Section)) return "cable";
        if (has(MeasureKind.WattPeak)) return "module";
        if (has(MeasureKind.AmpereHour)) return "battery";
        if (has(MeasureKind.Lumen)) return "luminaire";
        if (says("controller")) return "controller";
        if (has(MeasureKind.Bolt)) return "foundation";
        return null;
    }

    /// <summary>Head words of one meaning; the first that stands near the head of the text and after no "for" or "with" decides.</summary>
    private static (Regex Pattern, string Family)[] Heads() =>
    [
        (Camera(), "other"), (Fixings(), "other"), (Protection(), "protection"), (CableHead(), "cable"), (Foundation(), "foundation"), (Bracket(), "bracket"), (Enclosure(), "enclosure"),
        (ControllerHead(), "controller"), (Battery(), "battery"), (Module(), "module"), (Luminaire(), "luminaire"), (Pole(), "pole"),
    ];

    private const RegexOptions Options = RegexOptions.CultureInvariant;

    [GeneratedRegex(@"\b(?:for|with|w/|pour|avec|para|con|com|per|par|por|de support)\b", Options)]
    private static partial Regex After();

    [GeneratedRegex(@"^(?:spares?(?: parts?)?|repuestos?|recambios?|(?:pieces?|piece) de rechange|rechange|sobressalentes?|pecas? (?:de )?reserva|peca sobressalente)\b", Options)]
    private static partial Regex Spare();

    [GeneratedRegex(@"\b(?:without|excluding|sans|sin|sem) (?:the )?(?:pole|column|mat|poste|columna|mast)", Options)]
    private static partial Regex NoPole();

    [GeneratedRegex(@"\b(?:cameras?|wi-?fi|router|camara|camaras|videosurveillance|speakers?|advertising|publicit\w+|charging station|usb)\b", Options)]
    private static partial Regex Camera();

    [GeneratedRegex(@"\b(?:fixing sets?|fixings|fasteners?|jeu de fixations?|kit de fixations?|lot de fixations?|fixations?|visserie|juego de fijacion\w*|kit de fijacion\w*|fijacion\w*|tornilleria|jogo de fixac\w+|conjunto de fixac\w+|kit de fixac\w+|fixac\w+|ferragens|abracadeiras|abrazaderas|small parts|sundries)\b", Options)]
    private static partial Regex Fixings();

    [GeneratedRegex(@"\b(?:protection (?:set|kit)|protection|fuses?|fuse link|fusibles?|fusivel|fusiveis|circuit breakers?|mcb|disjoncteurs?|disyuntor\w*|disjuntor\w*|surge|spd|arresters?|parafoudres?|parasurtenseurs?|descargador\w*|descarregador\w*|supresor\w*|proteccion\w*|protec\w+|earth (?:rod|electrode)|earthing|grounding|ground rod|piquets? de terre|mise a la terre|prise de terre|varillas? de tierra|picas? de tierra|puesta a tierra|electrodo|jabalina|hastes? de (?:terra|aterramento)|eletrodo|eletrodo de terra|aterramento|estaca de terra)\b", Options)]
    private static partial Regex Protection();

    [GeneratedRegex(@"\b(?:cables?|cabling|wires?|cabos?|cableado|cablage|cablagem|conductors?|fil electrique|fio)\b", Options)]
    private static partial Regex CableHead();

    [GeneratedRegex(@"\b(?:anchor\w*|foundations?|holding[ -]down|tiges?|ancrages?|massifs?|pernos?|anclajes?|chumbador\w*|parafusos? (?:de ancoragem|chumbador\w*)|ancorage\w*|j-bolts?)\b", Options)]
    private static partial Regex Foundation();

    [GeneratedRegex(@"\b(?:brackets?|frames?|mounting structure|mounting frame|module support|panel support|supports?|chassis|structure de (?:montage|fixation)|soportes?|bastidor\w*|estructuras?|suportes?|estruturas?|armacao)\b", Options)]
    private static partial Regex Bracket();

    [GeneratedRegex(@"\b(?:enclosures?|boxes|box|cabinets?|coffrets?|armoires?|boitiers?|cajas?|gabinetes?|armarios?|cofres?|caixas?|quadros?)\b", Options)]
    private static partial Regex Enclosure();

    [GeneratedRegex(@"\b(?:controllers?|regulators?|ctrl|charge control\w*|regulateurs?|controleurs?|reguladore?s?|controladore?s?|mppt|pwm)\b", Options)]
    private static partial Regex ControllerHead();

    [GeneratedRegex(@"\b(?:batter\w+|batt|bateria\w*|accumulat\w+|acumulador\w*|accus?|lifepo4|lfp)\b", Options)]
    private static partial Regex Battery();

    [GeneratedRegex(@"\b(?:(?:pv|solar|photovoltaic) (?:module|panel)s?|modules?|modulos?|panels?|paneles|panneaux?|painel|paineis|photovolta\w+|fotovolta\w+)\b", Options)]
    private static partial Regex Module();

    [GeneratedRegex(@"\b(?:luminaires?|luminarias?|lanterns?|lanternes?|lamps?|lampes?|lamparas?|lampadas?|led|streetlights?|street lights?|projecteurs?|proyector\w*|projetor\w*|farolas?)\b", Options)]
    private static partial Regex Luminaire();

    [GeneratedRegex(@"\b(?:poles?|columns?|masts?|mats?|poteaux?|poteau|postes?|columnas?|colunas?|candelabres?|baculos?|lampposts?)\b", Options)]
    private static partial Regex Pole();

    [GeneratedRegex(@"\b(?:survey|setting out|erection|installation|commissioning|training|as-built|drawings|manuals|implantation|piquetage|levage|pose|montage|mise en service|essais|formation|recolement|replanteo|levantamiento|izado|montaje|pruebas|puesta en (?:marcha|servicio)|capacitacion|planos|implantacao|levantamento|elevacao|icamento|montagem|ensaios|testes|comissionamento|colocacao em servico|formacao|treinamento|desenhos|manuais|labour|main d'oeuvre|mano de obra|mao de obra|transporte e montagem)\b", Options)]
    private static partial Regex Work();

    [GeneratedRegex(@"^(?:survey|setting out|erection|erect|installation|install|fitting|fit|mounting of|test|testing|commissioning|training|as-built|supervision|implantation|piquetage|levage|leve|pose|montage|mise en service|essais?|formation|dossier|plans|replanteo|levantamiento|izado|montaje|instalacion|pruebas?|puesta en|capacitacion|planos|implantacao|levantamento|elevacao|icamento|icagem|montagem|instalacao|ensaios?|testes?|comissionamento|colocacao em|entrada em servico|formacao|treinamento|desenhos|telas finais|excavat\w+|fouilles?|concrete|beton|hormigon|betao|escavacao)\b", Options)]
    private static partial Regex WorkHead();
}

namespace TenderKit.Words;

/// <summary>How the literals of a source file reach documents.</summary>
public enum Reach
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>As messages of diagnostics, which the documents print.</summary>
    Messages,

    /// <summary>Any text may be printed.</summary>
    All,
}

/// <summary>Which sources hold texts of documents.</summary>
public static class SourceFolders
{
    /// <summary>Machine files, workbooks that are read again, and the inside of file formats.</summary>
    private static readonly string[] _none =
    [
        "TenderKit.Cli/", "TenderKit.Documents/Machine/", "TenderKit.Documents/Maps/", "TenderKit.Documents/Bids/BidFolder", "TenderKit.Documents/Bids/BidDocuments", "TenderKit.Documents/Workbooks/CatalogWorkbook",
        "TenderKit.Documents/Workbooks/SurveyAnswers", "TenderKit.Documents/Workbooks/FormLinesList", "TenderKit.Documents/Workbooks/FilledForm", "TenderKit.Documents/Workbooks/StyleTable",
        "TenderKit.Documents/Workbooks/PackageFacts", "TenderKit.Documents/Workbooks/PlainZip", "TenderKit.Documents/Workbooks/FormulaText", "TenderKit.Documents/Layout/InterFiles",
        "TenderKit.Documents/Layout/EqualBytes", "TenderKit.Documents/Layout/FontFace", "TenderKit.Documents/Layout/Fonts", "TenderKit.Documents/Layout/CharacterMap", "TenderKit.Documents/Layout/TabularDigits", "TenderKit.Documents/Languages/Wording",
        "TenderKit.Documents/Languages/WordList", "TenderKit.Documents/Languages/NumberWords", "TenderKit.Documents/Layout/LineBreaker", "TenderKit.Documents/Layout/TextView",
        "TenderKit.Tendering/Quotes/Reading/", "TenderKit.Tendering/Settings/TenderLanguages", "TenderKit.Tendering/Settings/TenderFile", "TenderKit.Catalog/Store/", "TenderKit.Catalog/Import/", "TenderKit.Tendering/Settings/RuleIds", "TenderKit.Tendering/Items/ItemWords", "TenderKit.Intake/Yaml/", "TenderKit.Intake/Numbers/UnitSpellings", "TenderKit.Tendering/Columns/SavedColumns",
    ];

    private static readonly string[] _messages =
    [
        "TenderKit.Intake/", "TenderKit.Catalog/", "TenderKit.Tendering/Settings/", "TenderKit.Tendering/Sites/", "TenderKit.Tendering/Columns/", "TenderKit.Tendering/Specification/ClauseReader", "TenderKit.Tendering/Forms/PriceForm",
        "TenderKit.Tendering/Notes/NoteLibrary", "TenderKit.Tendering/Quotes/QuoteSection", "TenderKit.Tendering/Quotes/StatedKits",
    ];

    /// <param name="path">Below <c>src</c>, with '/'.</param>
    public static Reach Of(string path) =>
        _none.Any(f => path.StartsWith(f, StringComparison.Ordinal)) ? Reach.None
        : _messages.Any(f => path.StartsWith(f, StringComparison.Ordinal)) ? Reach.Messages
        : Reach.All;
}

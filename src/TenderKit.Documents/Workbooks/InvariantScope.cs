using System.Globalization;

namespace TenderKit.Documents.Workbooks;

/// <summary>Holds the invariant culture while a document is written, whatever the thread had before.</summary>
internal readonly struct InvariantScope : IDisposable
{
    private readonly CultureInfo _culture;
    private readonly CultureInfo _uiCulture;

    private InvariantScope(CultureInfo culture, CultureInfo uiCulture) => (_culture, _uiCulture) = (culture, uiCulture);

    public static InvariantScope Enter()
    {
        var scope = new InvariantScope(CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        return scope;
    }

    public void Dispose() => (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (_culture, _uiCulture);
}

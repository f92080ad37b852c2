using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites;

/// <summary>One cell of a site row: what stood there and what was understood.</summary>
public sealed record CellEcho(string Heading, string Seen, string Understood);

/// <summary>One row of the site list as understood; cells that were empty or wrong are left out.</summary>
/// <param name="IsRead">Whether the row became a site.</param>
public sealed record SiteRowEcho(int Row, string SiteId, bool IsRead, ImmutableArray<CellEcho> Cells);

/// <summary>A site list, understood: the good rows as sites, and everything that was noticed.</summary>
public sealed record SiteListReading(
    ImmutableArray<Site> Sites, ImmutableArray<SiteRowEcho> Rows, ColumnMapping Columns, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>Every sheet as understood, also those not read; one for a list without sheets.</summary>
    public ImmutableArray<ColumnMapping> Sheets { get; init; } = [Columns];

    /// <summary>Names of the sheets that were read as the site list; the empty name for a list without sheets.</summary>
    public ImmutableArray<string> ReadSheets { get; init; } = [];

    public bool HasErrors => Diagnostics.Any(d => d.Severity == Severity.Error);
}

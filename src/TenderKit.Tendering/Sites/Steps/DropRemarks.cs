using TenderKit.Tendering.Columns;

namespace TenderKit.Tendering.Sites.Steps;

/// <summary>A sentence alone in its row is a remark and no site.</summary>
public static class DropRemarks
{
    private const int LeastLength = 21;

    public static ColumnMapping Apply(ColumnMapping mapping) => RowSteps.Without(mapping, row =>
        row.Where(c => !c.IsEmpty).ToList() is [{ Number: null, Text.Length: >= LeastLength } only] ? $"the row holds one text only and no site: '{only.Text}'" : null);
}

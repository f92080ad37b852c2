using System.Text;
using TenderKit.Documents.Bids;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Specification;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Schedule;

public class EvidenceTests
{
    private static TenderDesign With(string file)
    {
        var design = HandMadeDesign.Small();
        var kit = design.Kits[0];
        return design with { Kits = [kit with { Parts = kit.Parts with { Pole = kit.Parts.Pole with { DataSheetFile = file, DataSheetPage = 2 } } }, .. design.Kits.Skip(1)] };
    }

    [Fact]
    public void A_data_sheet_is_copied_under_the_code_of_its_part_and_named_with_its_page()
    {
        var catalog = Directory.CreateTempSubdirectory("tenderkit-");
        try
        {
            Directory.CreateDirectory(Path.Combine(catalog.FullName, "datasheets"));
            File.WriteAllText(Path.Combine(catalog.FullName, "datasheets", "columns.txt"), "wall 3 mm");
            var design = With("columns.txt");
            var (copies, diagnostics) = Evidence.Of(design, catalog.FullName);
            Assert.Empty(diagnostics);
            var copy = Assert.Single(copies);
            var name = design.Kits[0].Parts.Pole.Code + "-columns.txt";
            Assert.Equal(("technical/evidence/" + name, "wall 3 mm"), (copy.RelativePath, Encoding.UTF8.GetString(copy.Bytes)));
            var text = TextView.Of(TechnicalSchedule.Document(design));
            Assert.Contains("E1 p. 2", text, StringComparison.Ordinal);
            Assert.Contains($"E1 {name}, page 2", text, StringComparison.Ordinal);
        }
        finally
        {
            catalog.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData("nowhere.pdf")]
    [InlineData("../columns.txt")]
    public void A_missing_file_and_one_outside_the_folder_warn(string file)
    {
        var (copies, diagnostics) = Evidence.Of(With(file), Path.GetTempPath());
        Assert.Empty(copies);
        Assert.Equal("TK651", Assert.Single(diagnostics).Code);
    }

    [Fact]
    public void Clauses_without_property_have_their_own_table_with_room_to_write()
    {
        var design = HandMadeDesign.Small();
        Assert.DoesNotContain("bidder's statement", TextView.Of(TechnicalSchedule.Document(design)), StringComparison.Ordinal);
        var text = TextView.Of(TechnicalSchedule.Document(design with { Clauses = new Clauses([], [new StatementClause("7.1", "supply", "Name the store")]) }));
        Assert.Contains("Clauses answered by the bidder's statement", text, StringComparison.Ordinal);
        Assert.Contains("Supply: Name the store", text, StringComparison.Ordinal);
    }
}

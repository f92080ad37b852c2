using TenderKit.Documents.Buyer;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Tests.Layout;
using TenderKit.Intake.Tables;
using TenderKit.Tendering.Tests.Samples;
using Xunit;

namespace TenderKit.Documents.Tests.Buyer;

[Collection("world")]
public class NeutralDocumentsTests
{
    [Fact]
    public void The_specification_is_as_approved() => Approved.Same("specification", TextView.Of(NeutralSpecification.Document(HandMadeDesign.Small())));

    [Fact]
    public void Neither_names_a_bidder_a_part_or_what_was_chosen()
    {
        var design = HandMadeDesign.Small();
        var form = TableReader.Read(NeutralPriceForm.Make(design), "form.xlsx").Value!;
        var text = TextView.Of(NeutralSpecification.Document(design)) + string.Join('\n', form.Tables.SelectMany(t => t.Rows).SelectMany(r => r).Select(c => c.Text));
        Assert.DoesNotContain(design.Tender.Head.Bidder, text, StringComparison.Ordinal);
        Assert.All(design.Catalog.All, p => Assert.DoesNotContain(p.Code, text, StringComparison.Ordinal));
        Assert.All(design.Kits, k => Assert.DoesNotMatch($@"\b{k.Id}\b", text));
    }

    [Fact]
    public void Required_values_come_without_what_was_offered()
    {
        var design = HandMadeDesign.Small();
        var rows = NeutralRequirements.Of(design, design.Sites);
        Assert.Contains(rows, r => r is { Item: "Battery" } && r.Required.Contains('3', StringComparison.Ordinal));
        Assert.DoesNotContain(rows, r => r.Property.Contains("array power", StringComparison.Ordinal));
    }

    [Fact]
    public void The_form_has_two_sheets_a_lot_and_a_summary()
    {
        var form = NeutralPriceForm.Make(HandMadeDesign.Small());
        var tables = TableReader.Read(form, "form.xlsx").Value!.Tables;
        Assert.Equal(["Sites A", "Prices A", "Sites B", "Prices B", "Summary"], tables.Select(t => t.Sheet));
    }

    [Fact]
    public void A_class_of_luminance_has_its_own_columns_and_no_lux()
    {
        var small = HandMadeDesign.Small();
        var target = TenderKit.Tendering.Sites.TenderClasses.Find("M4")!;
        var road = small with { Sites = small.Sites.SetItem(0, small.Sites[0] with { Site = small.Sites[0].Site with { Target = target } }) };
        var lines = TextView.Of(NeutralSpecification.Document(road)).Split('\n');

        Assert.Contains(lines, l => l.StartsWith("M4 | 0.75 | 0.4 | 0.6 | 15 | 0.3 | EN 13201-2", StringComparison.Ordinal)); // EN 13201-2:2015, table 1 (from memory)
        Assert.Contains(lines, l => l.Contains("cd/m²", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.StartsWith("M4 | 0 |", StringComparison.Ordinal));
        PlacedText.AssertSound(NeutralSpecification.Document(road));
    }
}

using System.Collections.Immutable;
using TenderKit.Documents.Buyer;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Bids;

/// <summary>What a buyer hands out: specification and blank price form, without a make or a price.</summary>
public static class BuyerDocuments
{
    public static ImmutableArray<BidDocument> Make(TenderDesign design) =>
        [new("specification.pdf", NeutralSpecification.Make(design)), new("price-form.xlsx", NeutralPriceForm.Make(design))];
}

using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Tests.Languages;

/// <summary>A design whose documents are asked for in another language.</summary>
internal static class Spoken
{
    public static TenderDesign SpokenIn(this TenderDesign design, string language) =>
        design with { Tender = design.Tender with { Head = design.Tender.Head with { Language = language } } };
}

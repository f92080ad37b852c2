using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Bids;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>File and page of the data sheet behind an item of the compliance table.</summary>
internal static class EvidenceText
{
    private static readonly ImmutableArray<string> _insideUnit = ["Luminaire", "Battery", "Module", "Array", "Controller"];

    public static bool Any(PoleParts parts) => UsedParts.Of(parts).Any(p => p.DataSheetFile.Length > 0);

    /// <summary>Mark and page of the data sheet of an item; empty where none is known.</summary>
    public static string Mark(PoleParts parts, string item) => PartOf(parts, item) is { DataSheetFile.Length: > 0 } part
        ? FormattableString.Invariant($"E{1 + Sheets(parts).FindIndex(p => p.Code == part.Code)}") + (part.DataSheetPage is { } page ? FormattableString.Invariant($" p. {page}") : "")
        : "";

    /// <summary>The files behind the marks.</summary>
    public static string Files(PoleParts parts) => "Evidence, in the folder technical/evidence: "
        + string.Join("; ", Sheets(parts).Select((p, i) => FormattableString.Invariant($"E{i + 1} {Evidence.NameOf(p)}") + (p.DataSheetPage is { } page ? FormattableString.Invariant($", page {page}") : ""))) + ".";

    private static List<Part> Sheets(PoleParts parts) => [.. UsedParts.Of(parts).Where(p => p.DataSheetFile.Length > 0)];

    private static Part? PartOf(PoleParts p, string item) => item switch
    {
        _ when p.Integrated is { } unit && _insideUnit.Contains(item) => unit,
        "Luminaire" => p.Luminaire,
        "Battery" => p.Battery,
        "Module" or "Array" => p.Module,
        "Controller" => p.Controller,
        "Enclosure" => p.Enclosure,
        "Bracket" => p.Bracket,
        "Pole" => p.Pole,
        "Foundation" or "Anchor bolts" => p.Foundation,
        _ => null,
    };
}

using System.Text.RegularExpressions;
using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Schedule;

/// <summary>What one pole of a kit is made of.</summary>
internal static partial class MakeUpTable
{
    public static TableBlock Of(Kit kit) => new(
        $"Make-up of one pole of kit {kit.Id}",
        [new("Item", FixedPt: 102), new("Part", FixedPt: 56), new("Description and ratings"), new("Count", Side: Side.End, FixedPt: 26)],
        [.. Parts(kit.Parts), .. Circuits(kit.Parts), .. Protection(kit.Parts)])
    {
        Compact = true,
    };

    private static IEnumerable<Row> Parts(PoleParts p) => p.Pieces.Select(piece => Line(piece.Role, piece.Part, piece.Count));

    private static IEnumerable<Row> Circuits(PoleParts p) => p.Circuits.Select(c =>
        Line("Cable, " + c.Name, c.Cable, Figures.Number(c.LengthM, 1)
            + " m", $"{Figures.Number(c.CurrentA, 1)} A of {Figures.Number(c.CapacityA, 0)} A; drop {Figures.Percent(c.DropFraction, 1)}"));

    private static IEnumerable<Row> Protection(PoleParts p)
    {
        foreach (var circuit in p.Circuits.Where(c => c.Fuse is not null)) yield return Line("Fuse, " + circuit.Name, circuit.Fuse!, 1);
        foreach (var same in p.OtherProtection.GroupBy(d => d.Code)) yield return Line(Name(same.First().Kind), same.First(), same.Count());
    }

    private static string Name(ProtectionKind kind) => kind switch
    {
        ProtectionKind.SurgeArrester => "Surge arrester",
        ProtectionKind.EarthElectrode => "Earth electrode",
        ProtectionKind.FuseHolder => "Fuse holder",
        _ => "Fuse",
    };

    private static Row Line(string item, Part part, int count) => Line(item, part, Figures.Number(count, 0), "");

    private static Row Line(string item, Part part, string count, string duty) =>
        new([item, part.Code, string.Join("; ", new[] { part.Description }.Concat(New(part)).Append(duty).Where(t => t.Length > 0)), count]);

    /// <summary>The ratings of a part that its description does not name already.</summary>
    private static IEnumerable<string> New(Part part)
    {
        var said = " " + Plain(part.Description) + " ";
        return PartRatings.Of(part).Split("; ").Where(r => r != "–" && !said.Contains(" " + Plain(r) + " ", StringComparison.OrdinalIgnoreCase));
    }

    private static string Plain(string text) =>
        Punctuation().Replace(Words.Unit(text).Replace('×', 'x').Replace(" degrees", "°", StringComparison.Ordinal), "");

    [GeneratedRegex("[,;:]")]
    private static partial Regex Punctuation();
}

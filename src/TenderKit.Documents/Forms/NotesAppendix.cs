using System.Collections.Immutable;
using TenderKit.Documents.Languages;
using TenderKit.Documents.Layout;
using TenderKit.Tendering.Design;
using TenderKit.Tendering.Notes;

namespace TenderKit.Documents.Forms;

/// <summary>
/// The safety and code notes of a bid as a PDF file: for each note the standard, why it applies here, what to do and who signs.
/// Holds no amount of money. Same design and notes, same bytes.
/// </summary>
public static class NotesAppendix
{
    private static readonly ImmutableArray<Column> _card = [new("", FixedPt: 92), new("")];

    public static byte[] Make(TenderDesign design, ImmutableArray<Note> notes)
    {
        ArgumentNullException.ThrowIfNull(design);
        return PdfPrinter.Print(Document(design, notes));
    }

    internal static PaperDocument Document(TenderDesign design, ImmutableArray<Note> notes)
    {
        var head = design.Tender.Head;
        return new PaperDocument(
            $"{head.Reference} {head.Title}: safety and code notes", head.Bidder, "Safety and code notes", $"{head.Reference}  ·  Safety and code notes",
                head.IssueDate, Blocks(design, notes))
        { Wording = Wording.In(head.Language, [.. Echoes.Of(design), .. Echoes.Of(notes)]) };
    }

    private static ImmutableArray<Block> Blocks(TenderDesign design, ImmutableArray<Note> notes)
    {
        Block[] body = [.. Topics(notes), .. Signatures(notes)];
        return [.. Opening(design, notes), Contents.For(body), new PageBreak(), .. body];
    }

    private static IEnumerable<Block> Opening(TenderDesign design, ImmutableArray<Note> notes)
    {
        var head = design.Tender.Head;
        yield return new Paragraph("Safety and code notes", TextStyle.BodyStrong);
        yield return new Paragraph(head.Title, TextStyle.Title, AfterSteps: 1);
        yield return new Paragraph($"{head.Reference}, {Figures.Date(head.IssueDate)}", TextStyle.Section, AfterSteps: 3);
        yield return new Paragraph(
            $"{Figures.Count(notes.Length, "note follows", "notes follow")}, each called up by a fact of this design. They do not replace local codes or the "
                + "judgement of licensed practitioners: where a local code, the "
            + "employer's requirements or the instructions of a maker differ, the stricter prevails.");
        if (Remark(notes) is { } remark) yield return new Paragraph($"For every standard named below: {remark}.");
        yield return new Paragraph("Standards are named without vouching for their edition. Before work starts the responsible person verifies the edition in "
            + "force at the place of the works.");
        yield return new Paragraph("Batteries, work at height, lifting, excavation and live traffic can kill. Nobody begins such work without the training, "
            + "permits and equipment the law of the place asks for.");
        yield return new Gap(2);
    }

    private static IEnumerable<Block> Topics(ImmutableArray<Note> notes)
    {
        var (number, remark) = (0, Remark(notes));
        foreach (var topic in notes.GroupBy(n => n.Topic))
        {
            yield return new Heading(1, topic.Key);
            foreach (var note in topic) yield return Card(note, ++number, remark);
        }
    }

    /// <summary>What most notes say after their standards, to be said once; null when there is no such thing.</summary>
    private static string? Remark(ImmutableArray<Note> notes) =>
        notes.Select(n => Cut(n.Standard).Remark)
            .Where(r => r.Length > 0)
            .GroupBy(r => r)
            .FirstOrDefault(g => 2 * g.Count() > notes.Length && g.Count() > 1)?.Key;

    /// <summary>The standards of a note, and the remark in brackets that ends them.</summary>
    private static (string Standards, string Remark) Cut(string standard)
    {
        var start = standard.EndsWith(')') ? standard.LastIndexOf('(') : -1;
        return start <= 0 ? (standard, "") : (standard[..start].TrimEnd(), standard[(start + 1)..^1].Trim());
    }

    private static TableBlock Card(Note note, int number, string? remark) => new(
        null,
        _card,
        [Row.Of($"{Figures.Number(number, 0)}.  {(Cut(note.Standard) is var (standards, own) && own == remark ? standards : note.Standard)}"),
            Row.Of("Called up by", note.TriggeredBy), Row.Of("Why it applies", note.Why), Row.Of("What to do", note.Action), Row.Of("Who signs", note.Role)])
    {
        KeepTogether = true,
        Large = true,
    };

    private static IEnumerable<Block> Signatures(ImmutableArray<Note> notes)
    {
        yield return new PageBreak();
        yield return new Heading(1, "Signatures");
        yield return new Paragraph("Each person named signs for the notes under that name, before the work they concern begins.") { KeepWithNext = true };
        yield return new TableBlock(
            "Persons responsible",
            [new("Role", Share: 1.6), new("Notes", Share: 0.8), new("Name and licence", Share: 1.3), new("Signature", Share: 1.1), new("Date", FixedPt: 60)],
            [.. Roles(notes).Select(r => Row.Of(r.Role, r.Notes, "", "", "") with { LeastHeightPt = 25 })]);
    }

    /// <summary>Each role with the numbers of its notes, in the order of the cards; a note that names several roles counts for each.</summary>
    private static IEnumerable<(string Role, string Notes)> Roles(ImmutableArray<Note> notes) =>
        notes.GroupBy(n => n.Topic)
            .SelectMany(topic => topic)
            .SelectMany((note, i) => note.Role.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(role => (Role: Capital(role), Number: i + 1)))
            .GroupBy(r => r.Role)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (g.Key, string.Join(", ", g.Select(r => Figures.Number(r.Number, 0)))));

    private static string Capital(string role) => char.ToUpperInvariant(role[0]) + role[1..];
}

using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Spectre.Console;
using TenderKit.Sizing.Basics;

namespace TenderKit.Cli;

/// <summary>Where a command writes: results to one stream, progress and problems to the other; tables as wide as they need when piped.</summary>
public sealed class Terminal(TextWriter output, TextWriter errors)
{
    private const int PipedWidth = 200;

    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly Lock _gate = new();
    private int _onScreen;

    private bool IsScreen => errors == Console.Error && !Console.IsErrorRedirected;

    /// <summary>A number with its word, in the plural where it must be.</summary>
    public static string Count(int count, string word) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    public void Result(string line) => output.WriteLine(line);

    public void Result(JsonNode json) => output.WriteLine(json.ToJsonString(Layout));

    public void Progress(string line)
    {
        lock (_gate)
        {
            ClearScreenLine();
            errors.WriteLine(line);
        }
    }

    /// <summary>Says how far long work has come.</summary>
    /// <param name="unit">What is counted, in the plural.</param>
    internal WorkMeter Meter(string unit, int total) => new(Progress, IsScreen ? OverScreen : null, unit, total, TimeProvider.System);

    /// <summary>A table of plain text; the first row of cells is the heading.</summary>
    public void Table(IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (var heading in headings) table.AddColumn(new TableColumn(Markup.Escape(heading)));
        foreach (var row in rows) table.AddRow([.. row.Select(Markup.Escape)]);
        ConsoleFor(output).Write(table);
    }

    /// <summary>Problems, worst first, each on a line, then their number.</summary>
    public void Problems(ImmutableArray<Diagnostic> diagnostics)
    {
        foreach (var diagnostic in diagnostics.OrderByDescending(d => d.Severity)) errors.WriteLine(diagnostic.ToString());
    }

    private void OverScreen(string line)
    {
        lock (_gate)
        {
            errors.Write("\r" + line.PadRight(_onScreen));
            _onScreen = line.Length;
        }
    }

    private void ClearScreenLine()
    {
        if (_onScreen > 0) errors.Write("\r" + new string(' ', _onScreen) + "\r");
        _onScreen = 0;
    }

    private static IAnsiConsole ConsoleFor(TextWriter writer)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(writer), Ansi = AnsiSupport.No, ColorSystem = ColorSystemSupport.NoColors });
        if (Console.IsOutputRedirected || writer != Console.Out) console.Profile.Width = PipedWidth;
        return console;
    }
}

using System.CommandLine;
using System.Text;

namespace TenderKit.Cli.Commands;

/// <summary><c>new</c>: a starter tender with its own catalogue and rules in a fresh folder.</summary>
internal static class NewCommand
{
    private const string Prefix = "starter/";

    public static Command Make(Terminal terminal)
    {
        var folder = new Argument<string>("folder") { Description = "A folder that does not exist yet, or is empty." };
        var command = new Command("new", "Writes a starter tender to change: tender file, site list, climate, rules and a sample catalogue.") { folder };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(folder), terminal));
        return command;
    }

    private static int Run(string folder, Terminal terminal)
    {
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
        {
            terminal.Progress($"error: {folder} is not empty; name a new folder. Nothing was written.");
            return ExitCodes.CouldNotRun;
        }

        var assembly = typeof(NewCommand).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            var path = Path.Combine(folder, name[Prefix.Length..].Replace('/', Path.DirectorySeparatorChar));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var resource = assembly.GetManifestResourceStream(name)!;
            using var bytes = new MemoryStream();
            resource.CopyTo(bytes);
            File.WriteAllBytes(path, name.EndsWith("tender.yaml", StringComparison.Ordinal) ? WithOwnFiles(bytes.ToArray()) : bytes.ToArray());
        }

        terminal.Result($"A starter tender stands in {folder}. Change it, then run: tenderkit bid {Path.Combine(folder, "tender.yaml")}");
        return ExitCodes.Good;
    }

    /// <summary>The starter's paths point into the project; a new folder holds its own catalogue and rules.</summary>
    private static byte[] WithOwnFiles(byte[] tender) => Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(tender)
        .Replace("../../catalog-sample", "catalog", StringComparison.Ordinal)
        .Replace("../design-rules.yaml", "design-rules.yaml", StringComparison.Ordinal));
}

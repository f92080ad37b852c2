using System.Runtime.CompilerServices;
using Xunit;

namespace TenderKit.Documents.Tests.Workbooks;

/// <summary>
/// Compares a text view with the approved one beside the tests. A difference is written as <c>name.received.txt</c>;
/// a person reads it and, if it is right, renames it over the approved file.
/// </summary>
internal static class Approved
{
    public static void Check(string name, string text, [CallerFilePath] string caller = "")
    {
        var folder = Path.Combine(Path.GetDirectoryName(caller)!, "Approved");
        var approved = Path.Combine(folder, name + ".approved.txt");
        var received = Path.Combine(folder, name + ".received.txt");
        var expected = File.Exists(approved) ? File.ReadAllText(approved).ReplaceLineEndings("\n") : "";
        if (expected == text)
        {
            File.Delete(received);
            return;
        }

        Directory.CreateDirectory(folder);
        File.WriteAllText(received, text);
        Assert.Fail($"the view differs from {approved}; read {received}");
    }
}

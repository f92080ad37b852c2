using System.Runtime.CompilerServices;
using Xunit;

namespace TenderKit.Documents.Tests;

/// <summary>
/// Compares a text view with the approved one beside the test. On a difference the new view is written next to it as
/// <c>*.received.txt</c>: a person reads the two and, when the change is meant, renames the new one.
/// </summary>
internal static class Approved
{
    public static void Same(string name, string view, [CallerFilePath] string test = "")
    {
        var folder = Path.GetDirectoryName(test)!;
        var approved = Path.Combine(folder, name + ".approved.txt");
        var received = Path.Combine(folder, name + ".received.txt");
        var expected = File.Exists(approved) ? File.ReadAllText(approved) : "";
        if (expected == view)
        {
            File.Delete(received);
            return;
        }

        File.WriteAllText(received, view);
        Assert.Equal(expected.Split('\n'), view.Split('\n'));
    }
}

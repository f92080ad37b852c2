using System.Reflection;

namespace TenderKit.Cli;

/// <summary>The version of the program, set in one place: <c>Version</c> of Directory.Build.props.</summary>
internal static class ProgramVersion
{
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;
}

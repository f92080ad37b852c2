using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace TenderKit.Cli.Tests.Faults;

/// <summary>The program in a process of its own.</summary>
internal sealed class Child : IDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _errors = new();
    private readonly StringBuilder _output = new();

    private Child(ProcessStartInfo start)
    {
        _process = new Process { StartInfo = start };
        _process.OutputDataReceived += (_, line) => Keep(_output, line.Data);
        _process.ErrorDataReceived += (_, line) => Keep(_errors, line.Data);
        _process.Start();
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    public int Id => _process.Id;

    public bool HasExited => _process.HasExited;

    public string Errors
    {
        get { lock (_errors) return _errors.ToString(); }
    }

    public string Output
    {
        get { lock (_output) return _output.ToString(); }
    }

    public static Child Start(IEnumerable<string> args, IReadOnlyDictionary<string, string>? environment = null, string? workingFolder = null)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = workingFolder ?? "" };
        start.ArgumentList.Add(typeof(App).Assembly.Location);
        foreach (var argument in args) start.ArgumentList.Add(argument);
        foreach (var (name, value) in environment ?? new Dictionary<string, string>()) start.Environment[name] = value;
        return new(start);
    }

    public int WaitForExit()
    {
        _process.WaitForExit();
        return _process.ExitCode;
    }

    public bool WaitForExit(int ms) => _process.WaitForExit(ms);

    public void Kill() => _process.Kill();

    /// <summary>Sends a signal of the system by its name, such as INT.</summary>
    public void Signal(string name)
    {
        using var kill = Process.Start("kill", ["-" + name, Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited) _process.Kill();
        _process.Dispose();
    }

    private static void Keep(StringBuilder text, string? line)
    {
        if (line is null) return;
        lock (text) text.AppendLine(line);
    }
}

using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.Settings;

/// <summary>
/// Reads one schedule out of a YAML file of its own, with <c>parts</c> and <c>seasons</c> at the top, or out of the <c>schedules</c> of a tender file.
/// </summary>
public static class ScheduleFile
{
    /// <summary>The schedule, or null with errors.</summary>
    /// <param name="text">Text of the file.</param>
    /// <param name="file">File name for messages.</param>
    /// <param name="name">Name of the schedule among several; null where the file holds one.</param>
    /// <param name="problems">Collects what is wrong.</param>
    public static LightingSchedule? Read(string text, string file, string? name, List<Diagnostic> problems)
    {
        if (YamlFile.Read(text, file, problems) is not { } top) return null;
        if (top.Has("parts") || top.Has("seasons")) return ScheduleReader.Read(name ?? Path.GetFileNameWithoutExtension(file), top);
        if (top.Section("schedules") is not { } section)
        {
            top.AddError("TK113", "the file holds no schedule: neither 'parts' and 'seasons', nor 'schedules' as in a tender file", top.Line);
            return null;
        }

        var names = section.Keys.ToList();
        if (name is null && names.Count == 1) name = names[0];
        var all = ScheduleReader.Read(section);
        if (name is not null && all.TryGetValue(name, out var found)) return found;
        section.AddError(
            "TK117", $"{(name is null ? "the file holds several schedules" : $"there is no schedule '{name}' in the file")}; name one behind #, such as {file}#{names.FirstOrDefault() ?? "evening"}; there are: {string.Join(", ", names)}", section.Line);
        return null;
    }
}

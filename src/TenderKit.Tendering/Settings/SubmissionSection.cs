using System.Globalization;
using TenderKit.Intake.Yaml;
using TenderKit.Sizing.Basics;

namespace TenderKit.Tendering.Settings;

/// <summary>Reads <c>submission</c> of the tender file.</summary>
public static class SubmissionSection
{
    private const int UsualDaysBeyond = 28;

    /// <param name="folder">Folder the forms are named from.</param>
    public static Submission Read(YamlSection? section, string folder)
    {
        if (section is null) return Submission.None;
        var read = new Submission(
            SecurityOf(section.Section("bid_security")),
            [.. section.Sections("forms").Select(f => FormOf(f, folder))],
            [.. section.Sections("deviations").Select(DeviationOf)]);
        section.ReportUnknownKeys();
        return read;
    }

    /// <summary>Forms that expire before the bid does, and files that are not there.</summary>
    public static IEnumerable<Diagnostic> Examine(Submission submission, TenderHead head)
    {
        var until = head.IssueDate.AddDays(head.ValidityDays);
        foreach (var form in submission.Forms)
        {
            if (form.Expires < until)
                yield return Diagnostic.Warning("TK717", FormattableString.Invariant($"'{form.Form}' holds until {form.Expires:yyyy-MM-dd}, the bid until {until:yyyy-MM-dd}; renew it before it is handed in"));
            if (form.File.Length > 0 && !form.FileFound)
                yield return Diagnostic.Warning("TK718", $"'{form.Form}': the file {form.File} is not in the tender's folder");
        }
    }

    private static BidSecurity? SecurityOf(YamlSection? section)
    {
        if (section is null) return null;
        if (section.Has("share") == section.Has("amount"))
            section.AddError("TK113", "'bid_security' takes either 'share' (of the total) or 'amount'; give one of them", section.Line);
        var read = new BidSecurity(
            section.Has("share") ? section.Share("share") : null,
            section.Has("amount") ? (decimal)section.RequiredNumber("amount", Intake.Numbers.QuantityKind.Number) : null,
            section.Whole("days_beyond_validity", 0, 3650, UsualDaysBeyond),
            section.Text("clause") ?? "");
        section.ReportUnknownKeys();
        return read;
    }

    private static SubmittedForm FormOf(YamlSection form, string folder)
    {
        var file = form.Text("file") ?? "";
        var read = new SubmittedForm(
            form.RequiredText("form"), form.Text("clause") ?? "", form.Text("signed_by") ?? "", DateOf(form, "expires"), file,
            file.Length > 0 && File.Exists(Path.Combine(folder, file)));
        form.ReportUnknownKeys();
        return read;
    }

    private static Deviation DeviationOf(YamlSection section)
    {
        var read = new Deviation(section.Text("clause") ?? "", section.RequiredText("text"), section.Text("reason") ?? "");
        section.ReportUnknownKeys();
        return read;
    }

    private static DateOnly? DateOf(YamlSection section, string key)
    {
        if (section.Scalar(key) is not { } scalar) return null;
        if (DateOnly.TryParseExact(scalar.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        section.AddError("TK114", $"'{scalar.Path}' must be a date written year-month-day, such as 2027-02-15", scalar.Line);
        return null;
    }
}

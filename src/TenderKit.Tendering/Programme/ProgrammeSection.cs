using System.Globalization;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Programme;

/// <summary>Reads <c>programme</c> of the tender file.</summary>
internal static class ProgrammeSection
{
    private const int MostDays = 3650;
    private const int MostGangs = 1000;

    public static ProgrammeSettings Read(YamlSection? section)
    {
        var usual = ProgrammeSettings.Usual;
        if (section is null) return usual;
        var read = new ProgrammeSettings(
            DateOf(section, "order_date"),
            DateOf(section, "completion_date"),
            section.Whole("mobilisation_days", 0, MostDays, usual.MobilisationDays),
            section.Whole("shipping_days", 0, MostDays, usual.ShippingDays),
            section.Whole("curing_days", 0, MostDays, usual.CuringDays),
            section.Whole("working_days_per_week", 1, 7, usual.WorkingDaysAWeek),
            section.Whole("gangs", 1, MostGangs, usual.Gangs),
            RateOf(section, "foundations_per_gang_day", usual.FoundationsPerGangDay),
            RateOf(section, "poles_per_gang_day", usual.PolesPerGangDay),
            MovingOf(section, usual.MovingDays),
            [.. section.Sections("lots").Select(LotOf)]);
        if (read.OrderDate > read.CompletionDate)
            section.AddError("TK116", "'completion_date' lies before 'order_date'; correct one of them", section.Line);
        section.ReportUnknownKeys();
        return read;
    }

    private static LotPlan LotOf(YamlSection section)
    {
        var read = new LotPlan(
            section.RequiredText("lot"), section.Has("gangs") ? section.Whole("gangs", 1, MostGangs, 1) : null, DateOf(section, "completion_date"));
        section.ReportUnknownKeys();
        return read;
    }

    private static decimal RateOf(YamlSection section, string key, decimal usual)
    {
        var rate = section.Number(key, QuantityKind.Number, (double)usual);
        if (rate is >= 0.01 and <= 1000) return (decimal)rate;
        section.AddError("TK116", FormattableString.Invariant($"'{key}' is {rate:0.###}, outside 0.01 to 1000; correct it"), section.Scalar(key)!.Line);
        return usual;
    }

    private static decimal MovingOf(YamlSection section, decimal usual)
    {
        var days = section.Number("moving_days_per_site", QuantityKind.Number, (double)usual);
        if (days is >= 0 and <= 100) return (decimal)days;
        section.AddError("TK116", FormattableString.Invariant($"'moving_days_per_site' is {days:0.###}, outside 0 to 100; correct it"), section.Scalar("moving_days_per_site")!.Line);
        return usual;
    }

    private static DateOnly? DateOf(YamlSection section, string key)
    {
        if (section.Scalar(key) is not { } scalar) return null;
        if (DateOnly.TryParseExact(scalar.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)) return date;
        section.AddError("TK114", $"'{scalar.Path}' must be a date written year-month-day, such as 2027-02-15", scalar.Line);
        return null;
    }
}

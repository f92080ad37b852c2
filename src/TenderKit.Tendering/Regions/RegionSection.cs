using System.Collections.Immutable;
using TenderKit.Intake.Maps.Geodesy;
using TenderKit.Intake.Numbers;
using TenderKit.Intake.Yaml;
using TenderKit.Tendering.Settings;
using TenderKit.Tendering.Sites;

namespace TenderKit.Tendering.Regions;

/// <summary>Reads the section <c>region</c> of a tender file.</summary>
internal static class RegionSection
{
    private const int MostPlaces = 200;
    private const double LeastStepKm = 20;
    private const double UsualStepKm = 100;

    public static RegionAsk? Read(YamlSection? section)
    {
        if (section is null) return null;
        var places = section.Sections("places").Select(PlaceOf).ToImmutableArray();
        var box = section.Section("box") is { } sides ? BoxOf(sides) : null;
        var read = new RegionAsk(
            section.RequiredText("name"), KindOf(section), section.Has("poles") ? section.Whole("poles", 1, 1_000_000, 1) : null, Positive(section, "length_m", 1, 5_000_000),
            Positive(section, "spacing_m", 2, 120), places, box);
        if (read.Poles is null && read.LengthM is null) section.AddError("TK113", "'region' states no quantity; write poles, or length_m", section.Line);
        if (read is { Poles: not null, LengthM: not null }) section.AddError("TK116", "'region' states poles and length_m; keep one of them, and spacing_m beside the poles where it is asked for", section.Line);
        if (places.IsEmpty && box is null) section.AddError("TK113", "'region' names no place; write places, or a box of latitudes and longitudes", section.Line);
        if (places.Length > MostPlaces) section.AddError("TK116", FormattableString.Invariant($"'region.places' holds {places.Length} places, at most {MostPlaces}"), section.Line);
        foreach (var twice in places.GroupBy(p => p.Name, StringComparer.Ordinal).Where(g => g.Count() > 1)) section.AddError("TK116", $"'region.places' names {twice.Key} twice", section.Line);
        section.ReportUnknownKeys();
        return read;
    }

    private static RegionPlace PlaceOf(YamlSection section)
    {
        var read = new RegionPlace(
            section.RequiredText("name"), new GeoPoint(Degrees(section, "latitude", 90), Degrees(section, "longitude", 180)), section.Text("climate"));
        section.ReportUnknownKeys();
        return read;
    }

    private static double Degrees(YamlSection section, string key, double greatest)
    {
        var value = section.RequiredNumber(key, QuantityKind.Degrees);
        if (Math.Abs(value) > greatest) section.AddError("TK116", FormattableString.Invariant($"'{key}' is {value}, outside -{greatest} to {greatest} degrees"), section.Line);
        return Math.Clamp(value, -greatest, greatest);
    }

    private static RegionBox BoxOf(YamlSection section)
    {
        var (south, north) = Range(section, "latitude", 66);
        var (west, east) = Range(section, "longitude", 180);
        var step = section.Number("step_km", QuantityKind.Number, UsualStepKm);
        if (step < LeastStepKm) section.AddError("TK116", FormattableString.Invariant($"'step_km' is {step}, at least {LeastStepKm}: no climate is known finer"), section.Line);
        section.ReportUnknownKeys();
        return new RegionBox(south, north, west, east, Math.Max(LeastStepKm, step));
    }

    private static (double Low, double High) Range(YamlSection section, string key, double greatest)
    {
        if (section.Scalar(key) is not { } scalar)
        {
            section.RequiredText(key);
            return (0, 0);
        }

        var ends = scalar.Text.Split(" to ", StringSplitOptions.TrimEntries).Select(t => UserNumber.Read(t, QuantityKind.Degrees).Value).ToArray();
        if (ends is [{ } a, { } b] && Math.Abs(a) <= greatest && Math.Abs(b) <= greatest) return (Math.Min(a, b), Math.Max(a, b));
        section.AddError("TK114", FormattableString.Invariant($"'{scalar.Path}' is '{scalar.Text}'; write two numbers of degrees within {greatest} such as -2 to 3"), scalar.Line);
        return (0, 0);
    }

    private static double? Positive(YamlSection section, string key, double least, double greatest)
    {
        if (!section.Has(key)) return null;
        var value = section.Number(key, QuantityKind.Length, least);
        if (value >= least && value <= greatest) return value;
        section.AddError("TK116", FormattableString.Invariant($"'{key}' is {value}, outside {least} to {greatest} m"), section.Line);
        return least;
    }

    private static SiteKind KindOf(YamlSection section)
    {
        if (section.Scalar("kind") is not { } scalar) return SiteKind.Road;
        if (SiteWords.KindOf(scalar.Text) is { } kind and not SiteKind.Yard) return kind;
        section.AddError("TK117", $"kind '{scalar.Text}' is not known here; write road or path", scalar.Line);
        return SiteKind.Road;
    }
}

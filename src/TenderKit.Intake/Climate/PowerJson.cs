using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace TenderKit.Intake.Climate;

/// <summary>Reads a JSON answer of the NASA POWER service: a point with <c>properties.parameter</c>, units under <c>parameters</c>; keys are JAN, YYYYMM, YYYYMMDD or YYYYMMDDHH.</summary>
internal static partial class PowerJson
{
    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    public static bool IsOne(string firstLine) => firstLine.TrimStart().StartsWith('{');

    /// <summary>The file, or null with errors.</summary>
    public static PowerFile? Read(ClimateText text)
    {
        try
        {
            using var document = JsonDocument.Parse(string.Join('\n', text.Lines));
            return Read(text, document.RootElement);
        }
        catch (JsonException e)
        {
            text.Data("the text is no JSON from here on; it may have been cut off. Get the file again", (int)(e.LineNumber ?? 0) + 1);
            return null;
        }
    }

    private static PowerFile? Read(ClimateText text, JsonElement root)
    {
        if (At(root, "properties", "parameter") is not { ValueKind: JsonValueKind.Object } values
            || At(root, "geometry", "coordinates") is not { ValueKind: JsonValueKind.Array } point || point.GetArrayLength() < 2)
        {
            text.Head("the JSON holds no 'geometry.coordinates' and 'properties.parameter' of a single point; ask the service for a point, not a region");
            return null;
        }

        if (StatedPlace.Of(text, null, point[1].ToString(), point[0].ToString(), "0") is not { } place) return null;
        var quantities = new SortedDictionary<string, PowerQuantity>(StringComparer.Ordinal);
        PowerStep? step = null;
        foreach (var parameter in values.EnumerateObject().Where(p => PowerFile.IsUsed(p.Name) && p.Value.ValueKind == JsonValueKind.Object))
        {
            var quantity = new PowerQuantity(At(root, "parameters", parameter.Name, "units")?.ToString() ?? "", []);
            foreach (var entry in parameter.Value.EnumerateObject())
            {
                var kept = Keep(text, parameter.Name, entry, quantity);
                step ??= kept;
            }

            quantities[parameter.Name] = quantity;
        }

        if (step is null && text.Found.Count == 0) text.Head($"the JSON holds no values of {PowerFile.Global} or {PowerFile.MeanC}; ask the service for both");
        if (text.Found.Count > 0) return null;
        var utc = At(root, "header", "time_standard")?.ToString() == "UTC";
        return new PowerFile(step!.Value, place.LatitudeDegrees, place.LongitudeDegrees, utc, Period(root), quantities);
    }

    private static PowerStep? Keep(ClimateText text, string name, JsonProperty entry, PowerQuantity quantity)
    {
        if (IsAnnual().IsMatch(entry.Name)) return null;
        if (StampOf(entry.Name) is not { } stamp || entry.Value.ValueKind != JsonValueKind.Number)
        {
            if (text.Found.Count == 0) text.Head($"{name} holds '{entry.Name}: {entry.Value}', which is no time with a number; get the file again");
            return null;
        }

        quantity.Values[stamp.Stamp] = PowerFile.OrMissing(entry.Value.GetDouble());
        return stamp.Step;
    }

    private static (PowerStamp Stamp, PowerStep Step)? StampOf(string key)
    {
        if (Array.IndexOf(Months, key) is var m and >= 0) return (new PowerStamp(0, m + 1, 0, 0), PowerStep.Climatology);
        var digits = key + (key.Length == 6 ? "01" : "") + (key.Length is 6 or 8 ? "00" : "");
        if (!DateTime.TryParseExact(digits, "yyyyMMddHH", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) || time.Year is < 1900 or > 2200) return null;
        return key.Length switch
        {
            6 => (new PowerStamp(time.Year, time.Month, 0, 0), PowerStep.Months),
            8 => (new PowerStamp(time.Year, time.Month, time.Day, 0), PowerStep.Days),
            10 => (new PowerStamp(time.Year, time.Month, time.Day, time.Hour), PowerStep.Hours),
            _ => null,
        };
    }

    private static string Period(JsonElement root)
    {
        var header = At(root, "header");
        if (header is not { ValueKind: JsonValueKind.Object } h) return "";
        var range = ClimatologyPeriod().Match(At(h, "range")?.ToString() ?? "");
        if (range.Success) return range.Value;
        return At(h, "start") is { } start && At(h, "end") is { } end ? start + " to " + end : "";
    }

    private static JsonElement? At(JsonElement element, params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            if (element.ValueKind != JsonValueKind.Object || !element.TryGetProperty(name, out element)) return null;
        }

        return element;
    }

    // mean of the year: ANN, or month 13
    [GeneratedRegex(@"^(?:ANN|\d{4}13)$")]
    private static partial Regex IsAnnual();

    [GeneratedRegex(@"\([A-Z][a-z]+ \d{4} - [A-Z][a-z]+ \d{4}\)")]
    private static partial Regex ClimatologyPeriod();
}

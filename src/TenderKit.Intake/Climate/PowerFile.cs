namespace TenderKit.Intake.Climate;

/// <summary>Step of a file of the NASA POWER service.</summary>
internal enum PowerStep
{
    Hours,
    Days,
    Months,
    Climatology,
}

/// <summary>Time of one value; month, day and hour are 0 where the step has none, the year of a climatology is 0. Hours are 0 to 23, beginning.</summary>
internal readonly record struct PowerStamp(int Year, int Month, int Day, int Hour);

/// <summary>One quantity: its unit as written, and its values; NaN where the file marks them missing.</summary>
internal sealed record PowerQuantity(string Unit, Dictionary<PowerStamp, double> Values);

/// <summary>A file of the NASA POWER service, csv or JSON, before its units are followed. Values below <see cref="Fill"/> are marks for missing data.</summary>
internal sealed record PowerFile(PowerStep Step, double LatitudeDegrees, double LongitudeDegrees, bool Utc, string Period, SortedDictionary<string, PowerQuantity> Quantities)
{
    public const string Global = "ALLSKY_SFC_SW_DWN";
    public const string MeanC = "T2M";
    public const string MaxC = "T2M_MAX";
    public const string MinC = "T2M_MIN";

    private const double Fill = -900;

    /// <summary>The quantities that are used; the others are passed over.</summary>
    public static bool IsUsed(string name) => name is Global or MeanC or MaxC or MinC;

    /// <summary>NaN for a mark of missing data (-999).</summary>
    public static double OrMissing(double value) => value <= Fill ? double.NaN : value;

    /// <summary>As printed.</summary>
    public string Source => "NASA POWER " + Step switch
    {
        PowerStep.Hours => "hourly",
        PowerStep.Days => "daily",
        PowerStep.Months => "monthly",
        _ => "climatology",
    } + " (these data were obtained from the NASA Langley Research Center POWER Project)" + (Period.Length > 0 ? " " + Period : "");

    public Dictionary<PowerStamp, double>? ValuesOf(string name) => Quantities.TryGetValue(name, out var quantity) ? quantity.Values : null;
}

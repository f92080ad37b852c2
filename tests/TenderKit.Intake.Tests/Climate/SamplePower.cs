using System.Globalization;
using System.Text;

namespace TenderKit.Intake.Tests.Climate;

/// <summary>Small files in the layout of the NASA POWER service, made from the hours of <see cref="SampleHours"/>.</summary>
internal static class SamplePower
{
    public static string Head(string clock, string unit, params string[] more) => $"""
        -BEGIN HEADER-
        NASA/POWER Source Native Resolution Daily Data
        Dates (month/day/year): 01/01/2001 through 12/31/2001 in {clock}
        Location: latitude  10.0   longitude 30.0
        elevation from MERRA-2: Average for 0.5 x 0.625 degree lat/lon region = 100.0 meters
        The value for missing source data that cannot be computed or is outside of the sources availability range: -999
        parameter(s):
        ALLSKY_SFC_SW_DWN     CERES SYN1deg All Sky Surface Shortwave Downward Irradiance ({unit})
        T2M         MERRA-2 Temperature at 2 Meters (C)
        {string.Join('\n', more)}
        -END HEADER-

        """;

    /// <summary>Hours of the clock asked for: local (2 h east) or universal.</summary>
    public static string Hourly(string clock, string unit, double perWh, Func<DateTime, string?>? global = null, params int[] years)
    {
        var text = new StringBuilder(Head(clock, unit)).Append("YEAR,MO,DY,HR,ALLSKY_SFC_SW_DWN,T2M\n");
        foreach (var t in (years.Length == 0 ? [2001] : years).SelectMany(SampleHours.Hours))
        {
            var local = t.AddHours(clock == "UTC" ? 2 : 0);
            text.Append(CultureInfo.InvariantCulture, $"{t.Year},{t.Month},{t.Day},{t.Hour},{global?.Invoke(t) ?? SampleHours.Text(SampleHours.Wh(local.Hour) * perWh)},{SampleHours.Text(SampleHours.AirC(local.Month, local.Hour))}\n");
        }

        return text.ToString();
    }

    /// <summary>Days of 2001 with 5 kWh/m2, mean 20, highest 27 and lowest 14 degC, but for 30 June with 1 kWh/m2, 33 and 3 degC.</summary>
    public static string Daily(string unit, double perKWh, bool dayOfYear, bool extremes = true, Func<DateTime, string?>? global = null, int dayCount = 365)
    {
        var text = new StringBuilder(Head("LST", unit, extremes ? ["T2M_MAX     MERRA-2 Temperature at 2 Meters Maximum (C)", "T2M_MIN     MERRA-2 Temperature at 2 Meters Minimum (C)"] : []));
        text.Append(dayOfYear ? "YEAR,DOY," : "YEAR,MO,DY,").Append("ALLSKY_SFC_SW_DWN,T2M").Append(extremes ? ",T2M_MAX,T2M_MIN\n" : "\n");
        for (var d = 0; d < dayCount; d++)
        {
            var date = new DateTime(2001, 1, 1).AddDays(d);
            var odd = date is { Month: 6, Day: 30 };
            text.Append(dayOfYear ? $"2001,{date.DayOfYear}," : $"2001,{date.Month},{date.Day},");
            text.Append(global?.Invoke(date) ?? SampleHours.Text((odd ? 1 : 5) * perKWh)).Append(",20").Append(extremes ? odd ? ",33,3\n" : ",27,14\n" : "\n");
        }

        return text.ToString();
    }

    public static string Json(string values, string unit, string header) => $$$$"""
        {"type":"Feature","geometry":{"type":"Point","coordinates":[30.0,10.0,100.0]},"properties":{"parameter":{ {{{{values}}}} } },
        "header":{ {{{{header}}}} },"messages":[],
        "parameters":{"ALLSKY_SFC_SW_DWN":{"units":"{{{{unit}}}}","longname":"All Sky Surface Shortwave Downward Irradiance"},"T2M":{"units":"C","longname":"Temperature at 2 Meters"},
        "T2M_MAX":{"units":"C"},"T2M_MIN":{"units":"C"}}}
        """;
}

using System.Globalization;
using System.Text;

namespace TenderKit.Intake.Tests.Climate;

/// <summary>
/// A made year of hours for the readers: clock and solar time agree, the day's energy is a half sine from 6 to 18 h with 1000 Wh/m2 at its peak,
/// air 20 + month degC, 5 K more at the hour ending 14.
/// </summary>
internal static class SampleHours
{
    /// <summary>Energy of an hour 0 to 23, Wh/m2.</summary>
    public static double Wh(int hour) => hour is < 6 or >= 18 ? 0 : Math.Round(1000 * Math.Sin(Math.PI * (hour + 0.5 - 6) / 12));

    public static double AirC(int month, int hour) => 20 + month + (hour == 13 ? 5 : 0);

    /// <summary>Sum of a day, kWh/m2.</summary>
    public static double DayKWh => Enumerable.Range(0, 24).Sum(Wh) / 1000;

    /// <summary>Hours of 365 days of a year that is no leap year.</summary>
    public static IEnumerable<DateTime> Hours(int year) => Enumerable.Range(0, 8760).Select(h => new DateTime(year, 1, 1).AddHours(h));

    public static string Epw(Func<DateTime, string>? global = null, Func<DateTime, string>? air = null, string location = "LOCATION,Made,-,XXX,own,0,10.0,30.0,2.0,100.0", string lineEnd = "\r\n")
    {
        var text = new StringBuilder(location).Append(lineEnd).Append("DESIGN CONDITIONS,0").Append(lineEnd).Append("DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31").Append(lineEnd);
        foreach (var t in Hours(2001))
        {
            text.Append(CultureInfo.InvariantCulture, $"{1990 + t.Month},{t.Month},{t.Day},{t.Hour + 1},60,?9,{air?.Invoke(t) ?? Text(AirC(t.Month, t.Hour))},10,60,90000,0,0,0,{global?.Invoke(t) ?? Text(Wh(t.Hour))},0,0,0,0").Append(lineEnd);
        }

        return text.ToString();
    }

    public static string Tmy3(Func<DateTime, string>? global = null)
    {
        var text = new StringBuilder("123456,\"Made, by hand\",XX,2.0,10.0,30.0,100\nDate (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),GHI (W/m^2),GHI source,Dry-bulb (C),Dry-bulb source\n");
        foreach (var t in Hours(2001))
        {
            text.Append(CultureInfo.InvariantCulture, $"{t.Month:00}/{t.Day:00}/{1990 + t.Month},{t.Hour + 1:00}:00,0,{global?.Invoke(t) ?? Text(Wh(t.Hour))},1,{Text(AirC(t.Month, t.Hour))},A\n");
        }

        return text.ToString();
    }

    public static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}

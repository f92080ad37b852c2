using System.Globalization;

namespace TenderKit.Documents.Tests;

/// <summary>Runs the same work under cultures and time zones that spoil careless formatting.</summary>
internal static class SameEverywhere
{
    public static IEnumerable<T> Run<T>(Func<T> work)
    {
        foreach (var culture in new[] { "fr-FR", "ar-SA", "tr-TR", "en-IN" })
        {
            foreach (var zone in new[] { "UTC", "Asia/Tokyo", "America/Santiago" }) yield return Under(culture, zone, work);
        }
    }

    private static T Under<T>(string culture, string zone, Func<T> work)
    {
        var (before, beforeUi, beforeZone) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture, Environment.GetEnvironmentVariable("TZ"));
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            SetZone(zone);
            return work();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (before, beforeUi);
            SetZone(beforeZone);
        }
    }

    private static void SetZone(string? zone)
    {
        Environment.SetEnvironmentVariable("TZ", zone);
        TimeZoneInfo.ClearCachedData();
    }
}

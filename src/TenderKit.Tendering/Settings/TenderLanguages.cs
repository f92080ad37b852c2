using System.Collections.Immutable;

namespace TenderKit.Tendering.Settings;

/// <summary>The languages documents can be asked for in, ISO 639-1.</summary>
public static class TenderLanguages
{
    /// <summary>The language every text is written in first.</summary>
    public const string English = "en";

    /// <summary>English, French, Spanish, Portuguese.</summary>
    public static ImmutableArray<string> All { get; } = [English, "fr", "es", "pt"];

    /// <summary>What is said of a language that is not among them.</summary>
    public static string Unknown(string written) => $"language '{written}' is not known; use en (English), fr (French), es (Spanish) or pt (Portuguese)";
}

using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Climate;
using TenderKit.Sizing.Energy;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Design;

/// <summary>Judges a design on the user's own hours: real years, enough of them, must keep the lamps lit as well as the synthetic ones do.</summary>
public static class OwnSeriesCheck
{
    /// <summary>Whether a proof is judged, rather than shown only.</summary>
    public static bool IsJudged(SeriesProof proof) => proof.Kind != SeriesKind.TypicalYear && proof.Years >= SeriesProof.FewYears;

    /// <summary>The check, or null where there is nothing to judge.</summary>
    public static Check? Of(EnergyDesign energy, ReliabilityTarget target) => energy.OnOwnSeries is { } proof && IsJudged(proof)
        ? new Check(
            "energy.dark_nights_own_series", "Energy", "dark nights a year in the mean of the years of the series supplied", Comparison.AtMost,
            target.DarkNightsPerYear, proof.Result.DarkNightsPerYear, "nights",
            FormattableString.Invariant($"tender, reliability; hourly energy balance on {proof.Years} years as they were"))
        : null;

    /// <summary>What the own hours show, in words, and whether they are judged.</summary>
    public static string Words(SeriesProof proof) => FormattableString.Invariant(
        $"On the hours supplied ({(proof.Kind == SeriesKind.TypicalYear ? "a typical year" : proof.Years == 1 ? "1 year" : $"{proof.Years} years")}): {proof.Result.DarkNightsPerYear:0.00} dark nights a year, worst year {proof.Result.WorstYearDarkNights}, longest run {proof.Result.LongestDarkRunNights}; {(IsJudged(proof) ? "judged" : "shown, not judged")}: {proof.Caution}.");
}

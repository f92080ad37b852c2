using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Energy;

namespace TenderKit.Tendering.PartsStated;

/// <summary>What to ask the employer of the parts a tender states.</summary>
public static class Clarifications
{
    /// <summary>The questions, numbered through, set by set.</summary>
    public static ImmutableArray<Clarification> Of(ImmutableArray<StatedPartsStudy> studies) =>
        [.. studies.SelectMany(Asked).Select((q, i) => q with { Number = i + 1 })];

    /// <summary>What to know of the stated parts before bidding, for the list of problems.</summary>
    public static IEnumerable<Diagnostic> Findings(StatedPartsResult result)
    {
        foreach (var study in result.Studies)
        {
            var at = study.Hardest;
            if (IsDark(study) || IsShort(study))
                yield return Diagnostic.Warning("TK353", FormattableString.Invariant($"the parts stated as {study.Parts.Name} ({Text(study.Parts)}) stay dark {at.DarkNightsPerYear:0.0} nights a year at {at.SiteName} and keep {at.AutonomyNights:0.0} nights of reserve; {study.AskedDarkNights:0.##} and {study.AskedNights:0.##} are asked for. Send the clarification request"), new Place(Site: at.SiteId));
            if (study.Sites.Any(s => !s.IsLightMet))
                yield return Diagnostic.Warning("TK353", FormattableString.Invariant($"the lamp stated as {study.Parts.Name} ({study.Parts.LampW:0.#} W) does not meet the light asked for at {study.Sites.First(s => !s.IsLightMet).SiteName}. Send the clarification request"), new Place(Site: study.Sites.First(s => !s.IsLightMet).SiteId));
            if (study.Parts.Chemistry is null)
                yield return Diagnostic.Note("TK354", $"the tender does not say of which kind the battery of {study.Parts.Name} is; gel lead-acid was taken");
        }
    }

    /// <summary>The parts in one line.</summary>
    public static string Text(StatedParts parts) =>
        FormattableString.Invariant($"{parts.ModuleWp:0.#} Wp, {parts.BatteryV:0.#} V {parts.BatteryAh:0.#} Ah, {parts.LampW:0.#} W");

    private static bool IsDark(StatedPartsStudy study) => study.Hardest.DarkNightsPerYear > study.AskedDarkNights;

    private static bool IsShort(StatedPartsStudy study) => study.Sites.Any(s => s.AutonomyNights < study.AskedNights);

    private static IEnumerable<Clarification> Asked(StatedPartsStudy study)
    {
        if (IsDark(study)) yield return Dark(study);
        if (IsShort(study)) yield return Reserve(study);
        if (study.Sites.Any(s => !s.IsLightMet || s.LampCode is null)) yield return Light(study);
        else yield return Spacing(study);
        if (ControllerOf(study) is { } controller) yield return controller;
        if (study.Parts.Chemistry is null) yield return Battery(study);
        if (study.Parts is { DutyHours: null, DutyNights: null }) yield return Duty(study);
    }

    private static Clarification Of(StatedPartsStudy study, string question, string found, string why, string proposal) => new(0, study.Parts.Clause, study.Parts.Name, question, found, why, proposal);

    private static Clarification Dark(StatedPartsStudy study)
    {
        var at = study.Hardest;
        var proposal = at.NeededArrayWp is { } arrayWp
            ? FormattableString.Invariant($"We propose to state the duty and to accept any parts that keep it. With a lamp of {study.Parts.LampW:0.#} W it takes at least {arrayWp:0} Wp and {at.NeededBatteryWh:0} Wh at the hardest place.")
            : "We propose to state the duty and to accept any parts that keep it: with this lamp no array within reason keeps it at the hardest place.";
        return Of(
            study,
            "May the module and the battery be larger than stated, or is a shorter time of light meant?",
            FormattableString.Invariant($"{Text(study.Parts)} stays dark {at.DarkNightsPerYear:0.0} nights a year at {at.SiteName} (90 % sure at most) and gives {at.LitHours:0.0} of {at.AskedHours:0.0} full hours a night in the mean; {study.AskedDarkNights:0.##} dark nights a year are allowed."),
            "A bidder who offers the parts as stated offers a light that fails in the dullest weeks; one who offers enough is dearer than the others and cannot be compared with them.",
            proposal);
    }

    private static Clarification Reserve(StatedPartsStudy study)
    {
        var at = study.Sites.MinBy(s => s.AutonomyNights)!;
        return Of(
            study,
            "How many nights without sun must a full battery bridge at the end of its life?",
            FormattableString.Invariant($"The battery stated, {study.Parts.BatteryWh:0} Wh, bridges {at.AutonomyNights:0.0} nights of {at.AskedHours:0.0} full hours at {at.SiteName} when it is old and cold; {study.AskedNights:0.##} nights are asked for."),
            "A battery emptied every night lasts a fraction of its life, and its replacement falls to the employer.",
            FormattableString.Invariant($"We propose at least {at.NeededBatteryWh:0} Wh of the kind reckoned with, or the number of nights in place of ampere-hours."));
    }

    private static Clarification Light(StatedPartsStudy study)
    {
        var at = study.Sites.FirstOrDefault(s => !s.IsLightMet || s.LampCode is null)!;
        return at.LampCode is null
            ? Of(
                study,
                "Which flux in lumens and which distribution must the luminaire have?",
                FormattableString.Invariant($"{study.Parts.LampW:0.#} W says nothing of light, and our catalogue holds no luminaire near that power to work it out with."),
                "Lamps of one power differ in flux by more than a factor of two; the light on the ground is what is bought.",
                FormattableString.Invariant($"We propose to ask for class {at.ClassName} with a calculation, in place of watts."))
            : Of(
                study,
                "Is the light class or the power of the lamp binding?",
                FormattableString.Invariant($"A lamp of {study.Parts.LampW:0.#} W with {at.FluxLm:0} lm gives {at.AverageLx:0.0} lx in the mean and {at.MinimumLx:0.00} lx at least at {at.SiteName} at a spacing of {at.SpacingM:0.0} m; class {at.ClassName} asks for {at.AskedLx:0.##} lx in the mean."),
                "Both cannot be kept; a bid that keeps one can be refused for the other.",
                FormattableString.Invariant($"We propose that class {at.ClassName} is binding and the power is left to the bidder."));
    }

    private static Clarification Spacing(StatedPartsStudy study)
    {
        var at = study.Sites.MinBy(s => s.SpacingM)!;
        return Of(
            study,
            "Is the spacing of the poles free, so that the light class is met?",
            FormattableString.Invariant($"With {at.FluxLm:0} lm a lamp of {study.Parts.LampW:0.#} W meets class {at.ClassName} at {at.SiteName} up to a spacing of {at.SpacingM:0.0} m: {at.AverageLx:0.0} lx in the mean, {at.MinimumLx:0.00} lx at least."),
            "The number of poles follows from the spacing, and with it the sum of the bid.",
            "We propose to bid the number of poles our light calculation asks for, and to state it.");
    }

    private static Clarification? ControllerOf(StatedPartsStudy study)
    {
        var margin = study.Parts.ControllerA is { } stated ? (stated / study.ChargeA) - 1 : 0;
        if (study.Parts.ControllerA is { } amps)
        {
            return margin >= 0
                ? null
                : Of(
                    study,
                    "May the charge controller be larger than stated?",
                    FormattableString.Invariant($"{amps:0.#} A are stated; {study.Parts.ModuleWp:0.#} Wp on {study.Parts.BatteryV:0.#} V can give {study.ChargeA:0.0} A with the margin for bright hours, {-margin * 100:0} % more than it carries."),
                    "A controller run above its rating shuts down or burns out in the brightest hours.",
                    FormattableString.Invariant($"We propose at least {study.ChargeA:0.0} A."));
        }

        return Of(
            study,
            "Which charge controller is asked for: rated current, and tracking (MPPT) or pulse-width (PWM)?",
            FormattableString.Invariant($"None is stated. {study.Parts.ModuleWp:0.#} Wp on {study.Parts.BatteryV:0.#} V need {study.ChargeA:0.0} A; a controller of the kind {KindOf(study.Control)} was reckoned with."),
            "The kind of controller decides how much of the module's power reaches the battery.",
            FormattableString.Invariant($"We propose at least {study.ChargeA:0.0} A, the kind left to the bidder."));
    }

    private static Clarification Battery(StatedPartsStudy study) => Of(
        study,
        "Of which kind must the battery be, at which rate are its ampere-hours rated, and how deep may it be drawn down?",
        FormattableString.Invariant($"{study.Parts.BatteryV:0.#} V {study.Parts.BatteryAh:0.#} Ah are stated and no kind; gel lead-acid was reckoned with."),
        "The same ampere-hours hold about twice the usable energy and several times the cycles in one kind as in another.",
        "We propose to ask for usable energy at the end of life in Wh and for the years it must last, and to leave the kind to the bidder.");

    private static Clarification Duty(StatedPartsStudy study)
    {
        var at = study.Hardest;
        return Of(
            study,
            "For how many hours a night, at which levels, and with how many nights of reserve must the lights burn?",
            FormattableString.Invariant($"Parts are stated and no duty. We reckoned with {at.AskedHours:0.0} full hours a night, {study.AskedNights:0.##} nights of reserve and at most {study.AskedDarkNights:0.##} dark nights a year."),
            "Only the duty makes bids comparable and can be tested when the lights are handed over.",
            "We propose these values as the duty; please confirm or correct them.");
    }

    private static string KindOf(ControlKind kind) => kind == ControlKind.Tracking ? "tracking (MPPT)" : "pulse-width (PWM)";
}

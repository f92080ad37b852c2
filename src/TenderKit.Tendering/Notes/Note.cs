namespace TenderKit.Tendering.Notes;

/// <summary>One safety or code note, called up by a fact of the design.</summary>
/// <param name="Id">Stable id, e.g. <c>battery.lithium.transport</c>.</param>
/// <param name="Topic">Heading it goes under.</param>
/// <param name="Standard">Standards concerned, editions to be verified by the reader.</param>
/// <param name="Why">Why it applies here.</param>
/// <param name="Action">What to do.</param>
/// <param name="Role">Who is responsible or must sign.</param>
/// <param name="TriggeredBy">The fact that called it up, in words.</param>
public sealed record Note(string Id, string Topic, string Standard, string Why, string Action, string Role, string TriggeredBy);

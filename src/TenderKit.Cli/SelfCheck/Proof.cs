namespace TenderKit.Cli.SelfCheck;

/// <summary>One thing that was proved, or not.</summary>
/// <param name="Part">Part of the program or of its surroundings.</param>
/// <param name="What">What was looked at.</param>
/// <param name="Good">Whether it is as it must be.</param>
/// <param name="Found">What was found, with its unit.</param>
/// <param name="Expected">What it is held against, with its unit.</param>
/// <param name="Difference">Found less expected, where both are numbers.</param>
/// <param name="Source">Where the expected value comes from, and whether it was read; empty for what is no figure.</param>
/// <param name="Cure">What to do when it is not good.</param>
internal sealed record Proof(string Part, string What, bool Good, string Found, string Expected, double? Difference = null, string Source = "", string Cure = "");

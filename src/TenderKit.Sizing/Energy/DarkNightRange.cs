namespace TenderKit.Sizing.Energy;

/// <summary>Where the long-run mean number of dark nights a year lies, judged by the years simulated.</summary>
/// <param name="LowPerYear">5 % of such sequences would come from a mean below this.</param>
/// <param name="HighPerYear">5 % of such sequences would come from a mean above this.</param>
public sealed record DarkNightRange(double LowPerYear, double HighPerYear);

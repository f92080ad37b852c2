using System.Collections.Immutable;
using TenderKit.Catalog.Families;
using TenderKit.Tendering.Design;

namespace TenderKit.Tendering.Trace;

/// <summary>Gathers the figures of one design; a figure that lacks an input, such as a rule the design does not hold, is left out.</summary>
internal sealed class FigureList(TenderDesign design, TraceGroup group)
{
    private readonly ImmutableArray<TracedFigure>.Builder _figures = ImmutableArray.CreateBuilder<TracedFigure>();

    public ImmutableArray<TracedFigure> Figures => _figures.ToImmutable();

    public void Add(string id, string name, double value, string unit, string formula, params TraceInput?[] inputs)
    {
        if (inputs.All(i => i is not null)) _figures.Add(new TracedFigure(group, id, name, value, unit, formula, [.. inputs.Select(i => i!)]));
    }

    /// <summary>A figure added before as an input; null when it was left out.</summary>
    public TraceInput? Figure(string symbol, string id) =>
        _figures.FirstOrDefault(f => f.Id == id) is { } figure ? new TraceInput(symbol, figure.Name, [figure.Value], figure.Unit, TraceOrigin.Figure, id) : null;

    public TraceInput? Rule(string symbol, string id, string name) =>
        design.Rules.FirstOrDefault(r => r.Id == id) is { } rule ? new TraceInput(symbol, name, [rule.Value], rule.Unit is "fraction" or "ratio" or "-" ? "" : rule.Unit, TraceOrigin.Rule, id) : null;

    public double? RuleValue(string id) => design.Rules.FirstOrDefault(r => r.Id == id)?.Value;

    public static TraceInput Part(string symbol, string name, double value, string unit, Part part) => new(symbol, name, [value], unit, TraceOrigin.Part, part.Code);

    public static TraceInput Given(string symbol, string name, double value, string unit, TraceOrigin origin, string key = "") => new(symbol, name, [value], unit, origin, key);

    public static TraceInput List(string symbol, string name, IEnumerable<double> values, string unit, TraceOrigin origin, string key = "") => new(symbol, name, [.. values], unit, origin, key);
}

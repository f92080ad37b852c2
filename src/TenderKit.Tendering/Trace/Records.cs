using System.Collections.Immutable;

namespace TenderKit.Tendering.Trace;

/// <summary>Where an input of a figure comes from.</summary>
public enum TraceOrigin
{
    /// <summary>Another figure of the same trace; the key is its id.</summary>
    Figure,

    /// <summary>A design rule; the key is its id.</summary>
    Rule,

    /// <summary>A part of the catalogue; the key is its code.</summary>
    Part,

    /// <summary>The site list.</summary>
    Site,

    /// <summary>The tender file.</summary>
    Tender,

    /// <summary>The climate of the site.</summary>
    Climate,

    /// <summary>A table of a standard; the key names it.</summary>
    Standard,

    /// <summary>The light computed point by point.</summary>
    Light,

    /// <summary>The hourly energy balance.</summary>
    Simulation,

    /// <summary>Found by trying: the search for the layout, the level or the parts.</summary>
    Search,
}

/// <summary>What the design a figure belongs to is about.</summary>
public enum TraceGroup
{
    Light,
    Energy,
    Wiring,
    Structure,
}

/// <summary>One input of a figure.</summary>
/// <param name="Symbol">As in the formula.</param>
/// <param name="Values">One value, or those of a list.</param>
/// <param name="Unit">Unit as printed; empty for a plain number.</param>
/// <param name="Key">What <paramref name="Origin"/> names, or empty.</param>
public sealed record TraceInput(string Symbol, string Name, ImmutableArray<double> Values, string Unit, TraceOrigin Origin, string Key = "");

/// <summary>A number of the documents with the formula and the inputs it follows from.</summary>
/// <param name="Id">Stable id, dotted lower case.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="FormulaId">Id of its <see cref="TraceFormula"/>.</param>
public sealed record TracedFigure(TraceGroup Group, string Id, string Name, double Value, string Unit, string FormulaId, ImmutableArray<TraceInput> Inputs);

/// <summary>A formula with its source.</summary>
/// <param name="Text">The formula as printed; arithmetic over the symbols of the inputs, or in words.</param>
/// <param name="Source">Document, edition, clause, and its status.</param>
/// <param name="IsArithmetic">Whether <paramref name="Text"/> can be worked out with a pocket calculator as it stands: + − × / ^, sum, min, max, sqrt, cos and sin of degrees.</param>
public sealed record TraceFormula(string Id, string Text, string Source, bool IsArithmetic = true);

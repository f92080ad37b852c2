using System.Collections.Immutable;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tables.Steps;

/// <summary>A table after one step, and what the step did. A step mends one fault of messy files and touches nothing else.</summary>
public readonly record struct StepResult(Table Table, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>A table the step had nothing to do on.</summary>
    public static StepResult Same(Table table) => new(table, []);
}

using System.Collections.Immutable;

namespace TenderKit.Intake.Tables;

/// <summary>A file of tables: one for a csv file, one per sheet for a workbook.</summary>
/// <param name="File">File name without folder.</param>
/// <param name="Tables">Tables in the order of the file.</param>
/// <param name="Sha256">SHA-256 of the bytes, lower-case hex.</param>
public sealed record TableFile(string File, ImmutableArray<Table> Tables, string Sha256);

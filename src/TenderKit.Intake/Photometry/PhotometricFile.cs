using System.Collections.Immutable;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Photometry;

/// <summary>One labelled line of a photometric file; continuation lines are joined to the line they continue.</summary>
public sealed record PhotometricKeyword(string Key, string Value);

/// <summary>Size of the luminous opening, m; a round one has its diameter in width and length.</summary>
public sealed record LuminousOpening(double WidthM, double LengthM, double HeightM, bool IsRound);

/// <summary>A photometric file, read.</summary>
/// <param name="FileName">Name without folder.</param>
/// <param name="Format">Standard and year, e.g. "LM-63-2002" or "EULUMDAT".</param>
/// <param name="Distribution">Candela over the full sphere, every factor of the file applied.</param>
/// <param name="Keywords">Labels in file order.</param>
/// <param name="Symmetry">Symmetry the file claims, in words.</param>
/// <param name="IsAbsolute">Absolute photometry: candela as measured, not per lamp lumen.</param>
/// <param name="FluxRatio">Flux by integration over flux stated (ballast and conversion factors applied), or null when none is stated.</param>
/// <param name="Opening">Luminous opening.</param>
/// <param name="Warnings">What was noticed; the same diagnostics as in the outcome.</param>
public sealed record PhotometricFile(
    string FileName,
    string Format,
    LightDistribution Distribution,
    ImmutableArray<PhotometricKeyword> Keywords,
    string Symmetry,
    bool IsAbsolute,
    double? FluxRatio,
    LuminousOpening Opening,
    ImmutableArray<Diagnostic> Warnings);

using System.Text;
using TenderKit.Intake.Photometry;
using TenderKit.Sizing.Basics;

namespace TenderKit.Intake.Tests.Photometry;

/// <summary>A small LM-63 file whose parts can be swapped one at a time: a Lambertian-like table of 0, 45 and 90 degrees.</summary>
internal sealed record Lm63Text
{
    public string Head { get; init; } = "IESNA:LM-63-2002\n[TEST] 1\n[LUMINAIRE] one\n[MORE] two\n";

    public string Tilt { get; init; } = "TILT=NONE\n";

    public string Counts { get; init; } = "1 -1 1 3 1 1 2 0 0 0\n";

    public string Factors { get; init; } = "1 1 20\n";

    public string Gammas { get; init; } = "0 45 90\n";

    public string Planes { get; init; } = "0\n";

    public string Candela { get; init; } = "100 80 0\n";

    public string Text => Head + Tilt + Counts + Factors + Gammas + Planes + Candela;

    public Outcome<PhotometricFile> Read() => Lm63Reader.Read("a.ies", Encoding.ASCII.GetBytes(Text));

    public PhotometricFile Value() => Read().Value ?? throw new InvalidOperationException(string.Join('\n', Read().Diagnostics));
}

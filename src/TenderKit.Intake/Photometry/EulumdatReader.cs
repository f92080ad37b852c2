using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Photometry;

/// <summary>
/// Reads EULUMDAT files: candela per 1000 lm, decimal points or commas, symmetry indicator 0 to 4. C 0 and C 180 run along the road, as here.
/// Of several lamp sets the first is taken.
/// </summary>
public static class EulumdatReader
{
    private const int LinesBeforeLampSets = 26;
    private const int LinesPerLampSet = 6;
    private const int DirectRatios = 10;
    private const int MostAngles = 2000;
    private const double MPerMm = 0.001;

    /// <summary>Reads a file; a refusal names the line.</summary>
    /// <param name="fileName">Name without folder.</param>
    /// <param name="bytes">Content.</param>
    public static Outcome<PhotometricFile> Read(string fileName, byte[] bytes) => PhotometricText.Read(fileName, bytes, Parse);

    private static PhotometricFile Parse(string file, string[] lines, List<Diagnostic> found)
    {
        var head = ReadHead(new HeadLines(file, lines));
        if (head.LampSets > 1)
        {
            found.Add(Diagnostic.Note(
                "TK164",
                Text($"{head.LampSets} lamp sets are listed; the first ({head.FluxLm:0.#} lm, {head.PowerW:0.#} W) is used."),
                new Place(File: file, Row: LinesBeforeLampSets)));
        }

        var numbers = new NumberStream(file, lines, LinesBeforeLampSets + (LinesPerLampSet * head.LampSets), decimalComma: true);
        for (var i = 0; i < DirectRatios; i++) numbers.Next("a direct ratio");
        var planes = ReadPlanes(file, head, numbers, found);
        var gammas = numbers.NextAngles("a gamma angle", head.Gammas);
        if ((gammas[0], gammas[^1]) is not ((0, 90) or (0, 180) or (90, 180)))
        {
            throw new RefusedException(
                "TK153",
                Text($"gamma angles run from {gammas[0]} to {gammas[^1]}; they must run from 0 to 90, 0 to 180 or 90 to 180."),
                file, numbers.Line);
        }
        var (indexes, symmetry) = Listed(file, head);
        var rows = ReadRows(file, head, indexes.Length, numbers, found);
        if (numbers.Remaining > 0)
        {
            found.Add(Diagnostic.Warning(
                "TK160",
                Text($"{numbers.Remaining} values are left over after the intensity table and ignored."),
                new Place(File: file, Row: numbers.Line)));
        }

        var set = PlaneSet.Unfold([.. indexes.Select(i => planes[i])], gammas, rows, symmetry, 0);
        var distribution = new LightDistribution(set.PlanesDegrees, set.GammasDegrees, set.Values, head.FluxLm, head.PowerW > 0 ? head.PowerW : null);
        var ratio = Judge(file, head, distribution, found);
        return new PhotometricFile(file, "EULUMDAT", distribution, Keywords(lines), Words(head.Symmetry), head.IsAbsolute, ratio, head.Opening, [.. found]);
    }

    private static double Judge(string file, Head head, LightDistribution distribution, List<Diagnostic> found)
    {
        if (distribution.FluxLm <= 0) throw new RefusedException("TK168", "every intensity is zero: no light.", file, null);
        var place = new Place(File: file, Row: LinesBeforeLampSets + 3);
        found.AddRange(Findings.OfDirection(distribution, place));
        var expected = head.FluxLm * head.ConversionFactor;
        var ratio = distribution.FluxLm / expected;
        found.AddRange(Findings.OfFlux(distribution.FluxLm, expected, ratio, head.OutputRatio, place));
        return ratio;
    }

    private static Head ReadHead(HeadLines lines)
    {
        var symmetry = lines.Count(3, "the symmetry indicator", 0, 4);
        var planes = lines.Count(4, "the number of C planes", 1, MostAngles);
        var stepC = lines.NumberOrZero(5, "the step between C planes");
        var gammas = lines.Count(6, "the number of gamma angles", 2, MostAngles);
        var opening = Opening(
            lines.NumberOrZero(16, "the length of the luminous area"),
            lines.NumberOrZero(17, "the width of the luminous area"),
            lines.NumberOrZero(18, "the height of the luminous area"));
        var outputRatio = lines.NumberOrZero(23, "the light output ratio") / 100;
        var conversion = lines.NumberOrZero(24, "the conversion factor");
        var sets = lines.Count(LinesBeforeLampSets, "the number of lamp sets", 1, 20);
        var lamps = lines.Number(LinesBeforeLampSets + 1, "the number of lamps");
        var flux = lines.Number(LinesBeforeLampSets + 3, "the total flux of the lamps");
        if (flux <= 0) throw lines.Refusal(LinesBeforeLampSets + 3, "TK153", Text($"the total flux of the lamps is {flux} lm; it must be greater than zero."));
        var power = lines.NumberOrZero(LinesBeforeLampSets + 6, "the power");
        return new Head(symmetry, planes, stepC, gammas, opening, outputRatio > 0 ? outputRatio : null, conversion > 0 ? conversion : 1, sets, lamps < 0, flux, power);
    }

    /// <summary>A width of zero means a round area whose length is the diameter.</summary>
    private static LuminousOpening Opening(double lengthMm, double widthMm, double heightMm)
    {
        var round = widthMm <= 0;
        return new LuminousOpening((round ? lengthMm : widthMm) * MPerMm, lengthMm * MPerMm, heightMm * MPerMm, round);
    }

    private static double[] ReadPlanes(string file, Head head, NumberStream numbers, List<Diagnostic> found)
    {
        var planes = numbers.NextAngles("a C angle", head.Planes);
        if (planes[0] != 0 || planes[^1] > 360)
        {
            throw new RefusedException(
                "TK153",
                Text($"C angles run from {planes[0]} to {planes[^1]}; they must start at 0 and not pass 360."),
                file, numbers.Line);
        }
        var contradicted = head.StepC > 0 && planes.Length > 1 && Math.Abs(planes[1] - planes[0] - head.StepC) > 1e-6;
        if (contradicted)
        {
            found.Add(Diagnostic.Warning(
                "TK163",
                Text($"the header says C planes every {head.StepC} degrees, the list says {planes[1] - planes[0]}; the list is used."),
                new Place(File: file, Row: 5)));
        }
        return planes;
    }

    /// <summary>Which of the listed planes have data, in order, and how they unfold.</summary>
    private static (int[] Indexes, PlaneSymmetry Symmetry) Listed(string file, Head head)
    {
        var n = head.Planes;
        var divisor = head.Symmetry switch { 2 => 2, 3 or 4 => 4, _ => 1 };
        if (n % divisor != 0)
        {
            throw new RefusedException(
                "TK153",
                Text($"{n} C planes do not fit symmetry indicator {head.Symmetry}; the number must divide by {divisor}."),
                file, 4);
        }
        return head.Symmetry switch
        {
            1 => ([0], PlaneSymmetry.Rotational),
            2 => ([.. Enumerable.Range(0, (n / 2) + 1)], PlaneSymmetry.AboutZero),
            3 => ([.. Enumerable.Range(3 * n / 4, (n / 2) + 1).Select(i => i % n)], PlaneSymmetry.AboutNinety),
            4 => ([.. Enumerable.Range(0, (n / 4) + 1)], PlaneSymmetry.Quadrants),
            _ => ([.. Enumerable.Range(0, n)], PlaneSymmetry.None),
        };
    }

    private static double[][] ReadRows(string file, Head head, int planes, NumberStream numbers, List<Diagnostic> found)
    {
        var perKilolumen = head.FluxLm / 1000 * head.ConversionFactor;
        var negative = 0;
        var rows = new double[planes][];
        for (var i = 0; i < planes; i++)
        {
            rows[i] = new double[head.Gammas];
            for (var j = 0; j < head.Gammas; j++)
            {
                var value = numbers.Next("an intensity");
                if (value < 0) negative++;
                rows[i][j] = Math.Max(0, value) * perKilolumen;
            }
        }

        if (negative > 0)
        {
            found.Add(Diagnostic.Warning(
                "TK159",
                Text($"{negative} intensities are negative and taken as 0 cd."),
                new Place(File: file, Row: numbers.Line)));
        }
        return rows;
    }

    private static ImmutableArray<PhotometricKeyword> Keywords(string[] lines)
    {
        (string Key, int Line)[] labels =
            [("COMPANY", 1), ("REPORT", 8), ("LUMINAIRE", 9), ("LUMINAIRE NUMBER", 10), ("DATE", 12), ("LAMP", LinesBeforeLampSets + 2), ("COLOUR", LinesBeforeLampSets + 4)];
        return [.. labels.Select(l => new PhotometricKeyword(l.Key, lines[l.Line - 1].Trim())).Where(k => k.Value.Length > 0)];
    }

    private static string Words(int symmetry) => symmetry switch
    {
        1 => "the same all round",
        2 => "street side and house side equal",
        3 => "left and right equal",
        4 => "four equal quadrants",
        _ => "no symmetry",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>The header, one value a line; lines count from 1.</summary>
    private sealed class HeadLines(string file, string[] lines)
    {
        public RefusedException Refusal(int line, string code, string message) => new(code, message, file, line);

        public double Number(int line, string what)
        {
            var text = Text(line, what);
            return NumberStream.Parse(text, decimalComma: true) ?? throw Refusal(line, "TK151", $"'{text}' stands where {what} should be.");
        }

        public double NumberOrZero(int line, string what) => Text(line, what).Length == 0 ? 0 : Number(line, what);

        public int Count(int line, string what, int least, int most)
        {
            var value = Number(line, what);
            if (value >= least && value <= most && value == Math.Floor(value)) return (int)value;
            throw Refusal(line, "TK153", EulumdatReader.Text($"{what} is {value}; it must be a whole number from {least} to {most}."));
        }

        private string Text(int line, string what) =>
            line <= lines.Length ? lines[line - 1].Trim() : throw Refusal(lines.Length, "TK152", $"the file ends where {what} should follow.");
    }

    private sealed record Head(
        int Symmetry,
        int Planes,
        double StepC,
        int Gammas,
        LuminousOpening Opening,
        double? OutputRatio,
        double ConversionFactor,
        int LampSets,
        bool IsAbsolute,
        double FluxLm,
        double PowerW);
}

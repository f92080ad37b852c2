using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;
using TenderKit.Sizing.Lighting;

namespace TenderKit.Intake.Photometry;

/// <summary>
/// Reads LM-63 files of 1986, 1991, 1995, 2002 and 2019, type C photometry. Angle 0 of a file is the street side and becomes C 90.
/// </summary>
public static class Lm63Reader
{
    private const int MostAngles = 2000;
    private const double MPerFoot = 0.3048;
    private const double StreetSideDegrees = 90;

    /// <summary>Reads a file; a refusal names the line.</summary>
    /// <param name="fileName">Name without folder.</param>
    /// <param name="bytes">Content.</param>
    public static Outcome<PhotometricFile> Read(string fileName, byte[] bytes) => PhotometricText.Read(fileName, bytes, Parse);

    internal static int TiltLine(IReadOnlyList<string> lines)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            var text = lines[i].TrimStart();
            if (text.StartsWith("TILT", StringComparison.OrdinalIgnoreCase) && text[4..].TrimStart().StartsWith('=')) return i;
        }

        return -1;
    }

    private static PhotometricFile Parse(string file, string[] lines, List<Diagnostic> found)
    {
        var tiltLine = TiltLine(lines);
        if (tiltLine < 0) throw new RefusedException("TK155", "no TILT= line: not an LM-63 file.", file, lines.Length);
        var format = Format(file, lines[0], found);
        var numbers = new NumberStream(file, lines, tiltLine + 1, decimalComma: false);
        ReadTilt(file, lines, tiltLine, numbers, found);
        var head = ReadHead(file, format, numbers, found);
        var gammas = ReadGammas(file, head, numbers);
        var (angles, symmetry) = ReadPlanes(file, head, numbers, found);
        var rows = ReadCandela(file, head, numbers, found);
        if (numbers.Remaining > 0)
        {
            found.Add(Diagnostic.Warning(
                "TK160",
                Text($"{numbers.Remaining} values are left over after the candela table and ignored."),
                new Place(File: file, Row: numbers.Line)));
        }

        var planes = PlaneSet.Unfold(angles, gammas, rows, symmetry, StreetSideDegrees);
        var distribution = new LightDistribution(planes.PlanesDegrees, planes.GammasDegrees, planes.Values, head.StatedLm, head.PowerW);
        var ratio = Judge(file, head, distribution, found);
        return new PhotometricFile(
            file, format, distribution, Keywords(lines, tiltLine), Words(symmetry), head.StatedLm is null, ratio, head.Opening, [.. found]);
    }

    private static double? Judge(string file, Head head, LightDistribution distribution, List<Diagnostic> found)
    {
        if (distribution.FluxLm <= 0) throw new RefusedException("TK168", "every candela value is zero: no light.", file, null);
        var place = new Place(File: file, Row: head.Line);
        found.AddRange(Findings.OfDirection(distribution, place));
        if (head.StatedLm is not { } stated) return null;
        var expected = stated * head.BallastFactor;
        var ratio = distribution.FluxLm / expected;
        found.AddRange(Findings.OfFlux(distribution.FluxLm, expected, ratio, null, place));
        return ratio;
    }

    private static string Format(string file, string firstLine, List<Diagnostic> found)
    {
        var first = firstLine.Trim();
        if (first.StartsWith("IESNA91", StringComparison.OrdinalIgnoreCase)) return "LM-63-1991";
        var colon = first.IndexOf(':', StringComparison.Ordinal);
        if (first.StartsWith("IES", StringComparison.OrdinalIgnoreCase) && colon > 0) return first[(colon + 1)..].Trim().ToUpperInvariant();
        found.Add(Diagnostic.Note("TK167", "no version line: read as LM-63-1986.", new Place(File: file, Row: 1)));
        return "LM-63-1986";
    }

    private static void ReadTilt(string file, string[] lines, int tiltLine, NumberStream numbers, List<Diagnostic> found)
    {
        var value = lines[tiltLine][(lines[tiltLine].IndexOf('=', StringComparison.Ordinal) + 1)..].Trim();
        if (value.Equals("NONE", StringComparison.OrdinalIgnoreCase)) return;
        var place = new Place(File: file, Row: tiltLine + 1);
        if (!value.Equals("INCLUDE", StringComparison.OrdinalIgnoreCase))
        {
            found.Add(Diagnostic.Warning(
                "TK158",
                $"lamp tilt factors are in another file ('{value}') and are not applied: the light of a tilted discharge lamp may be lower.",
                place));
            return;
        }

        numbers.NextCount("the lamp-to-luminaire geometry", 1, 3);
        var count = numbers.NextCount("the number of tilt angles", 1, MostAngles);
        numbers.NextAngles("a tilt angle", count);
        var factors = Enumerable.Range(0, count).Select(_ => numbers.Next("a tilt factor")).ToList();
        found.Add(Diagnostic.Warning(
            "TK158",
            Text($"lamp tilt factors {factors.Min():0.00} to {factors.Max():0.00} are stated and not applied: the light of a tilted discharge lamp may be lower."),
            place));
    }

    private static Head ReadHead(string file, string format, NumberStream numbers, List<Diagnostic> found)
    {
        var lamps = numbers.NextCount("the number of lamps", 1, 1000);
        var lineOfHead = numbers.Line;
        var lumens = numbers.Next("the lumens per lamp");
        var multiplier = PositiveNumber(file, numbers, "the candela multiplier");
        var gammas = numbers.NextCount("the number of vertical angles", 2, MostAngles);
        var planes = numbers.NextCount("the number of horizontal angles", 1, MostAngles);
        CheckType(file, numbers);
        var unit = numbers.NextCount("the unit of length (1 feet, 2 metres)", 1, 2) == 1 ? MPerFoot : 1;
        var opening = Opening(numbers.Next("the width"), numbers.Next("the length"), numbers.Next("the height"), unit);
        var ballast = PositiveNumber(file, numbers, "the ballast factor");
        var second = SecondFactor(file, format, numbers, found);
        var watts = numbers.Next("the input watts");
        if (lumens == 0) throw new RefusedException("TK153", "the lumens per lamp are 0; they must be -1 (absolute) or greater than zero.", file, lineOfHead);
        return new Head(lineOfHead, lumens < 0 ? null : lamps * lumens, multiplier * ballast * second, ballast * second, gammas, planes, watts > 0 ? watts : null, opening);
    }

    private static void CheckType(string file, NumberStream numbers)
    {
        var type = numbers.NextCount("the photometric type (1 C, 2 B, 3 A)", 1, 3);
        if (type == 1) return;
        var name = type == 2 ? "B" : "A";
        throw new RefusedException(
            "TK154", $"type {name} photometry (floodlight or vehicle angles); only type C can be read. Ask the maker for a type C file.", file, numbers.Line);
    }

    /// <summary>The ballast-lamp photometric factor of 1986 and 1991; reserved in 1995 and 2002; the kind of file in 2019.</summary>
    private static double SecondFactor(string file, string format, NumberStream numbers, List<Diagnostic> found)
    {
        var value = numbers.Next("the second factor");
        if (format is "LM-63-1986" or "LM-63-1991")
        {
            if (value > 0) return value;
            throw new RefusedException("TK153", Text($"the ballast-lamp photometric factor is {value}; it must be greater than zero."), file, numbers.Line);
        }

        if (value != 1 && !format.EndsWith("2019", StringComparison.Ordinal))
        {
            found.Add(Diagnostic.Warning(
                "TK166",
                Text($"the value {value} after the ballast factor has no meaning in {format} and is not applied."),
                new Place(File: file, Row: numbers.Line)));
        }
        return 1;
    }

    private static double PositiveNumber(string file, NumberStream numbers, string what)
    {
        var value = numbers.Next(what);
        return value > 0 ? value : throw new RefusedException("TK153", Text($"{what} is {value}; it must be greater than zero."), file, numbers.Line);
    }

    /// <summary>A negative width or length is the diameter of a round opening.</summary>
    private static LuminousOpening Opening(double width, double length, double height, double unit)
    {
        var round = width < 0 || length < 0;
        var diameter = Math.Max(Math.Abs(width), Math.Abs(length)) * unit;
        return round
            ? new LuminousOpening(diameter, diameter, Math.Abs(height) * unit, true)
            : new LuminousOpening(width * unit, length * unit, Math.Abs(height) * unit, false);
    }

    private static double[] ReadGammas(string file, Head head, NumberStream numbers)
    {
        var gammas = numbers.NextAngles("a vertical angle", head.Gammas);
        if ((gammas[0], gammas[^1]) is (0, 90) or (0, 180) or (90, 180)) return gammas;
        throw new RefusedException(
            "TK153", Text($"vertical angles run from {gammas[0]} to {gammas[^1]}; type C runs from 0 to 90, 0 to 180 or 90 to 180."), file, numbers.Line);
    }

    private static (double[] Angles, PlaneSymmetry Symmetry) ReadPlanes(string file, Head head, NumberStream numbers, List<Diagnostic> found)
    {
        var angles = numbers.NextAngles("a horizontal angle", head.Planes);
        if (angles.Length == 1) return (angles, PlaneSymmetry.Rotational);
        if ((angles[0], angles[^1]) is (0, 90)) return (angles, PlaneSymmetry.Quadrants);
        if ((angles[0], angles[^1]) is (0, 180)) return (angles, PlaneSymmetry.AboutZero);
        if ((angles[0], angles[^1]) is (0, 360)) return (angles, PlaneSymmetry.None);
        if ((angles[0], angles[^1]) is (90, 270)) return (angles, PlaneSymmetry.AboutNinety);
        var closes = angles[0] == 0 && angles[^1] > 180 && Math.Abs(360 - (2 * angles[^1]) + angles[^2]) < 1e-6;
        if (!closes)
        {
            throw new RefusedException(
                "TK153",
                Text($"horizontal angles run from {angles[0]} to {angles[^1]}; they must run from 0 to 0, 90, 180 or 360, or from 90 to 270."),
                file, numbers.Line);
        }
        found.Add(Diagnostic.Warning(
            "TK165",
            Text($"horizontal angles end at {angles[^1]}; the plane at 360 is taken from 0."),
            new Place(File: file, Row: numbers.Line)));
        return (angles, PlaneSymmetry.None);
    }

    private static double[][] ReadCandela(string file, Head head, NumberStream numbers, List<Diagnostic> found)
    {
        var negative = 0;
        var rows = new double[head.Planes][];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = new double[head.Gammas];
            for (var j = 0; j < head.Gammas; j++)
            {
                var value = numbers.Next("a candela value");
                if (value < 0) negative++;
                rows[i][j] = Math.Max(0, value) * head.Factor;
            }
        }

        if (negative > 0)
        {
            found.Add(Diagnostic.Warning(
                "TK159",
                Text($"{negative} candela values are negative and taken as 0 cd."),
                new Place(File: file, Row: numbers.Line)));
        }
        return rows;
    }

    private static ImmutableArray<PhotometricKeyword> Keywords(string[] lines, int tiltLine)
    {
        var keywords = new List<PhotometricKeyword>();
        foreach (var line in lines.Take(tiltLine))
        {
            var text = line.Trim();
            var end = text.IndexOf(']', StringComparison.Ordinal);
            if (!text.StartsWith('[') || end < 0) continue;
            var (key, value) = (text[1..end].Trim().ToUpperInvariant(), text[(end + 1)..].Trim());
            if (key == "MORE" && keywords.Count > 0) keywords[^1] = keywords[^1] with { Value = (keywords[^1].Value + " " + value).Trim() };
            else keywords.Add(new PhotometricKeyword(key, value));
        }

        return [.. keywords];
    }

    private static string Words(PlaneSymmetry symmetry) => symmetry switch
    {
        PlaneSymmetry.Rotational => "the same all round",
        PlaneSymmetry.Quadrants => "four equal quadrants",
        PlaneSymmetry.AboutZero => "left and right equal",
        PlaneSymmetry.AboutNinety => "street side and house side equal",
        _ => "no symmetry",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record Head(
        int Line, double? StatedLm, double Factor, double BallastFactor, int Gammas, int Planes, double? PowerW, LuminousOpening Opening);
}

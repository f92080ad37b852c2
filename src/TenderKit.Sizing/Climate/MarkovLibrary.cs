using System.Collections.Immutable;
using System.Globalization;
using TenderKit.Sizing.Basics;

namespace TenderKit.Sizing.Climate;

/// <summary>
/// Library of Markov transition matrices of daily clearness: Aguiar, Collares-Pereira and Conde, Solar Energy 40 (1988) 269. The mean clearness of the month
/// chooses one of ten matrices; its ten states divide the range from the least to the greatest daily clearness of that class evenly. Read in three copies;
/// one of them has 0.530 in matrix 5, row 2, column 9, the others 0.000, which alone makes the row add up to 1. Rows add up to 0.997 to 1.002 as printed
/// and are scaled to 1.
/// </summary>
public static class MarkovLibrary
{
    /// <summary>States of each matrix.</summary>
    public const int States = 10;

    /// <summary>Greatest mean clearness of each class but the last.</summary>
    private static readonly double[] ClassLimits = [0.30, 0.35, 0.40, 0.45, 0.50, 0.55, 0.60, 0.65, 0.70];
    private static readonly double[] Least = [0.031, 0.058, 0.051, 0.052, 0.028, 0.053, 0.044, 0.085, 0.010, 0.319];
    private static readonly double[] Greatest = [0.705, 0.694, 0.753, 0.753, 0.807, 0.856, 0.818, 0.846, 0.842, 0.865];

    private const string Printed =
        """
        .229 .333 .208 .042 .083 .042 .042 .021 .000 .000
        .167 .319 .194 .139 .097 .028 .042 .000 .014 .000
        .250 .250 .091 .136 .091 .046 .046 .023 .068 .000
        .158 .237 .158 .263 .026 .053 .079 .026 .000 .000
        .211 .053 .211 .158 .053 .053 .158 .105 .000 .000
        .125 .125 .250 .188 .063 .125 .000 .125 .000 .000
        .040 .240 .080 .120 .080 .080 .120 .120 .080 .040
        .000 .250 .000 .125 .000 .125 .125 .250 .063 .063
        .000 .250 .000 .125 .250 .000 .250 .000 .000 .125
        .000 .000 .000 .000 .000 .000 .500 .250 .000 .250

        .000 .000 .091 .000 .364 .091 .182 .000 .273 .000
        .118 .118 .176 .118 .059 .118 .176 .059 .059 .000
        .067 .267 .067 .200 .067 .000 .133 .133 .000 .067
        .118 .235 .000 .235 .059 .176 .118 .000 .059 .000
        .077 .154 .308 .077 .154 .077 .000 .077 .077 .000
        .083 .000 .167 .250 .083 .167 .000 .083 .167 .000
        .222 .222 .000 .111 .111 .000 .111 .222 .000 .000
        .091 .182 .273 .000 .091 .273 .000 .091 .000 .000
        .111 .111 .111 .222 .000 .000 .000 .222 .111 .111
        .000 .000 .000 .000 .000 .000 .500 .000 .000 .500

        .206 .088 .176 .176 .088 .029 .176 .029 .029 .000
        .120 .100 .140 .160 .120 .220 .100 .000 .020 .020
        .077 .123 .185 .123 .077 .139 .092 .123 .061 .000
        .048 .111 .095 .206 .206 .190 .095 .048 .000 .000
        .059 .137 .118 .137 .098 .118 .118 .157 .059 .000
        .014 .097 .139 .153 .125 .139 .208 .056 .042 .028
        .073 .101 .116 .145 .087 .159 .203 .087 .029 .000
        .019 .037 .111 .056 .074 .111 .185 .296 .074 .037
        .035 .069 .035 .000 .035 .103 .172 .138 .379 .035
        .000 .167 .167 .000 .167 .000 .000 .333 .000 .167

        .167 .167 .167 .000 .083 .125 .000 .167 .125 .000
        .117 .117 .150 .117 .083 .117 .200 .067 .017 .017
        .049 .085 .134 .158 .098 .110 .134 .134 .061 .037
        .039 .090 .141 .141 .167 .141 .090 .141 .039 .013
        .009 .139 .074 .093 .194 .139 .167 .093 .074 .019
        .036 .018 .117 .099 .144 .180 .180 .117 .072 .036
        .000 .046 .061 .061 .136 .159 .273 .167 .098 .000
        .016 .056 .080 .128 .104 .080 .160 .208 .136 .032
        .011 .053 .021 .043 .128 .096 .074 .223 .277 .074
        .000 .074 .037 .000 .074 .074 .074 .074 .333 .259

        .120 .200 .160 .120 .120 .120 .080 .000 .040 .040
        .100 .080 .120 .140 .140 .200 .180 .040 .000 .000
        .046 .114 .068 .171 .125 .171 .080 .159 .057 .011
        .015 .061 .084 .099 .191 .153 .153 .115 .115 .015
        .024 .030 .098 .098 .165 .195 .195 .140 .043 .012
        .015 .026 .062 .124 .144 .170 .170 .222 .062 .005
        .000 .013 .045 .108 .112 .175 .188 .224 .117 .018
        .008 .023 .054 .066 .093 .125 .191 .253 .183 .004
        .006 .022 .061 .033 .067 .083 .139 .222 .322 .044
        .000 .046 .091 .091 .046 .046 .136 .091 .273 .182

        .250 .179 .107 .107 .143 .071 .107 .036 .000 .000
        .133 .022 .089 .111 .156 .178 .111 .133 .067 .000
        .064 .048 .143 .048 .175 .143 .206 .095 .079 .000
        .000 .022 .078 .111 .156 .156 .244 .167 .044 .022
        .016 .027 .037 .069 .160 .219 .230 .160 .075 .005
        .013 .025 .030 .093 .144 .202 .215 .219 .055 .004
        .006 .041 .035 .064 .090 .180 .337 .192 .049 .006
        .012 .021 .029 .035 .132 .123 .184 .371 .082 .012
        .008 .016 .016 .024 .071 .103 .159 .270 .309 .024
        .000 .000 .000 .000 .059 .000 .059 .294 .412 .176

        .217 .087 .000 .174 .130 .087 .087 .130 .087 .000
        .026 .079 .132 .079 .026 .158 .158 .132 .158 .053
        .020 .020 .020 .040 .160 .180 .160 .200 .100 .100
        .025 .013 .038 .076 .076 .139 .139 .266 .215 .013
        .030 .030 .050 .020 .091 .131 .162 .283 .131 .071
        .006 .006 .013 .057 .057 .121 .204 .287 .185 .064
        .004 .026 .037 .030 .093 .107 .193 .307 .167 .037
        .011 .009 .014 .042 .041 .071 .152 .418 .203 .041
        .012 .022 .022 .038 .019 .050 .113 .281 .360 .084
        .008 .024 .039 .039 .063 .039 .118 .118 .284 .268

        .067 .133 .133 .067 .067 .200 .133 .133 .067 .000
        .118 .059 .059 .059 .059 .118 .118 .235 .118 .059
        .000 .024 .024 .049 .146 .073 .195 .244 .195 .049
        .026 .000 .026 .026 .053 .184 .263 .184 .237 .000
        .014 .000 .042 .056 .069 .097 .139 .306 .278 .000
        .009 .009 .052 .069 .052 .112 .215 .285 .138 .060
        .009 .009 .026 .017 .094 .099 .232 .283 .210 .021
        .010 .014 .016 .019 .027 .062 .163 .467 .202 .019
        .004 .007 .031 .017 .033 .050 .086 .252 .469 .050
        .000 .000 .015 .046 .031 .046 .077 .123 .446 .215

        .000 .000 .000 .000 .000 .000 .000 .000 1.000 .000
        .000 .000 .000 .000 .000 .000 .000 .000 1.000 .000
        .000 .000 .000 .000 .000 .000 .250 .250 .500 .000
        .000 .000 .000 .000 .250 .000 .000 .375 .250 .125
        .000 .000 .000 .083 .000 .167 .167 .250 .333 .000
        .000 .000 .042 .042 .042 .083 .083 .292 .292 .125
        .000 .000 .032 .000 .000 .032 .129 .387 .355 .065
        .000 .000 .000 .038 .038 .075 .047 .340 .415 .047
        .004 .004 .007 .007 .011 .030 .052 .141 .654 .089
        .000 .000 .000 .000 .061 .061 .030 .030 .349 .470

        .000 .000 .000 .000 .000 .000 .000 .000 1.000 .000
        .100 .100 .100 .100 .100 .100 .100 .100 .100 .100
        .000 .000 .000 .250 .000 .000 .000 .500 .250 .000
        .000 .000 .143 .143 .000 .143 .143 .429 .000 .000
        .000 .000 .000 .200 .000 .000 .200 .400 .200 .000
        .000 .000 .000 .000 .000 .000 .222 .444 .333 .000
        .000 .000 .000 .000 .080 .080 .080 .480 .240 .040
        .000 .000 .027 .009 .027 .018 .135 .523 .252 .009
        .000 .000 .000 .022 .000 .043 .043 .326 .511 .054
        .000 .000 .000 .143 .000 .000 .000 .143 .714 .000
        """;

    private static readonly double[][][] Matrices = [.. Printed.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(Numbers).Where(row => row.Length > 0).Chunk(States)];

    /// <summary>Matrices of the library.</summary>
    public static int Count => Matrices.Length;

    /// <summary>Matrix (0 to 9) for a month of given mean clearness, fraction.</summary>
    public static int MatrixFor(double meanClearness) => ClassLimits.Count(limit => meanClearness > limit);

    /// <summary>Chances of the ten states after a state (0 to 9), as printed.</summary>
    public static ImmutableArray<double> Row(int matrix, int state) => [.. Matrices[matrix][state]];

    /// <summary>Least and greatest daily clearness of a matrix, fraction.</summary>
    public static (double Least, double Greatest) Range(int matrix) => (Least[matrix], Greatest[matrix]);

    /// <summary>Clearness of the day after one of given clearness: the state from its row, the place within the state straight.</summary>
    /// <param name="chanceFraction">Uniform random number, 0 to 1.</param>
    public static double Next(int matrix, double clearness, double chanceFraction)
    {
        Require.InRange(chanceFraction, 0, 1, nameof(chanceFraction));
        var width = (Greatest[matrix] - Least[matrix]) / States;
        var row = Matrices[matrix][Math.Clamp((int)((clearness - Least[matrix]) / width), 0, States - 1)];
        var left = chanceFraction * row.Sum();
        var state = 0;
        while (state < States - 1 && left >= row[state]) left -= row[state++];
        return Least[matrix] + (state + (row[state] > 0 ? Math.Clamp(left / row[state], 0, 1) : 1)) * width;
    }

    private static double[] Numbers(string line) =>
        [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
}

using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;

namespace TenderKit.Tendering.Quotes.Reading;

/// <summary>Amounts in words of English, French, Spanish and Portuguese: "ciento dos mil cincuenta y uno dólares con 32/100" is 102,051.32.</summary>
public static partial class AmountWords
{
    private const int LeastWords = 3;

    private static readonly FrozenDictionary<string, int> Small = Table(
        (0, "zero cero"), (1, "one un une uno una um uma"), (2, "two deux dos dois duas"), (3, "three trois tres"), (4, "four quatre cuatro quatro"), (5, "five cinq cinco"), (6, "six seis"), (7, "seven sept siete sete"),
        (8, "eight huit ocho oito"), (9, "nine neuf nueve nove"), (10, "ten dix diez dez"), (11, "eleven onze once"), (12, "twelve douze doce doze"), (13, "thirteen treize trece treze"),
        (14, "fourteen quatorze catorce catorze"), (15, "fifteen quinze quince"), (16, "sixteen seize dieciseis dezesseis dezasseis"), (17, "seventeen diecisiete dezessete dezassete"), (18, "eighteen dieciocho dezoito"),
        (19, "nineteen diecinueve dezenove dezanove"), (20, "twenty vingt vingts veinte vinte"), (21, "veintiun veintiuno veintiuna"), (22, "veintidos"), (23, "veintitres"), (24, "veinticuatro"), (25, "veinticinco"), (26, "veintiseis"),
        (27, "veintisiete"), (28, "veintiocho"), (29, "veintinueve"), (30, "thirty trente treinta trinta"), (40, "forty fourty quarante cuarenta quarenta"), (50, "fifty cinquante cincuenta cinquenta"), (60, "sixty soixante sesenta sessenta"),
        (70, "seventy septante setenta"), (80, "eighty huitante octante ochenta oitenta"), (90, "ninety nonante noventa"), (100, "cien ciento cem cento"), (200, "doscientos doscientas duzentos duzentas"), (300, "trescientos trescientas trezentos trezentas"),
        (400, "cuatrocientos cuatrocientas quatrocentos quatrocentas"), (500, "quinientos quinientas quinhentos quinhentas"), (600, "seiscientos seiscientas seiscentos seiscentas"), (700, "setecientos setecientas setecentos setecentas"),
        (800, "ochocientos ochocientas oitocentos oitocentas"), (900, "novecientos novecientas novecentos novecentas"));

    private static readonly FrozenSet<string> Joins = FrozenSet.Create(StringComparer.Ordinal, "and", "et", "y", "e", "de");

    /// <summary>The amount a text spells, or null when it spells none.</summary>
    public static decimal? Find(string text)
    {
        var folded = PlainText.Fold(text);
        var hundredth = Hundredths().Match(folded);
        var words = Word().Matches(folded).Select(m => m.Value).ToList();
        var start = words.FindIndex(IsNumber);
        while (start >= 0)
        {
            var end = start;
            while (end < words.Count && (IsNumber(words[end]) || (Joins.Contains(words[end]) && end + 1 < words.Count && IsNumber(words[end + 1])))) end++;
            if (words.GetRange(start, end - start).Count(IsNumber) >= LeastWords)
            {
                var whole = Value(words.GetRange(start, end - start));
                if (hundredth.Success) return whole + (decimal.Parse(hundredth.Groups["n"].Value, CultureInfo.InvariantCulture) / 100);
                return whole + (CentsAfter(words, end) / 100m);
            }

            var next = words.FindIndex(end, IsNumber);
            start = next;
        }

        return null;
    }

    /// <summary>"... dollars and twenty cents".</summary>
    private static decimal CentsAfter(List<string> words, int from)
    {
        var cents = words.FindIndex(from, w => w is "cents" or "cent" or "centimes" or "centavos" or "centimos");
        if (cents < 0) return 0;
        var first = cents;
        while (first > from && (IsNumber(words[first - 1]) || Joins.Contains(words[first - 1]))) first--;
        return first < cents ? Value(words.GetRange(first, cents - first)) : 0;
    }

    private static bool IsNumber(string word) => Small.ContainsKey(word) || word is "hundred" or "cent" or "cents" or "mil" or "mille" or "thousand" or "million" or "millions" or "millon" or "millones" or "milhao" or "milhoes";

    private static decimal Value(List<string> words)
    {
        var (total, current) = (0m, 0m);
        foreach (var word in words)
        {
            if (Small.TryGetValue(word, out var small)) current = small == 20 && word.StartsWith("vingt", StringComparison.Ordinal) && current % 100 == 4 ? current - 4 + 80 : current + small;
            else if (word is "hundred" or "cent" or "cents") current = current % 1000 == 0 ? 100 : current * 100;
            else if (word is "mil" or "mille" or "thousand") (total, current) = (total + (Math.Max(1, current) * 1000), 0);
            else if (word.StartsWith("mil", StringComparison.Ordinal)) (total, current) = ((total + Math.Max(1, current)) * 1_000_000, 0);
        }

        return total + current;
    }

    private static FrozenDictionary<string, int> Table(params (int Value, string Words)[] rows) =>
        rows.SelectMany(r => r.Words.Split(' ').Select(w => (w, r.Value))).ToFrozenDictionary(p => p.w, p => p.Value, StringComparer.Ordinal);

    [GeneratedRegex(@"(?<!\d)(?<n>\d{2})\s?/\s?100", RegexOptions.CultureInvariant)]
    private static partial Regex Hundredths();

    [GeneratedRegex(@"[a-z]+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}

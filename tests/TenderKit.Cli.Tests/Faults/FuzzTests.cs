using System.Globalization;
using System.Runtime.ExceptionServices;
using System.Text;
using TenderKit.Intake.Tests.Photometry;
using Xunit;

namespace TenderKit.Cli.Tests.Faults;

/// <summary>
/// Whatever is typed and whatever stands in the files: an answer, an exit code of 0, 1 or 2, never a fault of the program.
/// <c>TENDERKIT_FUZZ</c> multiplies the number of cases.
/// </summary>
public class FuzzTests
{
    private static readonly int _times = int.TryParse(Environment.GetEnvironmentVariable("TENDERKIT_FUZZ"), CultureInfo.InvariantCulture, out var times) ? times : 1;

    private static readonly string[] _values =
    [
        "", " ", "0", "-1", "1", "5", "8", "25", "1e308", "-1e308", "NaN", "Infinity", "1,5", "1.5 m", "20 ft", "80 %", "P4", "M3", "p99", "II", "mppt", "gel", "dusk-to-dawn", "dusk+4h:100%,rest:40%",
        "dusk+4h:", "noon", "5 5 5 5 5 5 5 5 5 5 5 5", "1 2 3", "json", "xml", "@file", "[red]", "{0}", "市場", "é", "--", "---", "/", "\\", "..", "no-such-file", "x=y=z", "energy.soiling=0.9", "energy.soilin=9", "any", "true", "11-01",
        new('9', 400), new('a', 5000),
    ];

    private static readonly (string Command, string Options, string Base)[] _commands =
    [
        ("inspect", "--format", "<tender>"),
        ("specify", "--format", "no-such-tender.yaml"),
        ("bid", "--format", "no-such-tender.yaml"),
        ("light", "--photometry --height-m --spacing-m --width-m --overhang-m --arrangement --maintenance-factor --tilt-deg --rotate-deg --lanes --class --median-m --near-sidewalk-m --sidewalk-class --least-level --format", "--photometry <ies> --height-m 8 --spacing-m 25 --width-m 7"),
        ("light propose-class", "--speed --use --users --surroundings --parked --format", "--speed low"),
        ("energy", "--latitude --longitude --ghi-kwh-per-m2-day --temperature-c --lamp-w --schedule --array-wp --tilt-deg --battery-ah --battery-v --battery-type --control --dark-nights-per-year --years --seed --rule --heading-deg --climate --format", "--latitude 9 --longitude 38.8 --lamp-w 30 --schedule dusk-to-dawn --array-wp 160 --tilt-deg 15 --battery-ah 60 --battery-v 12.8 --battery-type lifepo4 --control mppt --years 1"),
        ("wiring", "--current-a --length-m --area-mm2 --voltage-v --conductor-temperature-c --conductor-class --insulation --laid --connector-pairs --drop-limit --format", "--current-a 10 --length-m 8 --area-mm2 4 --voltage-v 12 --conductor-temperature-c 60"),
        ("pole", "--standard --wind-m-per-s --terrain --height-m --top-mm --base-mm --wall-mm --yield-mpa --panel-m2 --panel-tilt-deg --luminaire-m2 --soil-kpa-per-m --dynamic-factor --embedded-mm --wind-definition --format", "--wind-m-per-s 26 --height-m 8 --top-mm 60 --base-mm 160 --wall-mm 4"),
        ("catalog list", "--family --format --max", "<catalog>"),
        ("catalog show", "--tender --format", "<catalog> LUM-R30-40"),
        ("catalog import", "--to", "no-such-folder --to <new>/parts.db"),
        ("prove", "--format --catalog", "--out <new>"),
        ("quote check", "--format --readings", "no-such-tender.yaml no-such-offer.xlsx"),
        ("changes", "--format", "no-such-tender.yaml other.yaml"),
    ];

    [Fact]
    public void Random_arguments_are_answered()
    {
        using var folder = new TenderFolder().WithSites("S11");
        for (var seed = 0; seed < 150 * _times; seed++) AssertAnswered(Arguments(new Random(seed), folder), $"seed {seed}");
    }

    [Theory]
    [InlineData("tender.yaml", 30)]
    [InlineData("design-rules.yaml", 10)]
    [InlineData("sites.csv", 20)]
    [InlineData("clauses.csv", 8)]
    [InlineData("climate.csv", 8)]
    [InlineData("catalog/batteries.csv", 12)]
    [InlineData("catalog/integrated_units.csv", 12)]
    [InlineData("catalog/photometry/INT-10.ies", 8)]
    public void Damaged_files_are_answered(string file, int cases)
    {
        using var folder = new TenderFolder();
        var place = folder.PathOf("own");
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("new", place).Code);
        var (tender, damaged) = (Path.Combine(place, "tender.yaml"), Path.Combine(place, file));
        var text = File.ReadAllText(tender).Replace("sites.xlsx", "sites.csv", StringComparison.Ordinal);
        File.WriteAllText(tender, text);
        Assert.Equal(ExitCodes.Good, TenderFolder.Run("inspect", tender).Code);
        var whole = File.ReadAllText(damaged);
        for (var seed = 0; seed < cases * _times; seed++)
        {
            File.WriteAllBytes(damaged, Mutations.Of(whole, seed));
            AssertAnswered(["inspect", tender], $"{file}, seed {seed}");
            if (_times > 1 && seed % 20 == 0) AssertAnswered(["bid", tender, "--out", folder.Out], $"bid, {file}, seed {seed}");
        }
    }

    private static string[] Arguments(Random random, TenderFolder folder)
    {
        var (command, options, plain) = _commands[random.Next(_commands.Length)];
        var words = (command + " " + plain).Split(' ').Select(w => w switch
        {
            "<tender>" => folder.Tender,
            "<catalog>" => Path.Combine(Repository.Root, "catalog-sample"),
            "<ies>" => Path.Combine(Repository.Root, "catalog-sample", "photometry", "LUM-R30-40.ies"),
            _ => w.Replace("<new>", folder.Out, StringComparison.Ordinal),
        }).ToList();
        var known = options.Split(' ');
        for (var changes = random.Next(1, 5); changes > 0; changes--)
        {
            var value = _values[random.Next(_values.Length)];
            switch (random.Next(5))
            {
                case 0: words.RemoveAt(random.Next(1, words.Count)); break;
                case 1: words.Insert(random.Next(1, words.Count + 1), value); break;
                default: words.AddRange([known[random.Next(known.Length)], value]); break;
            }

            if (words.Count < 2) words.Add(value);
        }

        return [.. words];
    }

    private static void AssertAnswered(string[] args, string which)
    {
        var thrown = "";
        void Note(object? sender, FirstChanceExceptionEventArgs e) => thrown = e.Exception.Message + "\n" + Environment.StackTrace;
        AppDomain.CurrentDomain.FirstChanceException += Note;
        var run = TenderFolder.Run(args);
        AppDomain.CurrentDomain.FirstChanceException -= Note;
        var told = new StringBuilder(which).Append(": ").AppendJoin(' ', args).Append('\n').Append(run.Errors).Append("\nlast thrown: ").Append(thrown).ToString();
        Assert.True(run.Code is ExitCodes.Good or ExitCodes.SomethingUnmet or ExitCodes.CouldNotRun, told);
        Assert.False(run.Errors.Contains("fault of the program", StringComparison.Ordinal) || run.Errors.Contains("   at ", StringComparison.Ordinal), told);
        Assert.True(run.Code != ExitCodes.CouldNotRun || run.Errors.Length > 0 || run.Output.Length > 0, told + " was refused without a word");
    }
}

using System.Collections.Immutable;
using System.ComponentModel;
using System.Diagnostics;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Energy;
using TenderKit.Sizing.Lighting;
using TenderKit.Sizing.Structure;
using TenderKit.Tendering.Sites;
using Xunit;

namespace TenderKit.Tendering.Tests.Sites;

/// <summary>The same list as csv and as saved by a real spreadsheet program gives equal sites.</summary>
public sealed class SpreadsheetProgramTests
{
    private const string List = "\n\nN\u00B0,Nom du site,Latitude,Longitude,Type,Longueur (m),Largeur (m),Ombrage,Hauteur de feu\n1,\u00C9cole,14.2508,-4.25,sentier,250.5,3,5%,6\n\n2,March\u00E9,14.3,-4.5,march\u00E9,80,40,0.1,5 to 6\n";

    private static readonly SiteDefaults Defaults = new(
        new LightTarget("P4", 5, 1, null, null, "test target"), "full", ImmutableSortedDictionary<string, LightingSchedule>.Empty.Add("full", LightingSchedule.DuskToDawn),
        [6], 4, Arrangement.SingleSided, 0, 30, Terrain.II, SoilClasses.Soft, false, ImmutableSortedDictionary<string, string>.Empty);

    [SkippableTheory]
    [InlineData("xlsx")]
    [InlineData("xls")]
    public void WorkbookOfASpreadsheetProgramReadsLikeItsCsv(string extension)
    {
        var folder = Directory.CreateTempSubdirectory("sites").FullName;
        try
        {
            var csv = Path.Combine(folder, "list.csv");
            File.WriteAllText(csv, List);
            Skip.IfNot(Converted(csv, extension, folder), "no spreadsheet program with the command soffice is installed");
            var (fromCsv, fromBook) = (Read(csv), Read(Path.ChangeExtension(csv, extension)));
            Assert.Equal(2, fromCsv.Sites.Length);
            Assert.Equal([4, 6], fromBook.Sites.Select(s => s.Row));
            Assert.Equal(View(fromCsv), View(fromBook));
            Assert.Equal(0.05, fromBook.Sites[0].ShadedFraction);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static SiteListReading Read(string path) => SiteListReader.Read(TableReader.Read(path).Value!, Defaults, _ => null);

    private static string View(SiteListReading reading) => string.Join('\n', reading.Sites.Select(s => s + string.Join(';', s.MountingHeightsM)));

    private static bool Converted(string csv, string extension, string folder)
    {
        // 44,34,76: comma, quotation mark, UTF-8; the third number is the first line read
        string[] arguments = [$"-env:UserInstallation=file://{folder}/profile", "--headless", "--infilter=CSV:44,34,76,1", "--convert-to", extension, "--outdir", folder, csv];
        try
        {
            using var process = Process.Start(new ProcessStartInfo("soffice", arguments) { RedirectStandardOutput = true, RedirectStandardError = true });
            return process is not null && process.WaitForExit(60_000) && File.Exists(Path.ChangeExtension(csv, extension));
        }
        catch (Win32Exception)
        {
            return false;
        }
    }
}

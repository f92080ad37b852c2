using System.Collections.Immutable;
using System.Data;
using System.Diagnostics;
using System.Text;
using ExcelDataReader;
using Xunit;

namespace TenderKit.Documents.Tests.Workbooks;

/// <summary>Recalculates workbooks with an independent spreadsheet program, where one is installed.</summary>
internal static class Office
{
    private const string AlwaysRecalculate = """
        <?xml version="1.0" encoding="UTF-8"?>
        <oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
        <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
        </oor:items>
        """;

    private static readonly string? Program = Find();

    public static void SkipIfAbsent() => Skip.If(Program is null, "soffice is not installed");

    /// <summary>The workbook after every formula was calculated anew.</summary>
    public static DataSet Recalculated(byte[] workbook)
    {
        var folder = Directory.CreateTempSubdirectory("recalculate-");
        try
        {
            var profile = Directory.CreateDirectory(Path.Combine(folder.FullName, "profile", "user"));
            File.WriteAllText(Path.Combine(profile.FullName, "registrymodifications.xcu"), AlwaysRecalculate);
            var source = Path.Combine(folder.FullName, "in.xlsx");
            File.WriteAllBytes(source, workbook);
            Run(folder.FullName, source);
            return Read(File.ReadAllBytes(Path.Combine(folder.FullName, "out", "in.xlsx")));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Values of all cells as they stand in the file.</summary>
    public static DataSet Read(byte[] workbook)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        using var stream = new MemoryStream(workbook);
        using var reader = ExcelReaderFactory.CreateReader(stream);
        var set = new DataSet { Locale = System.Globalization.CultureInfo.InvariantCulture };
        do
        {
            var table = set.Tables.Add(reader.Name);
            while (reader.Read()) AddRow(table, [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetValue).Select(v => v is DateTime day ? day.ToOADate() : v)]);
        }
        while (reader.NextResult());
        return set;
    }

    private static void AddRow(DataTable table, ImmutableArray<object?> cells)
    {
        while (table.Columns.Count < cells.Length) table.Columns.Add(null, typeof(object));
        table.Rows.Add([.. cells]);
    }

    private static void Run(string folder, string source)
    {
        var start = new ProcessStartInfo(Program!) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in new[]
        {
            "-env:UserInstallation=" + new Uri(Path.Combine(folder, "profile")).AbsoluteUri, "--headless", "--norestore", "--convert-to", "xlsx:Calc MS Excel 2007 XML",
            "--outdir", Path.Combine(folder, "out"), source,
        })
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromMinutes(4)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException("soffice did not end within four minutes");
        }

        Assert.True(File.Exists(Path.Combine(folder, "out", "in.xlsx")), output.Result + errors.Result);
    }

    private static string? Find() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Where(p => p.Length > 0).Select(p => Path.Combine(p, "soffice")).FirstOrDefault(File.Exists);
}

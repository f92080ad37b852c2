using System.Globalization;
using System.Text;
using TenderKit.Intake.Tables;
using TenderKit.Sizing.Basics;
using Xunit;

namespace TenderKit.Intake.Tests.Tables;

public sealed class TableReaderTests
{
    [Theory]
    [InlineData("id,name,length\n1,\"A, B\",12.5\n")]
    [InlineData("id;name;length\n1;A, B;12.5\n")]
    [InlineData("id\tname\tlength\r\n1\tA, B\t12.5\r\n")]
    [InlineData("sep=;\nid;name;length\n1;A, B;12.5\n")]
    [InlineData("id|name|length\n")]
    public void DelimiterIsFound(string text)
    {
        var rows = Csv(text).Rows;
        if (text.Contains('|', StringComparison.Ordinal))
        {
            Assert.Equal("id|name|length", rows[0][0].Text);
            return;
        }

        Assert.Equal(["id", "name", "length"], rows[0].Select(c => c.Text));
        Assert.Equal(["1", "A, B", "12.5"], rows[1].Select(c => c.Text));
        Assert.Equal("C2", rows[1][2].Address);
    }

    [Fact]
    public void SemicolonWinsOverDecimalCommas() =>
        Assert.Equal(["A", "0,3", "1,5"], Csv("id;w;l\nA;0,3;1,5\nB;0,4;2,5").Rows[1].Select(c => c.Text));

    [Fact]
    public void RaggedRowsArePaddedAndBlankRowsKept()
    {
        var table = Csv("a,b\n\n1,2,3\n4\n,,,\n");
        Assert.Equal(4, table.Rows.Length);
        Assert.All(table.Rows, r => Assert.Equal(3, r.Length));
        Assert.All(table.Rows[1], c => Assert.True(c.IsEmpty));
        Assert.Equal(("3", 3, 3), (table.Rows[2][2].Text, table.Rows[2][2].Row, table.Rows[2][2].Column));
        Assert.Equal("4", table.Rows[3][0].Text);
    }

    [Fact]
    public void LeadingBlankLinesOfCsvAreCounted()
    {
        var table = Csv("\n\na,b\n1,2\n");
        Assert.Equal("a", table.Rows[2][0].Text);
        Assert.Equal(3, table.Rows[2][0].Row);
    }

    [Fact]
    public void QuotedLineBreaksStayInOneRow()
    {
        var table = Csv("a,b\n\"x\ny\",\"say \"\"hi\"\"\"\n3,4\n");
        Assert.Equal("x\ny", table.Rows[1][0].Text);
        Assert.Equal("say \"hi\"", table.Rows[1][1].Text);
        Assert.Equal("3", table.Rows[2][0].Text);
    }

    [Fact]
    public void EncodingsAreTold()
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        const string text = "número;école\n1;2\n";
        var ansi = TableReader.Read(Encoding.GetEncoding(1252).GetBytes(text), "a.csv");
        Assert.Equal("école", ansi.Value!.Tables[0].Rows[0][1].Text);
        Assert.Contains(ansi.Diagnostics, d => d.Code == "TK106");
        foreach (var encoding in new[] { Encoding.UTF8, Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            var marked = TableReader.Read([.. encoding.GetPreamble(), .. encoding.GetBytes(text)], "a.csv");
            Assert.Equal("número", marked.Value!.Tables[0].Rows[0][0].Text);
            Assert.Empty(marked.Diagnostics);
        }

        Assert.Equal("número", Csv(text).Rows[0][0].Text);
    }

    [Fact]
    public void WorkbookKeepsRowNumbersNumbersDatesAndErrors()
    {
        const string rows = """
            <row r="4"><c r="B4" t="inlineStr"><is><t> Length </t></is></c><c r="C4" t="inlineStr"><is><t>When</t></is></c></row>
            <row r="6"><c r="B6"><v>12.300000000000001</v></c><c r="C6" s="1"><v>46000</v></c><c r="D6" t="e"><v>#DIV/0!</v></c><c r="E6" t="b"><v>1</v></c><c r="F6"><v>120000</v></c><c r="G6" s="2"><v>0.07</v></c></row>
            """;
        var outcome = TableReader.Read(TestWorkbook.Xlsx(("Empty", ""), ("List", rows)), "a.xlsx");
        var table = outcome.Value!.Tables[1];
        Assert.Equal("List", table.Sheet);
        Assert.Equal(6, table.Rows.Length);
        Assert.Equal("Length", table.Rows[3][1].Text);
        Assert.Equal("B4", table.Rows[3][1].Address);
        var data = table.Rows[5];
        Assert.Equal(12.300000000000001, data[1].Number);
        Assert.Equal("12.3", data[1].Text); // 17 digits as stored, shortest text as shown
        Assert.Equal("2025-12-09", data[2].Text); // day 46000 of the 1900 date system: 45658 is 2025-01-01, recomputed
        Assert.Equal("#DIV/0!", data[3].Text);
        Assert.Equal("true", data[4].Text);
        Assert.Equal("120000", data[5].Text);
        Assert.Equal("7 %", data[6].Text);
        Assert.Equal(0.07, data[6].Number);
        Assert.Equal(64, outcome.Value.Sha256.Length);
    }

    [Fact]
    public void NumbersDoNotDependOnTheCulture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("fr-FR");
            var table = TableReader.Read(TestWorkbook.Xlsx(("S", "<row r=\"1\"><c r=\"A1\"><v>0.3</v></c></row>")), "a.xlsx").Value!.Tables[0];
            Assert.Equal("0.3", table.Rows[0][0].Text);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void OldBinaryWorkbookIsRead()
    {
        var outcome = TableReader.Read(OldWorkbook(), "a.xls");
        var rows = outcome.Value!.Tables[0].Rows;
        Assert.Equal("Width", rows[2][1].Text);
        Assert.Equal(2.5, rows[3][1].Number);
        Assert.Equal(4, rows[3][1].Row);
    }

    [Fact]
    public void TroubleIsADiagnosticWithAnAdvice()
    {
        Assert.Equal("TK101", Single(TableReader.Read(Path.Combine(Path.GetTempPath(), "no-such-folder", "a.csv"))));
        Assert.Equal("TK103", Single(TableReader.Read([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], "a.xlsx")));
        Assert.Equal("TK103", Single(TableReader.Read(TestWorkbook.Xlsx(("S", "<row r=\"1\"/>"))[..200], "a.xlsx")));
        Assert.Equal("TK103", Single(TableReader.Read(TestWorkbook.Xlsx(("S", "")), "a.csv")));
        Assert.Equal("TK104", Single(TableReader.Read([65], "a.docx")));
        Assert.Equal("TK105", Single(TableReader.Read([], "a.csv")));
        Assert.Equal("TK105", Single(TableReader.Read(Encoding.UTF8.GetBytes(",,\n,,\n"), "a.csv")));
    }

    [Fact]
    public void FileThatCannotBeOpenedIsReported()
    {
        var path = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N") + ".csv");
        Directory.CreateDirectory(path);
        try
        {
            Assert.Equal("TK102", Single(TableReader.Read(path)));
        }
        finally
        {
            Directory.Delete(path);
        }
    }

    private static string Single(Outcome<TableFile> outcome)
    {
        Assert.Null(outcome.Value);
        var diagnostic = Assert.Single(outcome.Diagnostics);
        Assert.Equal(Severity.Error, diagnostic.Severity);
        return diagnostic.Code;
    }

    private static Table Csv(string text) => TableReader.Read(Encoding.UTF8.GetBytes(text), "a.csv").Value!.Tables[0];

    /// <summary>Oldest binary form: records of type, length, content; row and column from 0.</summary>
    private static byte[] OldWorkbook()
    {
        using var stream = new MemoryStream();
        using var w = new BinaryWriter(stream);
        void Record(ushort type, params byte[] content)
        {
            w.Write(type);
            w.Write((ushort)content.Length);
            w.Write(content);
        }

        Record(0x0009, 2, 0, 0x10, 0);
        Record(0x0004, [2, 0, 1, 0, 0, 0, 0, 5, .. Encoding.ASCII.GetBytes("Width")]);
        Record(0x0003, [3, 0, 1, 0, 0, 0, 0, .. BitConverter.GetBytes(2.5)]);
        Record(0x000A);
        return stream.ToArray();
    }
}

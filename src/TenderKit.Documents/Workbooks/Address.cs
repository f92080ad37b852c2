using System.Globalization;

namespace TenderKit.Documents.Workbooks;

/// <summary>A cell of a named sheet; row and column count from 1.</summary>
internal readonly record struct Address(string Sheet, int Row, int Column)
{
    public string Local => ColumnName(Column) + Row.ToString(CultureInfo.InvariantCulture);

    /// <summary>As a formula on a sheet names it.</summary>
    public string From(string sheet) => sheet == Sheet ? Local : Quoted(Sheet) + "!" + Local;

    /// <summary>As a formula on a sheet names it wherever it is copied to.</summary>
    public string Fixed(string sheet)
    {
        var local = "$" + ColumnName(Column) + "$" + Row.ToString(CultureInfo.InvariantCulture);
        return sheet == Sheet ? local : Quoted(Sheet) + "!" + local;
    }

    public static string ColumnName(int column) =>
        column <= 26 ? ((char)('A' + column - 1)).ToString() : ColumnName((column - 1) / 26) + (char)('A' + ((column - 1) % 26));

    public static string Quoted(string sheet) => sheet.All(char.IsAsciiLetter) ? sheet : "'" + sheet.Replace("'", "''", StringComparison.Ordinal) + "'";
}

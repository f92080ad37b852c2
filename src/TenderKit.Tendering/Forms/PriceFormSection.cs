using System.Globalization;
using TenderKit.Intake.Yaml;
using TenderKit.Tendering.Settings;

namespace TenderKit.Tendering.Forms;

/// <summary>Reads <c>price_form</c> of the tender file.</summary>
internal static class PriceFormSection
{
    private const int MostColumns = 16384;

    public static PriceFormSettings? Read(YamlSection? section)
    {
        if (section is null) return null;
        var read = new PriceFormSettings(
            section.RequiredText("file"),
            [.. section.Sections("sheets").Select(SheetOf)],
            section.Text("lines"),
            Choice(section, "rest", "spread", "leave"),
            Choice(section, "contingency", "spread", "leave"));
        if (read.Sheets.IsEmpty) section.AddError("TK113", "'price_form.sheets' is missing; give sheet, description, quantity, rate and first_row for each sheet to fill", section.Line);
        section.ReportUnknownKeys();
        return read;
    }

    private static PriceFormSheet SheetOf(YamlSection sheet)
    {
        var read = new PriceFormSheet(
            sheet.RequiredText("sheet"), Column(sheet, "item"), Required(sheet, "description"), Column(sheet, "unit"), Required(sheet, "quantity"), Required(sheet, "rate"),
            sheet.Whole("first_row", 1, 1048576, 1), sheet.Has("last_row") ? sheet.Whole("last_row", 1, 1048576, 1048576) : null, sheet.Text("lot") ?? "");
        sheet.ReportUnknownKeys();
        return read;
    }

    private static int Required(YamlSection sheet, string key)
    {
        if (Column(sheet, key) is { } column) return column;
        if (!sheet.Has(key)) sheet.RequiredText(key);
        return 1;
    }

    /// <summary>A column by its letters or its number; null when the key is absent or wrong.</summary>
    private static int? Column(YamlSection sheet, string key)
    {
        if (sheet.Scalar(key) is not { } scalar) return null;
        var text = scalar.Text.ToUpperInvariant();
        var number = text.Length <= 3 && text.All(char.IsAsciiLetterUpper)
            ? text.Aggregate(0, (sum, letter) => (sum * 26) + letter - 'A' + 1)
            : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 0;
        if (number is >= 1 and <= MostColumns) return number;
        sheet.AddError("TK114", $"'{scalar.Path}' is '{scalar.Text}'; give the column by its letter, such as E", scalar.Line);
        return null;
    }

    private static bool Choice(YamlSection section, string key, string yes, string no)
    {
        if (section.Scalar(key) is not { } scalar || scalar.Text == yes) return true;
        if (scalar.Text != no) section.AddError("TK117", $"'{scalar.Path}' is '{scalar.Text}'; use {yes} or {no}", scalar.Line);
        return false;
    }
}

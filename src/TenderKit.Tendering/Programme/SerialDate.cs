namespace TenderKit.Tendering.Programme;

/// <summary>Days as spreadsheets count them: 1 January 1900 is 1 and 1 March 1900 is 61 (ECMA-376 part 1, 18.17.4.1, from memory).</summary>
public static class SerialDate
{
    private static readonly DateOnly Zero = new(1899, 12, 30);

    public static decimal Of(DateOnly date) => date.DayNumber - Zero.DayNumber;

    public static DateOnly Day(decimal serial) => Zero.AddDays((int)decimal.Floor(serial));
}

using TenderKit.Intake.Maps.Geodesy;

namespace TenderKit.Tendering.Sites.Positions;

/// <summary>The position of one row as read, before it is held against those of the others.</summary>
/// <param name="Point">As written; may lie outside the earth when latitude and longitude were exchanged; null when missing or unreadable.</param>
/// <param name="IsMissing">Nothing is written; otherwise a missing point has been reported.</param>
/// <param name="HasLetters">A hemisphere was written, so that its sign is not to be doubted.</param>
/// <param name="LatitudeColumn">Meaning of the column the latitude came from.</param>
/// <param name="LongitudeColumn">Meaning of the column the longitude came from.</param>
/// <param name="Understood">What to echo instead of degrees, or null.</param>
internal sealed record RowPosition(
    GeoPoint? Point, bool IsMissing, bool HasLetters, string LatitudeColumn, string LongitudeColumn, string? Understood = null)
{
    public bool IsOnEarth => Point is { } p && Math.Abs(p.LatitudeDegrees) <= 90 && Math.Abs(p.LongitudeDegrees) <= 180
        && (p.LatitudeDegrees != 0 || p.LongitudeDegrees != 0);

    public static RowPosition Missing(string column) => new(null, true, false, column, column);

    public static RowPosition Bad(string column) => new(null, false, false, column, column);
}

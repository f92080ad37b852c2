using TenderKit.Catalog.Families;
using TenderKit.Documents.Layout;
using TenderKit.Documents.Schedule;
using TenderKit.Tendering.Commissioning;

namespace TenderKit.Documents.Forms;

/// <summary>What can be set on an integrated unit, and what its maker has set.</summary>
internal static class SealedUnit
{
    public const string MakersOwn =
        "The unit is sealed: charge voltages, disconnect and reconnect are its maker's own and are neither calculated nor changed here. Ask the maker for their values and for the depth "
        + "to which the battery is emptied, and compare that with the depth of discharge of the technical schedule. A unit is not opened on site.";

    public static TableBlock SetTable(IntegratedUnit unit, KitSettings settings)
    {
        Row Line(string name, string value) => Row.Of(name, value, "");
        return new TableBlock(
            $"Settings of integrated unit {unit.Code}, by its switch or remote",
            [new("Setting", FixedPt: 130), new("To be set", Share: 2), new("As set", FixedPt: 110)],
            [
                Line("Switch", "on; delivered off"),
                Line("Schedule", $"as in the table below; the unit holds {Figures.Count(unit.ScheduleParts, "part", "parts")} of the night"),
                .. settings.Sites.GroupBy(s => Figures.Percent(s.LevelFraction)).Select(g => Line($"Full level, {Words.List(g.Select(s => s.SiteId), 5)}", g.Key + " of the unit's output")),
                Line("Battery inside", $"{Words.Of(unit.Chemistry)}, {Figures.Short(unit.NominalVoltageV)} V, {Figures.Short(unit.RatedWh)} Wh; set-points by the maker"),
                Line("No charging below", $"{Figures.Signed(unit.LeastChargeC, 0)} °C at the battery"),
                Line("Dims when the battery is low", unit.DimsOnLowBattery ? "yes: switch it off where that can be done; light below the level asked for counts as dark" : "not stated by the maker"),
                .. settings.Sites.GroupBy(s => s.TiltDegrees).Select(g => Line(
                    $"Module, {Words.List(g.Select(s => s.SiteId), 5)}", $"{Figures.Short(g.Key)}° from level on the head, faces where the head faces: across the road")),
            ])
        {
            Compact = true,
            Tight = true,
            KeepTogether = true,
        };
    }
}

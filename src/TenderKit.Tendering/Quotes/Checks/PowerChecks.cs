using TenderKit.Sizing.Basics;
using TenderKit.Tendering.Quotes.Reading;

namespace TenderKit.Tendering.Quotes.Checks;

/// <summary>Claimed nights, array, controller and integrated units of the parts an offer puts on a pole.</summary>
internal static class PowerChecks
{
    /// <summary>Share of the nights asked for that an integrated unit must bridge at its claimed watts, new; below it the claim is called untrue.</summary>
    private const double LeastShareOfNights = 0.75;

    /// <summary>Share of the array for its claimed watts below which the claim is called untrue.</summary>
    private const double LeastShareOfArray = 0.5;

    /// <summary>Rounding of printed ratings and of claimed nights.</summary>
    private const double Rounding = 1.05;

    public static IEnumerable<QuoteFinding> Of(OfferedKit kit, Asked asked)
    {
        if (kit.Luminaire is { Family: "integrated" } unit && Integrated(kit, unit, asked) is { } untrue)
        {
            yield return untrue;
            yield break;
        }

        if (Claimed(kit) is { } claimed) yield return claimed;
        if (asked.IsShaped && TooFewNights(kit, asked) is { } few) yield return few;
        if (Array(kit, asked) is { } array) yield return array;
        if (Controller(kit) is { } controller) yield return controller;
    }

    /// <summary>Nights claimed against the energy of the new battery and the lamp's nightly use.</summary>
    private static QuoteFinding? Claimed(OfferedKit kit)
    {
        var line = new[] { kit.Battery, kit.Luminaire, kit.Module }.FirstOrDefault(l => l?.Value("autonomy_nights") is not null);
        if (line?.Value("autonomy_nights") is not { } nights || kit.BatteryWh is not { } wh || kit.NightlyWh is not { } nightly) return null;
        var possible = wh * Fresh(kit) / nightly;
        if (nights <= possible * Rounding) return null;
        var message = $"{Say.Number(nights)} nights without sun are claimed; {Say.Number(wh)} Wh, drawn down by {Say.Number(Fresh(kit) * 100)} %, feed {Say.Number(nightly)} Wh a night for {Say.Number(possible)} nights when new, in kit {kit.Asked.Id}";
        return new QuoteFinding("TK815", Severity.Error, line.Place, message, "battery energy over nightly use; design rules battery.depth", $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. At what light level and hours do you claim it?") { Untrue = true };
    }

    /// <summary>Nights without sun the tender asks for, where it states no battery.</summary>
    private static QuoteFinding? TooFewNights(OfferedKit kit, Asked asked)
    {
        if (kit.Battery is not { } line || kit.BatteryWh is not { } wh || kit.NightlyWh is not { } night || Nights(kit) is var nights && nights >= asked.AutonomyNights * (1 - asked.Settings.ToleranceFraction)) return null;
        var message = $"{Say.Number(wh)} Wh, drawn down by {Say.Number(Fresh(kit) * 100)} %, feed {Say.Number(night)} Wh a night for {Say.Number(nights)} nights when new; asked: {Say.Number(asked.AutonomyNights)} nights without sun";
        return new QuoteFinding("TK809", Severity.Error, line.Place, message, "tender: reliability.autonomy_nights", $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. Do you offer a larger battery at the same price?") { KitIds = [kit.Asked.Id] };
    }

    /// <summary>Nights the new battery feeds the lamp without sun.</summary>
    public static double Nights(OfferedKit kit) => kit.BatteryWh is { } wh && kit.NightlyWh is { } night and > 0 ? wh * Fresh(kit) / night : 0;

    private static double Fresh(OfferedKit kit) => kit.Asked.Duty.FreshFraction.GetValueOrDefault(kit.Chemistry, 0.9);

    private static QuoteFinding? Array(OfferedKit kit, Asked asked)
    {
        if (kit.ArrayWp is not { } wp || kit.Module is not { } line || kit.NightlyWh is not { } nightly) return null;
        var needed = kit.Asked.Duty.NeededArrayWp * nightly / kit.Asked.Duty.NightlyWh;
        if (wp >= needed / 1.02) return null;
        var message = $"{Say.Number(wp)} Wp for kit {kit.Asked.Id}; the worst month asks for {Say.Number(needed)} Wp to give {Say.Number(nightly)} Wh a night with the margin of the design rules";
        return new QuoteFinding("TK816", Severity.Error, line.Place, message, "hand method, design rule energy.array_to_load (IEEE 1562, from memory)", $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. Do you offer a larger module at the same price?") { KitIds = [kit.Asked.Id], OwnPart = !asked.IsStated };
    }

    private static QuoteFinding? Controller(OfferedKit kit)
    {
        if (kit.Controller is not { } line || line.Value("rated_charge_a") is not { } rated || kit.ArrayWp is not { } wp) return null;
        var volts = kit.Battery?.Value("nominal_voltage_v") is { } v && LineMatcher.VoltClass(v) == kit.Asked.BankV ? v : kit.Asked.BankV;
        var current = Math.Max(Math.Min(wp, kit.Asked.ModuleWp * 1.5) / volts, 0);
        var lamp = (kit.InputPowerW ?? 0) / volts;
        var worst = Math.Max(current, lamp);
        if (rated * Rounding >= worst) return null;
        var message = $"{Say.Number(rated)} A for kit {kit.Asked.Id}; {(current >= lamp ? $"a module of {Say.Number(wp)} Wp charges" : $"a lamp of {Say.Number(kit.InputPowerW!.Value)} W draws")} {Say.Number(worst)} A at {Say.Number(volts)} V";
        return new QuoteFinding("TK817", Severity.Error, line.Place, message, "current is power over battery voltage; NFPA 70 690.8 asks for more (from memory)", $"Line {line.Place.Row} ({Say.Short(line.Text)}): {message}. Which controller do you offer instead?");
    }

    /// <summary>An integrated unit at the watts it claims, over the night asked for.</summary>
    private static QuoteFinding? Integrated(OfferedKit kit, OfferLine unit, Asked asked)
    {
        if (kit.InputPowerW is not { } watt || kit.BatteryWh is not { } wh || kit.ArrayWp is not { } wp) return null;
        var duty = kit.Asked.Duty;
        var night = watt * duty.FullHoursH;
        var nights = wh * Fresh(kit) / night;
        var neededWp = duty.NeededArrayWp * night / duty.NightlyWh;
        if (nights >= LeastShareOfNights * asked.AutonomyNights && wp >= LeastShareOfArray * neededWp) return null;
        var feeds = Math.Min(wh * Fresh(kit) / asked.AutonomyNights, night * wp / neededWp) / duty.FullHoursH;
        var message = $"{Say.Number(watt)} W are claimed with a panel of {Say.Number(wp)} W and {Say.Number(wh)} Wh; they feed about {Say.Number(Math.Round(feeds))} W through the {Say.Number(duty.FullHoursH)} full hours of the night asked for, {Say.Number(asked.AutonomyNights)} nights without sun";
        return new QuoteFinding("TK831", Severity.Error, unit.Place, message, "battery energy and worst month against the claimed lamp", $"Line {unit.Place.Row} ({Say.Short(unit.Text)}): {message}. Please state the power the lamp really draws and for how many hours.") { Untrue = true };
    }
}

using System.Text.Json.Nodes;
using TenderKit.Tendering.Design;

namespace TenderKit.Documents.Machine;

/// <summary>Make-up of a kit for machines.</summary>
internal static class PartsJson
{
    public static JsonObject Of(PoleParts parts) => new()
    {
        ["integrated"] = parts.Integrated?.Code,
        ["luminaire"] = parts.Luminaire.Code,
        ["module"] = parts.Module.Code,
        ["moduleCount"] = parts.ModuleCount,
        ["modulesInSeries"] = parts.ModulesInSeries,
        ["arrayWp"] = parts.ArrayWp,
        ["battery"] = parts.Battery.Code,
        ["batteryCount"] = parts.BatteryCount,
        ["batteriesInSeries"] = parts.BatteriesInSeries,
        ["batteryRatedWh"] = parts.BatteryRatedWh,
        ["systemVoltageV"] = parts.SystemVoltageV,
        ["controller"] = parts.Controller.Code,
        ["controllerCount"] = parts.ControllerCount,
        ["pole"] = parts.Pole.Code,
        ["bracket"] = parts.Bracket?.Code,
        ["enclosure"] = parts.Enclosure?.Code,
        ["foundation"] = parts.Foundation.Code,
        ["circuits"] = BidJson.Array(parts.Circuits.Select(CircuitOf)),
        ["otherProtection"] = new JsonArray([.. parts.OtherProtection.Select(p => JsonValue.Create(p.Code))]),
    };

    private static JsonObject CircuitOf(Circuit circuit) => new()
    {
        ["name"] = circuit.Name,
        ["cable"] = circuit.Cable.Code,
        ["lengthM"] = BidJson.Number(circuit.LengthM),
        ["currentA"] = BidJson.Number(circuit.CurrentA),
        ["dropFraction"] = BidJson.Number(circuit.DropFraction),
        ["capacityA"] = BidJson.Number(circuit.CapacityA),
        ["fuse"] = circuit.Fuse?.Code,
    };
}

namespace TenderKit.Sizing.Energy.Balance;

/// <summary>Energy over all days, Wh.</summary>
internal sealed class LedgerSums<T, TMask>
    where T : struct, ILanes<T, TMask>
    where TMask : struct
{
    private T entered;
    private T dumped;
    private T refused;
    private T kept;
    private T served;
    private T own;
    private T drawn;
    private T selfLoss;

    /// <summary>Taken out of the store, before the discharge efficiency.</summary>
    public T DrawnWh => drawn;

    /// <param name="enteredWh">From the array.</param>
    /// <param name="dumpedWh">Refused by the controller's current limit, behind its converter.</param>
    /// <param name="refusedWh">Refused by the battery, behind its charge efficiency.</param>
    /// <param name="keptWh">Taken by the battery, behind its charge efficiency.</param>
    /// <param name="drawnWh">Taken out of the store, before the discharge efficiency.</param>
    public void Add(T enteredWh, T dumpedWh, T refusedWh, T keptWh, T servedWh, T ownWh, T drawnWh, T selfLossWh)
    {
        entered += enteredWh;
        dumped += dumpedWh;
        refused += refusedWh;
        kept += keptWh;
        served += servedWh;
        own += ownWh;
        drawn += drawnWh;
        selfLoss += selfLossWh;
    }

    /// <summary>The ledger of one candidate.</summary>
    public EnergyLedger Of(int lane, PowerSystem system, double storeChangeWh, double demandWh, double unservedWh)
    {
        var (battery, control) = (system.Battery, system.Control);
        var losses = entered[lane] * (1 - control.Efficiency)
            + kept[lane] * (1 / battery.ChargeEfficiency - 1)
            + drawn[lane] * (1 - battery.DischargeEfficiency)
            + selfLoss[lane];
        return new EnergyLedger(
            entered[lane], served[lane], own[lane], losses, dumped[lane] + refused[lane] / battery.ChargeEfficiency, storeChangeWh, demandWh, unservedWh);
    }
}

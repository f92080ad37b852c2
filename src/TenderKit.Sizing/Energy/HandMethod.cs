namespace TenderKit.Sizing.Energy;

/// <summary>Sizing by hand: nights of autonomy and worst-month peak sun hours.</summary>
public static class HandMethod
{
    public static HandResult Size(HandInputs inputs) => throw new NotImplementedException();
}

using System.Buffers;

namespace TenderKit.Sizing.Energy.Balance;

/// <summary>What the balance finds of each day, by day of the series; the arrays go back to the pool.</summary>
internal sealed class DayRecords<T, TMask>(int dayCount) : IDisposable
    where T : struct, ILanes<T, TMask>
    where TMask : struct
{
    public T[] StartWh { get; } = ArrayPool<T>.Shared.Rent(dayCount);

    public TMask[] StartConnected { get; } = ArrayPool<TMask>.Shared.Rent(dayCount);

    public T[] SupplyWh { get; } = ArrayPool<T>.Shared.Rent(dayCount);

    public T[] UnservedWh { get; } = ArrayPool<T>.Shared.Rent(dayCount);

    public T[] LeastWh { get; } = ArrayPool<T>.Shared.Rent(dayCount);

    public T[] MostWh { get; } = ArrayPool<T>.Shared.Rent(dayCount);

    /// <summary>Whether an hour before noon was served less than asked: it belongs to the night before.</summary>
    public TMask[] DarkMorning { get; } = ArrayPool<TMask>.Shared.Rent(dayCount);

    public TMask[] DarkEvening { get; } = ArrayPool<TMask>.Shared.Rent(dayCount);

    public void Close(int day, T supply, T unserved, T least, T most, TMask darkMorning, TMask darkEvening)
    {
        (SupplyWh[day], UnservedWh[day], LeastWh[day], MostWh[day]) = (supply, unserved, least, most);
        (DarkMorning[day], DarkEvening[day]) = (darkMorning, darkEvening);
    }

    public void Dispose()
    {
        foreach (var values in new[] { StartWh, SupplyWh, UnservedWh, LeastWh, MostWh }) ArrayPool<T>.Shared.Return(values);
        foreach (var masks in new[] { StartConnected, DarkMorning, DarkEvening }) ArrayPool<TMask>.Shared.Return(masks);
    }
}

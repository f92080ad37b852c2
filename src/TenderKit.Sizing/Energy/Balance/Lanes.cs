using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace TenderKit.Sizing.Energy.Balance;

/// <summary>
/// One number for each of several candidates, so that the balance is written once for one candidate and for four.
/// The operations are those of IEEE 754 in either width and no product is fused with a sum: the bits do not depend on the width.
/// </summary>
/// <typeparam name="T">The numbers.</typeparam>
/// <typeparam name="TMask">A yes or no for each.</typeparam>
internal interface ILanes<T, TMask>
    where T : struct, ILanes<T, TMask>
    where TMask : struct
{
    static abstract int Count { get; }

    static abstract T Of(double value);

    static abstract T Of(ReadOnlySpan<double> values);

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    static abstract T Min(T a, T b);

    static abstract T Max(T a, T b);

    static abstract TMask Less(T a, T b);

    static abstract TMask Or(TMask a, TMask b);

    static abstract TMask And(TMask a, TMask b);

    static abstract TMask AndNot(TMask a, TMask b);

    static abstract TMask All(bool value);

    static abstract bool Any(TMask mask);

    static abstract bool Has(TMask mask, int lane);

    static abstract T Select(TMask mask, T yes, T no);

    double this[int lane] { get; }
}

/// <summary>One candidate.</summary>
internal readonly struct OneLane(double value) : ILanes<OneLane, bool>
{
    private readonly double _value = value;

    public static int Count => 1;

    public double this[int lane] => _value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Of(double value) => new(value);

    public static OneLane Of(ReadOnlySpan<double> values) => new(values[0]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator +(OneLane a, OneLane b) => new(a._value + b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator -(OneLane a, OneLane b) => new(a._value - b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator *(OneLane a, OneLane b) => new(a._value * b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane operator /(OneLane a, OneLane b) => new(a._value / b._value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Min(OneLane a, OneLane b) => new(double.MinNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Max(OneLane a, OneLane b) => new(double.MaxNative(a._value, b._value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Less(OneLane a, OneLane b) => a._value < b._value;

    public static bool Or(bool a, bool b) => a | b;

    public static bool And(bool a, bool b) => a & b;

    public static bool AndNot(bool a, bool b) => a & !b;

    public static bool All(bool value) => value;

    public static bool Any(bool mask) => mask;

    public static bool Has(bool mask, int lane) => mask;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static OneLane Select(bool mask, OneLane yes, OneLane no) => mask ? yes : no;
}

/// <summary>Four candidates.</summary>
internal readonly struct FourLanes(Vector256<double> values) : ILanes<FourLanes, Vector256<double>>
{
    private readonly Vector256<double> _values = values;

    public static int Count => 4;

    public double this[int lane] => _values.GetElement(lane);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Of(double value) => new(Vector256.Create(value));

    public static FourLanes Of(ReadOnlySpan<double> values) => new(Vector256.Create(values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator +(FourLanes a, FourLanes b) => new(a._values + b._values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator -(FourLanes a, FourLanes b) => new(a._values - b._values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator *(FourLanes a, FourLanes b) => new(a._values * b._values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes operator /(FourLanes a, FourLanes b) => new(a._values / b._values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Min(FourLanes a, FourLanes b) => new(Vector256.MinNative(a._values, b._values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Max(FourLanes a, FourLanes b) => new(Vector256.MaxNative(a._values, b._values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Less(FourLanes a, FourLanes b) => Vector256.LessThan(a._values, b._values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Or(Vector256<double> a, Vector256<double> b) => a | b;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> And(Vector256<double> a, Vector256<double> b) => a & b;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> AndNot(Vector256<double> a, Vector256<double> b) => Vector256.AndNot(a, b);

    public static Vector256<double> All(bool value) => value ? Vector256<double>.AllBitsSet : Vector256<double>.Zero;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Any(Vector256<double> mask) => mask.ExtractMostSignificantBits() != 0;

    public static bool Has(Vector256<double> mask, int lane) => (mask.ExtractMostSignificantBits() >> lane & 1) != 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static FourLanes Select(Vector256<double> mask, FourLanes yes, FourLanes no) => new(Vector256.ConditionalSelect(mask, yes._values, no._values));
}

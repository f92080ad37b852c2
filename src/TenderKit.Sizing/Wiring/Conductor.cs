namespace TenderKit.Sizing.Wiring;

/// <summary>Class of a copper conductor, IEC 60228.</summary>
public enum ConductorClass
{
    Stranded2,
    Flexible5,
}

/// <summary>Insulation and so the conductor's highest temperature: PVC 70 degC, cross-linked 90 degC.</summary>
public enum CableInsulation
{
    Pvc70,
    CrossLinked90,
}

/// <summary>Resistance, drop and current-carrying capacity of copper cable.</summary>
public static class Conductor
{
    /// <summary>Resistance of one conductor at 20 degC, Ohm/km.</summary>
    public static double ResistanceOhmPerKm(ConductorClass conductorClass, double crossSectionMm2) => throw new NotImplementedException();

    /// <summary>Resistance at a conductor temperature, Ohm/km.</summary>
    public static double AtTemperatureOhmPerKm(double ohmPerKmAt20C, double conductorC) => throw new NotImplementedException();

    /// <summary>Drop of a two-conductor circuit, V: 2 L I R.</summary>
    public static double DropV(double oneWayLengthM, double currentA, double ohmPerKm) => throw new NotImplementedException();

    /// <summary>Current-carrying capacity of a two-core cable in air at an ambient temperature, A (IEC 60364-5-52, method E or B2 as named in the implementation).</summary>
    public static double CapacityA(CableInsulation insulation, double crossSectionMm2, double ambientC) => throw new NotImplementedException();
}

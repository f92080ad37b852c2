namespace TenderKit.Intake.Numbers;

/// <summary>What a number measures; the unit in brackets is the one every reading is given in.</summary>
public enum QuantityKind
{
    /// <summary>A plain number; a unit after it is an error.</summary>
    Number,

    /// <summary>Whole pieces.</summary>
    Count,

    /// <summary>Fraction; 80 % is 0.8.</summary>
    Fraction,

    /// <summary>Length, m.</summary>
    Length,

    /// <summary>Area, m2.</summary>
    Area,

    /// <summary>Volume, m3.</summary>
    Volume,

    /// <summary>Mass, kg.</summary>
    Mass,

    /// <summary>Speed, m/s.</summary>
    Speed,

    /// <summary>Power, W (Wp for modules).</summary>
    Power,

    /// <summary>Energy, Wh.</summary>
    Energy,

    /// <summary>Electric charge, Ah.</summary>
    Charge,

    /// <summary>Voltage, V.</summary>
    Voltage,

    /// <summary>Current, A.</summary>
    Current,

    /// <summary>Illuminance, lx.</summary>
    Illuminance,

    /// <summary>Luminous flux, lm.</summary>
    LuminousFlux,

    /// <summary>Hours, h.</summary>
    Hours,

    /// <summary>Temperature, degC.</summary>
    Temperature,

    /// <summary>Daily irradiation, kWh/m2 a day.</summary>
    Irradiation,

    /// <summary>Latitude, longitude or another angle, degrees.</summary>
    Degrees,

    /// <summary>An amount of money; see <see cref="UserNumber.ReadMoney"/> for the exact decimal.</summary>
    Money,
}

using System.Collections.Frozen;
using UnitsNet;
using UnitsNet.Units;

namespace TenderKit.Intake.Numbers;

/// <summary>How users spell units, and the straight line that takes each to the unit of its kind.</summary>
public static class UnitSpellings
{
    private static readonly (QuantityKind Kind, Enum Unit, string Spellings)[] Rows =
    [
        (QuantityKind.Length, LengthUnit.Meter, "m mt mts mtr mtrs ml metre metres meter meters metro metros"),
        (QuantityKind.Length, LengthUnit.Kilometer, "km kms kilometre kilometres kilometer kilometers kilometro kilometros quilometro quilometros"),
        (QuantityKind.Length, LengthUnit.Centimeter, "cm centimetre centimetres centimeter centimeters centimetro centimetros"),
        (QuantityKind.Length, LengthUnit.Millimeter, "mm millimetre millimetres millimeter millimeters milimetro milimetros"),
        (QuantityKind.Length, LengthUnit.Foot, "ft ' feet foot pied pieds pie pies"),
        (QuantityKind.Length, LengthUnit.Inch, "in \" '' inch inches"),
        (QuantityKind.Length, LengthUnit.Yard, "yd yds yard yards"),
        (QuantityKind.Length, LengthUnit.Mile, "mi mile miles"),
        (QuantityKind.Area, AreaUnit.SquareMeter, "m2 m^2 sqm sqmt squaremetre squaremetres squaremeter squaremeters"),
        (QuantityKind.Area, AreaUnit.SquareMillimeter, "mm2 mm^2 sqmm"),
        (QuantityKind.Area, AreaUnit.SquareCentimeter, "cm2 cm^2 sqcm"),
        (QuantityKind.Area, AreaUnit.SquareFoot, "ft2 ft^2 sqft"),
        (QuantityKind.Volume, VolumeUnit.CubicMeter, "m3 m^3 cum cbm"),
        (QuantityKind.Volume, VolumeUnit.Liter, "l litre litres liter liters"),
        (QuantityKind.Mass, MassUnit.Kilogram, "kg kgs kilogram kilograms kilo kilos"),
        (QuantityKind.Mass, MassUnit.Gram, "g gram grams"),
        (QuantityKind.Mass, MassUnit.Tonne, "t tonne tonnes ton"),
        (QuantityKind.Mass, MassUnit.Pound, "lb lbs pound pounds"),
        (QuantityKind.Speed, SpeedUnit.MeterPerSecond, "m/s mps ms-1 m/sec"),
        (QuantityKind.Speed, SpeedUnit.KilometerPerHour, "km/h kmh kph kmph km/hr"),
        (QuantityKind.Speed, SpeedUnit.MilePerHour, "mph mi/h"),
        (QuantityKind.Speed, SpeedUnit.Knot, "kt kts kn knot knots"),
        (QuantityKind.Power, PowerUnit.Watt, "w wp wpk watt watts vatio vatios wattpeak wattspeak"),
        (QuantityKind.Power, PowerUnit.Kilowatt, "kw kwp kilowatt kilowatts"),
        (QuantityKind.Energy, EnergyUnit.WattHour, "wh watthour watthours"),
        (QuantityKind.Energy, EnergyUnit.KilowattHour, "kwh"),
        (QuantityKind.Energy, EnergyUnit.Megajoule, "mj"),
        (QuantityKind.Charge, ElectricChargeUnit.AmpereHour, "ah amperehour amperehours amphour amphours"),
        (QuantityKind.Charge, ElectricChargeUnit.MilliampereHour, "mah"),
        (QuantityKind.Voltage, ElectricPotentialUnit.Volt, "v vdc volt volts vcc"),
        (QuantityKind.Voltage, ElectricPotentialUnit.Millivolt, "mv"),
        (QuantityKind.Current, ElectricCurrentUnit.Ampere, "a amp amps ampere amperes"),
        (QuantityKind.Current, ElectricCurrentUnit.Milliampere, "ma"),
        (QuantityKind.Illuminance, IlluminanceUnit.Lux, "lx lux"),
        (QuantityKind.LuminousFlux, LuminousFluxUnit.Lumen, "lm lumen lumens"),
        (QuantityKind.Hours, DurationUnit.Hour, "h hr hrs hour hours heure heures hora horas"),
        (QuantityKind.Hours, DurationUnit.Minute, "min mins minute minutes minuto minutos"),
        (QuantityKind.Hours, DurationUnit.Day, "d day days jour jours dia dias"),
        (QuantityKind.Temperature, TemperatureUnit.DegreeCelsius, "c \u00B0c degc celsius"),
        (QuantityKind.Temperature, TemperatureUnit.DegreeFahrenheit, "f \u00B0f degf fahrenheit"),
        (QuantityKind.Temperature, TemperatureUnit.Kelvin, "k kelvin"),
        (QuantityKind.Irradiation, IrradiationUnit.KilowattHourPerSquareMeter, "kwh/m2 kwh/m2/day kwh/m2/d kwh/m2day kwh/m2d kwh/m^2/day kwh/m^2 kwhm-2 kwh/sqm kwh/sqm/day h psh h/day"),
        (QuantityKind.Irradiation, IrradiationUnit.WattHourPerSquareMeter, "wh/m2 wh/m2/day wh/m2/d"),
        (QuantityKind.Count, ScalarUnit.Amount, "no nos nr nb number pc pcs piece pieces ea each unit units un und pole poles set sets u unite unites unidad unidades unidade"),
        (QuantityKind.Fraction, RatioUnit.DecimalFraction, "fraction"),
        (QuantityKind.Fraction, RatioUnit.Percent, "% percent pct percentage pourcent porciento porcento"),
        (QuantityKind.Degrees, AngleUnit.Degree, "\u00B0 deg degs degree degrees degre degres grado grados grau graus"),
    ];

    private static readonly FrozenDictionary<(QuantityKind Kind, string Spelling), Line> Lines = Build();

    /// <summary>Unit of readings of a kind, as printed.</summary>
    public static string BaseSymbol(QuantityKind kind) => kind switch
    {
        QuantityKind.Length => "m",
        QuantityKind.Area => "m2",
        QuantityKind.Volume => "m3",
        QuantityKind.Mass => "kg",
        QuantityKind.Speed => "m/s",
        QuantityKind.Power => "W",
        QuantityKind.Energy => "Wh",
        QuantityKind.Charge => "Ah",
        QuantityKind.Voltage => "V",
        QuantityKind.Current => "A",
        QuantityKind.Illuminance => "lx",
        QuantityKind.LuminousFlux => "lm",
        QuantityKind.Hours => "h",
        QuantityKind.Temperature => "degC",
        QuantityKind.Irradiation => "kWh/m2/day",
        QuantityKind.Degrees => "degrees",
        _ => "",
    };

    /// <summary>Whether a spelling is a unit of this kind.</summary>
    public static bool IsKnown(QuantityKind kind, string spelling) => Lines.ContainsKey((kind, Key(spelling)));

    /// <summary>The value in the unit of the kind, or null when the spelling is no unit of it.</summary>
    public static double? ToBase(double value, QuantityKind kind, string spelling) =>
        Lines.TryGetValue((kind, Key(spelling)), out var line) ? line.At(value) : null;

    private static string Key(string spelling) =>
        Spelling.Folded(Spelling.Plain(spelling)).Replace(" ", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);

    private static FrozenDictionary<(QuantityKind, string), Line> Build()
    {
        var lines = new Dictionary<(QuantityKind, string), Line>();
        var baseUnits = new Dictionary<QuantityKind, Enum>();
        foreach (var (kind, unit, spellings) in Rows)
        {
            var line = Line.Between(unit, baseUnits.TryGetValue(kind, out var known) ? known : baseUnits[kind] = unit);
            foreach (var spelling in spellings.Split(' ')) lines.Add((kind, spelling), line);
        }

        // MJ/m2 is not among the library's units: 1 kWh is 3.6 MJ
        foreach (var spelling in "mj/m2 mj/m2/day mj/m2/d mj/m^2/day".Split(' '))
            lines.Add((QuantityKind.Irradiation, spelling), new Line(1, 3.6, 0));
        return lines.ToFrozenDictionary();
    }

    /// <summary>y = x * Numerator / Denominator + Offset; the division keeps 5 mm at exactly 0.005 m.</summary>
    private readonly record struct Line(double Numerator, double Denominator, double Offset)
    {
        public double At(double value) => (value * Numerator / Denominator) + Offset;

        public static Line Between(Enum unit, Enum baseUnit)
        {
            var offset = UnitConverter.Convert(0, unit, baseUnit);
            var factor = UnitConverter.Convert(1, unit, baseUnit) - offset;
            var inverse = Math.Round(1 / factor);
            return factor < 1 && offset == 0 && Math.Abs((inverse * factor) - 1) < 1e-14 ? new(1, inverse, 0) : new(factor, 1, offset);
        }
    }
}

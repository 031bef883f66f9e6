namespace PlatformForge.Track.Surveys.Readings;

/// <summary>A unit that lengths in a survey file may be written in.</summary>
public enum LengthUnit
{
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,
}

/// <summary>What a <see cref="LengthUnit"/> is worth, and how it is written.</summary>
public static class LengthUnits
{
    /// <summary>Millimetres in one unit (the inch is 25.4 mm exactly, by the agreement of 1959).</summary>
    public static double Millimetres(this LengthUnit unit) => unit switch
    {
        LengthUnit.Millimetre => 1,
        LengthUnit.Centimetre => 10,
        LengthUnit.Metre => 1000,
        LengthUnit.Inch => 25.4,
        LengthUnit.Foot => 304.8,
        _ => throw new ArgumentOutOfRangeException(nameof(unit)),
    };

    /// <summary>The usual short sign.</summary>
    public static string Sign(this LengthUnit unit) => unit switch
    {
        LengthUnit.Millimetre => "mm",
        LengthUnit.Centimetre => "cm",
        LengthUnit.Metre => "m",
        LengthUnit.Inch => "in",
        _ => "ft",
    };

    /// <summary>The unit for its sign or name, or null for any other word.</summary>
    public static LengthUnit? Named(string word) => word.Trim().ToLowerInvariant() switch
    {
        "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" => LengthUnit.Millimetre,
        "cm" or "centimetre" or "centimetres" or "centimeter" or "centimeters" => LengthUnit.Centimetre,
        "m" or "metre" or "metres" or "meter" or "meters" => LengthUnit.Metre,
        "in" or "inch" or "inches" or "\"" => LengthUnit.Inch,
        "ft" or "foot" or "feet" or "'" => LengthUnit.Foot,
        _ => null,
    };
}

using PlatformForge.Exports.Looks;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>
/// The look of all drawings: warm white paper, dark ink, one accent. Vehicles differ by lightness and pattern as well as by
/// hue, so that they can be told apart by everybody and in a photocopy.
/// </summary>
internal static class HouseStyle
{
    public static readonly Rgb Paper = new(0xFD, 0xFC, 0xF8);
    public static readonly Rgb Ink = new(0x1E, 0x27, 0x30);
    public static readonly Rgb Quiet = new(0x5A, 0x66, 0x70);
    public static readonly Rgb Hair = new(0xB4, 0xBC, 0xC2);
    public static readonly Rgb Accent = new(0xB4, 0x3E, 0x24);
    public static readonly Rgb Deck = new(0xE9, 0xE7, 0xE0);
    public static readonly Rgb Coping = new(0xD8, 0xCD, 0xB6);
    public static readonly Rgb White = new(0xFF, 0xFF, 0xFF);
    public static readonly Rgb Swept = new(0x0B, 0x6E, 0x75);

    public static readonly Pen Outline = new(0.35, Ink);
    public static readonly Pen Heavy = new(0.6, Ink);
    public static readonly Pen Thin = new(0.18, Ink);
    public static readonly Pen Fine = new(0.13, Quiet);
    public static readonly Pen Hairline = new(0.1, Hair);
    public static readonly Pen Hidden = new(0.13, Quiet, 1.4, 0.8);
    public static readonly Pen Centre = new(0.13, Quiet, 5, 1, 0.8, 1);
    public static readonly Pen Cut = new(0.4, Accent);
    public static readonly Pen Dimension = new(0.13, Ink);

    public static readonly TextStyle Heading = new(5, Ink, Bold: true);
    public static readonly TextStyle Subheading = new(3.4, Ink, Bold: true);
    public static readonly TextStyle Label = new(2.6, Ink);
    public static readonly TextStyle Figure = new(2.4, Ink);
    public static readonly TextStyle Strong = new(2.6, Ink, Bold: true);
    public static readonly TextStyle Small = new(2.2, Quiet);
    public static readonly TextStyle AccentLabel = new(2.6, Accent, Bold: true);

    private static readonly (Rgb Colour, Pattern Pattern)[] Looks =
    [
        (new(0x0B, 0x6E, 0x75), Pattern.Rising),
        (new(0xD9, 0x95, 0x1F), Pattern.Dots),
        (new(0x6C, 0x3F, 0x8C), Pattern.Falling),
        (new(0x3F, 0x93, 0xCF), Pattern.Level),
        (new(0x9C, 0x38, 0x26), Pattern.Upright),
        (new(0x66, 0x76, 0x2B), Pattern.Crossed),
    ];

    /// <summary>How many colours there are for vehicles.</summary>
    public static int Kinds => Looks.Length;

    /// <summary>Colour and pattern of a vehicle or set; after six they come round again, see <see cref="VehicleLooks"/>.</summary>
    public static (Rgb Colour, Pattern Pattern) Vehicle(int index) => Looks[index % Looks.Length];
}

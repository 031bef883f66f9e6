using PlatformForge.Exports.Files;
using PlatformForge.Exports.Looks;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>
/// How the vehicles of a platform look on its sheets. A vehicle that runs by itself has a colour of its own; the bodies of a set share
/// one, darker towards the leading end, so that a set is seen as one and colours last longer. No two vehicles look the same until
/// eighteen colours are used up.
/// </summary>
internal sealed class VehicleLooks
{
    // How far the first body of a set is from the set's colour to ink, and the last to paper: no farther, or words in it cannot be read.
    private const double Darkest = 0.4, Lightest = 0.1;

    // How far colours that come round again are from those before.
    private const double Round = 0.45;

    // Contrast that words have on paper, and the share towards ink by which they are darkened at a time.
    private const double Readable = 4.5, Darker = 0.1;

    private readonly IReadOnlyList<string> names;
    private readonly IReadOnlyList<string> otherTracks = [];
    private readonly (Rgb Colour, Pattern Pattern)[] looks;

    public VehicleLooks(PlatformDossier platform)
        : this(platform.Plan.Requirement.Vehicles, [.. platform.Envelope.Parts.Select(p => (p.Vehicle.Name, p.Vehicle.SetName)).Distinct()]) =>
        otherTracks = platform.Plan.Requirement.OtherTracks;

    /// <param name="names">Vehicles by their place in the project.</param>
    /// <param name="sets">Names of vehicles with the set each belongs to, if any.</param>
    internal VehicleLooks(IReadOnlyList<string> names, IReadOnlyList<(string Name, string? SetName)> sets)
    {
        this.names = names;
        string[] families = [.. names.Select(n => sets.FirstOrDefault(s => s.Name == n).SetName ?? n)];
        string[] distinct = [.. families.Distinct(StringComparer.Ordinal)];
        looks = [.. names.Select((_, i) =>
        {
            int family = Array.IndexOf(distinct, families[i]), bodies = families.Count(f => f == families[i]),
                body = families.Take(i).Count(f => f == families[i]);
            var (colour, pattern) = HouseStyle.Vehicle(family);
            return (Shade(Shade(colour, ((family / HouseStyle.Kinds % 3) switch { 1 => -1, 2 => 1, _ => 0 }) * Round),
                bodies == 1 ? 0 : ((Darkest + Lightest) * body / (bodies - 1)) - Darkest), pattern);
        })];
    }

    /// <summary>Colour and pattern of a vehicle by its place in the project.</summary>
    public (Rgb Colour, Pattern Pattern) this[int vehicle] => looks.Length == 0 ? HouseStyle.Vehicle(0) : looks[Math.Clamp(vehicle, 0, looks.Length - 1)];

    /// <summary>The same by its name, on the faced track or on another; the first vehicle's for a name that is not known.</summary>
    public (Rgb Colour, Pattern Pattern) Of(string name, string otherTrack = "") =>
        this[Enumerable.Range(0, names.Count).FirstOrDefault(i => names[i] == name && (i < otherTracks.Count ? otherTracks[i] : "") == otherTrack)];

    /// <summary>A colour for words: the colour itself, darkened until it can be read on paper.</summary>
    public static Rgb ForWords(Rgb colour)
    {
        while (Contrast(colour, HouseStyle.Paper) < Readable)
        {
            colour = Shade(colour, -Darker);
        }

        return colour;
    }

    // Ratio of luminances by the Web Content Accessibility Guidelines 2.1, clause 1.4.3, which asks for 4.5 of small words.
    private static double Contrast(Rgb a, Rgb b)
    {
        static double Linear(byte channel) => channel / 255.0 is var c && c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        static double Luminance(Rgb c) => (0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B));
        double first = Luminance(a) + 0.05, second = Luminance(b) + 0.05;
        return Math.Max(first, second) / Math.Min(first, second);
    }

    // Towards ink below nil, towards paper above.
    private static Rgb Shade(Rgb colour, double share)
    {
        var to = share < 0 ? HouseStyle.Ink : HouseStyle.Paper;
        byte Mixed(byte from, byte end) => (byte)Math.Round(from + ((end - from) * Math.Abs(share)));
        return new(Mixed(colour.R, to.R), Mixed(colour.G, to.G), Mixed(colour.B, to.B));
    }
}

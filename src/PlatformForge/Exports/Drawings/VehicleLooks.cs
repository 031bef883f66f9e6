namespace PlatformForge.Exports.Drawings;

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

    private readonly IReadOnlyList<string> names;
    private readonly (Rgb Colour, Pattern Pattern)[] looks;

    public VehicleLooks(PlatformDossier platform)
        : this(platform.Plan.Requirement.Vehicles, [.. platform.Envelope.Parts.Select(p => (p.Vehicle.Name, p.Vehicle.SetName)).Distinct()])
    {
    }

    /// <param name="names">Vehicles by their place in the project.</param>
    /// <param name="sets">Names of vehicles with the set each belongs to, if any.</param>
    internal VehicleLooks(IReadOnlyList<string> names, IReadOnlyList<(string Name, string? SetName)> sets)
    {
        this.names = names;
        string[] families = [.. names.Select(n => sets.FirstOrDefault(s => s.Name == n).SetName ?? n)];
        string[] distinct = [.. families.Distinct(StringComparer.Ordinal)];
        looks = [.. names.Select((_, i) =>
        {
            int family = Array.IndexOf(distinct, families[i]), bodies = families.Count(f => f == families[i]), body = families.Take(i).Count(f => f == families[i]);
            var (colour, pattern) = HouseStyle.Vehicle(family);
            return (Shade(Shade(colour, ((family / HouseStyle.Kinds % 3) switch { 1 => -1, 2 => 1, _ => 0 }) * Round), bodies == 1 ? 0 : ((Darkest + Lightest) * body / (bodies - 1)) - Darkest), pattern);
        })];
    }

    /// <summary>Colour and pattern of a vehicle by its place in the project.</summary>
    public (Rgb Colour, Pattern Pattern) this[int vehicle] => looks.Length == 0 ? HouseStyle.Vehicle(0) : looks[Math.Clamp(vehicle, 0, looks.Length - 1)];

    /// <summary>The same by its name; the first vehicle's for a name that is not known.</summary>
    public (Rgb Colour, Pattern Pattern) Of(string name) => this[names.ToList().IndexOf(name)];

    // Towards ink below nil, towards paper above.
    private static Rgb Shade(Rgb colour, double share)
    {
        var to = share < 0 ? HouseStyle.Ink : HouseStyle.Paper;
        byte Mixed(byte from, byte end) => (byte)Math.Round(from + ((end - from) * Math.Abs(share)));
        return new(Mixed(colour.R, to.R), Mixed(colour.G, to.G), Mixed(colour.B, to.B));
    }
}

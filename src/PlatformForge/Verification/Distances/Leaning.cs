using PlatformForge.Clearance.Vehicles;
using PlatformForge.Geometry;

namespace PlatformForge.Verification.Distances;

/// <summary>
/// A part while its body leans on its springs and the track is canted, tried out: turned about its roll centre and then about rail top, in the cross-section
/// of what carries it,
/// by angles from one end of their ranges to the other. What it tells is a place where the part really comes to.
/// </summary>
internal sealed class Leaning
{
    // Angles tried of each range; an odd number, so that upright is one of them.
    private const int Tries = 17;

    private readonly VehiclePart part;
    private readonly (double Sine, double Cosine, double SineCant, double CosineCant)[] states;
    private readonly double centre;

    public Leaning(VehiclePart part, RunningPlay play)
    {
        this.part = part;
        centre = play.RollCentreHeight;
        double[] rolls = Angles(part.Carrier == PartCarrier.Body ? play.Roll : 0), cants = Angles(play.Cant);
        states = [.. from cant in cants from roll in rolls select (Math.Sin(roll + cant), Math.Cos(roll + cant), Math.Sin(cant), Math.Cos(cant))];
    }

    /// <summary>Whether it leans at all.</summary>
    public bool Leans => states.Length > 1;

    /// <summary>
    /// The part's outline with each side as far out as anything of it between two heights above rail top comes; null when nothing of it comes there.
    /// </summary>
    public Point2[]? Between(double low, double high)
    {
        var ring = new List<Point2>();
        for (int i = 0; i < part.Outline.Count; i++)
        {
            Point2 before = part.Outline[(i + part.Outline.Count - 1) % part.Outline.Count], p = part.Outline[i],
                after = part.Outline[(i + 1) % part.Outline.Count];
            bool left = p.X < before.X || after.X < p.X, right = p.X > before.X || after.X > p.X;

            // A tip is a corner of both sides; the ring runs along its right side first.
            double?[] places = [right ? -Aside(-p.Y, low, high) : null, left ? Aside(p.Y, low, high) : null];
            if ((right && places[0] is null) || (left && places[1] is null))
            {
                return null;
            }

            ring.AddRange((p.X < before.X ? places.Reverse() : places).OfType<double>().Select(y => new Point2(p.X, y)));
        }

        return [.. ring];
    }

    // Farthest to the left that a place y of the left side comes at any of the part's own heights while that lies between two heights above rail top.
    private double? Aside(double y, double low, double high)
    {
        double? most = null;
        foreach (var (sine, cosine, sineCant, cosineCant) in states)
        {
            // Its height is rise + cosine × (z − centre).
            double rise = (y * sine) + (centre * cosineCant);
            double from = Math.Max(part.ZLow, centre + ((low - rise) / cosine)), to = Math.Min(part.ZHigh, centre + ((high - rise) / cosine));
            if (from <= to)
            {
                double at = (y * cosine) - (centre * sineCant), outer = Math.Max(at - ((from - centre) * sine), at - ((to - centre) * sine));
                most = Math.Max(most ?? outer, outer);
            }
        }

        return most;
    }

    private static double[] Angles(double most) => most == 0 ? [0] : [.. Enumerable.Range(0, Tries).Select(i => most * (((2.0 * i) / (Tries - 1)) - 1))];
}

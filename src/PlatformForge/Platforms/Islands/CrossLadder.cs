using PlatformForge.Geometry;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Islands;

/// <summary>One side of a ladder: a track, the side of it on which the platform stands, and about how far away its edge is, mm.</summary>
internal readonly record struct LadderSide(Centreline Chart, Side Side, double Reach)
{
    public Point2 PointAt(double chainage) => Chart.PointAt(chainage, Side.Outward(Reach));
}

/// <summary>
/// Which chainage of a second track lies across from a chainage of a first: where the line that joins both edges leaves both tracks at one angle, so that it
/// is square
/// to the middle between them. On ramps that begin at places of their own on either face it leans over to join them.
/// </summary>
/// <param name="near">The first track.</param>
/// <param name="far">The second track.</param>
/// <param name="pins">Places of the first track, rising, with how far beyond the even place the line across meets the second one, mm; even beyond them.</param>
internal sealed class CrossLadder(LadderSide near, LadderSide far, IReadOnlyList<(double First, double Lean)>? pins = null)
{
    // Newton's rule ends at steps below this, mm, or after so many; a step goes no farther than the longest.
    private const double Grain = Tolerances.LastStep, LongestStep = 200;
    private const int Rounds = 80;

    // What is left of the condition, per mm of width, where a line was found.
    private const double Agreement = Units.Tolerances.Rounding;

    private readonly IReadOnlyList<(double First, double Lean)> pins = pins ?? [];

    /// <summary>The same two tracks, told from the other one; without leaning.</summary>
    public CrossLadder Swapped => new(far, near);

    /// <summary>The chainage across; null where no line across meets the second track.</summary>
    /// <param name="chainage">Chainage of the first track, mm.</param>
    /// <param name="guess">A chainage of the second near it; none takes the foot of the square.</param>
    public double? Across(double chainage, double? guess = null) => Even(chainage, guess) is { } even ? even + Lean(chainage) : null;

    /// <summary>How far the line across leans at a chainage of the first track, mm along the second.</summary>
    private double Lean(double chainage)
    {
        if (pins.Count == 0 || chainage <= pins[0].First || chainage >= pins[^1].First)
        {
            return pins.Count == 0 ? 0 : chainage <= pins[0].First ? pins[0].Lean : pins[^1].Lean;
        }

        int i = 0;
        while (pins[i + 1].First < chainage)
        {
            i++;
        }

        return pins[i].Lean + ((pins[i + 1].Lean - pins[i].Lean) * (chainage - pins[i].First) / (pins[i + 1].First - pins[i].First));
    }

    // (X2(σ) − X1) · (T1 ± T2(σ)) = 0: the join of both edges is square to the bisector of both tracks.
    private double? Even(double chainage, double? guess)
    {
        var one = near.Chart.At(chainage);
        var from = near.PointAt(chainage);
        double at = guess ?? far.Chart.Locate(from).Chainage;
        double turn = Point2.Dot(one.Tangent, far.Chart.At(at).Tangent) < 0 ? -1 : 1;
        for (int round = 0; round < Rounds; round++)
        {
            var two = far.Chart.At(at);
            double offset = far.Side.Outward(far.Reach);
            var join = two.At(offset) - from;
            var along = one.Tangent + (two.Tangent * turn);
            double off = Point2.Dot(join, along);
            double pace = (Point2.Dot(two.Tangent, along) * (1 - (two.Curvature * offset))) + (turn * two.Curvature * Point2.Dot(join, two.Tangent.Left));
            if (pace * turn <= 0)
            {
                return null;
            }

            double step = Math.Clamp(off / pace, -LongestStep, LongestStep);
            at -= step;
            if (Math.Abs(step) < Grain)
            {
                break;
            }
        }

        var found = far.PointAt(at) - from;
        return double.IsFinite(at) && Math.Abs(Point2.Dot(found, one.Tangent + (far.Chart.At(at).Tangent * turn))) < Agreement * (1 + found.Length) ? at : null;
    }
}

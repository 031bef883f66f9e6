using PlatformForge.Track;

namespace PlatformForge.Tests.Clearance.Motion;

/// <summary>
/// A track laid anew for tests from what its elements say, lengths, curvatures and turns at kinks, by summing small steps; nothing of the program's own
/// geometry is used. It goes on straight beyond its ends.
/// </summary>
internal sealed class OwnTrack
{
    private const double Step = 0.5;

    private readonly List<Knot> knots = [];

    public OwnTrack(Centreline line)
    {
        var first = line.Elements[0];
        double x = first.Start.X, y = first.Start.Y, heading = first.Heading, at = 0, endsAt = first.Heading;
        foreach (var element in line.Elements)
        {
            heading += Turn(element.Heading - endsAt);
            int steps = Math.Max(1, (int)Math.Ceiling(element.Length / Step));
            double h = element.Length / steps, change = (element.EndCurvature - element.StartCurvature) / element.Length;
            for (int i = 0; i < steps; i++)
            {
                double bend = element.StartCurvature + (change * i * h);
                knots.Add(new(at + (i * h), x, y, heading, Math.Cos(heading), Math.Sin(heading), bend, change));
                (double dx, double dy) = Advance(h, bend, change);
                (x, y) = (x + (dx * Math.Cos(heading)) - (dy * Math.Sin(heading)), y + (dx * Math.Sin(heading)) + (dy * Math.Cos(heading)));
                heading += (bend * h) + (change * h * h / 2);
            }

            at += element.Length;
            endsAt = element.Heading + ((element.StartCurvature + element.EndCurvature) * element.Length / 2);
        }

        Length = at;
        knots.Add(new(at, x, y, heading, Math.Cos(heading), Math.Sin(heading), 0, 0));
    }

    public double Length { get; }

    /// <summary>Place and direction at a chainage, moved to the left by so much.</summary>
    public Spot At(double chainage, double aside = 0)
    {
        int low = 0, high = knots.Count - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = knots[middle].At <= chainage ? (middle, high) : (low, middle);
        }

        var k = chainage < 0 ? knots[0] with { Bend = 0, Change = 0 } : chainage >= Length ? knots[^1] : knots[low];
        double t = chainage - k.At, turn = (k.Bend * t) + (k.Change * t * t / 2), c = Math.Cos(turn), s = Math.Sin(turn);
        var (dx, dy) = Advance(t, k.Bend, k.Change);
        double fx = (k.Cos * c) - (k.Sin * s), fy = (k.Sin * c) + (k.Cos * s);
        return new(k.X + (dx * k.Cos) - (dy * k.Sin) - (aside * fy), k.Y + (dx * k.Sin) + (dy * k.Cos) + (aside * fx), fx, fy);
    }

    // Along and across after a short step of linear curvature.
    private static (double Along, double Across) Advance(double t, double bend, double change)
    {
        double turn = bend * t;
        return (t * (1 - (turn * turn / 6) - (turn * change * t * t / 8)), t * ((turn / 2) + (change * t * t / 6) - (turn * turn * turn / 24)));
    }

    private static double Turn(double angle) => Math.IEEERemainder(angle, 2 * Math.PI);

    private sealed record Knot(double At, double X, double Y, double Heading, double Cos, double Sin, double Bend, double Change);
}

/// <summary>A place in plan and the direction along it.</summary>
internal readonly record struct Spot(double X, double Y, double Fx, double Fy);

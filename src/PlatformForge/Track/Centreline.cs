using PlatformForge.Geometry;
using PlatformForge.Units;

namespace PlatformForge.Track;

/// <summary>
/// The middle line of a track as a chain of elements, told by chainage in mm from its start. Beyond both ends it goes
/// on straight, so that places near an end still have a chainage and an offset.
/// </summary>
public sealed class Centreline
{
    /// <summary>A change of heading at a joint above this, in radians, is a kink rather than rounding.</summary>
    public const double KinkTurn = 1e-7;

    private readonly CentrelineElement[] elements;
    private readonly double[] starts;

    /// <param name="name">Name of the track.</param>
    /// <param name="elements">Elements end to end; at least one.</param>
    public Centreline(string name, IReadOnlyList<CentrelineElement> elements)
    {
        ArgumentOutOfRangeException.ThrowIfZero(elements.Count);
        Name = name;
        this.elements = [.. elements];
        starts = new double[elements.Count + 1];
        var kinks = new List<Kink>();
        for (int i = 0; i < elements.Count; i++)
        {
            starts[i + 1] = starts[i] + elements[i].Length;
            if (i > 0)
            {
                double turn = Math.IEEERemainder(elements[i].Heading - elements[i - 1].HeadingAt(elements[i - 1].Length), 2 * Math.PI);
                if (Math.Abs(turn) > KinkTurn)
                {
                    kinks.Add(new(starts[i], turn));
                }
            }
        }

        Kinks = kinks;
    }

    public string Name { get; }

    /// <summary>Length in mm.</summary>
    public double Length => starts[^1];

    public IReadOnlyList<CentrelineElement> Elements => elements;

    /// <summary>Joints with a sudden change of direction, in order of chainage.</summary>
    public IReadOnlyList<Kink> Kinks { get; }

    /// <summary>Chainage in mm at which element <paramref name="index"/> begins.</summary>
    public double StartOf(int index) => starts[index];

    /// <summary>Index of the element that holds a chainage; at a joint, the later one.</summary>
    public int ElementAt(double chainage)
    {
        int low = 0, high = elements.Length - 1;
        while (low < high)
        {
            int middle = (low + high + 1) >> 1;
            if (starts[middle] <= chainage)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return low;
    }

    /// <summary>Frame at a chainage in mm. Outside 0…<see cref="Length"/> the track is continued straight.</summary>
    public TrackFrame At(double chainage)
    {
        if (chainage < 0)
        {
            var first = elements[0].At(0);
            return new(first.Position + (first.Tangent * chainage), first.Tangent, 0);
        }

        if (chainage > Length)
        {
            var last = elements[^1].At(elements[^1].Length);
            return new(last.Position + (last.Tangent * (chainage - Length)), last.Tangent, 0);
        }

        int i = ElementAt(chainage);
        return elements[i].At(chainage - starts[i]);
    }

    /// <summary>The point in plan at a chainage and an offset, mm, left positive.</summary>
    public Point2 PointAt(double chainage, double offset = 0) => At(chainage).At(offset);

    /// <summary>
    /// Chainage and offset of a point: the foot of the square from the point to the centreline nearest to a first guess.
    /// Newton's rule on the condition that the join be square to the track.
    /// </summary>
    /// <param name="point">A point nearer to the track than its centre of curvature.</param>
    /// <param name="guess">A chainage near the foot, mm.</param>
    public TrackPlace Locate(Point2 point, double guess)
    {
        double s = guess;
        for (int round = 0; ; round++)
        {
            var frame = At(s);
            var join = point - frame.Position;
            double along = Point2.Dot(join, frame.Tangent), offset = Point2.Cross(frame.Tangent, join);
            double slope = Math.Max(0.2, 1 - (frame.Curvature * offset)); // guards against the centre of curvature
            double step = along / slope;
            if (Math.Abs(step) < Tolerances.LastStep || round == 40)
            {
                return new(s + step, offset);
            }

            s += step;
        }
    }

    /// <summary>Chainage and offset of a point from no guess: the nearest of samples along the track is refined.</summary>
    public TrackPlace Locate(Point2 point)
    {
        int steps = Math.Max(2, (int)Math.Ceiling(Length / 20));
        double best = 0, bestDistance = double.PositiveInfinity;
        for (int i = 0; i <= steps; i++)
        {
            double s = Length * i / steps, distance = (At(s).Position - point).Length;
            if (distance < bestDistance)
            {
                (best, bestDistance) = (s, distance);
            }
        }

        // Beside a bend sharper than the point is near, Newton's rule may leap to anywhere: then the foot is closed in on about the best sample.
        double apart = Length / steps;
        var found = Locate(point, best);
        bool strays = (best >= apart && found.Chainage < best - (2 * apart)) || (best <= Length - apart && found.Chainage > best + (2 * apart))
            || Math.Abs(found.Offset) > bestDistance + Tolerances.Rounding;
        return strays ? Nearest(point, best - apart, best + apart) : found;
    }

    // Thirds of a stretch of track are cut off until a foot is known to less than rounding.
    private TrackPlace Nearest(Point2 point, double low, double high)
    {
        double Squared(double s) => Point2.Dot(At(s).Position - point, At(s).Position - point);
        while (high - low > Tolerances.Rounding)
        {
            double third = (high - low) / 3;
            (low, high) = Squared(low + third) <= Squared(high - third) ? (low, high - third) : (low + third, high);
        }

        var frame = At((low + high) / 2);
        return new((low + high) / 2, Point2.Cross(frame.Tangent, point - frame.Position));
    }
}

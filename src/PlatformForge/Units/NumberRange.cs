using static System.FormattableString;

namespace PlatformForge.Units;

/// <summary>Bounds of a number. Not a number and infinities are outside every range.</summary>
/// <param name="Least">Least value.</param>
/// <param name="Most">Greatest value, always allowed.</param>
/// <param name="Open">Whether the least value itself is not allowed.</param>
/// <param name="OrNone">Whether 0, below the least value, is taken too: there is then no such thing.</param>
public readonly record struct NumberRange(double Least, double Most, bool Open = false, bool OrNone = false)
{
    /// <summary>A distance along any track that is taken, mm.</summary>
    public static NumberRange Chainage => new(0, 1e6);

    /// <summary>A distance along a track, told before its start too, mm: what lies off the track has a rule of its own, which knows where the track
    /// is.</summary>
    public static NumberRange Anywhere => new(-Chainage.Most, Chainage.Most);

    /// <summary>Least of what has to be above 0: what is smaller can be neither laid nor printed, and makes endless sums of small steps.</summary>
    public const double Smallest = 0.01;

    /// <summary>Above 0 by no less than <see cref="Smallest"/>, up to a greatest value.</summary>
    public static NumberRange Over0(double most) => new(Smallest, most);

    /// <summary>From a least value to a greatest.</summary>
    public static NumberRange From(double least, double most) => new(least, most);

    /// <summary>0 for none, or from a least value to a greatest.</summary>
    public static NumberRange NoneOr(double least, double most) => new(least, most, OrNone: true);

    /// <summary>The lowest value that is taken.</summary>
    public double Lowest => OrNone ? Math.Min(0, Least) : Least;

    public bool Holds(double value) => (value <= Most && (Open ? value > Least : value >= Least)) || (OrNone && value == 0);

    /// <summary>The value of the range that is nearest; a little above a least value that is not itself allowed.</summary>
    public double Nearest(double value) =>
        OrNone && value < Least / 2 ? 0
        : Open && value <= Least ? Math.Min(Most, Least + Above)
        : Math.Clamp(value, Least, Most);

    // No length or angle of a model is told finer.
    private const double Above = 0.1;

    public string InWords(string unit)
    {
        string tail = unit.Length == 0 ? "" : " " + unit;
        return OrNone ? Invariant($"0, or from {Least} to {Most}{tail}")
            : Open ? Invariant($"above {Least} and at most {Most}{tail}")
            : Invariant($"from {Least} to {Most}{tail}");
    }
}

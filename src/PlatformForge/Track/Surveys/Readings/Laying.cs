using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Readings;

/// <summary>How a track was laid, and so what it can do between two readings.</summary>
public enum LaidAs
{
    /// <summary>Not said: sprung track or pieces.</summary>
    Unknown,

    /// <summary>Flexible track, sprung into its curves: no kinks, and a curve comes and goes over a length.</summary>
    Flexible,

    /// <summary>Pieces of fixed radius, with a change of curvature or a kink at any joint.</summary>
    Sectional,
}

/// <summary>What is known of a track beside its readings.</summary>
/// <param name="As">How it was laid.</param>
/// <param name="LeastRadius">Least radius anywhere, mm.</param>
/// <param name="LeastEase">Least length in mm over which a curve of the least radius comes or goes; gentler curves come and go at the same rate.</param>
public sealed record Laying(LaidAs As, double LeastRadius, double LeastEase)
{
    // Greatest kink in degrees that a joint of pieces is taken to have (common practice, no source).
    private const double Kink = 2;

    /// <summary>Radii of the pieces that sectional track was made of, mm, beside straights; none where they are not said: then any from
    /// the least radius up.</summary>
    public IReadOnlyList<double> Radii { get; init; } = [];

    /// <summary>Greatest change of direction at a joint of sectional track, radians.</summary>
    public double GreatestKink { get; init; } = Kink * Math.PI / 180;

    /// <summary>Where sectional track has its joints, in mm as the readings are told: along the string, or along the track from the
    /// first point; none where they are not said.</summary>
    public IReadOnlyList<double> Joints { get; init; } = [];

    // Common practice in 4 mm scale, no source: hidden track may go down to R 380, and a springy rail takes 200 mm to come into that.
    private const double Radius = 380, InEase = 200, OfRatio = 76.2;

    /// <summary>What is usual in a scale (common practice, no source): the figures of 4 mm scale, in proportion.</summary>
    /// <param name="ratio">Full-size length over model length.</param>
    /// <param name="laid">How it was laid.</param>
    public static Laying Usual(double ratio, LaidAs laid = LaidAs.Unknown) =>
        new(laid, Math.Round(Radius * OfRatio / ratio), Math.Round(InEase * OfRatio / ratio));

    /// <summary>What is usual in 4 mm scale, where nobody has said how the track was laid.</summary>
    public static Laying UsualInFourMillimetres { get; } = Usual(OfRatio);

    /// <summary>Sharpest curvature, 1/mm.</summary>
    public double Curvature => 1 / LeastRadius;

    /// <summary>Greatest change of curvature along the track, 1/mm².</summary>
    public double Rate => Curvature / Ease;

    // A curve that comes over less than this part of its radius is taken to come over so much: nodes are told by it, and lines that bend at once would need
    // them without end.
    private const double Shortest = 1 / 60.0;

    /// <summary>Length over which a curve of the least radius is taken to come or go at least, mm.</summary>
    public double Ease => Math.Max(LeastEase, Shortest * LeastRadius);

    /// <summary>How far a line that bends more suddenly lies from one that does not, mm, which readings are allowed beside their own error: its curvature
    /// smoothed over twice the ease moves it by
    /// a twenty-fourth of the square of that, times the curvature.</summary>
    public double Smoothed => LeastEase < Ease ? Curvature * 4 * Ease * Ease / 24 : 0;

    /// <summary>Least radius and least ease that are usual in the scale, where others were stated, mm.</summary>
    public (double Radius, double Ease)? InScale { get; init; }

    /// <summary>The same with what is usual in the scale allowed as well; null where that is no more.</summary>
    internal Laying? Widened => InScale is { } usual && (usual.Radius < LeastRadius || Curvature / LeastEase < 1 / usual.Radius / usual.Ease)
        ? this with { LeastRadius = Math.Min(LeastRadius, usual.Radius), LeastEase = Math.Min(LeastEase, usual.Ease) } : null;

    /// <summary>In words, for the report.</summary>
    public string Words => Invariant($"no kinks, no curve under R {LeastRadius:0.#}, none that comes or goes over less than {LeastEase:0.#} mm for that ")
        + "radius";
}

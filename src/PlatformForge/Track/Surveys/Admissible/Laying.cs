using static System.FormattableString;

namespace PlatformForge.Track.Surveys.Admissible;

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
    private const double Radius = 380, Ease = 200, OfRatio = 76.2;

    /// <summary>What is usual in a scale (common practice, no source): the figures of 4 mm scale, in proportion.</summary>
    /// <param name="ratio">Full-size length over model length.</param>
    /// <param name="laid">How it was laid.</param>
    public static Laying Usual(double ratio, LaidAs laid = LaidAs.Unknown) => new(laid, Math.Round(Radius * OfRatio / ratio), Math.Round(Ease * OfRatio / ratio));

    /// <summary>What is usual in 4 mm scale, where nobody has said how the track was laid.</summary>
    public static Laying UsualInFourMillimetres { get; } = Usual(OfRatio);

    /// <summary>Sharpest curvature, 1/mm.</summary>
    public double Curvature => 1 / LeastRadius;

    /// <summary>Greatest change of curvature along the track, 1/mm².</summary>
    public double Rate => Curvature / LeastEase;

    /// <summary>In words, for the report.</summary>
    public string Words => Invariant($"no kinks, no curve under R {LeastRadius:0.#}, none that comes or goes over less than {LeastEase:0.#} mm for that radius");
}

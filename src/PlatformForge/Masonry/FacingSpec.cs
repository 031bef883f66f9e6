using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Masonry;

/// <summary>What a platform's walls are faced with. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record FacingSpec
{
    // A joint narrower or shallower than this, mm, is lost between two lines of a nozzle of 0.4: common practice, no source.
    private const double LeastShown = 0.25;

    // Deepest that joints are made unasked, mm: bricks then stand out by no more than a line of a nozzle of 0.4, under a ramp that is printed on its
    // slope of 1 in 8 too, and no underside hangs free.
    private const double DeepestUnasked = 0.35;

    // Depth of a joint that reads as one, mm in full size: raked joints stand back about so far; common practice, no source.
    private const double RakedJoint = 20;

    /// <summary>Under the coping, on every face.</summary>
    public WallFinish Front { get; init; } = WallFinish.Brick;

    /// <summary>The back.</summary>
    public WallFinish Back { get; init; } = WallFinish.Brick;

    /// <summary>The walls at both ends, those under the feet of ramps among them.</summary>
    public WallFinish Ends { get; init; } = WallFinish.Brick;

    public Bond Bond { get; init; } = Bond.English;

    public BrickGauge Gauge { get; init; } = BrickGauge.Metric;

    /// <summary>Courses of stretchers to one of headers in English garden wall bond: odd, so that the courses beside the headers begin alike.</summary>
    public int StretcherCourses { get; init; } = 3;

    /// <summary>Width of the joints. Default 0.25: 10 mm at scale (BS EN 771 coordinating sizes), but no less than shows in print.</summary>
    public double Joint { get; init; } = LeastShown;

    /// <summary>How far the joints stand back behind the bricks. Default 0.26.</summary>
    public double Depth { get; init; } = RakedJoint / 76.2;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<FacingSpec> Keys { get; } = new SpecKeys<FacingSpec>(For)
        .Choice("front", "Face of the walls under the coping.", f => f.Front, (f, v) => f with { Front = v }, Finishes)
        .Choice("back", "Face of the back wall.", f => f.Back, (f, v) => f with { Back = v }, Finishes)
        .Choice("ends", "Face of the walls at both ends.", f => f.Ends, (f, v) => f with { Ends = v }, Finishes)
        .Choice("bond", "How bricks lie over one another.", f => f.Bond, (f, v) => f with { Bond = v }, Bonds)
        .Choice("gauge", "Size of the bricks: metric, four courses to 300 mm, or imperial, four to a foot.", f => f.Gauge, (f, v) =>
            f with { Gauge = v }, Gauges)
        .Number(
            "stretcher_courses",
            NumberRange.From(1, 9),
            "",
            "Courses of stretchers to one of headers in English garden wall bond; an odd number.",
            f => f.StretcherCourses,
            (f, v) => f with { StretcherCourses = (int)v },
            whole: true)
        .Length("joint", NumberRange.From(0.05, 20), "Width of the joints.", f => f.Joint, (f, v) => f with { Joint = v })
        .Length("depth", NumberRange.From(0.05, 20), "How far the joints stand back behind the bricks, which stand where the smooth wall would.", f =>
            f.Depth, (f, v) => f with { Depth = v })
        .Check(OddCourses);

    private static IReadOnlyList<(string Name, WallFinish Value)> Finishes => [("brick", WallFinish.Brick), ("plain", WallFinish.Plain)];

    private static IReadOnlyList<(string Name, Bond Value)> Bonds =>
        [("english", Bond.English), ("flemish", Bond.Flemish), ("stretcher", Bond.Stretcher), ("english-garden-wall", Bond.EnglishGardenWall)];

    private static IReadOnlyList<(string Name, BrickGauge Value)> Gauges => [("metric", BrickGauge.Metric), ("imperial", BrickGauge.Imperial)];

    /// <summary>The defaults for a scale: joints scale as long as they show in print, and their depth as long as bricks need no supports.</summary>
    public static FacingSpec For(ModelScale scale) => new()
    {
        Joint = Math.Max(LeastShown, scale.ToModel(10)),
        Depth = Math.Clamp(scale.ToModel(RakedJoint), LeastShown, DeepestUnasked),
    };

    /// <summary>The name of a bond in the project file, in words for people too.</summary>
    public static string Name(Bond bond) => Bonds.First(b => b.Value == bond).Name;

    private static SpecFault? OddCourses(FacingSpec spec, string key) => spec.StretcherCourses % 2 == 1 ? null : new(
        "stretcher_courses",
        FormattableString.Invariant($"{spec.StretcherCourses} courses of stretchers lie between two of headers: the last one's joints would stand over those of the headers."),
        FormattableString.Invariant($"Give an odd number: {spec.StretcherCourses - 1} or {spec.StretcherCourses + 1}."),
        Cure.Set($"{key}.stretcher_courses", spec.StretcherCourses + 1));
}

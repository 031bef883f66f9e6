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

    /// <summary>Height of the highest courses of squared stone as a share of the mean one.</summary>
    public const double HighestStone = 1.25;

    private readonly WallFinish? back, ends;
    private readonly double? depth, stoneCourse, stoneLength, rubbleSize, plankWidth, sleeperWidth, panelHeight;

    /// <summary>Under the coping, on every face.</summary>
    public WallFinish Front { get; init; } = WallFinish.Brick;

    /// <summary>The back; as the front unless stated.</summary>
    public WallFinish Back
    {
        get => HasBack ? back ?? Front : WallFinish.Plain;
        init => back = value;
    }

    /// <summary>Whether there is a back wall: behind a bank, or against a backscene, there is none, and nothing is laid on it.</summary>
    public bool HasBack { get; init; } = true;

    /// <summary>What is stated for the back; null where nothing is.</summary>
    public WallFinish? StatedBack => back;

    /// <summary>Whether the back is stated.</summary>
    public bool StatesBack => back is not null;

    /// <summary>The walls at both ends, those under the feet of ramps among them; as the front unless stated.</summary>
    public WallFinish Ends
    {
        get => ends ?? Front;
        init => ends = value;
    }

    public Bond Bond { get; init; } = Bond.English;

    public BrickGauge Gauge { get; init; } = BrickGauge.Metric;

    /// <summary>Courses of stretchers to one of headers in English garden wall bond: odd, so that the courses beside the headers begin alike.</summary>
    public int StretcherCourses { get; init; } = 3;

    /// <summary>Width of the joints. Default 0.25: 10 mm at scale (BS EN 771 coordinating sizes), but no less than shows in print.</summary>
    public double Joint { get; init; } = LeastShown;

    /// <summary>How far the joints stand back behind the bricks. Default 0.26.</summary>
    public double Depth
    {
        get => depth ?? UnaskedDepth;
        init => depth = value;
    }

    /// <summary>How far they stand back where that is not stated, mm.</summary>
    public double UnaskedDepth { get; init; } = RakedJoint / 76.2;

    /// <summary>Mean height of a course of squared stone with its bed. Default 2.95 (225 mm: common practice, no source), and less where the highest would be
    /// higher than a wall.</summary>
    public double StoneCourse
    {
        get => stoneCourse ?? Math.Min(225 / Ratio, MostPiece / HighestStone);
        init => stoneCourse = value;
    }

    /// <summary>Mean length of a squared stone. Default 5.9 (450 mm, twice its height: common practice, no source), and twice a course that is higher than
    /// that makes it.</summary>
    public double StoneLength
    {
        get => stoneLength ?? Math.Min(MostSize, Math.Max(450 / Ratio, 2 * StoneCourse));
        init => stoneLength = value;
    }

    /// <summary>Mean height of a stone of random rubble. Default 3.67 (280 mm: common practice, no source), and no more than a wall is high.</summary>
    public double RubbleSize
    {
        get => rubbleSize ?? Math.Min(280 / Ratio, MostPiece);
        init => rubbleSize = value;
    }

    /// <summary>Which of all walls of stone or rubble it is: the same number, the same stones.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Width of a plank with its gap. Default 2.31 (176 mm, 7 in and a gap: common practice, no source), and no more than a wall is high that has
    /// them level.</summary>
    public double PlankWidth
    {
        get => plankWidth ?? Math.Min(176 / Ratio, Lays(WallFinish.Planks) ? MostPiece : double.PositiveInfinity);
        init => plankWidth = value;
    }

    /// <summary>Length of a plank laid level. Default 48 (12 ft: common practice, no source).</summary>
    public double PlankLength { get; init; } = 12 * Foot / 76.2;

    /// <summary>Width of a sleeper, which stands on edge. Default 3.33 (10 in, from memory, no source), and no more than a wall is high.</summary>
    public double SleeperWidth
    {
        get => sleeperWidth ?? Math.Min(10 * Inch / Ratio, MostPiece);
        init => sleeperWidth = value;
    }

    /// <summary>Length of a sleeper. Default 34 (8 ft 6 in, from memory, no source).</summary>
    public double SleeperLength { get; init; } = 8.5 * Foot / 76.2;

    /// <summary>From post to post of precast walls. Default 24 (6 ft: common practice, no source).</summary>
    public double Bay { get; init; } = 6 * Foot / 76.2;

    /// <summary>Width of such a post. Default 2 (6 in: common practice, no source).</summary>
    public double PostWidth { get; init; } = 6 * Inch / 76.2;

    /// <summary>Height of a panel with its joint. Default 4 (1 ft: common practice, no source), and no more than a wall is high.</summary>
    public double PanelHeight
    {
        get => panelHeight ?? Math.Min(Foot / Ratio, MostPiece);
        init => panelHeight = value;
    }

    /// <summary>Full size over model size, for what is not stated.</summary>
    public double Ratio { get; init; } = 76.2;

    /// <summary>Nothing that is laid in courses is higher unasked, mm: the room of the lowest wall that has it.</summary>
    public double MostPiece { get; init; } = double.PositiveInfinity;

    /// <summary>Piers in the walls; null leaves them flat.</summary>
    public PierSpec? Piers { get; init; }

    /// <summary>Downpipes before the walls; null for none.</summary>
    public DownpipeSpec? Downpipes { get; init; }

    /// <summary>A plinth at the foot of all walls; null for none.</summary>
    public PlinthSpec? Plinth { get; init; }

    /// <summary>Corbelled courses under the coping of all walls; null for none.</summary>
    public CorbelSpec? Corbel { get; init; }

    /// <summary>How far the walls lean back from their foot to what is under the coping, mm; nothing for upright ones.</summary>
    public double Batter { get; init; }

    /// <summary>How far the deepest part of a wall lies behind its parts that stand out most, mm.</summary>
    public double ProfileDepth => Math.Max(FootOut, Corbel?.Out ?? 0);

    // How far the foot stands before the deepest part, mm.
    private double FootOut => (Plinth?.Projection ?? 0) + Batter + (Piers?.Height is null ? 0 : WallProfile.Hair);

    /// <summary>Whether its face is not one plane, piers left aside.</summary>
    public bool IsProfiled => Plinth is not null || Corbel is not null || Batter > 0;

    /// <summary>How far the foot of a wall lies behind the face that is held against vehicles, mm, piers left aside.</summary>
    public double FootBack => ProfileDepth - FootOut;

    /// <summary>Openings in the walls, one entry a kind and wall.</summary>
    public IReadOnlyList<OpeningSpec> Openings { get; init; } = [];

    /// <summary>How far a wall is set back behind the face that is held against vehicles, mm, so that what stands before it stands at that face.</summary>
    /// <param name="isBack">The back, where no second face is.</param>
    public double SetBack(bool isBack) => isBack && !HasBack ? 0
        : ProfileDepth + Math.Max(
            Piers is { } piers && piers.Has(isBack) ? piers.Projection : 0, Downpipes is { } pipes && pipes.Has(isBack) ? pipes.Projection : 0);

    /// <summary>How far the ground of the walls at both ends lies behind the platform's ends, mm.</summary>
    public double EndsBack => ProfileDepth + (Ends == WallFinish.Plain ? 0 : Depth);

    /// <summary>How far what is laid on a wall stands out of its ground, mm: the depth of joints; nothing on a smooth wall.</summary>
    /// <param name="isBack">The back, where no second face is.</param>
    public double FaceDepth(bool isBack) => (isBack ? Back : Front) == WallFinish.Plain ? 0 : Depth;

    /// <summary>How deep what is cut into a wall goes unasked, mm: joints, or recesses whose depth is not stated.</summary>
    /// <param name="isBack">The back, where no second face is.</param>
    public double CutInto(bool isBack) => Openings.Where(o => o.IsBack == isBack).Select(o => o.Cut).Append(FaceDepth(isBack)).Max();

    private bool Lays(WallFinish finish) => Front == finish || Back == finish || Ends == finish;

    /// <summary>The same of the walls at both ends, mm.</summary>
    public double CutIntoEnds => Ends == WallFinish.Plain ? 0 : Depth;

    private const double Inch = 25.4, Foot = 304.8;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<FacingSpec> Keys { get; } = new SpecKeys<FacingSpec>(For)
        .Choice("front", "Face of the walls under the coping.", f => f.Front, (f, v) => f with { Front = v }, Finishes)
        .Choice("back", "Face of the back wall; left out, as the front.", f => f.Back, (f, v) => f with { Back = v }, Finishes)
        .Choice("ends", "Face of the walls at both ends; left out, as the front.", f => f.Ends, (f, v) => f with { Ends = v }, Finishes)
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
        .Length("stone_course", Sizes, "Mean height of a course of squared stone.", f => f.StoneCourse, (f, v) => f with { StoneCourse = v })
        .Length("stone_length", Sizes, "Mean length of a squared stone.", f => f.StoneLength, (f, v) => f with { StoneLength = v })
        .Length("rubble_size", Sizes, "Mean height of a stone of random rubble.", f => f.RubbleSize, (f, v) => f with { RubbleSize = v })
        .Number("seed", NumberRange.From(0, 9999), "", "Which of all walls of stone or rubble it is: the same number, the same stones.", f => f.Seed,
            (f, v) => f with { Seed = (int)v }, whole: true)
        .Length("plank_width", Sizes, "Width of a plank with its gap.", f => f.PlankWidth, (f, v) => f with { PlankWidth = v })
        .Length("plank_length", Sizes, "Length of a plank laid level.", f => f.PlankLength, (f, v) => f with { PlankLength = v })
        .Length("sleeper_width", Sizes, "Width of a sleeper, which stands on edge.", f => f.SleeperWidth, (f, v) => f with { SleeperWidth = v })
        .Length("sleeper_length", Sizes, "Length of a sleeper.", f => f.SleeperLength, (f, v) => f with { SleeperLength = v })
        .Length("bay", Sizes, "From post to post of precast walls.", f => f.Bay, (f, v) => f with { Bay = v })
        .Length("post_width", Sizes, "Width of a post of precast walls.", f => f.PostWidth, (f, v) => f with { PostWidth = v })
        .Length("panel_height", Sizes, "Height of a precast panel with its joint.", f => f.PanelHeight, (f, v) => f with { PanelHeight = v })
        .Length("joint", NumberRange.From(0.05, 20), "Width of the joints.", f => f.Joint, (f, v) => f with { Joint = v })
        .Length("depth", NumberRange.From(0.05, 20),
            "How far the joints stand back behind the bricks, which stand where the smooth wall would; the rebate of \"sheet\".", f =>
            f.Depth, (f, v) => f with { Depth = v })
        .Table("piers", "Piers in the walls; left out, there are none.", PierSpec.Keys, f => f.Piers, (f, v) => f with { Piers = v })
        .Table("downpipes", "Downpipes before the walls; left out, there are none.", DownpipeSpec.Keys, f => f.Downpipes, (f, v) => f with { Downpipes = v })
        .Table("plinth", "A plinth: the foot of the walls stands out; left out, there is "
            + "none.", PlinthSpec.Keys, f => f.Plinth, (f, v) => f with { Plinth = v })
        .Table("corbel", "Corbelled courses under the coping; left out, there are none.", CorbelSpec.Keys, f => f.Corbel, (f, v) => f with { Corbel = v })
        .Length("batter", NumberRange.From(0, 50), "How far the walls lean back from foot to coping, a little each course; 0 for upright "
            + "ones.", f => f.Batter, (f, v) =>
            f with { Batter = v })
        .Tables("opening", "Openings in the walls: refuges, openings for cables, weep holes.", OpeningSpec.Keys, f => f.Openings, (f, v) =>
            f with { Openings = v })
        .Check(OddCourses);

    // Largest size that a key takes, mm.
    private const double MostSize = 500;

    private static NumberRange Sizes => NumberRange.From(0.2, MostSize);

    private static (string Name, WallFinish Value)[] Finishes =>
    [
        ("brick", WallFinish.Brick), ("stone", WallFinish.Stone), ("rubble", WallFinish.Rubble), ("planks", WallFinish.Planks),
        ("upright-planks", WallFinish.UprightPlanks), ("sleepers", WallFinish.Sleepers), ("panels", WallFinish.Panels), ("sheet", WallFinish.Sheet),
        ("plain", WallFinish.Plain),
    ];

    private static (string Name, Bond Value)[] Bonds =>
        [("english", Bond.English), ("flemish", Bond.Flemish), ("stretcher", Bond.Stretcher), ("english-garden-wall", Bond.EnglishGardenWall)];

    private static (string Name, BrickGauge Value)[] Gauges => [("metric", BrickGauge.Metric), ("imperial", BrickGauge.Imperial)];

    /// <summary>The defaults for a scale: joints scale as long as they show in print, and their depth as long as bricks need no supports.</summary>
    public static FacingSpec For(ModelScale scale) => new()
    {
        Ratio = scale.Ratio,
        PlankLength = scale.ToModel(12 * Foot),
        SleeperLength = scale.ToModel(8.5 * Foot),
        Bay = scale.ToModel(6 * Foot),
        PostWidth = scale.ToModel(6 * Inch),
        Joint = Math.Max(LeastShown, scale.ToModel(10)),
        UnaskedDepth = Math.Clamp(scale.ToModel(RakedJoint), LeastShown, DeepestUnasked),
    };

    /// <summary>The facing for a nozzle: what is not stated yields to it. Joints are no deeper than a line, so that no underside of a brick hangs free; a
    /// plinth steps back by no more; recesses leave two lines of their wall; openings, piers and downpipes are as large as shows.</summary>
    /// <param name="nozzle">Width of a line, mm.</param>
    /// <param name="front">Thickness of the front wall, mm.</param>
    /// <param name="far">Thickness of the wall at the back, mm.</param>
    public FacingSpec Printed(double nozzle, double front, double far)
    {
        var held = this with { UnaskedDepth = Math.Min(UnaskedDepth, nozzle), Plinth = Plinth?.Printed(nozzle) };
        double lines = PrintedLines.Two(nozzle);
        return held with
        {
            Piers = Piers?.Printed(nozzle, held.Depth),
            Downpipes = Downpipes?.Printed(nozzle),
            Openings = [.. Openings.Select(o => o.Printed((o.IsBack ? far : front) - (2 * nozzle), held.Depth) with { LeastSize = lines })],
        };
    }

    /// <summary>Key of what makes a part of the walls' height stand out, in the words of the facing's keys.</summary>
    public string ProfileKey => Plinth is not null ? "plinth" : Corbel is not null ? "corbel" : Batter > 0 ? "batter" : "piers.height";

    /// <summary>The same on walls that stand upright, without what their profile has beside plinth and corbelled courses.</summary>
    public FacingSpec Upright => this with { Batter = 0, Piers = null };

    /// <summary>The name of a finish in the project file.</summary>
    public static string Name(WallFinish finish) => Finishes.First(f => f.Value == finish).Name;

    /// <summary>The name of a bond in the project file, in words for people too.</summary>
    public static string Name(Bond bond) => Bonds.First(b => b.Value == bond).Name;

    private static SpecFault? OddCourses(FacingSpec spec, string key) => spec.StretcherCourses % 2 == 1 ? null : new(
        "stretcher_courses",
        FormattableString.Invariant($"{spec.StretcherCourses} courses of stretchers lie between two of headers: the last one's joints would stand over those ")
            + "of the headers.",
        FormattableString.Invariant($"Give an odd number: {spec.StretcherCourses - 1} or {spec.StretcherCourses + 1}."),
        Cure.Set($"{key}.stretcher_courses", spec.StretcherCourses + 1));
}

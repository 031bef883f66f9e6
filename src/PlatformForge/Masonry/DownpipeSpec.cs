using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Masonry;

/// <summary>Downpipes before a platform's walls, each with its hopper head, clips and shoe: what of them stands out most stands where the smooth wall would,
/// and the walls behind are set back. Lengths in mm of the model; the defaults are for 4 mm scale.</summary>
public sealed record DownpipeSpec
{
    // Sizes in full size, mm. A pipe of 100 is one of BS 460 (cast iron rainwater goods: 65, 75, 100 and 150; from memory). Half a brick before the
    // wall, clips 15 round the pipe, 60 high and 6 ft apart at most: common practice, no source.
    private const double FullDiameter = 100, FullProjection = 112.5, FullClip = 15, FullClipHeight = 60, FullPitch = 1828.8;

    // Two lines of a nozzle of 0.4, which show as a pipe; what stands out less than the second is lost between two lines; three layers of 0.2: common
    // practice, no source.
    private const double LeastDiameter = 0.8, LeastClip = 0.25, LeastClipHeight = 0.6;

    private readonly double? diameter, projection, clip;

    // A hopper head is so many diameters wide and high: common practice, no source.
    private const double HopperWidth = 2, HopperHeight = 1.5;

    /// <summary>Which walls have them.</summary>
    public PierWalls On { get; init; } = PierWalls.Back;

    /// <summary>Chainages of further ones, mm.</summary>
    public IReadOnlyList<double> At { get; init; } = [];

    /// <summary>What they do at a joint between sections.</summary>
    public PierJoints Joints { get; init; } = PierJoints.Beside;

    /// <summary>Outline of a pipe.</summary>
    public PipeShape Shape { get; init; } = PipeShape.Round;

    /// <summary>Diameter of a pipe, or its width where it is square. Default 1.31 (100 mm, a size of BS 460).</summary>
    public double Diameter
    {
        get => diameter ?? Math.Max(LeastPipe, FullDiameter / Ratio);
        init => diameter = value;
    }

    /// <summary>No pipe is thinner unasked, mm.</summary>
    public double LeastPipe { get; init; } = LeastDiameter;

    /// <summary>How far hopper heads, clips and shoes stand before the wall. Default 1.48 (half a brick, as piers do: common practice, no source).</summary>
    public double Projection
    {
        get => projection ?? Math.Max(FullProjection / Ratio, LeastProjection);
        init => projection = value;
    }

    /// <summary>Full size over model size, for what is not stated.</summary>
    public double Ratio { get; init; } = 76.2;

    /// <summary>How far clips, and shoes, stand out round their pipe. Default 0.25 (15 mm, but no less than shows in print: common practice, no
    /// source).</summary>
    public double Clip
    {
        get => clip ?? Math.Min(MostClip, Math.Max(LeastClip, FullClip / Ratio));
        init => clip = value;
    }

    /// <summary>No clip stands out farther unasked, mm: a line of the nozzle, which holds itself.</summary>
    public double MostClip { get; init; } = double.PositiveInfinity;

    /// <summary>Height of a clip. Default 0.79 (60 mm, three layers at least: common practice, no source).</summary>
    public double ClipHeight { get; init; } = FullClipHeight / 76.2;

    /// <summary>Greatest distance between clips. Default 24 (6 ft, the length of a cast pipe: common practice, no source).</summary>
    public double ClipPitch { get; init; } = FullPitch / 76.2;

    /// <summary>Whether they have hopper heads under the coping.</summary>
    public bool Hopper { get; init; } = true;

    /// <summary>Whether they end in a shoe; otherwise they go straight into the ground.</summary>
    public bool Shoe { get; init; } = true;

    /// <summary>Half of the greatest width of what belongs to one, mm.</summary>
    public double HalfWidth => Math.Max((Diameter / 2) + Clip, Hopper ? HopperWidth * Diameter / 2 : 0);

    /// <summary>Least height of a wall that takes one, mm: hopper head, shoe, a clip, and as much of the pipe to either side of that.</summary>
    public double LeastHeight => HopperDrop + ShoeHeight + (3 * ClipHeight);

    /// <summary>Least projection at which the middle of a pipe is before the wall, so that it narrows nowhere towards it, mm.</summary>
    public double LeastProjection => (Diameter / 2) + Clip;

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<DownpipeSpec> Keys { get; } = new SpecKeys<DownpipeSpec>(For)
        .Choice("on", "Walls that have downpipes.", p => p.On, (p, v) => p with { On = v },
            [("front", PierWalls.Front), ("back", PierWalls.Back), ("both", PierWalls.Both)])
        .Lengths("at", NumberRange.Anywhere, "Distances along the track of the middles of further downpipes.", p => p.At, (p, v) => p with { At = v })
        .Example("[300, 352.5]")
        .Choice("joints", "At a joint between sections: a downpipe beside it, which hides it in its angle, or none.", p => p.Joints,
            (p, v) => p with { Joints = v }, [("beside", PierJoints.Beside), ("between", PierJoints.Between)])
        .Choice("shape", "Outline of a pipe.", p => p.Shape, (p, v) => p with { Shape = v }, [("round", PipeShape.Round), ("square", PipeShape.Square)])
        .Length("diameter", NumberRange.From(0.2, 50), "Diameter of a pipe, or the width of a square one.", p => p.Diameter, (p, v) => p with { Diameter = v })
        .Length("projection", NumberRange.From(0.2, 100), "How far hopper heads, clips and shoes stand before the walls, which are set back by it.",
            p => p.Projection, (p, v) => p with { Projection = v })
        .Length("clip", NumberRange.From(0.05, 10), "How far clips and shoes stand out round their pipe.", p => p.Clip, (p, v) => p with { Clip = v })
        .Length("clip_height", NumberRange.From(0.1, 20), "Height of a clip.", p => p.ClipHeight, (p, v) => p with { ClipHeight = v })
        .Length("clip_pitch", NumberRange.From(1, 500), "From one clip to the next at most; each pipe has one at least.", p => p.ClipPitch, (p, v) =>
            p with { ClipPitch = v })
        .Flag("hopper", "Hopper heads under the coping.", p => p.Hopper, (p, v) => p with { Hopper = v })
        .Flag("shoe", "A shoe at the foot; without one pipes go straight into the ground.", p => p.Shoe, (p, v) => p with { Shoe = v });

    private double HopperDrop => Hopper ? HopperHeight * Diameter : 0;

    private double ShoeHeight => Shoe ? Diameter : 0;

    /// <summary>Whether a wall has downpipes.</summary>
    /// <param name="isBack">The back, where no second face is.</param>
    public bool Has(bool isBack) => On == PierWalls.Both || (On == PierWalls.Back) == isBack;

    /// <summary>What stands out round a pipe, from its foot up.</summary>
    /// <param name="under">Height of the underside that it ends under, mm over the baseboard.</param>
    /// <param name="steps">Heights at which its wall steps back or forth, mm: a clip is set over a step that its edge would lie beside.</param>
    public IEnumerable<PipeRing> Rings(double under, IReadOnlyList<double> steps)
    {
        double? Beside(double edge) => steps.Where(s => Math.Abs(s - edge) < WallProfile.OffSteps).Select(s => (double?)s).FirstOrDefault();
        double foot = ShoeHeight, head = under - HopperDrop;
        foot = Shoe && Beside(foot) is { } over ? over + WallProfile.OffSteps : foot;
        head = Hopper && Beside(head) is { } below ? below - WallProfile.OffSteps : head;
        if (Shoe)
        {
            yield return new(PipePart.Shoe, 0, foot, (Diameter / 2) + Clip, 0);
        }

        // Clips share the pipe between shoe and hopper head evenly.
        int clips = Math.Max(1, (int)Math.Ceiling(((head - foot) / ClipPitch) - Tolerances.Rounding) - 1);
        for (int i = 1; i <= clips; i++)
        {
            double middle = foot + ((head - foot) * i / (clips + 1));
            middle = Beside(middle - (ClipHeight / 2)) ?? Beside(middle + (ClipHeight / 2)) ?? middle;
            yield return new(PipePart.Clip, middle - (ClipHeight / 2), middle + (ClipHeight / 2), (Diameter / 2) + Clip, 0);
        }

        if (Hopper)
        {
            // Its lower part draws in to the pipe.
            double bowl = head + (HopperDrop * 0.4), width = HopperWidth * Diameter / 2;
            bowl = Beside(bowl) is { } step ? step + WallProfile.OffSteps : bowl;
            yield return new(PipePart.Hopper, head, bowl, (width + (Diameter / 2)) / 2, Clip / 2);
            yield return new(PipePart.Hopper, bowl, under, width, 0);
        }
    }

    /// <summary>The defaults for a scale: what would be lost in the lines of the usual nozzle is as large as shows.</summary>
    public static DownpipeSpec For(ModelScale scale) => new()
    {
        Ratio = scale.Ratio,
        ClipHeight = Math.Max(LeastClipHeight, scale.ToModel(FullClipHeight)),
        ClipPitch = scale.ToModel(FullPitch),
    };

    /// <summary>Downpipes for a nozzle so wide, mm: unasked they are two lines wide at least, and their clips stand out by a line at most.</summary>
    public DownpipeSpec Printed(double nozzle) => this with { LeastPipe = Math.Max(LeastDiameter, PrintedLines.Two(nozzle)), MostClip = nozzle };
}

/// <summary>Outlines of pipes.</summary>
public enum PipeShape
{
    /// <summary>Round, by the flats of a sixteen-sided figure.</summary>
    Round,

    /// <summary>Square.</summary>
    Square,
}

/// <summary>What stands out round a pipe.</summary>
public enum PipePart
{
    /// <summary>At its foot.</summary>
    Shoe,

    /// <summary>What holds it to the wall.</summary>
    Clip,

    /// <summary>At its head.</summary>
    Hopper,
}

/// <summary>A part of a downpipe round its pipe.</summary>
/// <param name="Part">What it is.</param>
/// <param name="Low">Height of its lower side, mm over the baseboard.</param>
/// <param name="High">Height of its upper side.</param>
/// <param name="HalfWidth">Half its width, mm.</param>
/// <param name="Back">How far its front lies behind what stands out most, mm.</param>
public readonly record struct PipeRing(PipePart Part, double Low, double High, double HalfWidth, double Back);

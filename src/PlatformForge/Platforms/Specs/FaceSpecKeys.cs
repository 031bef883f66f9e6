using PlatformForge.Track;
using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Specs;

/// <summary>The keys of faces and ramps in the project file.</summary>
internal static class FaceSpecKeys
{
    // A platform as long as a short vehicle, mm, where nothing says how long.
    private const double Short = 100;

    private static readonly (string, Side)[] Sides = [("left", Side.Left), ("right", Side.Right)];

    // A ramp is one plane from edge to edge: a second face has its own length or its own foot, and its gradient from the first.
    private static readonly SpecKeys<RampSpec> OtherRamp = new SpecKeys<RampSpec>(_ => new())
        .Length("length", NumberRange.From(0.1, 1e4), "Length along that track; the height of its foot follows.", r => r.Length,
            (r, v) => r with { Length = v }).Example("96")
        .Length(
            "foot",
            NumberRange.From(-200, 300),
            "Height of its foot above that track's rail top; its length follows.",
            r => r.FootHeight,
            (r, v) => r with { FootHeight = v }).Example("1.5")
        .Number("gradient", NumberRange.From(1, 100), "", "It has the first face's: a ramp is one plane. Told here so that it can be refused in words.",
            r => r.Gradient, (r, v) => r with { Gradient = v }).Example("8")
        .Check((r, key) => r is not { Length: null, Gradient: null, FootHeight: null } ? null : new(
            null,
            $"{key[(key.LastIndexOf('.') + 1)..]} has neither length nor foot.",
            "Give one of them, such as { length = 96 } or { foot = 1.5 }.",
            Cure.LeaveOut(key)));

    private static readonly SpecKeys<RampsDraft> OtherRamps = new SpecKeys<RampsDraft>(_ => new(null, null))
        .Table("start", "Ramp at its lower chainage.", OtherRamp, r => r.Start, (r, v) => r with { Start = v })
        .Table("end", "Ramp at its higher chainage.", OtherRamp, r => r.End, (r, v) => r with { End = v });

    /// <summary>Of a platform's first face.</summary>
    public static SpecKeys<FaceSpec> First { get; } = Edge(Fresh(FaceSpec.FirstKey)
        .Text("track", "Name of the track that the platform faces.", f => f.Track, (f, v) => f with { Track = v }, required: true)
        .Choice(
            "side",
            "Side of the track on which the platform stands, seen along the track.",
            f => f.Side,
            (f, v) => f with { Side = v },
            Sides,
            required: true)
        .Length(
            "from",
            NumberRange.Anywhere,
            "Where the platform begins: distance along the track from its start.",
            f => f.From,
            (f, v) => f with { From = v },
            required: true)
        .Length("to", NumberRange.Anywhere, "Where it ends.", f => f.To, (f, v) => f with { To = v }, required: true))
        .Check((f, key) => f.To > f.From ? null : new(
            "to",
            FormattableString.Invariant($"to is {f.To:0.####} mm, not beyond from, {f.From:0.####} mm."),
            FormattableString.Invariant($"Give a to above {f.From:0.####} mm."),
            Cure.Set(key + ".to", f.From + Short)));

    /// <summary>Of an island's other face: its ends lie straight across from those of the first.</summary>
    public static SpecKeys<FaceSpec> Other { get; } = Edge(Fresh(FaceSpec.OtherKey)
        .Text("track", "Name of the track on the platform's other side.", f => f.Track, (f, v) => f with { Track = v }, required: true)
        .Choice("side", "Side of that track on which the platform stands, seen along it.", f => f.Side, (f, v) => f with { Side = v }, Sides, required: true))
        .Table(
            "ramps",
            "Where this face's ramps differ: start is at its track's lower chainage; left out, they begin straight across from the first face's.",
            OtherRamps,
            f => new(f.StartRamp, f.EndRamp),
            (f, v) => f with { StartRamp = v.Start, EndRamp = v.End });

    /// <summary>Of a platform's ramps, or of an island's other face.</summary>
    internal sealed record RampsDraft(RampSpec? Start, RampSpec? End);

    public static SpecKeys<RampSpec> Ramp { get; } = new SpecKeys<RampSpec>(_ => new())
        .Number("gradient", NumberRange.From(1, 100), "", "Slope, 1 in this.", r => r.Gradient, (r, v) => r with { Gradient = v })
        .Length("length", NumberRange.From(0.1, 1e4), "Length along the track, in place of the gradient.", r => r.Length, (r, v) => r with { Length = v })
        .Length(
            "foot",
            NumberRange.From(-100, 200),
            "Height of the ramp's foot above rail top, negative below it; left out, 0, or as low as the deck allows.",
            r => r.FootHeight,
            (r, v) => r with { FootHeight = v })
        .Check((r, key) => r.Length is null != r.Gradient is null ? null : new(
            null,
            $"{key[(key.LastIndexOf('.') + 1)..]} has {(r.Length is null ? "neither length nor gradient" : "both length and gradient")}.",
            "Give one of them, such as { gradient = 8 } or { length = 96 }.",
            r.Length is null ? Cure.Set(key + ".gradient", 8) : Cure.LeaveOut(key + ".gradient")));

    private static SpecKeys<FaceSpec> Fresh(string key) =>
        new(scale => new("", Side.Left, double.NaN, double.NaN) { Key = key, LeastRadius = scale.ToModel(FaceSpec.FullSizeLeastRadius) });

    // What is said of an edge, whichever face it is.
    private static SpecKeys<FaceSpec> Edge(SpecKeys<FaceSpec> keys) => keys
        .Choice(
            "edge",
            "How the edge follows the vehicles: fitted exactly, faired like masonry, uniform throughout.",
            f => f.Edge,
            (f, v) => f with { Edge = v },
            [("fitted", EdgeStyle.Fitted), ("faired", EdgeStyle.Faired), ("uniform", EdgeStyle.Uniform)])
        .Length(
            "reach",
            NumberRange.From(0.1, 2000),
            "Distance of a uniform edge from the track's middle; left out, the least that works.",
            f => f.Reach,
            (f, v) => f with { Reach = v })
        .Length(
            "least_radius",
            NumberRange.From(1, 1e6),
            "Tightest bend of a faired edge; left out, 150 ft at full size.",
            f => f.LeastRadius,
            (f, v) => f with { LeastRadius = v })
        .Number("taper", NumberRange.From(2, 1000), "", "Fastest change of a faired edge's distance: 1 in this.", f => f.Taper, (f, v) => f with { Taper = v })
        .Flag("bodies_pass_over", "Whether the sides of coaches may pass over the coping.", f => f.BodiesPassOver, (f, v) => f with { BodiesPassOver = v })
        .Length(
            "vertical_gap",
            NumberRange.From(0, 50),
            "Height left over what stays under the coping, and under what passes over it.",
            f => f.VerticalGap,
            (f, v) => f with { VerticalGap = v })
        .Length(
            "running",
            NumberRange.From(0, 50),
            "Air wanted between this edge and vehicles; left out, that of [clearance].",
            f => f.Running,
            (f, v) => f with { Running = v })
        .Table("line", "White line along this edge; left out, the platform's own.", WhiteLineSpec.Keys, f => f.WhiteLine, (f, v) => f with { WhiteLine = v })
        .Check((f, key) => f.Reach is null || f.Edge == EdgeStyle.Uniform ? null : new(
            "reach",
            $"The edge is {f.Edge.ToString().ToLowerInvariant()}, so it has no one reach.",
            "Give edge = \"uniform\" with it, or leave reach out.",
            Cure.LeaveOut(key + ".reach")));
}

using PlatformForge.Platforms;
using PlatformForge.Projects.Reading;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[[platform]]</c>.</summary>
internal static class PlatformKeys
{
    private static readonly KeyTable<FaceSpec> Face = Edge(Fresh(FaceSpec.FirstKey)
        .Text("track", "Name of the track that the platform faces.", f => f.Track, (f, v) => f with { Track = v }, required: true)
        .Choice("side", "Side of the track on which the platform stands, seen along the track.", f => f.Side, (f, v) => f with { Side = v }, [("left", Side.Left), ("right", Side.Right)], required: true)
        .Length("from", NumberRange.Chainage, "Where the platform begins: distance along the track from its start.", f => f.From, (f, v) => f with { From = v }, required: true)
        .Length("to", NumberRange.Chainage, "Where it ends.", f => f.To, (f, v) => f with { To = v }, required: true))
        .Check((f, table, key, reading) =>
        {
            if (f.To <= f.From)
            {
                reading.Fault("PF1014", key + ".to", (table.Find("to")?.Value ?? table).Place,
                    FormattableString.Invariant($"to is {f.To} mm, not beyond from, {f.From} mm."),
                    FormattableString.Invariant($"Give a to above {f.From} mm."), Cure.Set(key + ".to", f.From + Short));
            }
        });

    // Its ends lie straight across from those of the first face.
    private static readonly KeyTable<FaceSpec> OtherFace = Edge(Fresh(FaceSpec.OtherKey)
        .Text("track", "Name of the track on the platform's other side.", f => f.Track, (f, v) => f with { Track = v }, required: true)
        .Choice("side", "Side of that track on which the platform stands, seen along it.",
            f => f.Side, (f, v) => f with { Side = v }, [("left", Side.Left), ("right", Side.Right)], required: true));

    private static KeyTable<FaceSpec> Fresh(string key) =>
        new(scale => new("", Side.Left, double.NaN, double.NaN) { Key = key, LeastRadius = scale.ToModel(FaceSpec.FullSizeLeastRadius) });

    // What is said of an edge, whichever face it is.
    private static KeyTable<FaceSpec> Edge(KeyTable<FaceSpec> table) => table
        .Choice("edge", "How the edge follows the vehicles: fitted exactly, faired like masonry, uniform throughout.", f => f.Edge, (f, v) => f with { Edge = v }, [("fitted", EdgeStyle.Fitted), ("faired", EdgeStyle.Faired), ("uniform", EdgeStyle.Uniform)])
        .Length("reach", NumberRange.Over0(2000), "Distance of a uniform edge from the track's middle; left out, the least that works.", f => f.Reach, (f, v) => f with { Reach = v })
        .Length("least_radius", NumberRange.Over0(1e6), "Tightest bend of a faired edge; left out, 150 ft at full size.", f => f.LeastRadius, (f, v) => f with { LeastRadius = v })
        .Number("taper", NumberRange.From(2, 1000), "", "Fastest change of a faired edge's distance: 1 in this.", f => f.Taper, (f, v) => f with { Taper = v })
        .Flag("bodies_pass_over", "Whether the sides of coaches may pass over the coping.", f => f.BodiesPassOver, (f, v) => f with { BodiesPassOver = v })
        .Length("vertical_gap", NumberRange.From(0, 50), "Height left over what stays under the coping, and under what passes over it.", f => f.VerticalGap, (f, v) => f with { VerticalGap = v })
        .Length("running", NumberRange.From(0, 50), "Air wanted between this edge and vehicles; left out, that of [clearance].",
            f => f.Running, (f, v) => f with { Running = v })
        .Table("line", "White line along this edge; left out, the platform's own.", BodyKeys.Line, f => f.WhiteLine, (f, v) => f with { WhiteLine = v })
        .Check((f, table, key, reading) =>
        {
            if (f.Reach is not null && f.Edge != EdgeStyle.Uniform)
            {
                reading.Fault("PF1014", key + ".reach", (table.Find("reach")?.Value ?? table).Place, $"The edge is {f.Edge.ToString().ToLowerInvariant()}, so it has no one reach.", "Give edge = \"uniform\" with it, or leave reach out.", Cure.LeaveOut(key + ".reach"));
            }
        });

    // A platform as long as a short vehicle, mm, where nothing says how long.
    private const double Short = 100;

    private static readonly KeyTable<RampSpec> Ramp = new KeyTable<RampSpec>(_ => new())
        .Number("gradient", NumberRange.From(1, 100), "", "Slope, 1 in this.", r => r.Gradient, (r, v) => r with { Gradient = v })
        .Length("length", NumberRange.Over0(1e4), "Length along the track, in place of the gradient.", r => r.Length, (r, v) => r with { Length = v })
        .Length("foot", NumberRange.From(-100, 200), "Height of the ramp's foot above rail top, negative below it; left out, 0, or as low as the deck allows.", r => r.FootHeight, (r, v) => r with { FootHeight = v })
        .Check((r, table, key, reading) =>
        {
            if ((r.Length is null) == (r.Gradient is null))
            {
                reading.Fault("PF1013", key, table.Place, $"{KeyReading.LastOf(key)} has {(r.Length is null ? "neither length nor gradient" : "both length and gradient")}.", "Give one of them, such as { gradient = 8 } or { length = 96 }.", r.Length is null ? Cure.Set(key + ".gradient", 8) : Cure.LeaveOut(key + ".gradient"));
            }
        });

    private sealed record RampsDraft(RampSpec? Start, RampSpec? End);

    private static readonly KeyTable<RampsDraft> Ramps = new KeyTable<RampsDraft>(_ => new(null, null))
        .Table("start", "Ramp at the beginning.", Ramp, r => r.Start, (r, v) => r with { Start = v })
        .Table("end", "Ramp at the end.", Ramp, r => r.End, (r, v) => r with { End = v });

    public static KeyTable<PlatformSpec> Table { get; } = FeatureKeys.On(new KeyTable<PlatformSpec>(scale => PlatformSpec.For(scale, "", Face.DefaultsAt(scale)))
        .Text("name", "Name of the platform; it names the files.", p => p.Name, (p, v) => p with { Name = v }, required: true)
        .Text("kind", "Kind of platform.", _ => "side", (p, _) => p, false, "side", "island")
        .Length("height", NumberRange.From(0.5, 300), "Height of the coping's top above rail top.", p => p.Height, (p, v) => p with { Height = v })
        .Table("face", "Where the platform faces its track.", Face, p => p.Face, (p, v) => p with { Face = v }, required: true)
        .Table("other_face", "The face on the other side, which makes an island of it; its ends lie straight across from the first one's, and its width is what both leave.", OtherFace, p => p.OtherFace, (p, v) => p with { OtherFace = v })
        .Table("ramps", "Sloping ends; left out, an end has a wall.", Ramps, p => new RampsDraft(p.StartRamp, p.EndRamp), (p, v) => p with { StartRamp = v.Start, EndRamp = v.End })
        .Table("deck", "The walking surface.", BodyKeys.Deck, p => p.Deck, (p, v) => p with { Deck = v })
        .Table("coping", "The course of slabs along the edge.", BodyKeys.Coping, p => p.Coping, (p, v) => p with { Coping = v })
        .Table("wall", "Walls from baseboard to deck.", BodyKeys.Walls, p => p.Walls, (p, v) => p with { Walls = v })
        .Table("ribs", "Stiffeners under the deck.", BodyKeys.Ribs, p => p.Ribs, (p, v) => p with { Ribs = v })
        .Table("line", "White line along the edge; left out, there is none.", BodyKeys.Line, p => p.WhiteLine, (p, v) => p with { WhiteLine = v }))
        .Numbers("cuts", NumberRange.Chainage, "mm", "Distances along the track at which it must be cut; dowels hold the sections in line as at any cut.", (p, v) => p with { ForcedCuts = v })
        .Numbers("baseboard_joints", NumberRange.Chainage, "mm",
            "Distances along the track of joints in the baseboard: it is cut there, and no dowel crosses.", (p, v) => p with { BaseboardJoints = v })
        .Check((p, table, key, reading) =>
        {
            // The kind says once more what the faces say: where both are stated they have to agree.
            bool island = table.Find("kind")?.Value is TreeText { Value: "island" }, side = table.Find("kind")?.Value is TreeText { Value: "side" };
            if (island && !p.IsIsland)
            {
                reading.Fault("PF1013", key + ".other_face", table.Place, "An island has a face on either side, and only one is stated.",
                    "Give other_face = { track = \"...\", side = \"...\" }, the track on its other side, or leave kind out.", Cure.LeaveOut(key + ".kind"));
            }

            if (side && p.IsIsland)
            {
                reading.Fault("PF1014", key + ".kind", table.Place, "A platform with a face on either side is no side platform.",
                    "Say kind = \"island\", or leave it out.", Cure.Text(key + ".kind", "island"));
            }

            if (p.IsIsland && (table.Find("deck")?.Value as TreeTable)?.Find("width") is { } width)
            {
                reading.Fault("PF1014", key + ".deck.width", width.Value.Place, "An island is as wide as its two faces leave it.",
                    "Leave width out; the least width found is told.", Cure.LeaveOut(key + ".deck.width"));
            }
        });
}

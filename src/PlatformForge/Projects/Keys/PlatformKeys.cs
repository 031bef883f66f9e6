using PlatformForge.Platforms;
using PlatformForge.Track;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[[platform]]</c>.</summary>
internal static class PlatformKeys
{
    private static readonly KeyTable<FaceSpec> Face = new KeyTable<FaceSpec>(scale => new("", Side.Left, double.NaN, double.NaN) { LeastRadius = scale.ToModel(FaceSpec.FullSizeLeastRadius) })
        .Text("track", "Name of the track that the platform faces.", f => f.Track, (f, v) => f with { Track = v }, required: true)
        .Choice("side", "Side of the track on which the platform stands, seen along the track.", f => f.Side, (f, v) => f with { Side = v }, [("left", Side.Left), ("right", Side.Right)], required: true)
        .Length("from", NumberRange.Chainage, "Where the platform begins: distance along the track from its start.", f => f.From, (f, v) => f with { From = v }, required: true)
        .Length("to", NumberRange.Chainage, "Where it ends.", f => f.To, (f, v) => f with { To = v }, required: true)
        .Choice("edge", "How the edge follows the vehicles: fitted exactly, faired like masonry, uniform throughout.", f => f.Edge, (f, v) => f with { Edge = v }, [("fitted", EdgeStyle.Fitted), ("faired", EdgeStyle.Faired), ("uniform", EdgeStyle.Uniform)])
        .Length("reach", NumberRange.Over0(2000), "Distance of a uniform edge from the track's middle; left out, the least that works.", f => f.Reach, (f, v) => f with { Reach = v })
        .Length("least_radius", NumberRange.Over0(1e6), "Tightest bend of a faired edge; left out, 150 ft at full size.", f => f.LeastRadius, (f, v) => f with { LeastRadius = v })
        .Number("taper", NumberRange.From(2, 1000), "", "Fastest change of a faired edge's distance: 1 in this.", f => f.Taper, (f, v) => f with { Taper = v })
        .Flag("bodies_pass_over", "Whether the sides of coaches may pass over the coping.", f => f.BodiesPassOver, (f, v) => f with { BodiesPassOver = v })
        .Length("vertical_gap", NumberRange.From(0, 50), "Height left over what stays under the coping, and under what passes over it.", f => f.VerticalGap, (f, v) => f with { VerticalGap = v })
        .Check((f, table, key, reading) =>
        {
            if (f.Reach is not null && f.Edge != EdgeStyle.Uniform)
            {
                reading.Fault("PF1014", key + ".reach", (table.Find("reach")?.Value ?? table).Place, $"The edge is {f.Edge.ToString().ToLowerInvariant()}, so it has no one reach.", "Give edge = \"uniform\" with it, or leave reach out.", Cure.LeaveOut(key + ".reach"));
            }

            if (f.To <= f.From)
            {
                reading.Fault("PF1014", key + ".to", (table.Find("to")?.Value ?? table).Place, FormattableString.Invariant($"to is {f.To} mm, not beyond from, {f.From} mm."), FormattableString.Invariant($"Give a to above {f.From} mm."), Cure.Set(key + ".to", f.From + Short));
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
        .Text("kind", "Kind of platform.", _ => "side", (p, _) => p, false, "side")
        .Length("height", NumberRange.From(0.5, 300), "Height of the coping's top above rail top.", p => p.Height, (p, v) => p with { Height = v })
        .Table("face", "Where the platform faces its track.", Face, p => p.Face, (p, v) => p with { Face = v }, required: true)
        .Table("ramps", "Sloping ends; left out, an end has a wall.", Ramps, p => new RampsDraft(p.StartRamp, p.EndRamp), (p, v) => p with { StartRamp = v.Start, EndRamp = v.End })
        .Table("deck", "The walking surface.", BodyKeys.Deck, p => p.Deck, (p, v) => p with { Deck = v })
        .Table("coping", "The course of slabs along the edge.", BodyKeys.Coping, p => p.Coping, (p, v) => p with { Coping = v })
        .Table("wall", "Walls from baseboard to deck.", BodyKeys.Walls, p => p.Walls, (p, v) => p with { Walls = v })
        .Table("ribs", "Stiffeners under the deck.", BodyKeys.Ribs, p => p.Ribs, (p, v) => p with { Ribs = v })
        .Table("line", "White line along the edge; left out, there is none.", BodyKeys.Line, p => p.WhiteLine, (p, v) => p with { WhiteLine = v }))
        .Numbers("cuts", NumberRange.Chainage, "mm", "Distances along the track at which it must be cut; dowels hold the sections in line as at any cut.", (p, v) => p with { ForcedCuts = v })
        .Numbers("baseboard_joints", NumberRange.Chainage, "mm", "Distances along the track of joints in the baseboard: it is cut there, and no dowel crosses.", (p, v) => p with { BaseboardJoints = v });
}

using PlatformForge.Masonry;
using PlatformForge.Platforms.Features.Kinds;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Values;

/// <summary>The keys of a platform in the project file: every figure's range stands in these tables and nowhere else.</summary>
internal static class PlatformSpecKeys
{
    private static readonly SpecKeys<FaceSpecKeys.RampsDraft> Ramps = new SpecKeys<FaceSpecKeys.RampsDraft>(_ => new(null, null))
        .Table("start", "Ramp at the beginning.", FaceSpecKeys.Ramp, r => r.Start, (r, v) => r with { Start = v })
        .Table("end", "Ramp at the end.", FaceSpecKeys.Ramp, r => r.End, (r, v) => r with { End = v });

    public static SpecKeys<PlatformSpec> All { get; } = FeatureKinds.On(new SpecKeys<PlatformSpec>(scale => PlatformSpec.For(
        scale,
        "",
        FaceSpecKeys.First.DefaultsAt(scale)))
        .Text("name", "Name of the platform; it names the files.", p => p.Name, (p, v) => p with { Name = v }, required: true)
        .Text("kind", "Kind of platform.", _ => "side", (p, _) => p, false, "side", "island")
        .Length("height", NumberRange.From(0.5, 300), "Height of the coping's top above rail top.", p => p.Height, (p, v) => p with { Height = v })
        .Table(
            FaceSpec.FirstKey,
            "Where the platform faces its track.",
            FaceSpecKeys.First,
            p => Of(p, FaceSpec.FirstKey),
            (p, v) => p with { Face = v },
            required: true)
        .Table(
            FaceSpec.OtherKey,
            "The face on the other side, which makes an island of it; its ends lie straight across from the first one's, and its width is what both leave.",
            FaceSpecKeys.Other,
            p => Of(p, FaceSpec.OtherKey),
            (p, v) => p with { OtherFace = v })
        .Table(
            "ramps",
            "Sloping ends; left out, an end has a wall.",
            Ramps,
            p => new(p.StartRamp, p.EndRamp),
            (p, v) => p with { StartRamp = v.Start, EndRamp = v.End })
        .Table("deck", "The walking surface.", DeckSpec.Keys, p => p.Deck, (p, v) => p with { Deck = v })
        .Table("coping", "The course of slabs along the edge.", CopingSpec.Keys, p => p.Coping, (p, v) => p with { Coping = v })
        .Table("wall", "Walls from baseboard to deck.", WallSpec.Keys, p => p.Walls, (p, v) => p with { Walls = v })
        .Table("back", "What closes it behind; left out, a wall.", BackSpec.Keys, p => p.Back, (p, v) => p with { Back = v })
        .Table(
            "skew",
            "Ends cut on the skew, in degrees off the square, positive where the back reaches farther; left out, they are square.",
            SkewSpec.Keys,
            p => p.Skew,
            (p, v) => p with { Skew = v })
        .Table("facing", "What its walls are faced with; left out, they are plain.", FacingSpec.Keys, p => p.Facing, (p, v) => p with { Facing = v })
        .Table("trestle", "Bents that carry the deck in place of walls; left out, walls do.", TrestleSpec.Keys, p => p.Trestle, (p,
            v) => p with { Trestle = v })
        .Table("ribs", "Stiffeners under the deck.", RibSpec.Keys, p => p.Ribs, (p, v) => p with { Ribs = v })
        .Table("line", "White line along the edge; left out, there is none.", WhiteLineSpec.Keys, p => p.WhiteLine, (p, v) => p with { WhiteLine = v })
        .Table("tactile", "Tactile strip along the edge, a print of its own; left out, there is none.", TactileSpec.Keys, p => p.Tactile, (p,
            v) => p with { Tactile = v }))
        .Lengths(
            "cuts",
            NumberRange.Anywhere,
            "Distances along the track at which it must be cut; dowels hold the sections in line as at any cut.",
            p => p.ForcedCuts,
            (p, v) => p with { ForcedCuts = v })
        .Lengths(
            "baseboard_joints",
            NumberRange.Anywhere,
            "Distances along the track of joints in the baseboard: it is cut there, and no dowel crosses.",
            p => p.BaseboardJoints,
            (p, v) => p with { BaseboardJoints = v });

    // A platform may be told by its other face first.
    private static FaceSpec? Of(PlatformSpec platform, string key) => platform.Faces.FirstOrDefault(f => f.Key == key);
}
